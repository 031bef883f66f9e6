using PlatformForge.Clearance.Vehicles;

namespace PlatformForge.Tests.Clearance.Motion;

/// <summary>How a body is off: each of four axles to the left of the track's middle and both ends on their pivots, mm; how it leans on its springs and by the
/// cant, radians; and which height of a part is looked at, a share of it.</summary>
internal record struct Off(double LeadFront, double LeadRear, double TrailFront, double TrailRear, double LeadPivot, double TrailPivot, double Roll,
    double Cant, double Height);

/// <summary>
/// What stands on two guided points, for tests: a body on its end axles, on two bogies, on frames of others; or a bogie on its axles. Axles stand where they
/// are put, square to the track off its middle; chords are found by the secant rule.
/// </summary>
internal sealed class RailBody
{
    private const int Rounds = 40;

    private readonly double centres, leadBase, trailBase, leadAhead, trailAhead;

    public RailBody(double centres, double leadBase, double trailBase, double leadAhead, double trailAhead)
    {
        (this.centres, this.leadBase, this.trailBase, this.leadAhead, this.trailAhead) = (centres, leadBase, trailBase, leadAhead, trailAhead);
    }

    /// <summary>The frame whose foremost axle stands at a chainage, x forward from midway between the guided points; null where there is no place.</summary>
    public Spot? Stand(OwnTrack track, double front, in Off off)
    {
        if (Frame(track, front, leadBase, leadAhead, off.LeadFront, off.LeadRear, off.LeadPivot) is not { } lead)
        {
            return null;
        }

        Off given = off;
        Spot? Trail(double at) => Frame(track, at, trailBase, trailAhead, given.TrailFront, given.TrailRear, given.TrailPivot);
        double guess = front - (leadBase / 2) + leadAhead - centres - trailAhead + (trailBase / 2);
        double? place = Secant(guess, at => Trail(at) is { } t ? Distance(lead, t) - centres : double.NaN);
        if (place is not { } found || Trail(found) is not { } trail)
        {
            return null;
        }

        double x = lead.X - trail.X, y = lead.Y - trail.Y, length = Math.Sqrt((x * x) + (y * y));
        return new((lead.X + trail.X) / 2, (lead.Y + trail.Y) / 2, x / length, y / length);
    }

    private static Spot? Frame(OwnTrack track, double front, double wheelbase, double ahead, double frontAside, double rearAside, double pivotAside)
    {
        var first = track.At(front, frontAside);
        if (wheelbase == 0)
        {
            return first;
        }

        if (Secant(front - wheelbase, at => Distance(first, track.At(at, rearAside)) - wheelbase) is not { } place)
        {
            return null;
        }

        var second = track.At(place, rearAside);
        double fx = (first.X - second.X) / wheelbase, fy = (first.Y - second.Y) / wheelbase;
        return new(((first.X + second.X) / 2) + (fx * ahead) - (fy * pivotAside), ((first.Y + second.Y) / 2) + (fy * ahead) + (fx * pivotAside), fx, fy);
    }

    // Where something that grows backwards along the track by about a millimetre a millimetre is nil. At a kink it may jump by a hair.
    private static double? Secant(double guess, Func<double, double> excess)
    {
        double a = guess, fa = excess(a), b = guess + fa, fb = double.NaN;
        for (int i = 0; i < Rounds; i++)
        {
            fb = excess(b);
            if (Math.Abs(fb) < 1e-10 || double.IsNaN(fb))
            {
                break;
            }

            double slope = Math.Abs(b - a) > 1e-13 ? (fb - fa) / (b - a) : -1;
            (a, fa, b) = (b, fb, b - (fb / (slope is < -0.3 and > -3 ? slope : -1)));
        }

        return Math.Abs(fb) < 0.02 ? b : null;
    }

    private static double Distance(in Spot a, in Spot b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)));
}

/// <summary>One part on what carries it, and how far all that may be off.</summary>
/// <param name="Vehicle">Name, for reports.</param>
/// <param name="Part">The part, its outline in the frame of <paramref name="Body"/>.</param>
/// <param name="Body">What carries it.</param>
/// <param name="Most">The most of every way to be off.</param>
/// <param name="Centre">Height of the roll centre, mm.</param>
/// <param name="Front">How far the outline reaches forward of the foremost axle, mm.</param>
/// <param name="Rear">How far it reaches back from there.</param>
/// <param name="Back">How far back from there the whole vehicle's end is.</param>
internal sealed record MovingPart(string Vehicle, VehiclePart Part, RailBody Body, Off Most, double Centre, double Front, double Rear, double Back)
{
    /// <summary>Every part of a vehicle, either way round where it runs so.</summary>
    public static IEnumerable<MovingPart> Of(Vehicle vehicle, RunningPlay play)
    {
        foreach (var v in vehicle.EitherWayRound ? [vehicle, BruteSweep.TurnedRound(vehicle)] : new[] { vehicle })
        {
            double half = v.PivotCentres / 2, foremost = half - v.LeadingPivotAhead + (v.LeadingWheelbase / 2);
            double rearEnd = v.Parts.Min(p => p.Outline.Min(c => c.X)
                + (p.Carrier switch { PartCarrier.LeadingBogie => half, PartCarrier.TrailingBogie => -half, _ => 0 }));
            foreach (var part in v.Parts)
            {
                bool body = part.Carrier == PartCarrier.Body;
                double wheelbase = part.Carrier == PartCarrier.LeadingBogie ? v.LeadingWheelbase : v.TrailingWheelbase, q = play.Wheelset;
                double front = body ? foremost : wheelbase / 2, pivot = body ? 0 : part.Carrier == PartCarrier.LeadingBogie ? half : -half;
                var rail = body ? new RailBody(v.PivotCentres, v.LeadingWheelbase, v.TrailingWheelbase, v.LeadingPivotAhead, v.TrailingPivotAhead)
                    : new RailBody(wheelbase, 0, 0, 0, 0);
                double leadPivot = body && v.LeadingWheelbase > 0 && !v.Hangs ? play.Pivot : 0,
                    trailPivot = body && v.TrailingWheelbase > 0 && !v.Hangs ? play.Pivot : 0;
                yield return new(
                    v.Name, part, rail, new(q, q, q, q, leadPivot, trailPivot, body ? play.Roll : 0, play.Cant, 1), play.RollCentreHeight,
                    part.Outline.Max(c => c.X) - front, front - part.Outline.Min(c => c.X), front + pivot - rearEnd);
            }
        }
    }

    /// <summary>The corners of the outline in the layout with their heights above rail top, for a frame and a way to be off.</summary>
    public (double X, double Y, double Z)[] Ring(in Spot frame, in Off off)
    {
        double z = Part.ZLow + (off.Height * (Part.ZHigh - Part.ZLow));
        var ring = new (double, double, double)[Part.Outline.Count];
        for (int i = 0; i < ring.Length; i++)
        {
            var (x, y) = (Part.Outline[i].X, Part.Outline[i].Y);

            // On its springs about the roll centre first, then with the track about rail top.
            double y1 = (y * Math.Cos(off.Roll)) - ((z - Centre) * Math.Sin(off.Roll)),
                z1 = Centre + (y * Math.Sin(off.Roll)) + ((z - Centre) * Math.Cos(off.Roll));
            double y2 = (y1 * Math.Cos(off.Cant)) - (z1 * Math.Sin(off.Cant)), z2 = (y1 * Math.Sin(off.Cant)) + (z1 * Math.Cos(off.Cant));
            ring[i] = (frame.X + (frame.Fx * x) - (frame.Fy * y2), frame.Y + (frame.Fy * x) + (frame.Fx * y2), z2);
        }

        return ring;
    }
}
