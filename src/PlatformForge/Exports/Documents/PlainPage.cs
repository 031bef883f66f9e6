using System.Text;
using static System.FormattableString;

namespace PlatformForge.Exports.Documents;

/// <summary>A document as plain text for a terminal; what came from others is kept to one line and without control characters.</summary>
internal static class PlainPage
{
    public static string Of(Document document)
    {
        var text = new StringBuilder();
        text.Append(One(document.Title)).Append('\n').Append('=', document.Title.Length).Append('\n');
        foreach (var (name, value) in document.Fields)
        {
            text.Append(Invariant($"{name}: {One(value)}\n"));
        }

        foreach (var block in document.Blocks)
        {
            text.Append('\n');
            Block(text, block);
        }

        return text.Append('\n').Append(One(document.Foot)).Append('\n').ToString();
    }

    private static void Block(StringBuilder text, Block block)
    {
        switch (block)
        {
            case Heading heading:
                text.Append(One(heading.Text)).Append('\n').Append(heading.Level == 2 ? '=' : '-', heading.Text.Length).Append('\n');
                break;
            case Paragraph paragraph:
                text.Append(One(paragraph.Text)).Append('\n');
                break;
            case VerdictLineBlock verdict:
                text.Append(One(verdict.Text)).Append('\n');
                break;
            case ItemList list:
                text.AppendJoin('\n', list.Items.Select((item, i) => (list.Kind == ListKind.Steps ? Invariant($"{i + 1,3}. ") : "  - ")
                    + One(item))).Append('\n');
                break;
            case Remark remark:
                text.Append(Invariant($"{remark.Word} {remark.Code}{(remark.Key.Length > 0 ? " " : "")}{One(remark.Key)}: {One(remark.Text)}\n"));
                break;
            case TableBlock table:
                Table(text, table);
                break;
            case FileListBlock list:
                text.AppendJoin('\n', list.Files.Select(f => Invariant($"  - {f.Path}{(f.What.Length > 0 ? ": " : "")}{One(f.What)}"))).Append('\n');
                break;
            case FigureBlock figure:
                text.Append(Invariant($"[{One(figure.Title)}: {One(WhereFrom.Of(figure.Basis, figure.File))}]\n"));
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block.GetType().Name);
        }
    }

    private static void Table(StringBuilder text, TableBlock table)
    {
        int[] widths = [.. table.Headings.Select((h, i) => table.Rows.Select(r => r[i].Length).Append(h.Length).Max())];
        string Row(IReadOnlyList<string> cells) => "  " + string.Join("  ", cells.Select((c, i) => One(c).PadRight(widths[i]))).TrimEnd() + "\n";
        text.Append(Row(table.Headings)).Append(Row([.. widths.Select(w => new string('-', w))]));
        foreach (var row in table.Rows)
        {
            text.Append(Row(row));
        }

        text.Append("  ").Append(One(WhereFrom.Of(table.Basis, table.File))).Append('\n');
    }

    private static string One(string text) => string.Create(text.Length, text, static (line, from) =>
    {
        for (int i = 0; i < from.Length; i++)
        {
            line[i] = char.IsControl(from[i]) || from[i] is '\u2028' or '\u2029' ? ' ' : from[i];
        }
    });
}
