using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies.Copings;

/// <summary>
/// Joints of a coping on its front edge: each groove of its upper side goes on over the nosing and down the front, so that slabs and bricks are seen from
/// beside the track. They go inward: nothing comes nearer to a vehicle. They run out short of the underside, whose arris is whole, so the outline of a
/// section in plan is that of its coping: what is laid out, cut and drawn by it knows nothing of them. Their feet slope, so that deck down the arris grows
/// out over them by itself.
/// </summary>
internal static class CopingFronts
{
    /// <summary>Height of the arris that runs on under the joints, mm: one usual layer.</summary>
    public const double Arris = 0.2;

    /// <summary>Rise of a joint's foot to its depth: 50 degrees, past the 45 that a print holds by itself.</summary>
    public const double Rise = 1.2;

    // What is left of a joint's height at its ground, mm: half a usual layer.
    private const double LeastGround = 0.1;

    // How far in mm a joint reaches out of the coping, so that no two boundaries coincide.
    private const double Overshoot = 0.5;

    /// <summary>How far behind the front a joint on it goes, mm: as deep as on top, and less where the coping is thin; 0 where it is too thin for
    /// any.</summary>
    public static double Depth(CopingSpec coping)
    {
        double room = (Low(coping) - coping.JointDepth - LeastGround) / Rise;
        return coping.JointWidth > 0 && room > LeastGround ? Math.Min(room, Math.Min(coping.JointDepth, coping.Width / 2)) : 0;
    }

    /// <summary>The thickness over which a coping has joints on its front, mm.</summary>
    public static double LeastThickness(CopingSpec coping) => coping.JointDepth + LeastGround + (Rise * LeastGround) + Arris;

    /// <summary>How far under the walking surface they end on the front, mm.</summary>
    public static double Low(CopingSpec coping) => coping.Thickness - Arris;

    /// <summary>Middles of the joints that a face shows on its front, mm of its chainage: between slabs, and between bricks.</summary>
    public static IEnumerable<double> Of(FacePlan face, CopingSpec coping) => Depth(coping) <= 0 ? []
        : coping.Kind != CopingKind.Bricks ? face.CopingJoints
        : face.CopingJoints.Concat(CopingGrooves.Of(face, coping).Select(g => (g.From + g.To) / 2)).Order();

    /// <summary>Takes a joint out of the front of a stretch along lines across.</summary>
    /// <param name="chart">The plan.</param>
    /// <param name="top">Its walking surface.</param>
    /// <param name="joint">Chainages from which to which the whole joint goes, mm.</param>
    /// <param name="stretch">Those of the stretch, which may halve it.</param>
    /// <param name="blocks">Takes the blocks.</param>
    public static void Cut(FacetedPlan chart, TopSurface top, (double From, double To) joint, (double From, double To) stretch, List<ColumnBlock> blocks)
    {
        var (front, coping) = (chart.Plan.CopingFront, chart.Plan.Spec.Coping);
        if (Depth(coping) <= 0)
        {
            return;
        }

        var foot = Foot(chart, front, joint, coping);
        var (from, to) = Beyond(chart.Plan, stretch);
        foreach (var piece in top.Cover(front.Shifted(-Overshoot), front.Shifted(Depth(coping)), Math.Max(from, joint.From), Math.Min(to, joint.To)))
        {
            blocks.Add(Layer.Removed(piece.Ring, piece.Top.Plus(foot), piece.Top.Raised(Layer.Above), CopingGrooves.PaintOf(chart.Plan)));
        }
    }

    /// <summary>Takes a joint out of the front of an island's face, square to its own edge.</summary>
    public static void CutOwn(FacetedPlan chart, (FacePlan Face, FacetedPlan Chart) own, double[] span, (double From, double To) stretch,
        List<ColumnBlock> blocks)
    {
        var (front, coping) = (own.Face.CopingFront, chart.Plan.Spec.Coping);
        if (Depth(coping) > 0)
        {
            var ring = own.Chart.Ring(front.Shifted(-Overshoot), front.Shifted(Depth(coping)), span);
            var (from, to) = Beyond(chart.Plan, stretch);
            FarJointBlocks.Cut(chart, ring, from, to, Foot(own.Chart, front, (span[0], span[^1]), coping), blocks);
        }
    }

    // What lies beyond a stretch takes nothing there. Cut off at its end, to the step of the grid, a joint would leave a fin before that.
    private static (double From, double To) Beyond(PlatformPlan plan, (double From, double To) stretch) =>
        (Math.Max(plan.Stations[0], stretch.From - Overshoot), Math.Min(plan.Stations[^1], stretch.To + Overshoot));

    // How a joint's foot lies under the walking surface: lowest on the front.
    private static HeightPlane Foot(FacetedPlan chart, PlanLine front, (double From, double To) span, CopingSpec coping)
    {
        double deep = Depth(coping);
        Point3 Place(PlanLine line, double s, double z) => chart.On(line, s) is var p ? new(p.X, p.Y, z) : default;
        return HeightPlane.Through(Place(front, span.From, -Low(coping)), Place(front, span.To, -Low(coping)),
            Place(front.Shifted(deep), span.From, (Rise * deep) - Low(coping)));
    }
}
