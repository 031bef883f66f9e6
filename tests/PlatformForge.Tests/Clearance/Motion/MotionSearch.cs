namespace PlatformForge.Tests.Clearance.Motion;

/// <summary>The nearest that anything was found to come, and how it stood.</summary>
internal sealed record Nearest(double Distance, MovingPart Part, double Front, Off Off)
{
    public override string ToString() => FormattableString.Invariant($"{Distance:F4} mm: {Part.Vehicle} ({Part.Part.Name}), foremost axle ")
        + FormattableString.Invariant($"at {Front:F2}, {Off}");
}

/// <summary>Looks for the pose in which a part comes nearest to a platform: first anywhere and anyhow, then downhill from the best of those. Every pose tried
/// is one that the vehicle really takes.</summary>
internal sealed class MotionSearch(OwnTrack track, PlatformFace face, Random random)
{
    private const int Tries = 220, Kept = 5, Rounds = 16;

    /// <summary>Searches a part while it passes chainages of its track; null when it never comes there.</summary>
    public Nearest? Of(MovingPart part, double from, double to, bool startsAtBuffers)
    {
        double low = from - part.Front - 3, high = to + part.Rear + 3;
        low = startsAtBuffers ? Math.Max(low, part.Back) : low;
        var found = new List<Nearest>();
        for (int i = 0; i < Tries && high > low; i++)
        {
            double front = low + ((high - low) * (i + random.NextDouble()) / Tries);
            if (Try(part, front, Any(part)) is { } near)
            {
                found.Add(near);
            }
        }

        return found.OrderBy(f => f.Distance).Take(Kept).Select(f => Downhill(f, low, high, (high - low) / Tries)).MinBy(f => f.Distance);
    }

    private Nearest? Try(MovingPart part, double front, Off off) =>
        part.Body.Stand(track, front, off) is { } frame && face.Distance(part.Ring(frame, off)) is var distance && double.IsFinite(distance)
            ? new(distance, part, front, off) : null;

    // Mostly as far as it goes, one way or the other.
    private Off Any(MovingPart part)
    {
        var most = part.Most;
        double Of(double m) => m == 0 ? 0 : random.Next(5) == 0 ? m * ((2 * random.NextDouble()) - 1) : random.Next(2) == 0 ? m : -m;
        double lead = Of(most.LeadFront), trail = Of(most.TrailFront);
        bool apart = random.Next(2) == 0;
        return new(
            lead, random.Next(2) == 0 ? lead : Of(most.LeadRear), trail, random.Next(2) == 0 ? trail : Of(most.TrailRear),
            apart ? Of(most.LeadPivot) : Math.Sign(lead) * most.LeadPivot, apart ? Of(most.TrailPivot) : Math.Sign(trail) * most.TrailPivot,
            Of(most.Roll), Of(most.Cant), Height(part));
    }

    // The underside, the top, anything between, or what is as high as the coping.
    private double Height(MovingPart part)
    {
        var (low, high) = face.Coping;
        double at = low + ((high - low) * ((3 * random.NextDouble()) - 1));
        return random.Next(6) switch
        {
            0 => 0,
            1 => 1,
            2 => random.NextDouble(),
            _ =>
            Math.Clamp((at - part.Part.ZLow) / (part.Part.ZHigh - part.Part.ZLow), 0, 1)
        };
    }

    // One figure after another: to its ends, or a little to either side; steps halve.
    private Nearest Downhill(Nearest best, double low, double high, double step)
    {
        for (int round = 0; round < Rounds; round++, step /= 2)
        {
            double share = 1.0 / (1 << Math.Min(round, 10));
            foreach (double front in new[] { best.Front - step, best.Front + step })
            {
                best = Better(best, Try(best.Part, Math.Clamp(front, low, high), best.Off));
            }

            for (int figure = 0; figure < 9; figure++)
            {
                double most = Figure(best.Part.Most, figure), least = figure == 8 ? 0 : -most, now = Figure(best.Off, figure);
                foreach (double value in most == 0 ? [] : round < 3 ? [least, most, (least + most) / 2]
                    : new[] { Math.Max(least, now - (share * most)), Math.Min(most, now + (share * most)) })
                {
                    best = Better(best, Try(best.Part, best.Front, With(best.Off, figure, value)));
                }
            }
        }

        return best;
    }

    private static Nearest Better(Nearest a, Nearest? b) => b?.Distance < a.Distance ? b : a;

    private static double Figure(in Off off, int figure) => figure switch
    {
        0 => off.LeadFront,
        1 => off.LeadRear,
        2 => off.TrailFront,
        3 => off.TrailRear,
        4 => off.LeadPivot,
        5 => off.TrailPivot,
        6 => off.Roll,
        7 => off.Cant,
        _ => off.Height,
    };

    private static Off With(Off off, int figure, double value) => figure switch
    {
        0 => off with { LeadFront = value },
        1 => off with { LeadRear = value },
        2 => off with { TrailFront = value },
        3 => off with { TrailRear = value },
        4 => off with { LeadPivot = value },
        5 => off with { TrailPivot = value },
        6 => off with { Roll = value },
        7 => off with { Cant = value },
        _ => off with { Height = value },
    };
}
