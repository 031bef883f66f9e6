using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using PlatformForge.Exports.Files;

namespace PlatformForge.Exports.Documents;

/// <summary>
/// A document as one HTML file that asks nothing of anybody: style, drawings and pictures are in it, there is no script, and a policy in its head forbids every
/// request. It prints on paper of any size, is read by a screen reader, and follows the reader's choice of light or dark.
/// </summary>
internal sealed class HtmlPage
{
    // Tables with fewer rows than this stay on one page.
    private const int Short = 14;

    // With so many columns a table may be wider than a narrow window, and is then moved by keys too.
    private const int Wide = 4;

    private const int LongestWord = 24;

    // Where a PNG has its width (ISO/IEC 15948, 11.2.2), and fewer pixels than this are small.
    private const int WidthAt = 16, SmallBelow = 800;

    private const string Policy = "default-src 'none'; img-src data:; style-src 'unsafe-inline'";

    private readonly Utf8Text text;
    private readonly Stack<int> open = new();
    private int figures;
    private string anchor = "";

    private HtmlPage(Utf8Text text) => this.text = text;

    public static byte[] ToBytes(Document document)
    {
        using var memory = new MemoryStream();
        Write(memory, document);
        return memory.ToArray();
    }

    /// <summary>The same bytes to a stream; pictures and drawings are read one after another as they are written.</summary>
    public static void Write(Stream to, Document document)
    {
        using var written = new Utf8Text(to);
        var page = new HtmlPage(written);
        page.Head(document);
        page.Contents(document);
        page.text.Raw("<main id=\"report\">\n"u8);
        foreach (var block in document.Blocks)
        {
            page.Block(block);
        }

        page.CloseTo(0);
        page.text.Raw("</main>\n</div>\n<footer>"u8).Escaped(document.Foot).Raw("</footer>\n</body>\n</html>\n"u8);
    }

    private void Head(Document document)
    {
        text.Raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta http-equiv=\"Content-Security-Policy\" content=\""u8)
            .Escaped(Policy)
            .Raw(
                "\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"color-scheme\" content=\"light dark\">\n<title>"u8)
            .Escaped(document.Title).Raw(": platform report</title>\n<style>\n"u8).Raw(Style.Value)
            .Raw("</style>\n</head>\n<body>\n<a class=\"skip\" href=\"#report\">Skip to the report</a>\n"u8)
            .Raw("<header class=\"head\">\n<div class=\"board\">\n<div>\n"u8)
            .Raw("<p class=\"kind\">Platform report</p>\n<h1>"u8).Escaped(document.Title).Raw("</h1>\n</div>\n<dl class=\"fields\">\n"u8);
        foreach (var (name, value) in document.Fields)
        {
            text.Raw("<div><dt>"u8).Escaped(name).Raw("</dt><dd>"u8).Escaped(value).Raw("</dd></div>\n"u8);
        }

        text.Raw("</dl>\n</div>\n<div class=\"edge\" aria-hidden=\"true\"></div>\n</header>\n<div class=\"body\">\n"u8);
    }

    // Parts, and the chapters in each.
    private void Contents(Document document)
    {
        text.Raw("<nav aria-labelledby=\"contents\">\n<h2 id=\"contents\">Contents</h2>\n<ol>\n"u8);
        bool inPart = false, inChapter = false;
        foreach (var heading in document.Blocks.OfType<Heading>().Where(h => h.Divides))
        {
            if (heading.Level == 2)
            {
                text.Raw(inChapter ? "</ol>"u8 : ""u8).Raw(inPart ? "</li>\n"u8 : ""u8).Raw("<li>"u8);
                (inPart, inChapter) = (true, false);
                Link(heading);
                continue;
            }

            text.Raw(inChapter ? ""u8 : "\n<ol>\n"u8).Raw("<li>"u8);
            inChapter = true;
            Link(heading);
            text.Raw("</li>\n"u8);
        }

        text.Raw(inChapter ? "</ol>"u8 : ""u8).Raw(inPart ? "</li>\n"u8 : ""u8).Raw("</ol>\n</nav>\n"u8);
    }

    private void Link(Heading heading) => text.Raw("<a href=\"#"u8).Escaped(heading.Anchor).Raw("\">"u8).Escaped(heading.Text).Raw("</a>"u8);

    private void Block(Block block)
    {
        switch (block)
        {
            case Heading heading:
                Heading(heading);
                break;
            case Paragraph paragraph:
                text.Raw("<p>"u8).Escaped(paragraph.Text).Raw("</p>\n"u8);
                break;
            case VerdictLineBlock verdict:
                Verdict(verdict);
                break;
            case ItemList list:
                Items(list);
                break;
            case Remark remark:
                text.Raw(remark.Word == "Note" ? "<p class=\"remark note\"><b>"u8
                    : "<p class=\"remark\"><b>"u8).Escaped(remark.Word).Raw(" "u8).Escaped(remark.Code).Raw("</b> "u8);
                text.Raw(remark.Key.Length > 0 ? "<code>"u8 : ""u8).Escaped(remark.Key).Raw(remark.Key.Length > 0 ? "</code> "u8
                    : ""u8).Escaped(remark.Text).Raw("</p>\n"u8);
                break;
            case TableBlock table:
                Table(table);
                break;
            case FileListBlock list:
                Files(list);
                break;
            case FigureBlock figure:
                Figure(figure);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block.GetType().Name);
        }
    }

    private void Heading(Heading heading)
    {
        anchor = heading.Anchor;
        string tag = "h" + heading.Level.ToString(CultureInfo.InvariantCulture);
        if (heading.Divides)
        {
            CloseTo(heading.Level - 1);
            text.Raw("<section aria-labelledby=\""u8).Escaped(anchor).Raw("\">\n"u8);
            open.Push(heading.Level);
        }

        text.Raw("<"u8).Escaped(tag).Raw(heading.Divides ? " id=\""u8
            : " class=\"title\" id=\""u8).Escaped(anchor).Raw("\">"u8).Escaped(heading.Text).Raw("</"u8).Escaped(tag).Raw(">\n"u8);
    }

    // Closes the sections that are deeper than a level.
    private void CloseTo(int level)
    {
        while (open.Count > 0 && open.Peek() > level)
        {
            open.Pop();
            text.Raw("</section>\n"u8);
        }
    }

    private void Verdict(VerdictLineBlock verdict)
    {
        text.Raw(verdict.IsGood ? "<div class=\"verdict\">"u8 : "<div class=\"verdict bad\">"u8)
            .Raw("<svg viewBox=\"0 0 24 24\" aria-hidden=\"true\">"u8)
            .Raw("<circle cx=\"12\" cy=\"12\" r=\"10.5\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"2\"/>"u8)
            .Raw("<path fill=\"none\" stroke=\"currentColor\" stroke-width=\"2.4\" d=\""u8)
            .Raw(verdict.IsGood ? "M6.5 12.5l3.6 3.7 7.4-8"u8 : "M12 5.8v7.4M12 16.2v1.9"u8).Raw("\"/></svg><p>"u8).Escaped(verdict.Text).Raw("</p></div>\n"u8);
    }

    private void Items(ItemList list)
    {
        bool steps = list.Kind == ListKind.Steps;
        text.Raw(steps ? "<ol class=\"steps\">\n"u8 : list.Kind == ListKind.Cautions ? "<ul class=\"cautions\">\n"u8 : "<ul>\n"u8);
        foreach (string item in list.Items)
        {
            text.Raw("<li>"u8).Escaped(item).Raw("</li>\n"u8);
        }

        text.Raw(steps ? "</ol>\n"u8 : "</ul>\n"u8);
    }

    private void Files(FileListBlock list)
    {
        text.Raw("<ul class=\"files\">\n"u8);
        foreach (var (path, what) in list.Files)
        {
            text.Raw("<li>"u8);
            File(path);
            text.Raw(what.Length > 0 ? ": "u8 : ""u8).Escaped(what).Raw("</li>\n"u8);
        }

        text.Raw("</ul>\n"u8);
    }

    // A way to a file of the folder in which the page lies; our own names need nothing escaped in an address.
    private void File(string path) => text.Raw("<a href=\""u8).Escaped(path).Raw("\">"u8).Escaped(path).Raw("</a>"u8);

    private void Basis(string basis, string? file)
    {
        text.Escaped(WhereFrom.Of(basis));
        if (file is not null)
        {
            text.Raw(" File: "u8);
            File(file);
            text.Raw("."u8);
        }
    }

    private void Table(TableBlock table)
    {
        bool[] isFigure = [.. table.Headings.Select((_, i) => table.Rows.All(r => IsFigure(r[i])))];
        text.Raw(table.Rows.Count < Short ? "<div class=\"table short\">\n"u8 : "<div class=\"table\">\n"u8).Raw("<div class=\"scroll\""u8);
        if (table.Headings.Count >= Wide)
        {
            text.Raw(" role=\"region\" tabindex=\"0\" aria-labelledby=\""u8).Escaped(anchor).Raw("\""u8);
        }

        text.Raw(">\n<table aria-labelledby=\""u8).Escaped(anchor).Raw("\">\n<thead><tr>"u8);
        for (int i = 0; i < table.Headings.Count; i++)
        {
            text.Raw(isFigure[i] && i > 0 ? "<th scope=\"col\" class=\"n\">"u8 : "<th scope=\"col\">"u8).Escaped(table.Headings[i]).Raw("</th>"u8);
        }

        text.Raw("</tr></thead>\n<tbody>\n"u8);
        foreach (var row in table.Rows)
        {
            Cell("<tr><th scope=\"row\">"u8, row[0], "</th>"u8);
            for (int i = 1; i < row.Count; i++)
            {
                Cell(isFigure[i] ? "<td class=\"n\">"u8 : "<td>"u8, row[i], "</td>"u8);
            }

            text.Raw("</tr>\n"u8);
        }

        text.Raw("</tbody>\n</table>\n</div>\n<p class=\"basis\">"u8);
        Basis(table.Basis, table.File);
        text.Raw("</p>\n</div>\n"u8);
    }

    // A word too long for a sheet of paper may be broken.
    private void Cell(ReadOnlySpan<byte> open, string words, ReadOnlySpan<byte> close)
    {
        text.Raw(open);
        for (int from = 0, to; from < words.Length; from = to)
        {
            to = from + Unbroken(words, from);
            text.Escaped(words[from..to]).Raw(to < words.Length && words[to] != ' ' && words[to - 1] != ' ' ? "<wbr>"u8 : ""u8);
        }

        text.Raw(close);
    }

    // Length of what stands together from a place on: to the next space or for so many letters; never between the halves of one.
    private static int Unbroken(string words, int from)
    {
        int space = words.IndexOf(' ', from);
        int length = Math.Min(space < 0 ? words.Length - from : space + 1 - from, LongestWord);
        return from + length < words.Length && char.IsLowSurrogate(words[from + length]) ? length + 1 : length;
    }

    private static bool IsFigure(string cell) => cell.Length == 0 || double.TryParse(cell, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
        CultureInfo.InvariantCulture, out _);

    private void Figure(FigureBlock figure)
    {
        byte[] image = figure.Image.Read();
        bool isPicture = image is [0x89, (byte)'P', ..];
        text.Raw(isPicture && IsSmall(image) ? "<figure class=\"drawing small\">\n"u8 : "<figure class=\"drawing\">\n"u8);
        if (!isPicture)
        {
            Inline(image, ++figures);
        }
        else
        {
            text.Raw("<img alt=\""u8).Escaped(figure.Description).Raw("\" src=\"data:image/png;base64,"u8)
                .Raw(Encoding.ASCII.GetBytes(Convert.ToBase64String(image))).Raw("\">\n"u8);
        }

        text.Raw("<figcaption><strong>"u8).Escaped(figure.Title).Raw(".</strong> "u8);
        Basis(figure.Basis, figure.File);
        text.Raw("</figcaption>\n</figure>\n"u8);
    }

    // A picture of fewer pixels across than a page has room for: two of them stand side by side.
    private static bool IsSmall(byte[] png) => png.Length > WidthAt + 4 && BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(WidthAt)) < SmallBelow;

    // Drawings bring names of their own for what they define: each gets its own, so that none takes another's.
    private void Inline(ReadOnlySpan<byte> svg, int number)
    {
        ReadOnlySpan<byte> named = "<pattern id=\""u8, used = "url(#"u8;
        byte[] own = Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"d{number}-"));
        svg = svg[svg.IndexOf("<svg"u8)..];
        for (int at; (at = svg.IndexOfAny((byte)'<', (byte)'u')) >= 0; svg = svg[at..])
        {
            var rest = svg[at..];
            int taken = rest.StartsWith(named) ? named.Length : rest.StartsWith(used) ? used.Length : 0;
            at += Math.Max(taken, 1);
            text.Raw(svg[..at]).Raw(taken > 0 ? own : []);
        }

        text.Raw(svg);
    }

    private static readonly Lazy<byte[]> Style = new(() =>
    {
        using var from = typeof(HtmlPage).Assembly.GetManifestResourceStream("documents/page.css")!;
        using var read = new MemoryStream();
        from.CopyTo(read);
        return [.. read.ToArray().Where(b => b != (byte)'\r')];
    });
}
