using PlatformForge.Platforms;

namespace PlatformForge.Solids.Bodies;

/// <summary>
/// Joints of a coping on its front edge: each groove of its upper side goes on over the nosing and down to the underside, as deep as it is on top, so that slabs and
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
    public static void CutOwn(FacetedPlan chart, (FacePlan Face, FacetedPlan Chart) own, double[] span, (double From, double To) stretch, List<ColumnBlock> blocks)
    {
        var (front, coping) = (own.Face.CopingFront, chart.Plan.Spec.Coping);
        var ring = own.Chart.Ring(front.Shifted(-Overshoot), front.Shifted(Depth(coping)), span);
        FarJointBlocks.Cut(chart, ring, stretch.From, stretch.To, coping.Thickness, blocks);
    }

    // How far in mm a joint reaches out of the coping, so that no two boundaries coincide.
    private const double Overshoot = 0.5;
}
