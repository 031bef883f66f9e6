using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;

namespace PlatformForge.Solids.Bodies.Copings;

/// <summary>
/// Grooves between the coping slabs of an island: square to their own edge, so that they lie askew to lines across. Each is one block a facet, parted where the
/// walking surface bends. A joint of the first face that is a cut runs along the cut.
/// </summary>
internal static class FarJointBlocks
{
    // A section ends so far from its cut at most, mm, by what is trimmed off it; no two joints of a coping lie so close.
    private const double AtCut = 1 + Tolerances.GridStep;

    /// <summary>Whether a joint of the first face runs along the line across: everywhere on a platform whose lines across are square to its edge, elsewhere at
    /// cuts and ends.</summary>
    public static bool AlongCut(PlatformPlan plan, double joint, double from, double to) =>
        plan.Body.Across is null || Math.Abs(joint - from) < AtCut || Math.Abs(joint - to) < AtCut;

    public static void Remove(FacetedPlan chart, double from, double to, double overshoot, List<ColumnBlock> blocks)
    {
        var plan = chart.Plan;
        var (half, depth) = (plan.Spec.Coping.JointWidth / 2, plan.Spec.Coping.JointDepth);
        if (depth <= 0 || half <= 0)
        {
            return;
        }

        foreach (var face in plan.Body.Across is null ? [] : plan.Faces)
        {
            var own = FacetedPlan.OfFace(plan, face);
            var beyond = face.CopingFront.Shifted(-overshoot);
            foreach (double joint in face.CopingJoints.Where(j => face != plan.First || !AlongCut(plan, j, from, to)))
            {
                double[] ends = own.Chainages(joint - half, joint + half);
                for (int i = 0; i + 1 < ends.Length; i++)
                {
                    double[] span = [ends[i], ends[i + 1]];
                    Cut(chart, own.Ring(beyond, face.CopingBack, span), from, to, new(-depth), blocks);
                    CopingFronts.CutOwn(chart, (face, own), span, (from, to), blocks);
                }
            }
        }
    }

    // Down to a floor told from the walking surface.
    // A groove through a cut is halved by it, as those of the first face are; what lies beyond the section takes nothing there.
    internal static void Cut(FacetedPlan chart, Point2[] groove, double from, double to, HeightPlane floor, List<ColumnBlock> blocks)
    {
        var surface = chart.Plan.Surface;
        double[] ends = [from, .. surface.Breaks.Where(s => s > from && s < to), to];
        for (int i = 0; i + 1 < ends.Length; i++)
        {
            var ring = chart.Within(groove, ends[i], ends[i + 1]);
            if (ring.Length > 0)
            {
                var plane = surface.At((ends[i] + ends[i + 1]) / 2);
                blocks.Add(Layer.Removed(ring, plane.Plus(floor), plane.Raised(Layer.Above), CopingGrooves.PaintOf(chart.Plan)));
            }
        }
    }
}
