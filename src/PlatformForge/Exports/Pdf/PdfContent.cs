using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Pdf;

/// <summary>A sheet as the operators of a page: everything in mm with y down, as the sheet has it, under one matrix that leads to points with y up.</summary>
internal sealed class PdfContent
{
    /// <summary>Points of an inch over its millimetres.</summary>
    public const double PointsPerMm = 72 / 25.4;

    // A quarter of a circle as a cubic curve: the usual share of the radius, off the circle by less than 0.03 % of it.
    private const double Quarter = 0.5522847498;

    private readonly Sheet sheet;
    private readonly Utf8Text text;
    private readonly List<double> opacities = [];
    private readonly List<(Rgb Colour, Pattern Pattern)> patterns = [];

    /// <summary>Writes a sheet's operators.</summary>
    public PdfContent(Sheet sheet, Utf8Text text)
    {
        this.sheet = sheet;
        this.text = text;
        Matrix();
        text.Raw(" cm\n1 j\n"u8);
        foreach (var item in sheet.Items)
        {
            Item(item);
        }
    }

    /// <summary>Opacities below 1 that are used: the resource G and its place here names each.</summary>
    public IReadOnlyList<double> Opacities => opacities;

    /// <summary>Stripes that are used: the resource P and its place here names each.</summary>
    public IReadOnlyList<(Rgb Colour, Pattern Pattern)> Patterns => patterns;

    /// <summary>Writes the matrix that leads from mm on the sheet to points on a page, without its operator.</summary>
    public static void Matrix(Utf8Text text, Sheet sheet) => text
        .Ratio(PointsPerMm * sheet.Stretch.X).Raw(" 0 0 "u8).Ratio(-PointsPerMm * sheet.Stretch.Y).Raw(" 0 "u8)
        .Length(PointsPerMm * sheet.Stretch.Y * sheet.Height);

    /// <summary>Strokes of a pattern in a field of 3 by 3 mm.</summary>
    public static IReadOnlyList<(Point2 From, Point2 To)> Stripes(Pattern pattern) => pattern switch
    {
        Pattern.Rising => [(new(-1, 1), new(1, -1)), (new(0, 3), new(3, 0)), (new(2, 4), new(4, 2))],
        Pattern.Falling => [(new(-1, 2), new(1, 4)), (new(0, 0), new(3, 3)), (new(2, -1), new(4, 1))],
        Pattern.Dots => [(new(0.75, 0.75), new(0.75, 0.75)), (new(2.25, 2.25), new(2.25, 2.25))],
        Pattern.Upright => [(new(1.5, 0), new(1.5, 3))],
        Pattern.Level => [(new(0, 1.5), new(3, 1.5))],
        _ => [(new(0, 0), new(3, 3)), (new(0, 3), new(3, 0))],
    };

    /// <summary>Writes a colour's three shares.</summary>
    public static Utf8Text Colour(Utf8Text text, Rgb colour) =>
        text.Thousandths(colour.R / 255.0).Raw(" "u8).Thousandths(colour.G / 255.0).Raw(" "u8).Thousandths(colour.B / 255.0);

    private void Matrix() => Matrix(text, sheet);

    private void Item(SheetItem item)
    {
        switch (item)
        {
            case SheetPath path:
                Shape(path.Pen, path.Fill, () => Path(path));
                break;
            case SheetCircle circle:
                Shape(circle.Pen, circle.Fill, () => Circle(circle.Middle, circle.Radius));
                break;
            case SheetText words:
                Words(words);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(item), item.GetType().Name);
        }
    }

    // What changes the graphics state for more than this shape (opacity, dashes) is put back.
    private void Shape(Pen? pen, Fill? fill, Action outline)
    {
        if (pen is null && fill is null)
        {
            return;
        }

        text.Raw("q "u8);
        if (fill is not null)
        {
            FillColour(fill);
        }

        if (pen is not null)
        {
            Colour(text, pen.Colour).Raw(" RG "u8).Thousandths(pen.Width).Raw(pen.Dashes.Count > 0 ? " w 0 J ["u8 : " w 1 J"u8);
            for (int i = 0; i < pen.Dashes.Count; i++)
            {
                text.Raw(i == 0 ? ""u8 : " "u8).Thousandths(pen.Dashes[i]);
            }

            text.Raw(pen.Dashes.Count > 0 ? "] 0 d "u8 : " "u8);
        }

        outline();
        text.Raw((pen, fill) switch { (null, _) => " f Q\n"u8, (_, null) => " S Q\n"u8, _ => " B Q\n"u8 });
    }

    private void FillColour(Fill fill)
    {
        if (fill.Opacity < 1)
        {
            text.Raw("/G"u8).Whole(PlaceOf(opacities, fill.Opacity)).Raw(" gs "u8);
        }

        if (fill.Pattern == Pattern.Plain)
        {
            Colour(text, fill.Colour).Raw(" rg "u8);
        }
        else
        {
            text.Raw("/Pattern cs /P"u8).Whole(PlaceOf(patterns, (fill.Colour, fill.Pattern))).Raw(" scn "u8);
        }
    }

    private static int PlaceOf<T>(List<T> known, T one)
    {
        int at = known.IndexOf(one);
        if (at < 0)
        {
            known.Add(one);
            at = known.Count - 1;
        }

        return at;
    }

    private void Path(SheetPath path)
    {
        for (int i = 0; i < path.Points.Count; i++)
        {
            Place(path.Points[i]);
            text.Raw(i == 0 ? " m "u8 : " l "u8);
        }

        text.Raw(path.Closed ? "h"u8 : ""u8);
    }

    private void Circle(Point2 middle, double radius)
    {
        double k = Quarter * radius;
        Point2 At(double x, double y) => middle + new Point2(x, y);
        Place(At(radius, 0));
        text.Raw(" m "u8);
        Curve(At(radius, k), At(k, radius), At(0, radius));
        Curve(At(-k, radius), At(-radius, k), At(-radius, 0));
        Curve(At(-radius, -k), At(-k, -radius), At(0, -radius));
        Curve(At(k, -radius), At(radius, -k), At(radius, 0));
        text.Raw("h"u8);
    }

    private void Curve(Point2 a, Point2 b, Point2 c)
    {
        Place(a);
        text.Raw(" "u8);
        Place(b);
        text.Raw(" "u8);
        Place(c);
        text.Raw(" c "u8);
    }

    private void Words(SheetText words)
    {
        byte[] letters = PdfLetters.Of(words.Text);
        double length = PdfLetters.Length(letters, words.Style);
        var (sin, cos) = Math.SinCos(words.Angle * Math.PI / 180);
        var at = words.At - (new Point2(cos, sin) * words.Anchor switch { TextAnchor.Middle => length / 2, TextAnchor.End => length, _ => 0 });
        text.Raw("BT "u8);
        Colour(text, words.Style.Colour).Raw(words.Style.Bold ? " rg /F2 "u8 : " rg /F1 "u8).Thousandths(words.Style.Size).Raw(" Tf "u8);
        text.Length(cos).Raw(" "u8).Length(sin).Raw(" "u8).Length(sin).Raw(" "u8).Length(-cos).Raw(" "u8);
        Place(at);
        text.Raw(" Tm <"u8).Raw(System.Text.Encoding.ASCII.GetBytes(Convert.ToHexString(letters))).Raw("> Tj ET\n"u8);
    }

    private void Place(Point2 at) => text.Thousandths(at.X).Raw(" "u8).Thousandths(at.Y);
}
