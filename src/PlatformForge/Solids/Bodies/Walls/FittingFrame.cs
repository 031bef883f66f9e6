using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies.Walls;

/// <summary>Where a fitting stands in the layout: along the chord of its wall, and square to it.</summary>
public sealed class FittingFrame
{
    private readonly FacetedPlan chart;
    private readonly PlanLine line;
    private readonly Point2 inward;
    private readonly double stretch;

    /// <summary>Of a fitting of a plan's walls.</summary>
    public FittingFrame(FacetedPlan chart, WallFitting fitting)
    {
        (this.chart, Fitting) = (chart, fitting);
        var plan = chart.Plan;
        line = fitting.IsFar ? plan.Body.FarWallFace : plan.Body.WallFace;
        stretch = plan.Spine.Stretch(fitting.Middle, line.At(fitting.Middle));
        Point2 along = chart.On(line, fitting.To) - chart.On(line, fitting.From), across = chart.CrossLine(fitting.Middle).Across * (fitting.IsFar ? -1 : 1);
        Point2 square = along.Left * (1 / along.Length);
        inward = Point2.Dot(square, across) < 0 ? square * -1 : square;
        Facing = plan.Spec.Facing!;
    }

    /// <summary>The fitting.</summary>
    public WallFitting Fitting { get; }

    /// <summary>How far the wall stands out at each height.</summary>
    public WallProfile Profile => chart.Profile;

    /// <summary>Depth of the ground that the wall's facing stands on behind what stands out most, mm.</summary>
    public double Ground => Fitting.Projection + Facing.FaceDepth(Fitting.IsFar && !chart.Plan.Spec.IsIsland);

    /// <summary>Depth of the middle of the wall, to which what reaches in goes, mm.</summary>
    public double Wall => Ground + ((Fitting.IsFar ? ZoneBlocks.FarThickness(chart.Plan) : chart.Plan.Spec.Walls.FrontThickness) / 2);

    private FacingSpec Facing { get; }

    /// <summary>The place in the layout of a place of an outline.</summary>
    /// <param name="along">Along the wall from the fitting's middle, mm.</param>
    /// <param name="depth">Behind what stands out most, mm.</param>
    /// <param name="before">How far the part of the wall that it belongs to stands before the deepest one, mm.</param>
    public Point2 Place(double along, double depth, double before) =>
        chart.On(line, Chainage(along)) + (inward * (depth + Facing.ProfileDepth - before));

    /// <summary>An outline in the layout, counter-clockwise.</summary>
    /// <param name="outline">The outline (<see cref="FittingPart.Outline"/>).</param>
    /// <param name="before">How far the part of the wall that it belongs to stands before the deepest one, mm.</param>
    public Point2[] Ring(Point2[] outline, double before)
    {
        ArgumentNullException.ThrowIfNull(outline);
        var ring = new List<Point2>();
        for (int i = 0; i < outline.Length; i++)
        {
            ring.Add(Place(outline[i].X, outline[i].Y, before));
            if (i + 1 < outline.Length && outline[i].Y == outline[i + 1].Y)
            {
                // A front runs along its wall, however that bends.
                double from = Chainage(outline[i].X), to = Chainage(outline[i + 1].X), depth = outline[i].Y + Facing.ProfileDepth - before;
                ring.AddRange(chart.Stations.Where(s => s > from && s < to).Select(s => chart.On(line, s) + (inward * depth)));
            }
        }

        return Turned([.. ring]);
    }

    private double Chainage(double along) => Fitting.Middle + (along / stretch);

    private static Point2[] Turned(Point2[] ring)
    {
        double area = Enumerable.Range(0, ring.Length).Sum(i => Point2.Cross(ring[i], ring[(i + 1) % ring.Length]));
        if (area < 0)
        {
            Array.Reverse(ring);
        }

        return ring;
    }
}
