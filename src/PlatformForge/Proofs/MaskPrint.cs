using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;

namespace PlatformForge.Proofs;

/// <summary>
/// A mask as a thin print: its slot right through, grooves where its stretch begins and ends, its mark. It lies on the bed as it
/// lies on the platform, seen from above.
/// </summary>
internal static class MaskPrint
{
    // Width of a groove, mm, as that of footprints, and height that is above everything.
    private const double Groove = 0.6, Above = 1;

    public static (IReadOnlyList<ColumnBlock> Blocks, IReadOnlyList<ProofFigure> Figures, IReadOnlyList<string> Engraved) Made(
        MaskPiece piece, string mark, ProofSpec spec, PrinterSpec printer)
    {
        double thick = spec.Masks, floor = thick - Math.Max(printer.Layer, thick / 3);
        var (low, high) = piece.Box();
        List<ColumnBlock> blocks = [Shape.Added(Counter(piece.Outline), 0, thick)];
        blocks.AddRange(piece.Slot is { } slot ? [Shape.Taken(Counter(slot), -Above, thick + Above)] : Array.Empty<ColumnBlock>());
        blocks.AddRange(piece.Ends.Select(end => Shape.Taken(Across(end.From, end.To), floor, thick + Above)));
        var (middle, along, room) = piece.Words;
        blocks.AddRange(Lettering.Cut([mark], room * -0.5, room * 0.5, thick, printer).Select(stroke => stroke with
        {
            Outline = Array.ConvertAll(stroke.Outline, p => middle + (along * p.X) + (along.Left * p.Y)),
            Lower = new(floor),
        }));
        List<ProofFigure> figures = [new("thickness", thick), new("length", high.X - low.X), new("width", high.Y - low.Y)];
        figures.AddRange(piece.SlotWidth is { } width ? [new("slot, at its middle", width)] : Array.Empty<ProofFigure>());
        return (blocks, figures, Lettering.Kept([mark], room, printer));
    }

    private static Point2[] Counter(IReadOnlyList<Point2> ring) => ConvexRing.Area([.. ring]) > 0 ? [.. ring] : ConvexRing.Reversed([.. ring]);

    private static Point2[] Across(Point2 from, Point2 to)
    {
        // Beyond both edges, so that none of its sides lies along one.
        var along = (to - from) * (1 / (to - from).Length);
        var (first, last, aside) = (from - (along * Above), to + (along * Above), along.Left * (Groove / 2));
        return [first - aside, last - aside, last + aside, first + aside];
    }
}
