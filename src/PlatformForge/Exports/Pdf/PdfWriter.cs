using System.Text;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using static System.FormattableString;

namespace PlatformForge.Exports.Pdf;

/// <summary>
/// Writes sheets as one PDF (ISO 32000-1): a page a sheet, as large as the sheet, with outline and page labels. Same sheets, same bytes: the file holds no
/// time and no number drawn by lot. No file of a face is in it, see <see cref="PdfLetters"/>.
/// </summary>
public static class PdfWriter
{
    public static byte[] ToBytes(PdfBook book)
    {
        using var memory = new MemoryStream();
        Write(memory, book);
        return memory.ToArray();
    }

    /// <summary>The same bytes to a stream that can be read and sought.</summary>
    public static void Write(Stream to, PdfBook book)
    {
        var objects = new PdfObjects(to);
        int catalog = objects.Reserve(), pages = objects.Reserve();
        int[] faces = [Face(objects, "Helvetica", bold: false), Face(objects, "Helvetica-Bold", bold: true)];
        PdfLeaf[][] chapters = [.. book.Chapters.Select(c => c.Leaves().ToArray())];
        int[] leaves = [.. chapters.SelectMany(c => c).Select(l => Page(objects, l, pages, faces))];
        objects.Put(pages, Invariant($"<< /Type /Pages /Count {leaves.Length} /Kids [{References(leaves)}] >>"));
        int outline = Outline(objects, book, chapters, leaves);
        string scaling = book.IsTrueSize ? " /PrintScaling /None" : "";
        objects.Put(catalog,
            Invariant($"<< /Type /Catalog /Pages {pages} 0 R /Outlines {outline} 0 R /PageMode /UseOutlines /PageLabels << /Nums [{Labels(book)}] >> /Lang ")
                + Invariant($"(en-GB) /ViewerPreferences << /DisplayDocTitle true{scaling} >> >>"));
        int info = objects.Add($"<< /Title {PdfObjects.Text(book.Title)} /Producer {PdfObjects.Text(book.Producer)} >>");
        objects.End(catalog, info);
    }

    private static int Face(PdfObjects objects, string name, bool bold) =>
        objects.Add(Invariant($"<< /Type /Font /Subtype /Type1 /BaseFont /{name} /Encoding /WinAnsiEncoding /FirstChar {PdfLetters.First} ")
            + Invariant($"/LastChar {PdfLetters.Last} /Widths ")
            + Invariant(
                $"[{string.Join(' ', Enumerable.Range(PdfLetters.First, PdfLetters.Last - PdfLetters.First + 1).Select(c => PdfLetters.Width(c, bold)))}] >>"));

    private static int Page(PdfObjects objects, PdfLeaf leaf, int pages, int[] faces)
    {
        int stream = objects.AddStream("", leaf.Packed);
        string states = string.Concat(leaf.Opacities.Select((o, i) => Invariant($"/G{i} << /ca {o:0.###} >> ")));
        string patterns = string.Concat(leaf.Patterns.Select((p, i) => Invariant($"/P{i} {Stripes(objects, leaf.Matrix, p.Colour, p.Pattern)} 0 R ")));
        string box = $"[0 0 {leaf.Width} {leaf.Height}]";
        return objects.Add(Invariant($"<< /Type /Page /Parent {pages} 0 R /MediaBox {box} /CropBox {box} /TrimBox {box} /Contents {stream} 0 R /Resources << ")
            + Invariant($"/Font << /F1 {faces[0]} 0 R /F2 {faces[1]} 0 R >> /ExtGState << {states}>> /Pattern << {patterns}>> >> >>"));
    }

    // A pattern lies in the page's own space, whatever matrix is in force where it is used.
    private static int Stripes(PdfObjects objects, string matrix, Rgb colour, Pattern pattern)
    {
        string strokes = Written(t =>
        {
            PdfContent.Colour(t, colour).Raw(" RG 1 J "u8).Thousandths(pattern == Pattern.Dots ? 0.8 : 0.35).Raw(" w "u8);
            foreach (var (from, to) in PdfContent.Stripes(pattern))
            {
                t.Thousandths(from.X).Raw(" "u8).Thousandths(from.Y).Raw(" m "u8).Thousandths(to.X).Raw(" "u8).Thousandths(to.Y).Raw(" l "u8);
            }

            t.Raw("S"u8);
        });
        return objects.AddStream("/Type /Pattern /PatternType 1 /PaintType 1 /TilingType 1 /BBox [0 0 3 3] /XStep 3 /YStep 3 /Resources << >> /Matrix "
            + $"[{matrix}] ",
            to => to.Write(Encoding.ASCII.GetBytes(strokes)));
    }

    private static int Outline(PdfObjects objects, PdfBook book, PdfLeaf[][] written, int[] leaves)
    {
        int root = objects.Reserve(), at = 0;
        int[] chapters = [.. book.Chapters.Select(_ => objects.Reserve())];
        for (int i = 0; i < chapters.Length; i++)
        {
            var sheets = written[i];
            int[] lines = [.. sheets.Select(_ => objects.Reserve())];
            objects.Put(chapters[i],
                Line(book.Chapters[i].Title, root, leaves[at], chapters, i) + Invariant($" /First {lines[0]} 0 R /Last {lines[^1]} 0 R /Count {lines.Length} ")
                    + ">>");
            for (int k = 0; k < lines.Length; k++)
            {
                objects.Put(lines[k], Line(sheets[k].Title, chapters[i], leaves[at + k], lines, k) + " >>");
            }

            at += sheets.Length;
        }

        objects.Put(root, Invariant($"<< /Type /Outlines /First {chapters[0]} 0 R /Last {chapters[^1]} 0 R /Count {chapters.Length + leaves.Length} >>"));
        return root;
    }

    private static string Line(string title, int parent, int page, int[] row, int at) =>
        Invariant($"<< /Title {PdfObjects.Text(title)} /Parent {parent} 0 R /Dest [{page} 0 R /Fit]")
        + (at > 0 ? Invariant($" /Prev {row[at - 1]} 0 R") : "") + (at + 1 < row.Length ? Invariant($" /Next {row[at + 1]} 0 R") : "");

    private static string Labels(PdfBook book)
    {
        var labels = new StringBuilder();
        int at = 0;
        foreach (var chapter in book.Chapters)
        {
            string label = PdfObjects.Text(chapter.Label + " ");
            labels.Append(chapter.FirstLabel is { } first
                ? Invariant($"{at} << /P {PdfObjects.Text(chapter.Label + " " + first)} >> ")
                + (chapter.Pages > 1 ? Invariant($"{at + 1} << /P {label} /S /D >> ") : "")
                : Invariant($"{at} << /P {label} /S /D >> "));
            at += chapter.Pages;
        }

        return labels.ToString();
    }

    private static string References(IEnumerable<int> numbers) => string.Join(' ', numbers.Select(n => Invariant($"{n} 0 R")));

    /// <summary>What is written, as a text.</summary>
    internal static string Written(Action<Utf8Text> write)
    {
        using var memory = new MemoryStream();
        using (var text = new Utf8Text(memory))
        {
            write(text);
        }

        return Encoding.ASCII.GetString(memory.ToArray());
    }
}
