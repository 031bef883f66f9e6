using System.Text;

namespace PlatformForge.Exports.Tables;

/// <summary>A table as CSV (RFC 4180): a comma between cells, a point in figures, units in the headings, line feeds.</summary>
internal sealed class CsvText
{
    private readonly StringBuilder text = new();
    private readonly int columns;

    public CsvText(params IReadOnlyList<string> headings)
    {
        columns = headings.Count;
        Row(headings);
    }

    public void Row(params IReadOnlyList<string> cells)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(cells.Count, columns);
        text.AppendJoin(',', cells.Select(Quoted)).Append('\n');
    }

    public byte[] ToBytes() => Encoding.UTF8.GetBytes(text.ToString());

    private static string Quoted(string cell) =>
        cell.AsSpan().ContainsAny(",\"\r\n") ? "\"" + cell.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : cell;
}
