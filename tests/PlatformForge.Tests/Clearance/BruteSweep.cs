using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Tests.Clearance;

/// <summary>
/// A sweeper for tests only, that shares nothing with the product but the centreline's points: chords are placed by false position, poses are
/// taken in fine steps, finer where an axle passes a kink, and at each station every edge of every part is cut with the square to the chart. Slow.
/// </summary>
internal static class BruteSweep
{
    // How near, mm of run, a pose comes to an axle standing on a kink.
    private const double KinkStep = 1e-4;

    public sealed record Reach(double[] Left, double[] Right);

    /// <summary>Reach of each part at the given chart chainages.</summary>
    public static Reach[] Sweep(Centreline ride, Centreline chart, Vehicle vehicle, double[] stations, double step, (double From, double To)? leading = null)
    {
        var reach = vehicle.Parts.Select(_ => new Reach(Fill(stations.Length), Fill(stations.Length))).ToArray();
        Run(ride, chart, vehicle, stations, step, leading, reach);
        if (vehicle.EitherWayRound)
        {
            Run(ride, chart, TurnedRound(vehicle), stations, step, leading, reach);
        }

        return reach;
    }

    /// <summary>Points in the layout that a part really touches: its corners at every pose, and its edges where squares to the chart at the given chainages
    /// cut them. Nothing is taken between two poses, where a corner's way may be hollow at a kink.</summary>
    public static List<Point2> Touched(Centreline ride, Centreline chart, Vehicle vehicle, double[] stations, double step)
    {
        var touched = new List<Point2>();
        var frames = stations.Select(chart.At).ToArray();
        var reach = vehicle.Parts.Select(_ => new Reach(Fill(stations.Length), Fill(stations.Length))).ToArray();
        foreach (var v in vehicle.EitherWayRound ? [vehicle, TurnedRound(vehicle)] : new[] { vehicle })
        {
            Poses(ride, v, frames, step, null, null, (part, ring) =>
            {
                Cut(ring, frames, reach[part]);
                touched.AddRange(ring.Where(p => chart.Locate(p).Chainage is var s && s >= stations[0] && s <= stations[^1]));
            });
        }

        foreach (var (left, right) in reach)
        {
            touched.AddRange(frames.Zip(left).Where(f => double.IsFinite(f.Second)).Select(f => f.First.At(f.Second)));
            touched.AddRange(frames.Zip(right).Where(f => double.IsFinite(f.Second)).Select(f => f.First.At(-f.Second)));
        }

        return touched;
    }

    /// <summary>Reach of each part of one body of a set at the given chainages while the set runs, its foremost body's leading pivot from one chainage to
    /// another. Bodies are placed in a chain: a shared bogie is found once, for the body ahead, and the body behind is hung on it.</summary>
    public static Reach[] SweepBody(Centreline track, IReadOnlyList<Vehicle> bodies, int body, double[] stations, double step, (double From, double To) leading)
    {
        var reach = bodies[body].Parts.Select(_ => new Reach(Fill(stations.Length), Fill(stations.Length))).ToArray();
        Run(track, track, bodies[body], stations, step, leading, reach, u => Chain(track, bodies, u)[body]);
        return reach;
    }

    /// <summary>Frames of the bodies of an articulated set, foremost first: body, leading bogie, trailing bogie.</summary>
    internal static (Frame Body, Frame Lead, Frame Trail)[] Chain(Centreline ride, IReadOnlyList<Vehicle> bodies, double u)
    {
        var frames = new (Frame, Frame, Frame)[bodies.Count];
        var lead = Bogie(ride, bodies[0].LeadingWheelbase, u + (bodies[0].LeadingWheelbase / 2));
        double front = u;
        for (int i = 0; i < bodies.Count; i++)
        {
            var (v, from) = (bodies[i], lead);
            double about = front + (v.TrailingWheelbase / 2);
            double trailFront = Root(about - (1.15 * v.PivotCentres), about - (0.95 * v.PivotCentres),
                s => (from.Origin - Bogie(ride, v.TrailingWheelbase, s).Origin).Length - v.PivotCentres);
            var trail = Bogie(ride, v.TrailingWheelbase, trailFront);
            var join = lead.Origin - trail.Origin;
            frames[i] = (new((lead.Origin + trail.Origin) * 0.5, join * (1 / join.Length)), lead, trail);
            (lead, front) = (trail, trailFront - (v.TrailingWheelbase / 2));
        }

        return frames;
    }

    public static Vehicle TurnedRound(Vehicle v) => v with
    {
        LeadingPivotAhead = -v.TrailingPivotAhead,
        TrailingPivotAhead = -v.LeadingPivotAhead,
        LeadingWheelbase = v.TrailingWheelbase,
        TrailingWheelbase = v.LeadingWheelbase,
        Parts = [.. v.Parts.Select(p => p with { Outline = [.. p.Outline.Select(q => new Point2(-q.X, -q.Y))], Carrier = Other(p.Carrier) })],
    };

    private static PartCarrier Other(PartCarrier c) =>
        c == PartCarrier.LeadingBogie ? PartCarrier.TrailingBogie : c == PartCarrier.TrailingBogie ? PartCarrier.LeadingBogie : c;

    private static double[] Fill(int n) => [.. Enumerable.Repeat(double.NegativeInfinity, n)];

    private static void Run(Centreline ride, Centreline chart, Vehicle v, double[] stations, double step, (double From, double To)? leading, Reach[] reach,
        Func<double, (Frame Body, Frame Lead, Frame Trail)>? stand = null)
    {
        var frames = stations.Select(chart.At).ToArray();
        var before = new TrackPlace[v.Parts.Count][];
        Poses(ride, v, frames, step, leading, stand, (part, ring) =>
        {
            Cut(ring, frames, reach[part]);
            var places = Array.ConvertAll(ring, p => chart.Locate(p, before[part] is { } old ? old[0].Chainage : chart.Locate(p).Chainage));
            Trace(before[part], places, stations, reach[part]);
            before[part] = places;
        });
    }

    private delegate (Frame Body, Frame Lead, Frame Trail) Stand(double u);

    // Every part's ring in the layout at every pose.
    private static void Poses(Centreline ride, Vehicle v, TrackFrame[] frames, double step, (double From, double To)? leading,
        Func<double, (Frame Body, Frame Lead, Frame Trail)>? stand, Action<int, Point2[]> at)
    {
        double length = v.Parts.SelectMany(p => p.Outline).Max(p => Math.Abs(p.X)) + v.PivotCentres + Math.Abs(v.LeadingPivotAhead)
            + Math.Abs(v.TrailingPivotAhead);
        double from = leading?.From ?? ride.Locate(frames[0].Position).Chainage - length,
            to = leading?.To ?? ride.Locate(frames[^1].Position).Chainage + (2 * length);
        Stand place = u => stand is null ? Place(ride, v, u) : stand(u);
        var last = (At: from, Frames: place(from));
        Show(v, last.Frames, at);
        int steps = (int)Math.Ceiling((to - from) / step);
        for (int i = 1; i <= steps; i++)
        {
            double u = from + ((to - from) * i / steps);
            var next = (At: u, Frames: place(u));
            OntoKinks(ride, place, last, next, frames => Show(v, frames, at));
            Show(v, next.Frames, at);
            last = next;
        }
    }

    private static void Show(Vehicle v, (Frame Body, Frame Lead, Frame Trail) frames, Action<int, Point2[]> at)
    {
        for (int part = 0; part < v.Parts.Count; part++)
        {
            var carrier = v.Parts[part].Carrier switch { PartCarrier.LeadingBogie => frames.Lead, PartCarrier.TrailingBogie => frames.Trail, _ => frames.Body };
            at(part, [.. v.Parts[part].Outline.Select(p => carrier.Origin + (p.X * carrier.Along) + (p.Y * new Point2(-carrier.Along.Y, carrier.Along.X)))]);
        }
    }

    // Ways are bent where an axle stands on a kink. A straight join across that is wrong by a quarter of the step times the turn and the lever of the corner,
    // some 0.003 mm for a truck's frames at 15 mrad, so poses close in on it from both sides.
    private static void OntoKinks(Centreline ride, Stand place, (double At, (Frame Body, Frame Lead, Frame Trail) Frames) low,
        (double At, (Frame Body, Frame Lead, Frame Trail) Frames) high, Action<(Frame Body, Frame Lead, Frame Trail)> show)
    {
        if (high.At - low.At < KinkStep || !ride.Kinks.Any(k => Axles(low.Frames).Zip(Axles(high.Frames))
            .Any(a => (a.First < k.Chainage) != (a.Second < k.Chainage))))
        {
            return;
        }

        double u = (low.At + high.At) / 2;
        var middle = (At: u, Frames: place(u));
        OntoKinks(ride, place, low, middle, show);
        show(middle.Frames);
        OntoKinks(ride, place, middle, high, show);
    }

    private static double[] Axles((Frame Body, Frame Lead, Frame Trail) frames) => [frames.Lead.Front, frames.Lead.Rear, frames.Trail.Front, frames.Trail.Rear];

    private static void Cut(Point2[] ring, TrackFrame[] frames, Reach reach)
    {
        for (int s = 0; s < frames.Length; s++)
        {
            var frame = frames[s];
            for (int i = 0; i < ring.Length; i++)
            {
                Point2 a = ring[i] - frame.Position, b = ring[(i + 1) % ring.Length] - frame.Position;
                double alongA = Point2.Dot(a, frame.Tangent), alongB = Point2.Dot(b, frame.Tangent);
                if ((alongA > 0 && alongB > 0) || (alongA < 0 && alongB < 0) || alongA == alongB)
                {
                    continue;
                }

                double offset = Point2.Cross(frame.Tangent, a + ((b - a) * (alongA / (alongA - alongB))));
                reach.Left[s] = Math.Max(reach.Left[s], offset);
                reach.Right[s] = Math.Max(reach.Right[s], -offset);
            }
        }
    }

    // A corner passes stations between two poses; its way is taken as straight, which is wrong by a versine of the fine step only.
    private static void Trace(TrackPlace[]? before, TrackPlace[] now, double[] stations, Reach reach)
    {
        for (int i = 0; before is not null && i < now.Length; i++)
        {
            var (low, high) = before[i].Chainage < now[i].Chainage ? (before[i], now[i]) : (now[i], before[i]);
            for (int s = 0; s < stations.Length; s++)
            {
                if (stations[s] >= low.Chainage && stations[s] <= high.Chainage && high.Chainage > low.Chainage)
                {
                    double offset = low.Offset + ((high.Offset - low.Offset) * (stations[s] - low.Chainage) / (high.Chainage - low.Chainage));
                    reach.Left[s] = Math.Max(reach.Left[s], offset);
                    reach.Right[s] = Math.Max(reach.Right[s], -offset);
                }
            }
        }
    }

    /// <summary>A carrier, with the chainages of the axles that carry it; a body has none.</summary>
    internal sealed record Frame(Point2 Origin, Point2 Along, double Front = double.NaN, double Rear = double.NaN);

    internal static (Frame Body, Frame Lead, Frame Trail) Place(Centreline ride, Vehicle v, double u)
    {
        var lead = Bogie(ride, v.LeadingWheelbase, u + (v.LeadingWheelbase / 2), v.LeadingPivotAhead);

        // A truck's arm is short beside what its pivot lies off the track.
        double about = u + v.LeadingPivotAhead - v.TrailingPivotAhead + (v.TrailingWheelbase / 2),
            wide = v.LeadingPivotAhead == 0 && v.TrailingPivotAhead == 0 ? 0 : 0.3;
        double front = Root(
            about - ((1.15 + wide) * v.PivotCentres),
            about - ((0.95 - wide) * v.PivotCentres),
            s => (lead.Origin - Bogie(ride, v.TrailingWheelbase, s, v.TrailingPivotAhead).Origin).Length - v.PivotCentres);
        var trail = Bogie(ride, v.TrailingWheelbase, front, v.TrailingPivotAhead);
        var join = lead.Origin - trail.Origin;
        return (new((lead.Origin + trail.Origin) * 0.5, join * (1 / join.Length)), lead, trail);
    }

    private static Frame Bogie(Centreline ride, double wheelbase, double front, double pivotAhead = 0)
    {
        var ahead = ride.At(front);
        if (wheelbase == 0)
        {
            return new(ahead.Position, ahead.Tangent, front, front);
        }

        double rear = Root(front - (1.15 * wheelbase), front - (0.95 * wheelbase), s => (ahead.Position - ride.At(s).Position).Length - wheelbase);
        var behind = ride.At(rear).Position;
        var axle = ahead.Position - behind;
        return new(((ahead.Position + behind) * 0.5) + (axle * (pivotAhead / axle.Length)), axle * (1 / axle.Length), front, rear);
    }

    // Where a function that falls along the track is nil: false position, halving the value of an end that stays (Illinois rule).
    private static double Root(double far, double near, Func<double, double> excess)
    {
        double a = excess(far), b = excess(near);
        int stays = 0;
        while (near - far > 1e-12)
        {
            double at = ((far * b) - (near * a)) / (b - a), value = excess(at);
            if (Math.Abs(value) < 1e-11)
            {
                return at;
            }

            if (value > 0)
            {
                (far, a, b) = (at, value, stays == 1 ? b / 2 : b);
                stays = 1;
            }
            else
            {
                (near, b, a) = (at, value, stays == -1 ? a / 2 : a);
                stays = -1;
            }
        }

        return near;
    }
}
