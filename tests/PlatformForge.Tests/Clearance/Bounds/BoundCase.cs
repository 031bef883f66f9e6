using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Tests.Clearance.Bounds;

/// <summary>
/// A vehicle that runs one way over a track, with the bounds that the sweep would go by and, beside them, where it really stands: poses are the
/// brute sweeper's.
/// </summary>
internal sealed class BoundCase
{
    /// <summary>What poses are close to, mm.</summary>
    public const double Closeness = 1e-7;

    private readonly Centreline ride, chart;
    private readonly Vehicle vehicle;

    public BoundCase(Centreline ride, Centreline chart, Vehicle vehicle, (double From, double To) stations, Func<TrackRun, TrackRun>? with = null)
    {
        (this.ride, this.chart, this.vehicle) = (ride, chart, vehicle with { EitherWayRound = false });
        var run = new TrackRun(ride, [this.vehicle]);
        run = with?.Invoke(run) ?? run;
        Form = SweptForm.WaysRound(this.vehicle, SweptShape.Of(this.vehicle, RunningPlay.None, null), RunningPlay.None, halts: false).Single();
        Span = new(run, chart, stations.From, stations.To, SweepBounds.Margin(Form));
        Bounds = new(Span, Form, Tolerance);
    }

    /// <summary>The tolerance asked of the sweep, mm.</summary>
    public static double Tolerance => Units.Tolerances.EnvelopeError;

    public SweptForm Form { get; }

    public RunSpan Span { get; }

    public SweepBounds Bounds { get; }

    /// <summary>Leading chainages at which something happens: an axle or an end of the vehicle near every joint of the track.</summary>
    public IEnumerable<double> Telling(double step)
    {
        double length = vehicle.Parts.SelectMany(p => p.Outline).Max(p => Math.Abs(p.X)) + vehicle.PivotCentres;
        return from joint in Enumerable.Range(1, ride.Elements.Count - 1).Select(ride.StartOf)
               from share in new[] { -0.35, -0.03, 0.02, 0.3, 0.55, 0.8 }
               let u = joint + (share * length)
               where u > Bounds.First + step && u < Bounds.Last - step
               select u;
    }

    /// <summary>Whether an axle passes a kink between two poses.</summary>
    public bool PassesKink(double from, double to)
    {
        var (a, b) = (Axles(from), Axles(to));
        return ride.Kinks.Any(k => a.Zip(b).Any(pair => pair.First <= k.Chainage != pair.Second <= k.Chainage));
    }

    /// <summary>Chainages of the axles, foremost first.</summary>
    public double[] Axles(double u)
    {
        var (_, lead, trail) = BruteSweep.Place(ride, vehicle, u);
        return [lead.Front, lead.Rear, trail.Front, trail.Rear];
    }

    /// <summary>Corners of the form in the layout.</summary>
    public Point2[] Corners(double u)
    {
        var (body, lead, trail) = BruteSweep.Place(ride, vehicle, u);
        return Array.ConvertAll(Form.Corners, c =>
        {
            var on = c.Carrier switch { PartCarrier.LeadingBogie => lead, PartCarrier.TrailingBogie => trail, _ => body };
            return on.Origin + (on.Along * c.X) + (new Point2(-on.Along.Y, on.Along.X) * c.Y);
        });
    }

    /// <summary>The same by chainage and offset of the chart.</summary>
    public TrackPlace[] Places(double u) => Array.ConvertAll(Corners(u), p => chart.Locate(p, ReferenceEquals(ride, chart) ? u : chart.Locate(p).Chainage));

    /// <summary>Offset at which the line through two points crosses the square to the chart at a station.</summary>
    public double Crossing(Point2 a, Point2 b, double station)
    {
        var frame = chart.At(station);
        double alongA = Point2.Dot(a - frame.Position, frame.Tangent), alongB = Point2.Dot(b - frame.Position, frame.Tangent);
        return Point2.Cross(frame.Tangent, a + ((b - a) * (alongA / (alongA - alongB))) - frame.Position);
    }
}
