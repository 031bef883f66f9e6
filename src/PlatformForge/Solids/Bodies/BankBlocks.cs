using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Walls;

namespace PlatformForge.Solids.Bodies;

/// <summary>
/// A bank behind the deck: a shell under a sloping face, from within the deck's edge to the ground and plumb on to the baseboard, with webs
/// under it where ribs and end walls are. Facet by facet one plane, or two where edge and foot are not parallel.
/// </summary>
internal static class BankBlocks
{
    // Share of the deck's thickness, from its top, at which the shell begins within it, and to which it reaches.
    private const double Rooted = 0.75, Reached = 0.5;

    // A strip narrower than this, mm, is none.
    private const double Narrow = 1e-3;

    public static void Add(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        if (chart.Plan.Bank is not { IsApart: false } bank)
        {
            return;
        }

        var plan = chart.Plan;
        double deck = plan.Spec.Deck.Thickness, root = bank.Thickness - (bank.Slope * deck * Rooted);
        PlanLine heel = root > Narrow ? bank.Edge.Shifted(-root) : bank.Edge;
        foreach (var (a, b) in Facets(chart, from, to))
        {
            var along = top.Along((a + b) / 2);
            foreach (var (slope, half) in Faces(chart, bank, a, b))
            {
                Strip(chart, heel, bank.Edge, a, b, half, slope.Raised(-bank.Depth), along.Raised(-deck * Reached), Paint.Turf, blocks);
                Strip(chart, bank.Edge, Inner(bank, bank.Thickness), a, b, half, slope.Raised(-bank.Depth), slope, Paint.Turf, blocks);
                Strip(chart, Inner(bank, bank.Thickness), bank.Foot, a, b, half, Layer.Baseboard, slope, Paint.Turf, blocks);
            }
        }

        BankReturnBlocks.Add(bank, from, to, blocks);
        foreach (var rib in plan.Ribs.Where(r => r.Kind != RibKind.Longitudinal))
        {
            var shown = rib.Kind == RibKind.EndWall ? Paint.Turf : Paint.Wall;
            Web(chart, top, Math.Max(from, rib.From), Math.Min(to, rib.To), blocks, rib.Depth, shown);
        }

        var (startToe, endToe) = WallBlocks.Toes(plan);
        Web(chart, top, from, Math.Min(to, startToe), blocks, shown: Paint.Turf);
        Web(chart, top, Math.Max(from, endToe), to, blocks, shown: Paint.Turf);
    }

    /// <summary>What fills the hollow under a bank from the baseboard, or from a depth below the deck's underside, between two chainages.</summary>
    public static void Web(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks, double? depth = null,
        Paint shown = Paint.Wall)
    {
        if (from >= to || chart.Plan.Bank is not { IsApart: false } bank)
        {
            return;
        }

        double deck = chart.Plan.Spec.Deck.Thickness;
        foreach (var (a, b) in Facets(chart, from, to))
        {
            var foot = depth is { } d ? top.Along((a + b) / 2).Raised(-deck - d) : Layer.Baseboard;
            foreach (var (slope, half) in Faces(chart, bank, a, b))
            {
                Strip(chart, bank.Edge, Inner(bank, bank.Thickness), a, b, half, foot, slope.Raised(-bank.Depth / 2), shown, blocks);
            }
        }
    }

    /// <summary>Takes away what a low bank's shell would put under the baseboard, or one whose lines across turn: along those the face's planes are
    /// not parallel to the line at
    /// which the shell's inner side meets the baseboard.</summary>
    public static void Remove(FacetedPlan chart, double from, double to, List<ColumnBlock> blocks)
    {
        if (chart.Plan.Bank is { IsApart: false } bank
            && (chart.Plan.Body.Across is not null || chart.Chainages(from, to).Any(s => bank.Foot.At(s) - bank.Edge.At(s) < bank.Thickness)))
        {
            var ring = chart.Ring(bank.Edge.Shifted(-bank.Thickness), bank.Foot.Shifted(1), chart.Chainages(from, to));
            blocks.Add(Layer.Removed(ring, new(-bank.Depth - Layer.Above), Layer.Baseboard, Paint.Wall));
        }
    }

    /// <summary>A bank that is a print of its own, between two chainages: solid from the baseboard to its face, so that nothing of it hangs however
    /// flat it is.</summary>
    public static IReadOnlyList<ColumnBlock> Alone(FacetedPlan chart, double from, double to)
    {
        var blocks = new List<ColumnBlock>();
        if (chart.Plan.Bank is { IsApart: true } bank)
        {
            foreach (var (a, b) in Facets(chart, from, to))
            {
                foreach (var (slope, half) in Faces(chart, bank, a, b))
                {
                    Strip(chart, bank.Edge, bank.Foot, a, b, half, Layer.Baseboard, slope, Paint.Turf, blocks);
                }
            }

            BankReturnBlocks.Add(bank, from, to, blocks);
        }

        return blocks;
    }

    private static IEnumerable<(double A, double B)> Facets(FacetedPlan chart, double from, double to)
    {
        double[] ends = from < to ? chart.Chainages(from, to) : [];
        return ends.Zip(ends.Skip(1));
    }

    // A line of the shell a distance inside its foot, nowhere before the deck's edge.
    private static PlanLine Inner(PlanBank bank, double by) =>
        new(bank.Foot.Stations, [.. bank.Foot.Reach.Zip(bank.Edge.Reach, (f, e) => Math.Max(e, f - by))]);

    // The planes of a bank's face over a part of a facet: one, or one on either side of the diagonal of the whole facet from the edge's start
    // to the foot's end, so that webs and sections have the planes and the diagonal of the shell.
    private static IEnumerable<(HeightPlane Slope, Half Half)> Faces(FacetedPlan chart, PlanBank bank, double from, double to)
    {
        int facet = chart.FacetAt((from + to) / 2);
        double a = chart.Stations[facet], b = chart.Stations[facet + 1];
        Point3 Top(double s) => chart.On(bank.Edge, s) is var p ? new(p.X, p.Y, chart.Plan.Surface.At((a + b) / 2).At(p)) : default;
        Point3 Foot(double s) => chart.On(bank.Foot, s) is var p ? new(p.X, p.Y, bank.Ground) : default;
        Point3 top0 = Top(a), top1 = Top(b), foot0 = Foot(a), foot1 = Foot(b);
        var slope = HeightPlane.Through(top0, top1, foot1);
        if (Math.Abs(slope.At(new(foot0.X, foot0.Y)) - foot0.Z) < TopSurface.PlaneAgreement)
        {
            yield return (slope, default);
            yield break;
        }

        Point2 upper = new(top0.X, top0.Y), lower = new(foot1.X, foot1.Y), behind = new(foot0.X, foot0.Y);
        bool left = Point2.Cross(lower - upper, behind - upper) > 0;
        yield return (slope, new(true, left ? lower : upper, left ? upper : lower));
        yield return (HeightPlane.Through(top0, foot1, foot0), new(true, left ? upper : lower, left ? lower : upper));
    }

    private static void Strip(FacetedPlan chart, PlanLine near, PlanLine far, double a, double b, Half half, HeightPlane lower, HeightPlane upper, Paint paint,
        List<ColumnBlock> blocks)
    {
        if (far.At(a) - near.At(a) < Narrow && far.At(b) - near.At(b) < Narrow)
        {
            return;
        }

        var ring = half.Of(chart.Ring(near, far, [a, b]));
        if (ring.Length > 2 && ConvexRing.Area(ring) > Narrow * Narrow)
        {
            blocks.Add(Layer.Added(ring, lower, upper, paint));
        }
    }

    // The half of a plan to the left of a line; all of it where nothing is parted.
    private readonly record struct Half(bool IsParted, Point2 From, Point2 To)
    {
        public Point2[] Of(Point2[] ring) => IsParted ? ConvexRing.LeftOf(ring, From, To) : ring;
    }
}
