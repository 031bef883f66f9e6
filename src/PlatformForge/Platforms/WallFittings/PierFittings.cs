using System.Globalization;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.WallFittings;

/// <summary>What piers and buttresses come to.</summary>
internal sealed class PierFittings : FittingKind
{
    public override IEnumerable<FittingRow> Rows(FittingSite site) => site.Plan is var plan && plan.Spec.Facing?.Piers is not { } piers ? [] :
    [
        new("pier", "piers", plan.Spec.Key + ".facing.piers")
        {
            Places = [.. plan.Piers.Select(p => Place(plan, piers, p))],
            IsBefore = true,
            StepsOut = true,
            Head = piers.Height is null ? null : new(piers.HeadRise, piers.Weathering),
            Words = Words(plan, piers),
        },
    ];

    public override IEnumerable<FittingFault> Printed(PlatformPlan plan, PrintFigures printer)
    {
        if (plan.Spec.Facing is not { Piers: { } piers } facing)
        {
            yield break;
        }

        string key = plan.Spec.Key + ".facing.piers";
        double narrow = printer.Lines + (2 * facing.Depth);
        if (piers.Width < narrow - Tolerances.Rounding)
        {
            yield return TooSmall(key + ".width", "wide", piers.Width, narrow, printer.Nozzle);
        }

        if (piers.Projection < printer.Nozzle - Tolerances.Rounding)
        {
            yield return TooSmall(key + ".projection", "deep", piers.Projection, printer.Nozzle, printer.Nozzle);
        }

        foreach (bool isBack in (bool[])[false, true])
        {
            var finish = isBack ? facing.Back : facing.Front;
            if (piers.Has(isBack) && !(isBack && plan.Spec.IsIsland)
                && finish is not (WallFinish.Brick or WallFinish.Stone or WallFinish.Rubble or WallFinish.Plain))
            {
                yield return NoMasonry(key, isBack ? "back" : "front", FacingSpec.Name(finish));
            }
        }
    }

    private static WallFitting Place(PlatformPlan plan, PierSpec piers, PlannedPier pier)
    {
        var facing = plan.Spec.Facing!;
        return new(pier.Number, pier.IsFar, pier.Middle, pier.From, pier.To, piers.Width)
        {
            Cut = pier.Cut,
            Footprint = new(pier.From, pier.To, facing.SetBack(pier.IsFar && !plan.Spec.IsIsland) - facing.ProfileDepth, 0),
            FootBack = 0,
        };
    }

    private static FittingWords Words(PlatformPlan plan, PierSpec piers)
    {
        List<string> made =
        [
            $"Piers {FittingKinds.Fine(piers.Width)} mm wide stand where the smooth wall would; the panels between them are set back "
                + $"{FittingKinds.Fine(piers.Projection)} mm, so no clearance is lost.",
        ];
        if (WallProfiles.Of(plan).FrontHead is { } head)
        {
            string slope = (Math.Round(piers.Weathering, 3) + 0.0).ToString("0.###", CultureInfo.InvariantCulture);
            made.Add($"They are buttresses: their heads slope at {slope} degrees and meet the wall {FittingKinds.Fine(head)} mm over the baseboard.");
        }

        return new(
            made,
            null,
            " piers",
            "Each joint between sections lies in the angle beside one, where it hardly shows.",
            "Joints between sections show in panels at {0} mm.");
    }

    private static FittingFault TooSmall(string key, string how, double figure, double least, double nozzle) => new(
        PrintFault.FrontLost,
        key,
        Invariant($"Piers {figure:0.###} mm {how} are lost in the lines of a nozzle of {nozzle:0.##} mm; {least:0.###} mm show."),
        Invariant($"Give {Math.Ceiling(least * 100) / 100:0.##} mm or more."),
        Cure.Set(key, Math.Ceiling(least * 100) / 100));

    private static FittingFault NoMasonry(string key, string wall, string finish) => new(
        PrintFault.FrontOfOtherWall,
        key,
        Invariant($"Piers are masonry, and the {wall} is faced with {finish}."),
        Invariant($"Face it with brick, stone or rubble, or leave it plain (facing.{wall}); or leave the piers out."),
        Cure.LeaveOut(key));
}
