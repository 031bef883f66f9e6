using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies.Trestles;

/// <summary>
/// Bents under a deck: posts from the baseboard, a cap across them and bearers along them, both right under the deck, so that printed deck down each part
/// stands on the one before. What lies between the posts of a bent (braces, webs) is in <see cref="BraceBlocks"/>, what braces
/// them along the platform in <see cref="LongitudinalBlocks"/>, boarding in <see cref="BoardBlocks"/>.
/// </summary>
internal static class TrestleBlocks
{
    public static void Add(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        if (chart.Plan.Trestle is not { } trestle)
        {
            return;
        }

        var spec = chart.Plan.Spec.Trestle!;
        var (a, b) = (Math.Max(from, trestle.Stretch.From), Math.Min(to, trestle.Stretch.To));
        BoardBlocks.Add(chart, top, a, b, blocks);
        foreach (var row in trestle.Rows)
        {
            Hang(chart, top, row, (a, b), spec.Bearer, blocks);
        }

        foreach (var bent in trestle.Bents.Where(t => t.To > a && t.From < b))
        {
            BraceBlocks.Add(chart, top, bent, (a, b), blocks);
            var within = (Math.Max(a, bent.From), Math.Min(b, bent.To));
            PostRow across = new(trestle.Rows[0].Near, trestle.Rows[^1].Far);
            Hang(chart, top, across, within, spec.Cap, blocks);
            Stand(chart, top, across, within, spec.Sill, blocks);
            foreach (var row in trestle.Rows)
            {
                Hang(chart, top, row, within, null, blocks);
                Pad(chart, top, row, bent, (a, b), blocks);
            }
        }

        LongitudinalBlocks.Add(chart, a, b, blocks);
    }

    /// <summary>What a trestle shows.</summary>
    public static Paint PaintOf(TrestleSpec spec) => spec.Kind == TrestleKind.Timber ? Paint.Timber : Paint.Concrete;

    /// <summary>Hangs a strip a depth below the deck, or, without one, stands it on the baseboard; it reaches half into the deck, so that they are
    /// one.</summary>
    internal static void Hang(FacetedPlan chart, TopSurface top, PostRow strip, (double From, double To) along, double? depth, List<ColumnBlock> blocks)
    {
        double deck = chart.Plan.Spec.Deck.Thickness;
        foreach (var piece in top.Cover(strip.Near, strip.Far, along.From, along.To))
        {
            var foot = depth is { } d ? piece.Top.Raised(-deck - d) : Layer.Baseboard;
            blocks.Add(Layer.Added(piece.Ring, foot, piece.Top.Raised(-deck / 2), PaintOf(chart.Plan.Spec.Trestle!)));
        }
    }

    // A strip on the baseboard, so high.
    private static void Stand(FacetedPlan chart, TopSurface top, PostRow strip, (double From, double To) along, double height, List<ColumnBlock> blocks)
    {
        if (height > 0)
        {
            blocks.AddRange(top.Cover(strip.Near, strip.Far, along.From, along.To)
                .Select(p => Layer.Added(p.Ring, Layer.Baseboard, new(height), PaintOf(chart.Plan.Spec.Trestle!))));
        }
    }

    /// <summary>Area of sills between posts and of pads round their feet, mm², which look up and are no part of a walking surface.</summary>
    public static double Ledges(FacetedPlan chart, double from, double to)
    {
        if (chart.Plan is not { Trestle: { } trestle, Spec.Trestle: { } spec })
        {
            return 0;
        }

        double area = 0;
        foreach (var bent in trestle.Bents.Where(t => t.To > from && t.From < to))
        {
            double at = bent.Middle, posts = trestle.Rows.Sum(r => r.Far.At(at) - r.Near.At(at));

            // Pads of the outer rows stand out to one side alone.
            double pads = spec.Pad > 0 ? posts + (2 * (trestle.Rows.Count - 1) * spec.Pad) : posts;
            area += spec.Sill > 0 ? (trestle.Rows[^1].Far.At(at) - trestle.Rows[0].Near.At(at) - posts) * spec.Post : 0;
            area += spec.Pad > 0 ? (pads * (spec.Post + (2 * spec.Pad))) - (posts * spec.Post) : 0;
        }

        return area;
    }

    // Round the foot of a post, but not before the faces that are held against vehicles, nor beyond the section.
    private static void Pad(FacetedPlan chart, TopSurface top, PostRow row, PlannedBent bent, (double From, double To) room, List<ColumnBlock> blocks)
    {
        var spec = chart.Plan.Spec.Trestle!;
        if (spec.Pad > 0)
        {
            var rows = chart.Plan.Trestle!.Rows;
            PostRow wide = new(row == rows[0] ? row.Near : row.Near.Shifted(-spec.Pad), row == rows[^1] ? row.Far : row.Far.Shifted(spec.Pad));
            double along = spec.Pad * (bent.To - bent.From) / spec.Post;
            Stand(chart, top, wide, (Math.Max(room.From, bent.From - along), Math.Min(room.To, bent.To + along)), spec.PadHeight, blocks);
        }
    }
}
