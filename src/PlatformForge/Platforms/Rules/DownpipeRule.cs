using PlatformForge.Masonry;
using PlatformForge.Platforms.Rules.Findings;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Rules;

/// <summary>What of downpipes can be told before anything is planned.</summary>
internal static class DownpipeRule
{
    public static void Check(PlatformSpec spec, List<Finding> findings)
    {
        if (spec.Facing is not { Downpipes: { } pipes } facing)
        {
            return;
        }

        string on = spec.Key + ".facing.downpipes.on";
        if ((pipes.On == PierWalls.Back && spec.IsIsland) || (pipes.On != PierWalls.Front && !spec.IsIsland && !spec.Back.ShowsWall))
        {
            findings.Add(BankFindings.NoWall(on, "downpipes", Cure.Text(on, "front")));
        }

        if (facing.Piers is { } piers)
        {
            bool front = piers.Has(false) && pipes.Has(false), back = !spec.IsIsland && spec.Back.ShowsWall && piers.Has(true) && pipes.Has(true);
            if (front || back)
            {
                bool other = !spec.IsIsland && spec.Back.ShowsWall && piers.On != PierWalls.Both;
                findings.Add(DownpipeFindings.BesidePiers(spec.Key, front ? "front" : "back",
                    other ? Cure.Text(on, front ? "back" : "front") : Cure.LeaveOut(spec.Key + ".facing.downpipes")));
            }
        }

        if (pipes.Projection < pipes.LeastProjection - Tolerances.Rounding)
        {
            findings.Add(DownpipeFindings.TooFlat(spec.Key, pipes));
        }
    }
}
