using PlatformForge.Sections.Forms;

namespace PlatformForge.Exports.Looks;

/// <summary>Ids of objects in 3MF files beside those of sections, which are their numbers: lines first, then the bodies of sections that have inlays.</summary>
internal sealed class LineIds(SectionSet set)
{
    /// <summary>Of a line or strip.</summary>
    public int Of(LinePiece piece) =>
        set.Sections.Count + 1 + set.Lines.Pieces.TakeWhile(p => p.Section != piece.Section || p.Line != piece.Line).Count();

    /// <summary>Of a section's own body where that is one of several.</summary>
    public int OfBody(int section) => set.Sections.Count + set.Lines.Pieces.Count + section;
}
