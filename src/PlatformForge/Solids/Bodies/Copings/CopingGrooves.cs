using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies.Copings;

/// <summary>Grooves within the slabs of a coping: joints of its bricks, and lines beside tooled margins. The joints between slabs are cut elsewhere.</summary>
public static class CopingGrooves
{
    /// <summary>What a coping shows.</summary>
    public static Paint PaintOf(PlatformPlan plan) => plan.Spec.Coping.Kind switch
    {
        CopingKind.Bricks => Paint.CopingBrick,
        CopingKind.Timber => Paint.Timber,
        _ => Paint.Coping,
    };

    /// <summary>All such grooves of a face: each with its ends, mm of chainage, and how far its sides lie behind the coping's front, mm.</summary>
    public static IEnumerable<CopingGroove> Of(FacePlan face, CopingSpec coping)
    {
        double[] joints = [face.Stations[0], .. face.CopingJoints, face.Stations[^1]];
        double half = coping.JointWidth / 2, margin = coping.Margin;
        for (int i = 0; i + 1 < joints.Length; i++)
        {
            double a = joints[i], b = joints[i + 1];
            if (coping.Kind == CopingKind.Bricks && half > 0 && coping.JointDepth > 0)
            {
                int bricks = Math.Max(1, (int)Math.Round((b - a) / coping.BrickPitch));
                foreach (int k in Enumerable.Range(1, bricks - 1))
                {
                    double at = a + ((b - a) * k / bricks);
                    yield return new(at - half, at + half, -Overshoot, coping.Width, coping.JointDepth);
                }
            }
            else if (margin > 0 && b - a > 2 * (margin + half) && half > 0)
            {
                double from = a + margin, to = b - margin, deep = coping.Width - margin;
                yield return new(from - half, to + half, margin - half, margin + half, coping.MarginDepth);
                yield return new(from - half, to + half, deep - half, deep + half, coping.MarginDepth);
                yield return new(from - half, from + half, margin + half, deep - half, coping.MarginDepth);
                yield return new(to - half, to + half, margin + half, deep - half, coping.MarginDepth);
            }
        }
    }

    /// <summary>Takes them out of a stretch.</summary>
    internal static void Remove(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        var (plan, coping) = (chart.Plan, chart.Plan.Spec.Coping);
        foreach (var face in plan.Faces)
        {
            // Those of an island are square to their own edge.
            var own = plan.Body.Across is null ? null : FacetedPlan.OfFace(plan, face);
            foreach (var g in Of(face, coping))
            {
                PlanLine near = face.CopingFront.Shifted(g.Near), far = face.CopingFront.Shifted(g.Far);
                if (own is not null)
                {
                    double[] ends = own.Chainages(g.From, g.To);
                    for (int i = 0; i + 1 < ends.Length; i++)
                    {
                        double[] span = [ends[i], ends[i + 1]];
                        FarJointBlocks.Cut(chart, own.Ring(near, far, span), from, to, new(-g.Depth), blocks);
                        if (g.Near < 0)
                        {
                            CopingFronts.CutOwn(chart, (face, own), span, (from, to), blocks);
                        }
                    }
                }
                else
                {
                    foreach (var piece in top.Cover(near, far, Math.Max(from, g.From), Math.Min(to, g.To)))
                    {
                        blocks.Add(Layer.Removed(piece.Ring, piece.Top.Raised(-g.Depth), piece.Top.Raised(Layer.Above), PaintOf(plan)));
                    }

                    if (g.Near < 0)
                    {
                        CopingFronts.Cut(chart, top, (g.From, g.To), (from, to), blocks);
                    }
                }
            }
        }
    }

    // How far in mm a joint reaches out of the coping, so that no two boundaries coincide.
    private const double Overshoot = 0.5;
}

/// <summary>A groove in a coping.</summary>
/// <param name="From">Chainage on its face at which it begins, mm.</param>
/// <param name="To">Chainage at which it ends, mm.</param>
/// <param name="Near">Its near side behind the coping's front, mm; negative beyond it.</param>
/// <param name="Far">Its far side, mm.</param>
/// <param name="Depth">Depth, mm.</param>
public readonly record struct CopingGroove(double From, double To, double Near, double Far, double Depth);
