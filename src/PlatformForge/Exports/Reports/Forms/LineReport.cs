using PlatformForge.Sections.Forms;

namespace PlatformForge.Exports.Reports.Forms;

/// <summary>A line or strip of a section that is a print of its own: how it is made, its depth below the deck, its air on either side and its rise over the
/// deck in mm, its box on the bed in mm, and its filament.</summary>
public sealed record LineReport(int Section, string Name, string Form, double Depth, double Fit, double Rise, double Length, double Width, double Height,
    double Grams)
{
    /// <summary>All of a platform; null where it has none.</summary>
    internal static IReadOnlyList<LineReport>? Of(SectionSet set) => set.Lines.Pieces.Count == 0 ? null : [.. set.Lines.Pieces.Select(Of)];

    private static LineReport Of(LinePiece p) => new(
        p.Section, p.Made.Name, p.IsInlay ? "inlay" : "strip", p.Made.Depth, p.Made.Fit, p.Made.Rise, p.Size.X, p.Size.Y, p.Size.Z, p.Estimate.Grams);
}
