using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Surfaces;

namespace PlatformForge.Exports.Looks;

/// <summary>The joints of a deck as lines, for whatever is drawn or cut: along the middle of what a print has engraved.</summary>
internal static class PavingLines
{
    /// <summary>Each joint by its places in the plan, expansion joints first; none where the deck is smooth.</summary>
    public static IEnumerable<PlanPlace[]> Of(PlatformPlan plan)
    {
        var (inner, back) = ExpansionJoints.Between(plan);
        foreach (double at in ExpansionJoints.Of(plan))
        {
            yield return [new(at, inner.At(at)), new(at, back.At(at))];
        }

        if (PavingLayout.Of(plan) is not { } paving)
        {
            yield break;
        }

        foreach (var joint in paving.Joints)
        {
            var (near, far) = (paving.At(joint.Near), paving.At(joint.Far));
            yield return joint.IsAcross
                ? [new(joint.From, near.At(joint.From)), new(joint.From, far.At(joint.From))]
                : [.. plan.Stations.Where(s => s > joint.From && s < joint.To).Prepend(joint.From).Append(joint.To).Select(s => new PlanPlace(s, near.At(s)))];
        }
    }
}
