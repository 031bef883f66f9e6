using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies.Walls;

/// <summary>Where a downpipe stands in the layout: along the chord of its wall, and square to it.</summary>
public sealed class PipeFrame
{
    private readonly FacetedPlan chart;
    private readonly PlanLine line;
    private readonly Point2 inward;
    private readonly double stretch;

    /// <summary>Of a downpipe of a plan.</summary>
    public PipeFrame(FacetedPlan chart, PlannedDownpipe pipe)
    {
        (this.chart, Pipe) = (chart, pipe);
        var plan = chart.Plan;
        line = pipe.IsFar ? plan.Body.FarWallFace : plan.Body.WallFace;
        stretch = plan.Spine.Stretch(pipe.Middle, line.At(pipe.Middle));
        Point2 along = chart.On(line, pipe.To) - chart.On(line, pipe.From), across = chart.CrossLine(pipe.Middle).Across * (pipe.IsFar ? -1 : 1);
        Point2 square = along.Left * (1 / along.Length);
        inward = Point2.Dot(square, across) < 0 ? square * -1 : square;
        Facing = plan.Spec.Facing!;
    }

    /// <summary>The downpipe.</summary>
    public PlannedDownpipe Pipe { get; }

    /// <summary>What is asked for.</summary>
    public DownpipeSpec Spec => Facing.Downpipes!;

    /// <summary>How far the wall stands out at each height.</summary>
    public WallProfile Profile => chart.Profile;

    /// <summary>What stands out round it, off the steps of its wall.</summary>
    public IEnumerable<PipeRing> Rings => Spec.Rings(Pipe.Under, [.. Profile.Zones.Skip(1).Select(z => z.Low)]);

    /// <summary>Depth of the ground that the wall's facing stands on behind what stands out most, mm.</summary>
    public double Ground => Spec.Projection + Facing.FaceDepth(Pipe.IsFar && !chart.Plan.Spec.IsIsland);

    /// <summary>Depth of the middle of the wall, to which a pipe reaches, mm.</summary>
    public double Wall => Ground + ((Pipe.IsFar ? ZoneBlocks.FarThickness(chart.Plan) : chart.Plan.Spec.Walls.FrontThickness) / 2);

    private FacingSpec Facing { get; }

    /// <summary>The place in the layout of a place of an outline.</summary>
    /// <param name="along">Along the wall from the pipe's middle, mm.</param>
    /// <param name="depth">Behind what stands out most, mm.</param>
    /// <param name="before">How far the part of the wall that it belongs to stands before the deepest one, mm.</param>
    public Point2 Place(double along, double depth, double before) =>
        chart.On(line, Chainage(along)) + (inward * (depth + Facing.ProfileDepth - before));

    /// <summary>An outline in the layout, counter-clockwise.</summary>
    /// <param name="outline">The outline (<see cref="PipeOutline"/>).</param>
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

    private double Chainage(double along) => Pipe.Middle + (along / stretch);

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
