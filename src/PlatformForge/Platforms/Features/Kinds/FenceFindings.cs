using PlatformForge.Units;
using static System.FormattableString;
using static PlatformForge.Platforms.Specs.PlatformFindings;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>Findings of a fence's gaps.</summary>
internal static class FenceFindings
{
    /// <param name="key">Key of the gap.</param>
    /// <param name="gap">The gap.</param>
    /// <param name="from">Where the fence before it begins, mm.</param>
    /// <param name="to">Where the fence ends, mm.</param>
    /// <param name="least">Shortest gap, and shortest fence between two, mm.</param>
    public static Finding FenceGap(string key, FenceGapSpec gap, double from, double to, double least)
    {
        // A gap may begin where the fence does; otherwise a panel stands before it.
        double begin = Math.Abs(gap.From - from) <= Grain ? gap.From : Math.Max(gap.From, from + least), end = Math.Max(gap.To, begin + least);
        var cure = end > to ? begin == gap.From && to - begin >= least ? Cure.Set(key + ".to", Floored(to)) : Cure.LeaveOut(key)
            : begin != gap.From && end != gap.To ? Cure.LeaveOut(key)
            : begin != gap.From ? Cure.Set(key + ".from", Ceiled(begin)) : Cure.Set(key + ".to", Ceiled(end));
        string room = to - from >= least ? Invariant($"Give gaps in order of chainage, {least:0.###} mm long or more, that far from one another, ")
            + Invariant($"between {from:0.###} and {to:0.###}, or leave it out.") : "Leave it out: there is no fence left for it.";
        string what = !(gap.To > gap.From) ? "ends before it begins"
            : to - from < least ? "has no fence left to stand in"
            : gap.From < from - Grain || gap.To > to + Grain ? Invariant($"lies off the fence, which is left from {from:0.###} to {to:0.###}")
            : gap.To - gap.From < least ? Invariant($"is less than {least:0.###} mm long")
            : Invariant($"leaves less than {least:0.###} mm of fence before it, which is left from {from:0.###} to {to:0.###}");
        return Finding.Error("PF4041", key, Invariant($"The gap from {gap.From:0.###} to {gap.To:0.###} mm {what}."), room, FaultKind.DesignRule).Curing(cure);
    }
}
