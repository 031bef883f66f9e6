using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Tests.Platforms;

/// <summary>Random tracks, requirements and specs for this room's tests, each made from one seed so that a failure can be repeated.</summary>
internal static class Bench
{
    /// <summary>Length of the vehicle that stands for the fleet in made-up envelopes, mm.</summary>
    public const double VehicleLength = 100;

    public static PlatformSite Site { get; } = new(new ModelScale(76.2), 8);

    public static Vehicle Fleet { get; } = new("fleet", 60, 0, 0,
        [VehiclePart.Box("body", PartCarrier.Body, -VehicleLength / 2, VehicleLength / 2, 34, 13, 50)]);

    /// <summary>Straights, curves and transitions of either hand, radii from 400 mm.</summary>
    public static Centreline Track(Random random, bool mirrored = false)
    {
        var elements = new List<AlignmentElementSpec> { new StraightSpec(100 + (random.NextDouble() * 150)) };
        for (int i = 0; i < 3; i++)
        {
            bool left = random.Next(2) == 0;
            var hand = left != mirrored ? Hand.Left : Hand.Right;
            double radius = 400 + (random.NextDouble() * 1500);
            elements.Add(new TransitionSpec(60 + (random.NextDouble() * 200), radius, hand));
            elements.Add(new CurveSpec(radius, hand, Length: 60 + (random.NextDouble() * 200)));
        }

        elements.Add(new StraightSpec(200));
        return TrackLayer.Lay(new("up", new Point2(10, 20), 0, elements)).Value!;
    }

    /// <summary>A reach that wanders as swept reaches do: bumps some tens of millimetres long at least, and a kink where another vehicle takes over.</summary>
    public static Func<double, double> Reach(Random random)
    {
        double level = 16 + (random.NextDouble() * 3);
        var bumps = Enumerable.Range(0, 4).Select(_ => (At: random.NextDouble() * 1200, Wide: 40 + (random.NextDouble() * 150), High: random.NextDouble() * 3))
            .ToArray();
        double rise = (random.NextDouble() - 0.5) / 200, second = level + (random.NextDouble() * 2);
        return s => Math.Max(level + bumps.Sum(b => b.High * Math.Exp(-(s - b.At) * (s - b.At) / (2 * b.Wide * b.Wide))), second + (rise * (s - 500)));
    }

    /// <summary>An envelope of one part over the whole track whose reach on a side is a given function and on the other 17 mm.</summary>
    public static SweptEnvelope Envelope(Centreline track, Side side, Func<double, double> reach, params KeyValuePair<VehiclePart, Func<double, double>>[] more)
    {
        int count = (int)track.Length + 1;
        double[] Tabulate(Func<double, double> f) => [.. Enumerable.Range(0, count).Select(i => f(i))];
        PartReach Of(Vehicle vehicle, VehiclePart part, Func<double, double> f)
        {
            double[] near = Tabulate(f), far = Tabulate(_ => 17);
            return new(0, vehicle, part, side == Side.Left ? near : far, side == Side.Left ? far : near);
        }

        return new(0, 1, count, [Of(Fleet, Fleet.Parts[0], reach), .. more.Select(m => Of(Fleet with { Name = m.Key.Name }, m.Key, m.Value))], 0.01);
    }

    public static PlatformSpec Spec(Centreline track, Side side, EdgeStyle edge, Random? random = null)
    {
        double spare = random is null ? 0 : random.NextDouble() * 80;
        return new("up side", new FaceSpec("up", side, VehicleLength + spare, track.Length - VehicleLength - spare, edge));
    }

    public static PlatformRequest Request(int seed, EdgeStyle edge, Func<PlatformSpec, PlatformSpec>? change = null, bool mirrored = false)
    {
        var random = new Random(seed);
        var track = Track(random, mirrored);
        var side = random.Next(2) == 0 != mirrored ? Side.Left : Side.Right;
        var reach = Reach(random);
        var budget = ClearanceBudget.Of(running: 0.5 + random.NextDouble(), print: random.NextDouble() / 5);
        var spec = Spec(track, side, edge, random);
        spec = spec with { Face = spec.Face with { LeastRadius = 300 + (random.NextDouble() * 3000), Taper = 20 + (random.NextDouble() * 60) } };
        return new(change?.Invoke(spec) ?? spec, Site, track, Envelope(track, side, reach), budget);
    }

    public static PlatformPlan Plan(PlatformRequest request)
    {
        var outcome = PlatformPlanner.Plan(request);
        Xunit.Assert.True(outcome.Succeeded, string.Join("; ", outcome.Findings.Select(f => f.Code + " " + f.Key + " " + f.Message)));
        return outcome.Value!;
    }

    /// <summary>A straight track of 1000 mm with a constant reach of 18 mm, and a platform from 200 to 800 on its left.</summary>
    public static PlatformRequest Straight(Func<PlatformSpec, PlatformSpec>? change = null, EdgeStyle edge = EdgeStyle.Fitted)
    {
        var track = TrackLayer.Lay(new("up", new Point2(0, 0), 0, [new StraightSpec(1000)])).Value!;
        var spec = new PlatformSpec("up side", new FaceSpec("up", Side.Left, 200, 800, edge));
        return new(change?.Invoke(spec) ?? spec, Site, track, Envelope(track, Side.Left, _ => 18), ClearanceBudget.Of(running: 1));
    }
}
