using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
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

        Room(spec, site, key, findings);
        Cuts(spec, site, key, findings);
    }

    // Each skew cut is a stated one, and lines across turn to it and back between heads and feet of ramps, ends, and what else is askew: at a head, and at
    // a foot, the line across is the one that its ramp's plane is laid through.
    private static void Cuts(PlatformSpec spec, PlatformSite site, string key, List<Finding> findings)
    {
        var (level, width) = (RampRules.Profile(spec, site, []), spec.Deck.Width);
        for (int i = 0; i < spec.Skew.Cuts.Count; i++)
        {
            var cut = spec.Skew.Cuts[i];
            string own = PlatformFindings.Indexed(key, "cut", i);
            if (!spec.StatedCuts.Any(s => Math.Abs(s - cut.At) < Tolerances.Rounding))
            {
                findings.Add(NotStated(spec, own, cut.At));
                continue;
            }

            var others = spec.Skew.Cuts.Where((c, k) => k != i).Select(c => (c.At, Turn: SkewSpec.Turn(width, c.Angle)))
                .Append((level.StartHead, SkewSpec.Turn(width, spec.Skew.Start))).Append((level.EndHead, SkewSpec.Turn(width, spec.Skew.End)))
                .Append((level.From, 0)).Append((level.To, 0));
            double room = others.Min(o => Math.Abs(cut.At - o.Item1) - o.Item2), needed = SkewSpec.Turn(width, cut.Angle);
            if (needed > room)
            {
                findings.Add(TooNear(own + ".angle", cut, width, needed, Math.Max(0, room)));
            }
        }
    }

    private static Finding TooNear(string key, SkewCut cut, double width, double needed, double room)
    {
        double most = Math.Sign(cut.Angle) * Math.Floor(Math.Atan(Math.Max(0, room - SkewSpec.Parallel) / SkewSpec.Stretch(width, 45)) * 1800 / Math.PI) / 10;
        return NoRoom(
            key,
            Cure.Set(key, most),
            Invariant($"Lines across turn to the cut at {cut.At:0.###} mm over {needed:0.#} mm on either side of it; ")
                + Invariant($"there are {room:0.#} mm to the next end, head of a ramp or skew cut."),
            Invariant($"Give {most:0.#} degrees, a narrower deck, or a cut farther from that."));
    }

    private static Finding NoRoom(string key, Cure cure, string what, string remedy) =>
        Finding.Error("PF4175", key, what, remedy, FaultKind.DesignRule).Curing(cure);

    private static Finding NotStated(PlatformSpec spec, string key, double at)
    {
        double[] cuts = [.. spec.StatedCuts.OrderBy(c => Math.Abs(c - at)).Take(1)];
        return NoCut(
            key + ".at",
            Invariant($"No cut is stated at {at:0.###} mm, in cuts or baseboard_joints: there is nothing to lie askew."),
            cuts.Length > 0 ? Invariant($"Give {cuts[0]:0.###}, the nearest that is stated.") : "State the cut, or leave it out here.",
            cuts.Length > 0 ? Cure.Set(key + ".at", cuts[0]) : Cure.LeaveOut(key));
    }

    private static void Room(PlatformSpec spec, PlatformSite site, string key, List<Finding> findings)
    {
        var level = RampRules.Profile(spec, site, []);
        double room = level.EndHead - level.StartHead, width = spec.Deck.Width;
        double needed = SkewSpec.Turn(width, spec.Skew.Start) + SkewSpec.Turn(width, spec.Skew.End);
        if (needed <= room)
        {
            return;
        }

        bool atStart = Math.Abs(spec.Skew.Start) >= Math.Abs(spec.Skew.End);
        double angle = atStart ? spec.Skew.Start : spec.Skew.End, other = atStart ? spec.Skew.End : spec.Skew.Start;
        double left = Math.Max(0, room - SkewSpec.Turn(width, other) - SkewSpec.Parallel) / SkewSpec.Stretch(width, 45);
        double most = Math.Sign(angle) * Math.Floor(Math.Min(Math.Abs(angle), Math.Atan(left) * 180 / Math.PI) * 10) / 10;
        string of = key + (atStart ? ".start" : ".end");
        if (most == 0)
        {
            findings.Add(BothTooSkew(spec.Skew, (key, of), width, needed, room));
            return;
        }

        findings.Add(NoRoom(
            of,
            Cure.Set(of, most),
            Invariant($"To skew ends of a deck {width:0.###} mm wide lines across turn over {needed:0.#} mm; it is {room:0.#} mm long between ramps."),
            Invariant($"Give {most:0.#} degrees, a narrower deck or a longer platform.")));
    }

    // Where the other end alone takes up the room both give way, each within its half; cuts between them stay as they are.
    private static Finding BothTooSkew(SkewSpec skew, (string All, string One) key, double width, double needed, double room)
    {
        double each = Math.Floor(Math.Atan(Math.Max(0, (room / 2) - SkewSpec.Parallel) / SkewSpec.Stretch(width, 45)) * 1800 / Math.PI) / 10;
        double start = Math.Clamp(skew.Start, -each, each), end = Math.Clamp(skew.End, -each, each);
        var askew = skew.Cuts.Select(c => Invariant($"{{ at = {c.At:R}, angle = {c.Angle:R} }}"));
        string cuts = skew.Cuts.Count == 0 ? "" : $", cut = [{string.Join(", ", askew)}]";
        string value = Invariant($"{{ start = {start:0.#}, end = {end:0.#}{cuts} }}");
        return NoRoom(
            key.One,
            each > 0 ? new Cure(CureAct.Set, key.All, value) : Cure.LeaveOut(key.All),
            Invariant($"To skew both ends of a deck {width:0.###} mm wide lines across turn over {needed:0.#} mm; it is {room:0.#} mm long between ramps."),
            each > 0 ? $"Give skew = {value}, a narrower deck or a longer platform." : "Leave skew out, or give a narrower deck or a longer platform.");
    }

    private static Finding Stray(string key, string why, string remedy, Cure cure) =>
        NoCut(key, $"{why}: it has no end that could be cut on the skew.", remedy, cure);

    private static Finding NoCut(string key, string why, string remedy, Cure cure) =>
        Finding.Error("PF4176", key, why, remedy, FaultKind.DesignRule).Curing(cure);
}
