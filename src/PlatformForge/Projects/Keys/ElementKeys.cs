using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Projects.Keys;

/// <summary>One entry of an alignment as written.</summary>
internal sealed record ElementDraft
{
    public double? Straight { get; init; }

    public double? Curve { get; init; }

    public double? Transition { get; init; }

    public double? ToRadius { get; init; }

    public double? Length { get; init; }

    public double? Angle { get; init; }

    public double? Kink { get; init; }

    public string? Hand { get; init; }

    private Hand Way => Hand == "right" ? Track.Hand.Right : Track.Hand.Left;

    public AlignmentElementSpec Element =>
        Straight is { } straight ? new StraightSpec(straight)
        : Curve is { } radius ? new CurveSpec(radius, Way, Length, Angle * Math.PI / 180)
        : Kink is { } kink ? new KinkSpec(kink * Math.PI / 180, Way)
        : new TransitionSpec(Transition ?? double.NaN, ToRadius, Way);
}

/// <summary>Keys of one entry of <c>alignment</c>.</summary>
internal static class ElementKeys
{
    private static readonly NumberRange Along = NumberRange.Over0(1e6), Radius = NumberRange.Over0(StraightRule.LongestRadius);

    public static KeyTable<ElementDraft> Table { get; } = new KeyTable<ElementDraft>(_ => new())
        .Length("straight", Along, "Length of a straight.", e => e.Straight, (e, v) => e with { Straight = v })
        .Length("curve", Radius, "Radius of a circular curve, to the middle of the track.", e => e.Curve, (e, v) => e with { Curve = v })
        .Length("length", Along, "Length of a curve along the middle of the track.", e => e.Length, (e, v) => e with { Length = v })
        .Number(
            "angle",
            NumberRange.Over0(360),
            "degrees",
            "Angle that a curve turns through, in place of its length.",
            e => e.Angle,
            (e, v) => e with { Angle = v })
        .Length("transition", Along, "Length of a transition from the curvature reached so far.", e => e.Transition, (e, v) => e with { Transition = v })
        .Length("to_radius", Radius, "Radius that a transition leads to; left out, it leads to a straight.", e => e.ToRadius, (e, v) => e with { ToRadius = v })
        .Number(
            "kink",
            NumberRange.Over0(30),
            "degrees",
            "A sudden turn, as a badly made joint of sectional track has.",
            e => e.Kink,
            (e, v) => e with { Kink = v })
        .Text("hand", "Which way it turns, seen along the track.", e => e.Hand, (e, v) => e with { Hand = v }, false, "left", "right")
        .Check(static (e, table, key, reading) =>
        {
            foreach (var (code, message, remedy, cure) in Faults(e, key))
            {
                reading.Fault(code, key, table.Place, $"{KeyReading.LastOf(key)} {message}", remedy, cure);
            }
        });

    private static IEnumerable<(string Code, string Message, string Remedy, Cure? Cure)> Faults(ElementDraft e, string key)
    {
        int kinds = (e.Straight is null ? 0 : 1) + (e.Curve is null ? 0 : 1) + (e.Transition is null ? 0 : 1) + (e.Kink is null ? 0 : 1);
        if (kinds != 1)
        {
            yield return ("PF1013",
                kinds == 0 ? "is neither straight, curve, transition nor kink." : "is more than one of straight, curve, transition and kink.",
                "Give exactly one of them, such as { straight = 250 }.",
                kinds == 0 ? Kind(e, key) : Cure.LeaveOut($"{key}.{OneTooMany(e)}"));
            yield break;
        }

        if (e.Curve is not null && (e.Length is null) == (e.Angle is null))
        {
            yield return ("PF1013",
                e.Length is null ? "is a curve without length or angle." : "is a curve with both length and angle.",
                "Give one of them, such as { curve = 610, angle = 35, hand = \"left\" }.",
                e.Length is null ? Cure.Set(key + ".angle", 15) : Cure.LeaveOut(key + ".angle"));
        }

        if (e.Hand is null && (e.Curve is not null || e.ToRadius is not null || e.Kink is not null))
        {
            yield return ("PF1009",
                "turns, but has no hand.",
                "Add hand = \"left\" or hand = \"right\", seen along the track.",
                Cure.Text(key + ".hand", "left"));
        }

        string[] idle = [.. new[] { (e.Curve is null && e.Length is not null, "length"), (e.Curve is null && e.Angle is not null, "angle"),
            (e.Transition is null && e.ToRadius is not null, "to_radius") }.Where(i => i.Item1).Select(i => i.Item2)];
        if (idle.Length > 0)
        {
            yield return ("PF1013",
                $"has {string.Join(" and ", idle)}, which means nothing here.",
                "length and angle belong to a curve, to_radius to a transition.",
                Cure.LeaveOut($"{key}.{idle[0]}"));
        }
    }

    // Which kind to leave out of several.
    private static string OneTooMany(ElementDraft e) => e.Curve is not null && e.Straight is not null ? "straight"
        : e.Kink is not null ? "kink"
        : e.Transition is not null && e.ToRadius is null ? "transition"
        : "curve";

    // What an element lacks to be of a kind, by what it has.
    private static Cure Kind(ElementDraft e, string key) =>
        e.ToRadius is not null ? Cure.Set(key + ".transition", 150)
        : e.Length is not null || e.Angle is not null ? Cure.Set(key + ".curve", 900)
        : e.Hand is not null ? Cure.Set(key + ".transition", 150)
        : Cure.Set(key + ".straight", 250);
}
