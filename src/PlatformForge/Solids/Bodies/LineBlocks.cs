using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Walls;

namespace PlatformForge.Solids.Bodies;

/// <summary>Lines and strips that are prints of their own: what fills their grooves and rebates.</summary>
public static class LineBlocks
{
    /// <summary>What a line or strip of a platform shows: a retaining wall, what the front is made of.</summary>
    public static Paint PaintOf(LineMake made, PlatformSpec spec) => made.Name switch
    {
        LineMake.Tactile => Paint.Tactile,
        LineMake.Retaining => spec.Facing is { } facing ? FacingRelief.PaintOf(facing.Front) : Paint.Wall,
        LineMake.Kerb => Paint.Concrete,
        LineMake.Bank => Paint.Turf,
        _ => Paint.Line,
    };

    /// <summary>Area of grooves and rebates from above between two chainages, mm².</summary>
    internal static double Area(PlatformPlan plan, double from, double to)
    {
        double area = 0;
        foreach (var line in plan.Body.Lines.Where(l => l.GrooveDepth > 0))
        {
            double a = Math.Max(from, line.From), b = Math.Min(to, line.To), middle = (a + b) / 2;
            area += Math.Max(0, b - a) * (line.Far.At(middle) - line.Near.At(middle));
        }

        return area;
    }

    /// <summary>
    /// The blocks of a line between two chainages, in place: an inlay fills its groove from floor to deck, exactly; a strip keeps its fit from the sides and
    /// from the ends that are the line's own, and stands on the floor.
    /// </summary>
    /// <param name="chart">The plan.</param>
    /// <param name="line">The line.</param>
    /// <param name="from">Lower end, mm: the section's.</param>
    /// <param name="to">Upper end, mm.</param>
    /// <returns>The blocks; none where the line is not between the chainages.</returns>
    public static IReadOnlyList<ColumnBlock> Of(FacetedPlan chart, LineBand line, double from, double to)
    {
        var (top, made) = (new TopSurface(chart), line.Made);
        double a = Math.Max(from, line.From + made.Fit), b = Math.Min(to, line.To - made.Fit);
        if (b - a <= LeastLength)
        {
            return [];
        }

        var blocks = new List<ColumnBlock>();
        PlanLine near = made.Fit > 0 ? line.Near.Shifted(made.Fit) : line.Near, far = made.Fit > 0 ? line.Far.Shifted(-made.Fit) : line.Far;
        if (made.Wall is { } wall)
        {
            Wall(chart, made, (near, far, a, b), blocks);
            return blocks;
        }

        var shown = PaintOf(made, chart.Plan.Spec);
        foreach (var piece in top.Cover(near, far, a, b))
        {
            blocks.Add(Layer.Added(piece.Ring, piece.Top.Raised(-made.Depth), piece.Top.Raised(made.FlatRise), shown));
        }

        if (made.IsPierced)
        {
            blocks.AddRange(Posts(chart, top, line, a, b));
        }

        blocks.AddRange(made.Pattern switch
        {
            StripPattern.Studs => Studs(chart, top, made, near, far, a, b),
            StripPattern.Ribs => Ribs((chart.Plan.Spec, top), made, near, far, a, b),
            _ => [],
        });
        return blocks;
    }

    // Plinth, wall and coping, one over the other; what is faced stands back by what is laid on it.
    private static void Wall(FacetedPlan chart, LineMake made, (PlanLine Near, PlanLine Far, double From, double To) at, List<ColumnBlock> blocks)
    {
        var (top, wall, facing) = (new TopSurface(chart), made.Wall!, chart.Plan.Spec.Facing);
        var paint = PaintOf(made, chart.Plan.Spec);
        void Course(double back, double low, double high, Paint paint, bool isFaced = false, bool isCoping = false)
        {
            foreach (var piece in top.Cover(back > 0 ? at.Near.Shifted(back) : at.Near, at.Far, at.From, at.To))
            {
                // A coping that runs on level over a ramp, and the wall under it, end at heights over the baseboard.
                HeightPlane Over(double rise, bool isLevel) => isLevel && wall.LevelTop is { } level ? new(level + rise - made.Rise) : piece.Top.Raised(rise);
                var block = Layer.Added(piece.Ring, Over(low, isCoping), Over(high, isCoping || isFaced), paint);
                blocks.Add(isFaced ? block with { WallFaces = WallNames.OfRetaining(chart, piece) } : block);
            }
        }

        Course(wall.Oversail + (facing?.FaceDepth(false) ?? 0), -made.Depth / 2, made.Rise - (wall.Coping / 2), paint, isFaced: true);
        Course(0, -made.Depth, wall.Plinth, paint);
        Course(0, made.Rise - wall.Coping, made.Rise, Paint.Coping, isCoping: true);
    }

    // What posts take out of a kerb, as wide as their holes in the deck.
    private static IEnumerable<ColumnBlock> Posts(FacetedPlan chart, TopSurface top, LineBand line, double from, double to)
    {
        foreach (var prism in chart.Plan.Features.SelectMany(f => f.Prisms).Where(p => p.Act == PrismAct.Remove))
        {
            double s = prism.Middle.Chainage, t = prism.Middle.Reach;
            if (s > from && s < to && t > line.Near.At(s) && t < line.Far.At(s))
            {
                var plane = top.Along(s);
                double low = -line.Made.Depth - Layer.Above, high = line.Made.Rise + Layer.Above;
                yield return Layer.Removed(prism.Ring, plane.Raised(low), plane.Raised(high), PaintOf(line.Made, chart.Plan.Spec));
            }
        }
    }

    // Shorter ones are crumbs, mm.
    private const double LeastLength = 0.8;

    // How deep studs and ribs reach into the strip, mm, so that they are one with it.
    private const double Rooted = 0.1;

    // Rows of studs square to the edge, evenly between the strip's ends and sides.
    private static IEnumerable<ColumnBlock> Studs(FacetedPlan chart, TopSurface top, LineMake made, PlanLine near, PlanLine far, double a, double b)
    {
        int rows = Count(b - a, made), across = Count(Width(near, far, (a + b) / 2), made);
        for (int i = 0; i < rows; i++)
        {
            double s = a + ((b - a) * (i + 0.5) / rows);
            var (plane, ahead) = (top.Along(s), chart.Forward(s));
            for (int k = 0; k < across; k++)
            {
                Point2 n = chart.On(near, s), f = chart.On(far, s), middle = n + ((f - n) * ((k + 0.5) / across));
                Point2 x = ahead * (made.Stud / 2), y = x.Left;
                yield return Layer.Added([middle - x - y, middle + x - y, middle + x + y, middle - x + y], plane.Raised(-Rooted), plane.Raised(made.Rise),
                    PaintOf(made, chart.Plan.Spec));
            }
        }
    }

    private static IEnumerable<ColumnBlock> Ribs((PlatformSpec Spec, TopSurface Top) on, LineMake made, PlanLine near, PlanLine far, double a, double b)
    {
        int count = Count(Width(near, far, (a + b) / 2), made);
        double end = (made.Pitch - made.Stud) / 2;
        for (int k = 0; k < count; k++)
        {
            double share = (k + 0.5) / count;
            PlanLine middle = new(near.Stations, [.. near.Reach.Zip(far.Reach, (n, f) => n + ((f - n) * share))]);
            foreach (var piece in on.Top.Cover(middle.Shifted(-made.Stud / 2), middle.Shifted(made.Stud / 2), a + end, b - end))
            {
                yield return Layer.Added(piece.Ring, piece.Top.Raised(-Rooted), piece.Top.Raised(made.Rise), PaintOf(made, on.Spec));
            }
        }
    }

    private static double Width(PlanLine near, PlanLine far, double at) => far.At(at) - near.At(at);

    private static int Count(double length, LineMake made) => Math.Max(1, (int)Math.Floor(length / made.Pitch));
}
