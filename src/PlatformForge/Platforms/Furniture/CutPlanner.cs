using PlatformForge.Units;

namespace PlatformForge.Platforms.Furniture;

/// <summary>Finds the coping joints at which a platform may be cut.</summary>
internal static class CutPlanner
{
    /// <summary>Distance in mm that a cut keeps from ribs and furniture: room for the wall and the dowels that a joint brings.</summary>
    public const double Clear = 3;

    // A chainage that is meant to be a joint is one within this, mm.
    private const double Same = 1e-9;

    public static IReadOnlyList<CutCandidate> Plan(PlatformSpec spec, HeightProfile profile, SlabLayout slabs, IReadOnlyList<PlanRib> ribs, IReadOnlyList<Keepout> keepouts, List<Finding> findings)
    {
        var cuts = new List<CutCandidate>();
        foreach (double joint in slabs.Joints)
        {
            bool forced = spec.ForcedCuts.Any(c => Math.Abs(c - joint) < Same), head = Math.Abs(joint - profile.StartHead) < Same || Math.Abs(joint - profile.EndHead) < Same;
            var hit = keepouts.FirstOrDefault(k => joint > k.From - Clear && joint < k.To + Clear);
            if (forced && hit is not null)
            {
                int index = spec.ForcedCuts.ToList().FindIndex(c => Math.Abs(c - joint) < Same);
                double? away = FreePlace.Nearest(joint, [.. keepouts.Select(k => (k.From - Clear, k.To + Clear))], spec.Face.From + (2 * Clear), spec.Face.To - (2 * Clear));
                findings.Add(PlatformFindings.CutThroughFurniture(hit.Key, hit.Name, hit.Middle, joint, away is { } free ? (PlatformFindings.Indexed(spec.Key, "forced_cuts", index), free) : null));
            }

            bool ribbed = ribs.Any(r => r.Kind != RibKind.Longitudinal && joint > r.From - Clear && joint < r.To + Clear);
            if (forced)
            {
                cuts.Add(new(joint, CutRank.Forced));
            }
            else if (hit is null && !ribbed)
            {
                cuts.Add(new(joint, head ? CutRank.RampHead : CutRank.Joint));
            }
        }

        return cuts;
    }
}
