using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Tables;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Exports.Workshop;

/// <summary>A table for the workbench: one source for the report, the CSV file and report.json.</summary>
/// <param name="Name">Short name, part of the file's name.</param>
/// <param name="Title">What it is, for people.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Cells in the order of the columns.</param>
/// <param name="Basis">Where its figures come from.</param>
public sealed record WorkTable(string Name, string Title, IReadOnlyList<WorkColumn> Columns, IReadOnlyList<IReadOnlyList<TableCell>> Rows, string Basis)
{
    /// <summary>Whether the report leaves it out, since it says the same in another form.</summary>
    public bool FileOnly { get; init; }

    /// <summary>Headings for people.</summary>
    public IReadOnlyList<string> Headings => [.. Columns.Select(c => c.Heading)];

    /// <summary>A cell in words.</summary>
    public static string Text(TableCell cell) => cell.Figure is { } figure ? Figures.Fixed(figure, cell.Digits) : cell.Words;

    /// <summary>The whole of it as CSV.</summary>
    public byte[] ToCsv()
    {
        var csv = new CsvText([.. Columns.Select(c => c.Key)]);
        foreach (var row in Rows)
        {
            csv.Row([.. row.Select(Text)]);
        }

        return csv.ToBytes();
    }
}

/// <summary>A column.</summary>
/// <param name="Heading">For people.</param>
/// <param name="Key">For programs: small letters, with the unit at its end.</param>
public sealed record WorkColumn(string Heading, string Key);
