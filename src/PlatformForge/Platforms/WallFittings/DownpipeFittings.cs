using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.WallFittings;

/// <summary>What downpipes come to.</summary>
internal sealed class DownpipeFittings : FittingKind
{
    public override IEnumerable<FittingRow> Rows(FittingSite site) => site.Plan is var plan && plan.Spec.Facing?.Downpipes is not { } pipes ? [] :
    [
        new("downpipe", "downpipes", plan.Spec.Key + ".facing.downpipes")
        {
            Places = [.. Places(plan, pipes)],
            IsBefore = true,
            Face = FittingFace.Iron,
            Painting = new(2, [(5, "dark grey"), (1, "brown")],
                "cast iron was painted dark, and rust shows at clips and shoe: touch them with brown alone"),
            Words = Words(pipes),
        },
    ];

    public override IEnumerable<FittingFault> Printed(PlatformPlan plan, PrintFigures printer)
    {
        if (plan.Spec.Facing?.Downpipes is not { } pipes)
        {
            yield break;
        }

        string key = plan.Spec.Key + ".facing.downpipes";
        if (pipes.Diameter < printer.Lines - Tolerances.Rounding)
        {
            yield return TooThin(key, pipes.Diameter, printer.Lines, printer.Nozzle);
        }

        if (pipes.Clip > printer.Nozzle + Tolerances.Rounding)
        {
            yield return Hangs(key, pipes.Clip, printer.Nozzle);
        }
    }

    private static IEnumerable<WallFitting> Places(PlatformPlan plan, DownpipeSpec pipes)
    {
        double[] steps = [.. WallProfiles.Of(plan).Zones.Skip(1).Select(z => z.Low)];
        return plan.Downpipes.Select(p => Place(plan, pipes, p, steps));
    }

    private static WallFitting Place(PlatformPlan plan, DownpipeSpec pipes, PlannedDownpipe pipe, double[] steps)
    {
        // The plan shows pipes without what stands round them.
        double half = pipes.Diameter / 2, along = half / plan.Spine.Stretch(pipe.Middle, plan.Panels(pipe.IsFar).At(pipe.Middle));
        FittingPart Round(PipeRing ring) =>
            new(PipeOutline.Ring(pipes, ring), ring.HalfWidth, ring.Low, ring.High) { ToCoping = ring.High >= pipe.Under };
        return new(pipe.Number, pipe.IsFar, pipe.Middle, pipe.From, pipe.To, pipes.Diameter)
        {
            Cut = pipe.Cut,
            Footprint = new(pipe.Middle - along, pipe.Middle + along, pipes.Projection - pipes.Clip, 0),
            Projection = pipes.Projection,
            Parts =
            [
                new(PipeOutline.Pipe(pipes), half, 0, pipe.Under) { ReachesIn = true, ToCoping = true },
                .. pipes.Rings(pipe.Under, steps).Select(Round),
            ],
            PartedHalf = half,
            FootBack = plan.Spec.Facing!.FootBack,
        };
    }

    private static FittingWords Words(DownpipeSpec pipes)
    {
        string what = $"{(pipes.Shape == PipeShape.Round ? "Downpipes" : "Square downpipes")} {FittingKinds.Fine(pipes.Diameter)} mm wide";
        string hopper = pipes.Hopper ? "with hopper heads" : "without hopper heads";
        return new(
            [
                what + $" stand before the walls, {hopper}, clips{(pipes.Shoe ? " and shoes" : "")}. "
                    + $"What stands out most stands where the smooth wall would; the walls behind are set back {FittingKinds.Fine(pipes.Projection)} mm, "
                    + "so no clearance is lost.",
            ],
            what + " are asked for, and none is made: no joint between sections lies where the wall is high enough, and no place is stated.",
            "",
            "Each joint between sections lies beside one, where it hardly shows.",
            "Joints between sections show at {0} mm; the others lie beside one.");
    }

    private static FittingFault TooThin(string key, double figure, double least, double nozzle) => new(
        PrintFault.PartLost,
        key + ".diameter",
        Invariant($"Downpipes {figure:0.###} mm wide are lost in the lines of a nozzle of {nozzle:0.##} mm; {least:0.###} mm show."),
        Invariant($"Give {Math.Ceiling(least * 100) / 100:0.##} mm or more."),
        Cure.Set(key + ".diameter", Math.Ceiling(least * 100) / 100));

    private static FittingFault Hangs(string key, double figure, double nozzle) => new(
        PrintFault.PartHangs,
        key + ".clip",
        Invariant($"Clips and shoes that stand {figure:0.###} mm round their pipes hang free there, printed deck down or upright: ")
            + Invariant($"a line of the nozzle is {nozzle:0.##} mm wide."),
        Invariant($"Give {nozzle:0.##} mm or less."),
        Cure.Set(key + ".clip", nozzle));
}
