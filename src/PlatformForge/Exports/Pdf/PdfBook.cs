using PlatformForge.Exports.Drawings.Ink;

namespace PlatformForge.Exports.Pdf;

/// <summary>Sheets bound into one document.</summary>
/// <param name="Title">What it is called in a reader's window.</param>
/// <param name="Producer">Which program wrote it.</param>
/// <param name="Chapters">Its chapters, each with at least one sheet.</param>
public sealed record PdfBook(string Title, string Producer, IReadOnlyList<PdfChapter> Chapters)
{
    /// <summary>Whether lengths on its sheets are to be measured: readers are then asked not to fit a page to the paper when they print it.</summary>
    public bool IsTrueSize { get; init; }
}

/// <summary>Sheets that belong together.</summary>
/// <param name="Title">Its line in the outline; the sheets' titles stand under it.</param>
/// <param name="Label">Begins the label of each of its pages, a number follows: "up side 3".</param>
/// <param name="Sheets">Its sheets.</param>
public sealed record PdfChapter(string Title, string Label, IReadOnlyList<Sheet> Sheets)
{
    /// <summary>What ends the label of its first page in place of a number, such as "key"; the next is then number 1. Null numbers all.</summary>
    public string? FirstLabel { get; init; }

    /// <summary>Drawings that are let go of once they are in their files, in place of sheets: what is asked of them is their pages.</summary>
    internal IReadOnlyList<SharedDrawing>? Drawn { get; init; }

    /// <summary>How many pages it has.</summary>
    internal int Pages => Drawn?.Count ?? Sheets.Count;

    /// <summary>Its pages.</summary>
    internal IEnumerable<PdfLeaf> Leaves() => Drawn?.Select(d => d.Leaf) ?? Sheets.Select(PdfLeaf.Of);
}
