using PlatformForge.Exports.Files;
using PlatformForge.Exports.Pdf;

namespace PlatformForge.Exports.Drawings.Painting;

/// <summary>Drawings in pixels beside their SVG, for those whose program shows no SVG: the views in lines, which are looked at and not measured.</summary>
internal static class SheetPictures
{
    // 127 to the inch: the smallest words are eleven pixels high and can be read as they are.
    private const double PixelsToMm = 5;

    private static readonly string[] Kinds = ["-isometric.svg", "-assembly.svg"];

    /// <summary>The picture of a drawing that has one, still to be made.</summary>
    /// <param name="path">Path of the drawing's SVG file.</param>
    /// <param name="drawing">The drawing.</param>
    public static IEnumerable<FileWork> Of(string path, SharedDrawing drawing) => Kinds.Any(k => path.EndsWith(k, StringComparison.Ordinal))
        ? [drawing.File(Path.ChangeExtension(path, ".png"), static sheet => SheetPainter.ToPng(sheet, PixelsToMm))]
        : [];
}
