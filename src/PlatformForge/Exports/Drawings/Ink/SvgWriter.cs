using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>Writes a sheet as SVG 1.1 at true size: no scripts, no outside fonts or files, numbers in thousandths of a mm.</summary>
public static class SvgWriter
{
    private static readonly (Pattern Pattern, string Path)[] Stripes =
    [
        (Pattern.Rising, "M-1,1 l2,-2 M0,3 l3,-3 M2,4 l2,-2"),
        (Pattern.Falling, "M-1,2 l2,2 M0,0 l3,3 M2,-1 l2,2"),
        (Pattern.Dots, "M0.75,0.75 h0.01 M2.25,2.25 h0.01"),
        (Pattern.Upright, "M1.5,0 v3"),
        (Pattern.Level, "M0,1.5 h3"),
        (Pattern.Crossed, "M0,0 l3,3 M0,3 l3,-3"),
    ];

    public static byte[] ToBytes(Sheet sheet)
    {
        using var memory = new MemoryStream();
        Write(memory, sheet);
        return memory.ToArray();
    }

    /// <summary>The same bytes to a stream.</summary>
    public static void Write(Stream to, Sheet sheet)
    {
        using var text = new Utf8Text(to);
        Head(text, sheet);
        Patterns(text, sheet);
        foreach (var item in sheet.Items)
        {
            Item(text, item);
        }

        text.Raw("</g>\n</svg>\n"u8);
    }

    private static void Head(Utf8Text text, Sheet sheet)
    {
        text
            .Raw("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\""u8).Thousandths(sheet.PaperWidth)
            .Raw("mm\" height=\""u8).Thousandths(sheet.PaperHeight).Raw("mm\" viewBox=\"0 0 "u8).Thousandths(sheet.PaperWidth).Raw(" "u8)
            .Thousandths(sheet.PaperHeight)
            .Raw("\" role=\"img\">\n<title>"u8).Escaped(sheet.Title).Raw("</title>\n<desc>"u8).Escaped(sheet.Description)
            .Raw("</desc>\n<g font-family=\"Helvetica, Arial, 'Liberation Sans', sans-serif\""u8)
            .Raw(" stroke-linecap=\"round\" stroke-linejoin=\"round\" fill=\"none\""u8);
        if (sheet.Stretch != new Point2(1, 1))
        {
            text.Raw(" transform=\"scale("u8).Ratio(sheet.Stretch.X).Raw(" "u8).Ratio(sheet.Stretch.Y).Raw(")\""u8);
        }

        text.Raw(">\n"u8);
        if (sheet.HasGround)
        {
            text.Raw("<rect width=\""u8).Thousandths(sheet.Width).Raw("\" height=\""u8).Thousandths(sheet.Height).Raw("\" fill=\""u8)
                .Escaped(HouseStyle.Paper.Hex).Raw("\"/>\n"u8);
        }
    }

    /// <summary>Defines those stripes that the sheet uses, each colour once, in order of first use.</summary>
    private static void Patterns(Utf8Text text, Sheet sheet)
    {
        var fills = sheet.Items.Select(FillOf).OfType<Fill>().Where(f => f.Pattern != Pattern.Plain).Select(f => (f.Colour, f.Pattern)).Distinct().ToArray();
        if (fills.Length == 0)
        {
            return;
        }

        text.Raw("<defs>\n"u8);
        foreach (var (colour, pattern) in fills)
        {
            text.Raw("<pattern id=\""u8).Escaped(Name(colour, pattern)).Raw("\" width=\"3\" height=\"3\" patternUnits=\"userSpaceOnUse\"><path d=\""u8)
                .Escaped(Array.Find(Stripes, s => s.Pattern == pattern).Path).Raw("\" stroke=\""u8).Escaped(colour.Hex)
                .Raw(pattern == Pattern.Dots ? "\" stroke-width=\"0.8\" stroke-linecap=\"round\"/></pattern>\n"u8 : "\" stroke-width=\"0.35\"/></pattern>\n"u8);
        }

        text.Raw("</defs>\n"u8);
    }

    private static void Item(Utf8Text text, SheetItem item)
    {
        switch (item)
        {
            case SheetPath path:
                text.Raw("<path d=\"M"u8);
                for (int i = 0; i < path.Points.Count; i++)
                {
                    text.Raw(i == 0 ? ""u8 : "L"u8);
                    Place(text, path.Points[i]);
                }

                text.Raw(path.Closed ? "Z\""u8 : "\""u8);
                Look(text, path.Pen, path.Fill);
                break;
            case SheetCircle circle:
                text.Raw("<circle cx=\""u8).Thousandths(circle.Middle.X).Raw("\" cy=\""u8).Thousandths(circle.Middle.Y).Raw("\" r=\""u8)
                    .Thousandths(circle.Radius).Raw("\""u8);
                Look(text, circle.Pen, circle.Fill);
                break;
            case SheetText words:
                Words(text, words);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(item), item.GetType().Name);
        }
    }

    private static void Words(Utf8Text text, SheetText words)
    {
        text.Raw("<text "u8);
        if (words.Angle != 0)
        {
            text.Raw("transform=\"translate("u8);
            Place(text, words.At);
            text.Raw(") rotate("u8).Thousandths(words.Angle).Raw(")\""u8);
        }
        else
        {
            text.Raw("x=\""u8).Thousandths(words.At.X).Raw("\" y=\""u8).Thousandths(words.At.Y).Raw("\""u8);
        }

        text.Raw(" font-size=\""u8).Thousandths(words.Style.Size).Raw("\" fill=\""u8).Escaped(words.Style.Colour.Hex);
        text.Raw(words.Style.Bold ? "\" font-weight=\"bold\""u8 : "\""u8);
        text.Raw(words.Anchor switch { TextAnchor.Middle => " text-anchor=\"middle\""u8, TextAnchor.End => " text-anchor=\"end\""u8, _ => ""u8 });
        text.Raw(">"u8).Escaped(words.Text).Raw("</text>\n"u8);
    }

    private static void Look(Utf8Text text, Pen? pen, Fill? fill)
    {
        if (fill is not null)
        {
            text.Raw(" fill=\""u8).Escaped(fill.Pattern == Pattern.Plain ? fill.Colour.Hex : $"url(#{Name(fill.Colour, fill.Pattern)})").Raw("\""u8);
            if (fill.Opacity < 1)
            {
                text.Raw(" fill-opacity=\""u8).Thousandths(fill.Opacity).Raw("\""u8);
            }
        }

        if (pen is not null)
        {
            text.Raw(" stroke=\""u8).Escaped(pen.Colour.Hex).Raw("\" stroke-width=\""u8).Thousandths(pen.Width).Raw("\""u8);
            if (pen.Dashes.Count > 0)
            {
                text.Raw(" stroke-linecap=\"butt\" stroke-dasharray=\""u8);
                for (int i = 0; i < pen.Dashes.Count; i++)
                {
                    text.Raw(i == 0 ? ""u8 : " "u8).Thousandths(pen.Dashes[i]);
                }

                text.Raw("\""u8);
            }
        }

        text.Raw("/>\n"u8);
    }

    private static void Place(Utf8Text text, Point2 at) => text.Thousandths(at.X).Raw(","u8).Thousandths(at.Y);

    private static Fill? FillOf(SheetItem item) => item switch { SheetPath path => path.Fill, SheetCircle circle => circle.Fill, _ => null };

    private static string Name(Rgb colour, Pattern pattern) => $"{char.ToLowerInvariant(pattern.ToString()[0])}{pattern.ToString().Length}-{colour.Hex[1..]}";
}
