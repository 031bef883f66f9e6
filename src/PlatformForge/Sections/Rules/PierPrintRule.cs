using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Units;

namespace PlatformForge.Sections.Rules;

/// <summary>What of piers a printer can make, and with which walls they go.</summary>
internal static class PierPrintRule
{
    public static IEnumerable<Finding> Check(PlatformPlan plan, PrinterSpec printer)
    {
        if (plan.Spec.Facing is not { Piers: { } piers } facing)
        {
            yield break;
        }

        string key = plan.Spec.Key + ".facing.piers";
        double line = printer.Nozzle, narrow = (FacingFit.LeastLines * line) + (2 * facing.Depth);
        if (piers.Width < narrow - Tolerances.Rounding)
        {
            yield return PierPrintFindings.TooSmall(key + ".width", "wide", piers.Width, narrow, line);
        }

        if (piers.Projection < line - Tolerances.Rounding)
        {
            yield return PierPrintFindings.TooSmall(key + ".projection", "deep", piers.Projection, line, line);
        }

        foreach (bool isBack in (bool[])[false, true])
        {
            var finish = isBack ? facing.Back : facing.Front;
            if (piers.Has(isBack) && !(isBack && plan.Spec.IsIsland)
                && finish is not (WallFinish.Brick or WallFinish.Stone or WallFinish.Rubble or WallFinish.Plain))
            {
                yield return PierPrintFindings.NoMasonry(key, isBack ? "back" : "front", FacingSpec.Name(finish));
            }
        }
    }
}
