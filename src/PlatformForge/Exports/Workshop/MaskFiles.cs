using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Dxf;
using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Proofs;
using static System.FormattableString;

namespace PlatformForge.Exports.Workshop;

/// <summary>Masks for coping and white line: one SVG and one DXF a platform, the pieces under one another at true size.</summary>
internal static class MaskFiles
{
    private const string Cut = "CUT";
    private const string Mark = "MARK";
    private const double Gap = 12;
    private const double Rim = 10;
    private const double Head = 24;
    private const double LetterHeight = 3;
    private const double Bar = 100;

    private static readonly DxfLayer[] Layers = [new(Cut, 1), new(Mark, 5)];
    private static readonly Pen CutPen = new(0.1, new(0xC0, 0x1A, 0x1A));
    private static readonly Pen MarkPen = new(0.1, new(0x1A, 0x3A, 0xB0));
    private static readonly TextStyle MarkText = new(LetterHeight, new(0x1A, 0x3A, 0xB0));

    /// <summary>What is cut, piece by piece.</summary>
    public static WorkTable Table(IReadOnlyList<MaskPiece> pieces) => new(
        "masks", "Masks",
        [new("mask", "mask"), new("section", "section"), new("long", "long_mm"), new("wide", "wide_mm"), new("slot, at its middle", "slot_mm")],
        [
            .. pieces.Select(p => (IReadOnlyList<TableCell>)
                [
                    p.Name, TableCell.Of(p.Section, 0), TableCell.Of(p.Box().High.X - p.Box().Low.X, 1), TableCell.Of(p.Box().High.Y - p.Box().Low.Y, 1),
                    TableCell.Of(p.SlotWidth, 2),
                ]),
        ],
        "the plan's lines laid flat on each section's own slope, seen from above; a stencil has 10 mm round its slot (common practice, no source)");

    public static byte[] Svg(Dossier dossier, PlatformDossier platform, IReadOnlyList<MaskPiece> pieces)
    {
        double width = Math.Max(pieces.Max(p => p.Box().High.X - p.Box().Low.X), Bar) + (2 * Rim), height = Head + Rim
            + pieces.Sum(p => p.Box().High.Y - p.Box().Low.Y + Gap);
        var sheet = new Sheet(width, height, Title(dossier, platform))
        {
            Description = "Masks at true size, to be cut along the red lines; the blue ones are marks.",
            HasGround = false,
        };
        sheet.Text(sheet.Title, new(Rim, 7), MarkText);
        sheet.Text("Print or cut at 100 %. The bar is 100 mm between its ticks: measure it. Cut away from yourself.", new(Rim, 12), MarkText);
        foreach (var (from, to) in BarLines(new(Rim, Head - 8)))
        {
            sheet.Line(from, to, MarkPen);
        }

        foreach (var (piece, corner) in Placed(pieces, Head))
        {
            Point2 Down(Point2 p) => new(Rim + p.X - piece.Box().Low.X, corner + piece.Box().High.Y - p.Y);
            sheet.Area(piece.Outline.Select(Down), null, CutPen);
            if (piece.Slot is { } slot)
            {
                sheet.Area(slot.Select(Down), null, CutPen);
            }

            foreach (var (from, to) in piece.Ends)
            {
                sheet.Line(Down(from), Down(to), MarkPen);
            }

            sheet.Text(Label(piece), new(Rim, corner - 1.5), MarkText);
        }

        return SvgWriter.ToBytes(sheet);
    }

    public static byte[] Dxf(Dossier dossier, PlatformDossier platform, IReadOnlyList<MaskPiece> pieces)
    {
        var entities = new List<DxfEntity>();
        foreach (var (from, to) in BarLines(new(0, Rim)))
        {
            entities.Add(new DxfLine(Mark, [from, to], false));
        }

        foreach (var (piece, corner) in Placed(pieces, Gap))
        {
            Point2 Up(Point2 p) => new(p.X - piece.Box().Low.X, p.Y - piece.Box().High.Y - corner);
            entities.Add(new DxfLine(Cut, [.. piece.Outline.Select(Up)], true));
            if (piece.Slot is { } slot)
            {
                entities.Add(new DxfLine(Cut, [.. slot.Select(Up)], true));
            }

            entities.AddRange(piece.Ends.Select(end => new DxfLine(Mark, [Up(end.From), Up(end.To)], false)));

            entities.Add(new DxfText(Mark, new(0, -corner + 1.5), LetterHeight, Label(piece)));
        }

        return DxfWriter.ToBytes(Title(dossier, platform) + ", the bar is 100 mm", Layers, entities);
    }

    private static string Title(Dossier dossier, PlatformDossier platform) => Invariant($"{dossier.Project}, {platform.Name}: masks, full size");

    private static string Label(MaskPiece piece) => Invariant($"{piece.Name}, section {piece.Section}, end at lower chainage to the left");

    private static IEnumerable<(MaskPiece Piece, double Corner)> Placed(IReadOnlyList<MaskPiece> pieces, double from)
    {
        foreach (var piece in pieces)
        {
            yield return (piece, from);
            from += piece.Box().High.Y - piece.Box().Low.Y + Gap;
        }
    }

    private static IEnumerable<(Point2 From, Point2 To)> BarLines(Point2 at)
    {
        const double Tick = 2;
        yield return (at, at + new Point2(Bar, 0));
        yield return (at - new Point2(0, Tick), at + new Point2(0, Tick));
        yield return (at + new Point2(Bar, -Tick), at + new Point2(Bar, Tick));
    }
}
