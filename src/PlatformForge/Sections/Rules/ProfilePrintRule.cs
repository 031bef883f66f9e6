using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Rules;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Units;

namespace PlatformForge.Sections.Rules;

/// <summary>What of plinths and corbelled courses a printer can make, and with which walls they go.</summary>
internal static class ProfilePrintRule
{
    // Walls that are no masonry.
    private static (string Wall, WallFinish Finish)[] Other(FacingSpec facing, bool isIsland)
    {
        (string Wall, WallFinish Finish)[] walls = [("front", facing.Front), ("back", isIsland ? facing.Front : facing.Back), ("ends", facing.Ends)];
        return [.. walls.Where(w => w.Finish is not (WallFinish.Brick or WallFinish.Stone or WallFinish.Rubble or WallFinish.Plain))];
    }

    public static IEnumerable<Finding> Check(PlatformPlan plan, PrinterSpec printer, SectionSpec sections)
    {
        if (plan.Spec.Facing is not { ProfileDepth: > 0 } facing)
        {
            yield break;
        }

        string key = plan.Spec.Key + ".facing";
        string part = facing.ProfileKey;
        if (Other(facing, plan.Spec.IsIsland) is [var (wall, finish), ..])
        {
            var mended = wall == "front" ? facing with { Front = WallFinish.Brick }
                : wall == "back" ? facing with { Back = WallFinish.Brick } : facing with { Ends = WallFinish.Brick };
            yield return ProfilePrintFindings.NoMasonry(key, part, wall, FacingSpec.Name(finish), Other(mended, plan.Spec.IsIsland).Length == 0);
            yield break;
        }

        // Deck down the steps of what stands out at the foot are undersides, upright those of corbelled courses.
        double line = printer.Nozzle + Tolerances.Rounding;
        var zones = WallProfiles.Of(plan).Zones;
        double widest = zones.Zip(zones.Skip(1), (low, high) => low.Out - high.Out).Append(0).Max();
        if (sections.Pose != PrintPose.Upright && widest > line)
        {
            yield return Foot(plan, printer.Nozzle, widest);
        }

        if (facing.Corbel is { } corbel && sections.Pose == PrintPose.Upright && corbel.Projection > line)
        {
            yield return ProfilePrintFindings.CorbelHangs(key, corbel.Projection, printer.Nozzle);
        }
    }

    // What stands out at the foot in steps wider than a line: more steps of the plinth where the wall has courses for them, less of it where it has not, or
    // less lean. A course's share of the batter is the least that a step of the plinth adds to.
    private static Finding Foot(PlatformPlan plan, double line, double widest)
    {
        var facing = plan.Spec.Facing!;
        string key = plan.Spec.Key + ".facing";
        double step = line - Lean(plan);
        if (facing.Plinth is not { } plinth || step <= 0)
        {
            return ProfilePrintFindings.BatterHangs(key, widest, line, facing.Batter * line / widest);
        }

        int steps = (int)Math.Ceiling((plinth.Projection / step) - Tolerances.Rounding);
        return steps <= ProfileRule.MostSteps(plan.Spec, plan.Site)
            ? ProfilePrintFindings.PlinthHangs(key, widest, line, steps)
            : ProfilePrintFindings.PlinthStandsOut(key, widest, line, Narrowed(plinth, step));
    }

    // How far a plinth may stand out in steps so wide, mm: as many as it has now, or fewer where it is to have fewer of less projection.
    private static double Narrowed(PlinthSpec plinth, double step)
    {
        for (int steps = plinth.Steps; ; steps--)
        {
            double projection = Math.Floor(step * steps * 100) / 100;
            if (steps == 1 || (plinth with { Projection = projection }).Steps >= steps)
            {
                return projection;
            }
        }
    }

    // The widest step of the walls without their plinth, mm.
    private static double Lean(PlatformPlan plan)
    {
        var bare = plan with { Spec = plan.Spec with { Facing = plan.Spec.Facing! with { Plinth = null, Corbel = null } } };
        var zones = WallProfiles.Of(bare).Zones;
        return zones.Zip(zones.Skip(1), (low, high) => low.Out - high.Out).Append(0).Max();
    }
}
