using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Rules;

/// <summary>Whether a coping can turn the corners that it is asked to.</summary>
internal static class CopingReturnRule
{
    // Length between two returns, or between one and the far end, that is a platform still, mm, and what a corner's slab is longer than the coping is wide.
    private const double LeastBetween = 5, Corner = 1.25;

    public static void Check(PlatformSpec spec, List<Finding> findings)
    {
        var coping = spec.Coping;
        bool[] asked = [.. coping.ReturnedEnds];
        foreach (bool atEnd in asked)
        {
            if (Forbids(spec, atEnd) is { } why)
            {
                findings.Add(Cannot(spec, atEnd, why));
            }
        }

        double one = Corner * coping.Width, room = spec.Face.To - spec.Face.From, needed = (asked.Length * one) + LeastBetween;
        if (asked.Length > 0 && needed > room)
        {
            findings.Add(TooShort(spec, needed, room));
        }

        foreach (var (list, cuts) in new[] { ("cuts", spec.ForcedCuts), ("baseboard_joints", spec.BaseboardJoints) })
        {
            for (int i = 0; i < cuts.Count; i++)
            {
                double first = spec.Face.From + (coping.IsReturned(false) ? one + coping.JointWidth : 0);
                double last = spec.Face.To - (coping.IsReturned(true) ? one + coping.JointWidth : 0);
                if (needed <= room && (cuts[i] < first || cuts[i] > last))
                {
                    findings.Add(CutInCorner(PlatformFindings.Indexed(spec.Key, list, i), cuts[i], (first, last)));
                }
            }
        }
    }

    private static string? Forbids(PlatformSpec spec, bool atEnd) =>
        (atEnd ? spec.EndRamp : spec.StartRamp) is not null ? "a ramp comes down"
        : spec.Trestle is not null ? "no wall stands, but a bent"
        : (atEnd ? spec.Skew.End : spec.Skew.Start) != 0 ? "the end is cut on the skew"
        : !spec.IsIsland && BankReturn.IsAsked(spec.Back.Returns, atEnd) ? "the bank turns round it" : null;

    private static Finding Cannot(PlatformSpec spec, bool atEnd, string why)
    {
        bool hasOther = spec.Coping.IsReturned(!atEnd) && Forbids(spec, !atEnd) is null;
        string rest = !hasOther ? "none" : atEnd ? "start" : "end";
        return Finding.Error(
            "PF4177",
            spec.Key + ".coping.returns",
            $"The coping is to turn the corner at the platform's {(atEnd ? "end" : "start")}, where {why}.",
            $"Give \"{rest}\".",
            FaultKind.DesignRule).Curing(Cure.Text(spec.Key + ".coping.returns", rest));
    }

    private static Finding TooShort(PlatformSpec spec, double needed, double room) => Finding.Error(
        "PF4178",
        spec.Key + ".coping.returns",
        Invariant($"Returns of a coping {spec.Coping.Width:0.###} mm wide, with the slabs at their corners and 5 mm of platform beside them, ")
            + Invariant($"take {needed:0.###} mm;")
            + Invariant($" the platform is {room:0.###} mm long."),
        "Leave returns out, or make the coping narrower.",
        FaultKind.DesignRule).Curing(Cure.LeaveOut(spec.Key + ".coping.returns"));

    private static Finding CutInCorner(string key, double cut, (double First, double Last) within)
    {
        double right = cut < within.First ? Math.Ceiling(within.First * 10) / 10 : Math.Floor(within.Last * 10) / 10;
        return Finding.Error(
            "PF4179",
            key,
            Invariant($"The cut at {cut:0.###} mm goes through the slab at a corner that the coping turns, which is whole."),
            Invariant($"Give {right:0.###} mm."),
            FaultKind.DesignRule).Curing(Cure.Set(key, right));
    }
}
