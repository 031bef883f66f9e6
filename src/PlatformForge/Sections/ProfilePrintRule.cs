using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Solids.Bodies;
using PlatformForge.Units;

namespace PlatformForge.Sections;

/// <summary>What of plinths and corbelled courses a printer can make, and with which walls they go.</summary>
internal static class ProfilePrintRule
{
    public static IEnumerable<Finding> Check(PlatformPlan plan, PrinterSpec printer, SectionSpec sections)
    {
        if (plan.Spec.Facing is not { ProfileDepth: > 0 } facing)
        {
            yield break;
        }

        string key = plan.Spec.Key + ".facing";
        string part = facing.Plinth is not null ? "plinth" : facing.Corbel is not null ? "corbel" : facing.Batter > 0 ? "batter" : "piers.height";
        (string Wall, WallFinish Finish)[] walls =
            [("front", facing.Front), ("back", plan.Spec.IsIsland ? facing.Front : facing.Back), ("ends", facing.Ends)];
        foreach (var (wall, finish) in walls)
        {
            if (finish is not (WallFinish.Brick or WallFinish.Stone or WallFinish.Rubble or WallFinish.Plain))
            {
                yield return ProfilePrintFindings.NoMasonry($"{key}.{part}", wall, FacingSpec.Name(finish));
                yield break;
            }
        }

        // Deck down the steps of what stands out at the foot are undersides, upright those of corbelled courses.
        double line = printer.Nozzle + Tolerances.Rounding;
        var zones = WallProfiles.Of(plan).Zones;
        double widest = zones.Zip(zones.Skip(1), (low, high) => low.Out - high.Out).Append(0).Max();
        if (sections.Pose != PrintPose.Upright && widest > line)
        {
            // A course's share of the batter is the least that a step of the plinth adds to.
            double lean = Lean(plan);
            double steps = facing.Plinth is { } plinth && lean < printer.Nozzle
                ? Math.Ceiling((plinth.Projection / (printer.Nozzle - lean)) - Tolerances.Rounding) : 0;
            yield return steps > 0
                ? ProfilePrintFindings.PlinthHangs(key, widest, printer.Nozzle, (int)steps)
                : ProfilePrintFindings.BatterHangs(key, widest, printer.Nozzle, facing.Batter * printer.Nozzle / widest);
        }

        if (facing.Corbel is { } corbel && sections.Pose == PrintPose.Upright && corbel.Projection > line)
        {
            yield return ProfilePrintFindings.CorbelHangs(key, corbel.Projection, printer.Nozzle);
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
