using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Solids.Bodies.Copings;

namespace PlatformForge.Exports.Looks;

/// <summary>
/// What a coping has between the joints of its slabs, joints of bricks or lines beside tooled margins, as lines along the middles of what
/// a print has engraved.
/// </summary>
internal static class CopingLines
{
    /// <summary>Each line of a face by its places on the layout, one at least at every station between its ends.</summary>
    public static IEnumerable<Point2[]> Of(FacePlan face, CopingSpec coping)
    {
        double half = coping.JointWidth / 2;
        foreach (var groove in CopingGrooves.Of(face, coping))
        {
            // The one of margins ends where the others' middles are; a joint of bricks goes right across.
            if (groove.To - groove.From <= coping.JointWidth * 1.001)
            {
                double at = (groove.From + groove.To) / 2, near = Math.Max(0, groove.Near - half), far = Math.Min(coping.Width, groove.Far + half);
                yield return [Place(at, near), Place(at, far)];
                continue;
            }

            double from = groove.From + half, to = groove.To - half, reach = (groove.Near + groove.Far) / 2;
            yield return [.. face.Stations.Where(s => s > from && s < to).Prepend(from).Append(to).Select(s => Place(s, reach))];
        }

        Point2 Place(double s, double behind) => face.ToLayout(s, face.CopingFront.At(s) + behind);
    }

    /// <summary>Those of the returns of a plan, with the joints between their slabs.</summary>
    public static IEnumerable<Point2[]> OfReturns(PlatformPlan plan)
    {
        var coping = plan.Spec.Coping;
        foreach (var turn in CopingReturn.Of(plan))
        {
            foreach (var groove in turn.Grooves(coping, plan.Body.FarCopingBack is not null))
            {
                double half = coping.JointWidth / 2, from = Math.Max(turn.From, groove.From), to = Math.Min(turn.To, groove.To), middle = (from + to) / 2;
                bool isAcross = groove.Far.At(middle) - groove.Near.At(middle) > coping.JointWidth * 1.001;
                yield return isAcross
                    ? [plan.ToLayout(middle, groove.Near.At(middle)), plan.ToLayout(middle, groove.Far.At(middle))]
                    : [plan.ToLayout(from, groove.Near.At(from) + half), plan.ToLayout(to, groove.Near.At(to) + half)];
            }
        }
    }

    /// <summary>The inner edges of the returns of a plan, from the coping to where each ends.</summary>
    public static IEnumerable<Point2[]> InnerEdges(PlatformPlan plan) => CopingReturn.Of(plan).Select(turn => (Point2[])
        [plan.ToLayout(turn.Inner, turn.Bounds[0].At(turn.Inner)), plan.ToLayout(turn.Inner, turn.Bounds[^1].At(turn.Inner))]);

    /// <summary>The returns of a plan as areas, each from its outer edge to its inner one.</summary>
    public static IEnumerable<(CopingReturn Return, Point2[] Ring)> Areas(PlatformPlan plan) => CopingReturn.Of(plan).Select(turn => (turn, (Point2[])
        [
            plan.ToLayout(turn.End, plan.CopingFront.At(turn.End)), plan.ToLayout(turn.Inner, plan.CopingFront.At(turn.Inner)),
            plan.ToLayout(turn.Inner, plan.Back.At(turn.Inner)), plan.ToLayout(turn.End, plan.Back.At(turn.End)),
        ]));
}
