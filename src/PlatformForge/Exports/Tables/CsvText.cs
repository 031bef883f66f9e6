using System.Globalization;
using System.Text;

namespace PlatformForge.Exports.Tables;

/// <summary>A table as CSV (RFC 4180): a comma between cells, a point in figures, units in the headings, line feeds.</summary>
internal sealed class CsvText
{
    private readonly List<IReadOnlyList<string>> rows = [];
    private readonly int columns;

    public CsvText(params IReadOnlyList<string> headings)
    {
        columns = headings.Count;
        Headings = headings;
    }

    public IReadOnlyList<string> Headings { get; }

    /// <summary>The rows under the headings, as they were said.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Rows => rows;

    public void Row(params IReadOnlyList<string> cells)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(cells.Count, columns);
        rows.Add(cells);
    }

    public byte[] ToBytes()
    {
        var text = new StringBuilder();
        foreach (var row in rows.Prepend(Headings))
        {
            text.AppendJoin(',', row.Select(Quoted)).Append('\n');
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static string Quoted(string cell)
    {
        // A spreadsheet takes a text that begins so for a formula and runs it; an apostrophe makes it a text. A figure below nil is none.
        string plain = IsFormula(cell) ? "'" + cell : cell;
        return plain.AsSpan().ContainsAny(",\"\r\n") ? "\"" + plain.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : plain;
    }

    private static bool IsFormula(string cell) =>
        cell.AsSpan().TrimStart() is [var first, ..] && FormulaSigns.Contains(first, StringComparison.Ordinal)
        && !double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out _);

    // The full-width ones count in some languages.
    private const string FormulaSigns = "=+-@\t\r\uFF1D\uFF0B\uFF0D\uFF20";
}
