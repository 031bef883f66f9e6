using System.Text;
using static System.FormattableString;

namespace PlatformForge.Exports.Documents;

/// <summary>A document as Markdown (CommonMark with tables) that also reads well as plain text.</summary>
internal sealed class MarkdownPage
{
    private readonly StringBuilder text = new();

    private MarkdownPage()
    {
    }

    public static byte[] ToBytes(Document document)
    {
        var page = new MarkdownPage();
        page.text.Append("# ").Append(MarkdownText.Escaped(document.Title)).Append("\n\n");
        page.text.AppendJoin('\n', document.Fields.Select(f => Invariant($"- {f.Name}: {MarkdownText.Escaped(f.Value)}"))).Append('\n');
        foreach (var block in document.Blocks)
        {
            page.text.Append('\n');
            page.Block(block);
        }

        page.text.Append('\n').Append(MarkdownText.Escaped(document.Foot)).Append('\n');
        return Encoding.UTF8.GetBytes(page.text.ToString());
    }

    private void Block(Block block)
    {
        switch (block)
        {
            case Heading heading:
                Line(new string('#', heading.Level) + " " + MarkdownText.Escaped(heading.Text));
                break;
            case Paragraph paragraph:
                Line(MarkdownText.Escaped(paragraph.Text));
                break;
            case VerdictLineBlock verdict:
                Line("**" + MarkdownText.Escaped(verdict.Text) + "**");
                break;
            case ItemList list:
                Items(list);
                break;
            case Remark remark:
                string key = remark.Key.Length > 0 ? Invariant($" `{remark.Key.Replace('`', '?')}`") : "";
                Line(Invariant($"- {remark.Word} {remark.Code}{key}: {MarkdownText.Escaped(remark.Text)}"));
                break;
            case TableBlock table:
                Table(table);
                break;
            case FileListBlock list:
                list.Files.ToList().ForEach(f => Line(Invariant($"- {Link(f.Path)}{(f.What.Length > 0 ? ": " : "")}{MarkdownText.Escaped(f.What)}")));
                break;
            case FigureBlock figure:
                Figure(figure);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block.GetType().Name);
        }
    }

    private void Items(ItemList list)
    {
        foreach (string item in list.Items)
        {
            Line((list.Kind == ListKind.Steps ? "- [ ] " : "- ") + MarkdownText.Escaped(item));
        }
    }

    // Columns line up in plain text too.
    private void Table(TableBlock table)
    {
        string[][] rows = [.. table.Rows.Select(r => r.Select(MarkdownText.Escaped).ToArray())];
        string[] headings = [.. table.Headings.Select(MarkdownText.Escaped)]; // a vehicle's name stands in some
        int[] widths = [.. headings.Select((h, i) => Math.Max(3, rows.Select(r => r[i].Length).Append(h.Length).Max()))];
        string Row(IEnumerable<string> cells) => "| " + string.Join(" | ", cells.Select((c, i) => c.PadRight(widths[i]))) + " |";
        Line(Row(headings));
        Line("|" + string.Join("|", widths.Select(w => new string('-', w + 2))) + "|");
        foreach (string[] row in rows)
        {
            Line(Row(row));
        }

        Line("");
        Line("*" + MarkdownText.Escaped(WhereFrom.Of(table.Basis)) + File(table.File) + "*");
    }

    private void Figure(FigureBlock figure)
    {
        if (figure.File is { } file)
        {
            Line(Invariant($"![{MarkdownText.Escaped(figure.Description)}]({file})"));
            Line("");
        }

        Line("*" + MarkdownText.Escaped(figure.Title + ". " + WhereFrom.Of(figure.Basis)) + File(figure.File) + "*");
    }

    private static string File(string? path) => path is null ? "" : Invariant($" File: {Link(path)}.");

    private static string Link(string path) => Invariant($"[{path}]({path})");

    private void Line(string line) => text.Append(line).Append('\n');
}

/// <summary>The line under a table or a figure.</summary>
internal static class WhereFrom
{
    public static string Of(string basis) => Invariant($"Basis: {basis}.");

    public static string Of(string basis, string? file) => file is null ? Of(basis) : Invariant($"{Of(basis)} File: {file}.");
}
