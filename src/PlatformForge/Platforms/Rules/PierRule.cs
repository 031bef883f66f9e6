using PlatformForge.Masonry;
using PlatformForge.Platforms.Rules.Findings;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Rules;

/// <summary>What of piers can be told before anything is planned.</summary>
internal static class PierRule
{
    public static void Check(PlatformSpec spec, List<Finding> findings)
    {
        if (spec.Facing?.Piers is not { } piers)
        {
            return;
        }

        if (spec.IsIsland && piers.On == PierWalls.Back)
        {
            findings.Add(PierFindings.NoBack(spec.Key));
        }

        double least = 2 * piers.Width;
        if (piers.At.Count == 0 && piers.Pitch < least - Tolerances.Rounding)
        {
            findings.Add(PierFindings.TooClose(spec.Key, piers));
        }

        var places = piers.At.Select((at, i) => (At: at, Index: i)).OrderBy(p => p.At).ToArray();
        foreach (var (before, after) in places.Zip(places.Skip(1)))
        {
            if (after.At - before.At < least - Tolerances.Rounding)
            {
                findings.Add(PierFindings.Crowded(spec.Key, before.At, after.At, least, after.Index));
                return;
            }
        }
    }
}
