using PlatformForge.Platforms.Features;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Furniture;

/// <summary>Finds the coping joints at which a platform may be cut. Ribs across are set when the cuts are chosen, so none is in the way.</summary>
internal static class CutPlanner
{
    /// <summary>Distance in mm that a cut keeps from end walls.</summary>
    public const double Clear = Keepout.UsualCutClear;

    // A chainage that is meant to be a joint is one within this, mm.
    private const double Same = Tolerances.Rounding;

    public static IReadOnlyList<CutCandidate> Plan(
        PlatformSpec spec,
        HeightProfile profile,
        SlabLayout slabs,
        IReadOnlyList<PlanRib> walls,
        IReadOnlyList<Keepout> keepouts,
        List<Finding> findings)
    {
        var cuts = new List<CutCandidate>();
        foreach (double joint in slabs.Joints)
        {
            bool baseboard = spec.BaseboardJoints.Any(c => Math.Abs(c - joint) < Same), stated = baseboard
                || spec.ForcedCuts.Any(c => Math.Abs(c - joint) < Same);
            bool head = Math.Abs(joint - profile.StartHead) < Same || Math.Abs(joint - profile.EndHead) < Same;
            var hit = keepouts.FirstOrDefault(k => joint > k.From - k.CutClear && joint < k.To + k.CutClear);
            if (stated && hit is not null)
            {
                findings.Add(Through(hit, spec, joint, baseboard, keepouts));
            }

            bool walled = walls.Any(r => r.Kind == RibKind.EndWall && joint > r.From - Clear && joint < r.To + Clear);
            if (stated)
            {
                cuts.Add(new(joint, baseboard ? CutRank.Baseboard : CutRank.Forced));
            }
            else if (hit is null && !walled)
            {
                cuts.Add(new(joint, head ? CutRank.RampHead : CutRank.Joint));
            }
        }

        return cuts;
    }

    private static Finding Through(Keepout hit, PlatformSpec spec, double joint, bool baseboard, IReadOnlyList<Keepout> keepouts)
    {
        var (list, all) = baseboard ? ("baseboard_joints", spec.BaseboardJoints) : ("cuts", spec.ForcedCuts);
        int index = all.ToList().FindIndex(c => Math.Abs(c - joint) < Same);
        double? away = FreePlace.Nearest(
            joint,
            [.. keepouts.Select(k => (k.From - k.CutClear, k.To + k.CutClear))],
            spec.Face.From + (2 * Clear),
            spec.Face.To - (2 * Clear));
        return PlatformFindings.CutThroughFurniture(
            hit.Key,
            hit.Name,
            hit.Middle,
            joint,
            away is { } free ? (PlatformFindings.Indexed(spec.Key, list, index), free) : null);
    }
}
