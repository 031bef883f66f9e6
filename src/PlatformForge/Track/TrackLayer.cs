using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track;

/// <summary>Front door of the room: lays an alignment end to end into a centreline.</summary>
public static class TrackLayer
{
    /// <summary>Longest track taken, mm: a kilometre of model track is a slip of the decimal point.</summary>
    public const double LongestTrack = 1e6;

    /// <summary>
    /// Lays the elements tangent to one another. Radii, lengths and angles that are not positive finite numbers, curves of
    /// more than a full turn and tracks over <see cref="LongestTrack"/> are errors.
    /// </summary>
    public static Outcome<Centreline> Lay(AlignmentSpec spec)
    {
        var findings = new List<Finding>();
        if (spec.Elements.Count == 0)
        {
            return Outcome.Fault<Centreline>(Finding.Error("PF2001", spec.Key, $"The alignment of track '{spec.Name}' has no elements.",
                "List at least one, such as { straight = 600 }."));
        }

        var elements = Joined(spec, findings);
        double total = elements.Sum(e => e.Length);
        if (total > LongestTrack)
        {
            findings.Add(Finding.Error("PF2006", spec.Key, Invariant($"The track is {total:G4} mm long, over the limit of {LongestTrack:F0} mm."),
                "Lengths are in millimetres of the model; check for a slipped decimal point."));
        }

        return findings.Count > 0 ? Outcome.Fault<Centreline>(findings) : Outcome.Of(new Centreline(spec.Name, elements));
    }

    // The elements end to end, without those that are at fault.
    private static List<CentrelineElement> Joined(AlignmentSpec spec, List<Finding> findings)
    {
        var elements = new List<CentrelineElement>();
        var (point, heading, curvature) = (spec.Start, spec.Heading, 0.0);
        for (int i = 0; i < spec.Elements.Count; i++)
        {
            string key = Invariant($"{spec.Key}[{i}]");
            int faults = findings.Count;
            if (spec.Elements[i] is KinkSpec kink)
            {
                heading += Turn(kink, key, findings);
                continue;
            }

            var (length, k0, k1) = Curvatures(spec.Elements[i], curvature, key, findings);
            if (findings.Count > faults)
            {
                continue;
            }

            if (Math.Abs((k0 + k1) / 2 * length) > 2 * Math.PI)
            {
                const string Remedy = "Give the length of this stretch only, or a larger radius.";
                findings.Add(Finding.Error("PF2005", key, "The element turns by more than a full circle.", Remedy)
                    .Curing(Shorter(spec.Elements[i], key, length, (k0 + k1) / 2)));
                continue;
            }

            var element = new CentrelineElement(point, heading, length, k0, k1);
            elements.Add(element);
            (point, heading, curvature) = (element.At(length).Position, element.HeadingAt(length), k1);
        }

        return elements;
    }

    // Half a circle of the element's curvature, where its length is stated.
    private static Cure? Shorter(AlignmentElementSpec element, string key, double length, double curvature) => element switch
    {
        TransitionSpec => Cure.Set(key + ".transition", Math.Floor(length * Math.PI / Math.Abs(curvature * length))),
        CurveSpec { Length: not null } => Cure.Set(key + ".length", Math.Floor(Math.PI / Math.Abs(curvature))),
        _ => null,
    };

    // A kink beyond this would derail anything, radians.
    private const double SharpestKink = 30 * Math.PI / 180;

    private static double Turn(KinkSpec kink, string key, List<Finding> findings)
    {
        if (!(kink.Turn > 0 && kink.Turn <= SharpestKink))
        {
            findings.Add(Finding.Error("PF2007", $"{key}.kink", Invariant($"The kink turns by {kink.Turn * 180 / Math.PI:0.###}°."),
                "Give an angle above 0 and not over 30 degrees, with hand = \"left\" or \"right\"."));
        }

        return (int)kink.Hand * kink.Turn;
    }

    private static (double Length, double Start, double End) Curvatures(AlignmentElementSpec element, double curvature, string key, List<Finding> findings)
    {
        double Positive(double value, string part, string code, string what)
        {
            if (!(double.IsFinite(value) && value > 0 && value <= LongestTrack))
            {
                findings.Add(Finding.Error(code, $"{key}.{part}", Invariant($"The {what} is {value:G6}."), $"Give a {what} above 0 and not over 1000000 mm."));
            }

            return value;
        }

        switch (element)
        {
            case StraightSpec straight:
                return (Positive(straight.Length, "straight", "PF2002", "length"), 0, 0);
            case CurveSpec curve:
                double k = (int)curve.Hand / Positive(curve.Radius, "curve", "PF2003", "radius");
                double length = curve.Length is { } l
                    ? Positive(l, "length", "PF2002", "length")
                    : curve.Radius * Positive(curve.Angle ?? double.NaN, "angle", "PF2004", "angle");
                return (length, k, k);
            case TransitionSpec transition:
                double to = transition.ToRadius is { } r ? (int)transition.Hand / Positive(r, "to_radius", "PF2003", "radius") : 0;
                return (Positive(transition.Length, "transition", "PF2002", "length"), curvature, to);
            default:
                throw new ArgumentOutOfRangeException(nameof(element), element.GetType().Name);
        }
    }
}
