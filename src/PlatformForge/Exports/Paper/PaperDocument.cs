namespace PlatformForge.Exports.Paper;

/// <summary>The list of sheets as a file: where each lies on the layout, for programs and for whoever measures a sheet.</summary>
/// <param name="Platform">Name of the platform.</param>
/// <param name="Paper">Size in words.</param>
/// <param name="WidthMm">Width of a page as it lies.</param>
/// <param name="HeightMm">Height of a page as it lies.</param>
/// <param name="StretchAcross">How much larger than true everything is drawn across the sheet, to make up for a printer.</param>
/// <param name="StretchDown">The same down the sheet.</param>
/// <param name="Sheets">The sheets.</param>
internal sealed record PaperDocument(
    string Platform,
    string Paper,
    double WidthMm,
    double HeightMm,
    double StretchAcross,
    double StretchDown,
    IReadOnlyList<PaperDocumentSheet> Sheets)
{
    public static PaperDocument Of(PaperSpec paper, PlatformPaper set) => new(
        set.Platform, paper.SizeInWords, set.Key.PaperWidth, set.Key.PaperHeight, paper.Stretch.X, paper.Stretch.Y,
        [.. set.Places.Select(p => new PaperDocumentSheet(p.Number, p.Corner.X, p.Corner.Y, p.Along.X, p.Along.Y, p.Joins))]);
}

/// <summary>A sheet: the layout place of its top left corner, mm, and the unit direction that runs to the right on it.</summary>
internal sealed record PaperDocumentSheet(int Number, double CornerX, double CornerY, double AlongX, double AlongY, IReadOnlyList<string> Joins);
