using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Islands;

/// <summary>Heights along a second face, and how far lines across lean over to join ramp heads that do not lie straight across.</summary>
/// <param name="Profile">The heights.</param>
/// <param name="Pins">Chainages of the first face with the lean there, mm along the second.</param>
internal sealed record FarHeights(HeightProfile Profile, IReadOnlyList<(double First, double Lean)> Pins);

/// <summary>
/// Finds the ramps of a second face. A ramp is one plane from edge to edge, so that it prints lying on its slope: it goes through a head line, level, and
/// the foot of
/// the first face. The second face may have its head at a place of its own, told by a length, or its foot at a height of its own; the one follows from the
/// other. Both
/// faces fall alike, so a gradient of its own it may not have.
/// </summary>
/// <param name="first">The platform by its first face.</param>
/// <param name="second">The same by its second, its ends where they lie.</param>
/// <param name="near">The first face, planned.</param>
/// <param name="reach">The second edge's reach by chainage, as far as it is known.</param>
/// <param name="findings">Takes what is wrong.</param>
internal sealed class FarRamps(PlatformRequest first, PlatformRequest second, FacePlan near, Func<double, double> reach, List<Finding> findings)
{
    // Lines across come back to even over so many times what they lean, mm, or over this at least.
    private const double Ease = 3, LeastEase = 30;

    // A head line leans by no more than this share of the platform's width there.
    private const double MostLean = 0.6;

    // A length and a foot that are both stated agree within this, mm.
    private const double Agreement = 0.05;

    // A length found by halves is exact to far below the plan grid.
    private const int Halvings = 60;
    private const double Shortest = 0.1;

    private readonly FaceSpec face = second.Spec.Face;
    private readonly CrossLadder even = IslandTracks.Ladder(first.Spec.Face, first.Chart, second.Spec.Face, second.Chart, first.Site);

    /// <summary>An end of the platform: of either face, with where its ramp begins to fall.</summary>
    private sealed record End(
        bool AtStart, double NearEnd, double NearHead, double NearFoot, double FarEnd, double EvenHead, double Inward, RampSpec? Asked, string Key);

    /// <summary>The heights; null where there are none, with the fault among the findings.</summary>
    public FarHeights? Find()
    {
        var profile = near.Profile;
        bool reversed = even.Across(profile.From) > even.Across(profile.To);
        var start = EndOf(true, profile.From, profile.StartHead, profile.StartFoot, reversed);
        var end = EndOf(false, profile.To, profile.EndHead, profile.EndFoot, reversed);
        if (start is null || end is null)
        {
            findings.Add(IslandFindings.NoMeeting(second.Spec.FaceKey, first.Spec.Face, face));
            return null;
        }

        if (Ramp(start) is not { } one || Ramp(end) is not { } other || !Apart(start, one.Head, end, other.Head))
        {
            return null;
        }

        var (low, high) = reversed ? ((end, other), (start, one)) : ((start, one), (end, other));
        return new(
            new(low.Item1.FarEnd, low.Item2.Head, high.Item2.Head, high.Item1.FarEnd, low.Item2.Foot, profile.Level, high.Item2.Foot),
            Pins(start, one.Head - start.EvenHead, end, other.Head - end.EvenHead));
    }

    private End? EndOf(bool atStart, double end, double head, double foot, bool reversed)
    {
        if (even.Across(end) is not { } across || even.Across(head) is not { } over)
        {
            return null;
        }

        // The second face's start is its lower chainage, wherever that of the first one lies.
        bool farStart = atStart != reversed;
        return new(
            atStart, end, head, foot, across, over, farStart ? 1 : -1, farStart ? face.StartRamp : face.EndRamp,
            $"{second.Spec.FaceKey}.ramps.{(farStart ? "start" : "end")}");
    }

    private (double Head, double Foot)? Ramp(End end)
    {
        if (end.NearHead == end.NearEnd)
        {
            return Level(end);
        }

        if (end.Asked is not { } asked)
        {
            return (end.EvenHead, Foot(end, end.EvenHead));
        }

        if (asked.Gradient is not null)
        {
            double run = Math.Abs(end.EvenHead - end.FarEnd);
            findings.Add(IslandFindings.OwnGradient($"{end.Key}.gradient", run / (near.Profile.Level - Foot(end, end.EvenHead)), run));
            return null;
        }

        return Stated(end, asked);
    }

    // Where the first face has no ramp, the second can have none either.
    private (double Head, double Foot)? Level(End end)
    {
        if (end.Asked is null)
        {
            return (end.FarEnd, near.Profile.Level);
        }

        findings.Add(IslandFindings.RampOfOneFace(end.Key, first.Spec.Face.Track, $"{first.Spec.Key}.ramps.{(end.AtStart ? "start" : "end")}"));
        return null;
    }

    // A ramp whose length or foot is stated.
    private (double Head, double Foot)? Stated(End end, RampSpec asked)
    {
        double length = asked.Length ?? Length(end, asked.FootHeight!.Value + second.Site.RailTop), head = end.FarEnd + (end.Inward * length);
        double foot = Foot(end, head), told = foot - second.Site.RailTop, lean = Math.Abs(head - end.EvenHead), width = Width(end);
        if (asked is { Length: not null, FootHeight: { } wanted } && Math.Abs(wanted - told) > Agreement)
        {
            findings.Add(IslandFindings.RampTwice($"{end.Key}.foot", length, told, wanted));
            return null;
        }

        if (lean > MostLean * width || Crowded(end, head - end.EvenHead))
        {
            findings.Add(Leaning(end, asked, length, lean, width));
            return null;
        }

        if (foot < Lowest)
        {
            findings.Add(FootLow(end, asked, length, told));
            return null;
        }

        return (head, foot);
    }

    private Finding Leaning(End end, RampSpec asked, double length, double lean, double width)
    {
        double most = 0.98 * Math.Min(MostLean * width, Room(end)), level = Math.Abs(end.EvenHead - end.FarEnd);
        double lowest = Math.Floor((Length(end, Lowest) - Hair) * 10) / 10;
        double right = length > level
            ? Math.Min(lowest, Math.Floor((level + most) * 10) / 10) : Math.Ceiling(Math.Max(Shortest, level - most) * 10) / 10;
        return IslandFindings.RampLeans($"{end.Key}.{(asked.Length is null ? "foot" : "length")}", length, lean, most,
            asked.Length is null ? Foot(end, end.FarEnd + (end.Inward * right)) - second.Site.RailTop : right);
    }

    private Finding FootLow(End end, RampSpec asked, double length, double told)
    {
        double right = Math.Floor((Length(end, Lowest) - Hair) * 10) / 10;
        return IslandFindings.FarFootLow($"{end.Key}.{(asked.Length is null ? "foot" : "length")}", length, told, Lowest - second.Site.RailTop,
            asked.Length is null ? Math.Ceiling((Lowest + Hair - second.Site.RailTop) * 100) / 100 : right);
    }

    // The deck, and the coping, lie over the baseboard, mm; with what is left for the edge to move.
    private double Lowest => Math.Max(first.Spec.Deck.Thickness, first.Spec.Coping.Thickness);

    private const double Hair = 0.1;

    // Whether there is no room between the ramps for lines across to come back to even.
    private bool Crowded(End end, double lean) => Math.Abs(lean) > Room(end);

    private double Room(End end) => (near.Profile.EndHead - near.Profile.StartHead) / (2 * Ease);

    private double Width(End end) => (Far(end.EvenHead) - near.ToLayout(end.NearHead, near.CopingFront.At(end.NearHead))).Length;

    private Point2 Far(double chainage) => second.Chart.PointAt(chainage, face.Side.Outward(reach(chainage)));

    // Height of the ramp's plane at the second face's end: it falls from the head line in proportion to the distance from it.
    private double Foot(End end, double head)
    {
        Point2 a = near.ToLayout(end.NearHead, near.CopingFront.At(end.NearHead)), along = Far(head) - a;
        double fall = near.Profile.Level - end.NearFoot;
        Point2 nearEnd = near.ToLayout(end.NearEnd, near.CopingFront.At(end.NearEnd));
        return near.Profile.Level - (fall * Point2.Cross(along, Far(end.FarEnd) - a) / Point2.Cross(along, nearEnd - a));
    }

    // The length with which the foot comes to a height over the baseboard: the longer, the lower.
    private double Length(End end, double foot)
    {
        double low = Shortest, high = face.To - face.From;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Foot(end, end.FarEnd + (end.Inward * middle)) > foot ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    private bool Apart(End start, double one, End end, double other)
    {
        double level = (other - one) * Math.Sign(end.FarEnd - start.FarEnd);
        if (level >= -Tolerances.Rounding)
        {
            return true;
        }

        double a = Math.Abs(one - start.FarEnd), b = Math.Abs(other - end.FarEnd), length = Math.Abs(end.FarEnd - start.FarEnd);
        findings.Add(IslandFindings.FarRampsTooLong($"{second.Spec.FaceKey}.ramps", a, b, length));
        return false;
    }

    private List<(double First, double Lean)> Pins(End start, double one, End end, double other)
    {
        if (Math.Abs(one) < Tolerances.Rounding && Math.Abs(other) < Tolerances.Rounding)
        {
            return [];
        }

        double half = (end.NearHead - start.NearHead) / 2;
        List<(double, double)> pins = [(start.NearEnd, 0)];
        void Add(double at, double lean)
        {
            if (at > pins[^1].Item1 + Tolerances.Rounding)
            {
                pins.Add((at, lean));
            }
        }

        Add(start.NearHead, one);
        Add(start.NearHead + Math.Min(half, Math.Max(LeastEase, Ease * Math.Abs(one))), 0);
        Add(end.NearHead - Math.Min(half, Math.Max(LeastEase, Ease * Math.Abs(other))), 0);
        Add(end.NearHead, other);
        Add(end.NearEnd, 0);
        return pins;
    }
}
