using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Rules;

/// <summary>Whether a platform's ends can be cut on the skew as asked.</summary>
internal static class SkewRule
{
    public static void Check(PlatformSpec spec, PlatformSite site, List<Finding> findings)
    {
        string key = spec.Key + ".skew";
        if (!spec.Skew.IsAny)
        {
            return;
        }

        if (spec.IsIsland)
        {
            findings.Add(Stray(key, "An island's ends lie straight across between its two tracks", "Leave skew out.", Cure.LeaveOut(key)));
            return;
        }

        if (spec.Trestle is not null)
        {
            findings.Add(Stray(key, "Bents stand square to the track", "Leave skew out.", Cure.LeaveOut(key)));
        }

        foreach (var (name, angle, ramp) in new[] { ("start", spec.Skew.Start, spec.StartRamp), ("end", spec.Skew.End, spec.EndRamp) })
        {
            if (angle != 0 && ramp is not null)
            {
                const string Why = "The platform ends in a ramp there, whose foot lies square to the track";
                findings.Add(Stray($"{key}.{name}", Why, "Give 0.", Cure.Set($"{key}.{name}", 0)));
            }
        }

        if (spec.Deck.Crossfall > 0)
        {
            string fall = spec.Key + ".deck.crossfall";
            findings.Add(Stray(fall, "The deck falls away from the track", "Give 0, a level deck.", Cure.Set(fall, 0)));
        }

        Room(spec, site, key, findings);
    }

    private static void Room(PlatformSpec spec, PlatformSite site, string key, List<Finding> findings)
    {
        var level = RampRules.Profile(spec, site, []);
        double room = level.EndHead - level.StartHead, width = spec.Deck.Width;
        double needed = SkewSpec.Stretch(width, spec.Skew.Start) + SkewSpec.Stretch(width, spec.Skew.End);
        if (needed <= room)
        {
            return;
        }

        bool atStart = Math.Abs(spec.Skew.Start) >= Math.Abs(spec.Skew.End);
        double angle = atStart ? spec.Skew.Start : spec.Skew.End, other = atStart ? spec.Skew.End : spec.Skew.Start;
        double left = Math.Max(0, room - SkewSpec.Stretch(width, other)) / SkewSpec.Stretch(width, 45);
        double most = Math.Sign(angle) * Math.Floor(Math.Min(Math.Abs(angle), Math.Atan(left) * 180 / Math.PI) * 10) / 10;
        string of = key + (atStart ? ".start" : ".end");
        findings.Add(Finding.Error(
            "PF4175",
            of,
            Invariant($"To skew ends of a deck {width:0.###} mm wide lines across turn over {needed:0.#} mm; it is {room:0.#} mm long between ramps."),
            Invariant($"Give {most:0.#} degrees, a narrower deck or a longer platform."),
            FaultKind.DesignRule).Curing(Cure.Set(of, most)));
    }

    private static Finding Stray(string key, string why, string remedy, Cure cure) => Finding.Error(
        "PF4176", key, $"{why}: it has no end that could be cut on the skew.", remedy, FaultKind.DesignRule).Curing(cure);
}
