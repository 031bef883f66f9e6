using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Units;

namespace PlatformForge.Sections.Rules;

/// <summary>What of openings a printer can make, and in which walls they are made.</summary>
internal static class OpeningPrintRule
{
    public static IEnumerable<Finding> Check(PlatformPlan plan, PrinterSpec printer)
    {
        var spec = plan.Spec;
        for (int i = 0; i < (spec.Facing?.Openings.Count ?? 0); i++)
        {
            var opening = spec.Facing!.Openings[i];
            string key = FormattableString.Invariant($"{spec.Key}.facing.opening[{i}]");
            bool isBack = opening.IsBack && !spec.IsIsland;
            if (isBack && !spec.Back.ShowsWall)
            {
                continue; // told where the back is looked at
            }

            var finish = isBack ? spec.Facing.Back : spec.Facing.Front;
            double wall = isBack ? spec.Walls.BackThickness : spec.Walls.FrontThickness, deepest = wall - printer.LeastWall,
                least = FacingFit.LeastLines * printer.Nozzle, size = Math.Min(opening.Width, opening.Height);
            if (finish is not (WallFinish.Brick or WallFinish.Stone or WallFinish.Rubble))
            {
                yield return OpeningPrintFindings.NoMasonry(key, spec.Key + ".facing", isBack ? "back" : "front", FacingSpec.Name(finish));
            }
            else if (!opening.IsThrough && (opening.Depth > deepest + Tolerances.Rounding || opening.Depth <= spec.Facing.Depth))
            {
                yield return OpeningPrintFindings.Depth(
                    key, opening.Depth, (spec.Facing.Depth, deepest),
                    spec.Key + (isBack ? ".wall.back_thickness" : ".wall.front_thickness"), printer.LeastWall);
            }
            else if (opening.IsThrough && opening.Width > printer.LongestBridge + Tolerances.Rounding)
            {
                yield return OpeningPrintFindings.TooWideToBridge(key, opening.Width, printer.LongestBridge);
            }
            else if (size < least - Tolerances.Rounding)
            {
                yield return OpeningPrintFindings.TooSmall(key + (opening.Width < opening.Height ? ".width" : ".height"), size, least);
            }
        }
    }
}
