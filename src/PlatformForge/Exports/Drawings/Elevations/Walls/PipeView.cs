using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Walls;

namespace PlatformForge.Exports.Drawings.Elevations.Walls;

/// <summary>A downpipe before a wall as an elevation shows it: where it stands in plan, and its outlines, along from its middle and up from the baseboard,
/// in the order in which they are drawn, mm.</summary>
internal sealed record PipeView(Point2 Middle, double Width, IReadOnlyList<Point2[]> Outlines)
{
    /// <summary>Those before the near wall of a plan, or the far one.</summary>
    public static IReadOnlyList<PipeView> Of(PlatformPlan plan, bool isFar)
    {
        var chart = new FacetedPlan(plan);
        return [.. plan.Downpipes.Where(p => p.IsFar == isFar).Select(p => Of(new PipeFrame(chart, p)))];
    }

    private static PipeView Of(PipeFrame frame)
    {
        var (spec, under) = (frame.Spec, frame.Pipe.Under);
        return new(frame.Place(0, frame.Ground, 0), spec.Diameter,
            [Box(spec.Diameter / 2, 0, under), .. frame.Rings.Select(r => Box(r.HalfWidth, r.Low, r.High))]);

        static Point2[] Box(double half, double low, double high) => [new(-half, low), new(half, low), new(half, high), new(-half, high)];
    }
}
