using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Requests;

/// <summary>
/// Which heights meet a platform's edge at one place. What reaches the coping's own height, with the vertical gap over and under it, holds the coping off;
/// what stays lower can only
/// meet the wall, which stands back by the overhang; what stays higher passes over where bodies may, and holds the coping off where they may not. All with
/// lean and cant at their worst.
/// </summary>
/// <param name="Above">Height above rail top below which everything stays under the coping, mm.</param>
/// <param name="Below">Height above rail top from which everything passes over; infinity where nothing does.</param>
/// <param name="Overhang">How far the coping projects over the wall, mm.</param>
public readonly record struct HeldHeights(double Above, double Below, double Overhang)
{
    // Sums of stated heights differ by less than this, mm, where they are meant to be equal.
    private const double Grain = Tolerances.Rounding;

    // More than heights are rounded by, mm, and less than anybody is told.
    private const double Told = 1e-6;

    private const double BeyondStep = 5;

    /// <summary>Heights above rail top that meet a platform's coping where it is level, a little more of them, so that what is swept below or above them
    /// surely stays there.</summary>
    public static (double Low, double High) Edge(PlatformSpec spec)
    {
        var level = At(spec, spec.Height);
        return (level.Above - (2 * Told), level.Below + Told);
    }

    /// <summary>How far beyond a platform's ends has to be known what is swept, mm: what stands there is held off its corners by the budget, on lines that
    /// may be half as long as the track.
    /// In whole steps, so that a little more room is the same sweep.</summary>
    public static double Beyond(ClearanceBudget budget) => Math.Ceiling(2 * Math.Max(0, budget.Margin) / BeyondStep) * BeyondStep;

    /// <summary>Heights where the coping's top is at one height above rail top, mm.</summary>
    public static HeldHeights At(PlatformSpec spec, double top) => Over(spec, top, top);

    /// <summary>The same for a stretch along which the coping's top is anywhere between two heights.</summary>
    public static HeldHeights Over(PlatformSpec spec, double lowest, double highest) =>
        new(lowest - spec.Coping.Thickness - spec.Face.VerticalGap + Grain, spec.Face.HeldBelow(highest), spec.Coping.Overhang);

    /// <summary>Whether a part is so high that it never comes down to the coping.</summary>
    public bool PassesOver(PartReach part) => part.Lowest >= Below;

    /// <summary>Whether a part is so low that it never comes up to the coping.</summary>
    public bool StaysUnder(PartReach part) => part.Highest <= Above;

    /// <summary>How far the coping has to be for a part that reaches so far, mm; negative infinity where it does not matter.</summary>
    public double Counted(PartReach part, double reach) => PassesOver(part) ? double.NegativeInfinity : StaysUnder(part) ? reach - Overhang : reach;
}
