using PlatformForge.Geometry;
using PlatformForge.Platforms;

namespace PlatformForge.Solids.Bodies;

/// <summary>
/// Joints of a coping on its front edge: each groove of its upper side goes on over the nosing and down to the underside, as deep as it is on top,
/// so that slabs and
/// bricks are seen from beside the track. They go inward: nothing comes nearer to a vehicle.
/// </summary>
internal static class CopingFronts
{
    /// <summary>How far behind the front a joint on it goes, mm.</summary>
    public static double Depth(CopingSpec coping) => coping.JointWidth > 0 ? Math.Min(coping.JointDepth, coping.Width / 2) : 0;

    /// <summary>Middles of the joints that a face shows on its front, mm of its chainage: between slabs, and between bricks.</summary>
    public static IEnumerable<double> Of(FacePlan face, CopingSpec coping) => Depth(coping) <= 0 ? []
        : coping.Kind != CopingKind.Bricks ? face.CopingJoints
        : face.CopingJoints.Concat(CopingGrooves.Of(face, coping).Select(g => (g.From + g.To) / 2)).Order();

    /// <summary>Takes a joint out of the front of a stretch along lines across.</summary>
    /// <param name="top">The walking surface.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="span">Chainages between which it lies, mm.</param>
    /// <param name="blocks">Takes the blocks.</param>
    public static void Cut(TopSurface top, PlatformPlan plan, (double From, double To) span, List<ColumnBlock> blocks)
    {
        var front = plan.CopingFront;
        foreach (var piece in top.Cover(front.Shifted(-Overshoot), front.Shifted(Depth(plan.Spec.Coping)), span.From, span.To))
        {
            blocks.Add(Layer.Removed(piece.Ring, piece.Top.Raised(-plan.Spec.Coping.Thickness), piece.Top.Raised(Layer.Above), CopingGrooves.PaintOf(plan)));
        }
    }

    /// <summary>Takes a joint out of the front of an island's face, square to its own edge.</summary>
    public static void CutOwn(FacetedPlan chart, (FacePlan Face, FacetedPlan Chart) own, double[] span, (double From, double To) stretch,
        List<ColumnBlock> blocks)
    {
        var (front, coping) = (own.Face.CopingFront, chart.Plan.Spec.Coping);
        var ring = own.Chart.Ring(front.Shifted(-Overshoot), front.Shifted(Depth(coping)), span);
        FarJointBlocks.Cut(chart, ring, stretch.From, stretch.To, coping.Thickness, blocks);
    }

    /// <summary>Rings in plan of joints on the fronts: on a platform with a back those that a stretch's ends halve; on an island all, which are askew to
    /// its ends.</summary>
    public static IEnumerable<Point2[]> Rings(FacetedPlan chart, double from, double to)
    {
        var (plan, coping) = (chart.Plan, chart.Plan.Spec.Coping);
        double half = coping.JointWidth / 2;
        foreach (var face in Depth(coping) > 0 ? plan.Faces : [])
        {
            var own = plan.Body.Across is null ? null : FacetedPlan.OfFace(plan, face);
            foreach (double joint in face.CopingJoints)
            {
                bool along = face == plan.First && FarJointBlocks.AlongCut(plan, joint, from, to);
                bool ends = Math.Min(Math.Abs(joint - from), Math.Abs(joint - to)) < half;
                if (own is null && !ends)
                {
                    continue;
                }

                var (on, line) = own is null || along ? (chart, plan.CopingFront) : (own, face.CopingFront);
                double[] places = on.Chainages(joint - half, joint + half);
                for (int i = 0; i + 1 < places.Length; i++)
                {
                    yield return on.Ring(line.Shifted(-Overshoot), line.Shifted(Depth(coping)), [places[i], places[i + 1]]);
                }
            }
        }
    }

    // How far in mm a joint reaches out of the coping, so that no two boundaries coincide.
    private const double Overshoot = 0.5;
}
