namespace PlatformForge.Exports.Drawings.Painting;

/// <summary>Drawings in pixels beside their SVG, for those whose program shows no SVG: the views in lines, which are looked at and not measured.</summary>
internal static class SheetPictures
{
    // 127 to the inch: the smallest words are eleven pixels high and can be read as they are.
    private const double PixelsToMm = 5;

    private static readonly string[] Kinds = ["-isometric.svg", "-assembly.svg"];

    /// <summary>Those of a platform's drawings that have one, still to be made.</summary>
    /// <param name="drawings">The drawings by the paths of their SVG files.</param>
    public static IEnumerable<FileWork> Of(IEnumerable<(string Path, Lazy<Sheet> Sheet)> drawings) =>
        from drawing in drawings
        where Kinds.Any(k => drawing.Path.EndsWith(k, StringComparison.Ordinal))
        select new FileWork(Path.ChangeExtension(drawing.Path, ".png"),
            () => SheetPainter.ToPng(drawing.Sheet.Value, PixelsToMm));
}
