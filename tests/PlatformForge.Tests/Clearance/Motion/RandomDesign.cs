using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Tests.Clearance.Motion;

/// <summary>A design drawn by lot, told by its seed: tracks with curves either way, transitions and kinks; vehicles of every kind; play, roll and cant; a
/// platform on either side.</summary>
internal sealed record RandomDesign(int Seed, IReadOnlyList<TrackRun> Runs, PlatformSpec Spec, ClearanceBudget Budget)
{
    private const double RailTop = 8;

    /// <summary>The layout it stands on.</summary>
    public static PlatformSite Site { get; } = new(new ModelScale(76.2), RailTop);

    public static RandomDesign Of(int seed) => Of(seed, false, out _);

    /// <summary>A design at buffer stops whose platform ends about where something of a vehicle comes to stand at last: within some millimetres of it either
    /// way.</summary>
    public static RandomDesign AtHalt(int seed)
    {
        var design = Of(seed, true, out var dice);
        var (face, run) = (design.Spec.Face, design.Runs[0]);
        var parts = run.Vehicles.SelectMany(v => MovingPart.Of(v, design.Budget.Play)).ToArray();
        var part = parts[dice.Next(parts.Length)];
        double end = part.Back + (dice.Flip() ? part.Front : -part.Rear), to = end + dice.Of(-2, 2), from = Math.Min(face.From, Math.Max(5, to - 90));
        return to < from + 40 ? design : design with { Spec = design.Spec with { Face = face with { From = from, To = to } } };
    }

    private static RandomDesign Of(int seed, bool atBuffers, out Dice dice)
    {
        dice = new Dice(new Random(seed));
        var track = dice.Track(out bool buffers, atBuffers);
        var play = dice.Play();
        var vehicles = Enumerable.Range(0, 1 + dice.Next(3)).SelectMany(dice.Numbered).ToArray();
        double from = buffers ? dice.Of(20, 60) : dice.Of(480, 560), height = dice.Of(8, 14);
        var face = new FaceSpec("up", dice.Flip() ? Side.Left : Side.Right, from, from + dice.Of(90, 170),
            dice.Next(5) == 0 ? (EdgeStyle)dice.Next(3) : EdgeStyle.Fitted)
        {
            BodiesPassOver = dice.Next(3) == 0,
            VerticalGap = dice.Next(3) == 0 ? 0 : dice.Of(0.2, 1.5),
        };
        var spec = new PlatformSpec("up side", face)
        {
            Height = height,
            StartRamp = dice.Next(5) == 0 ? new(Gradient: 8) { FootHeight = height - dice.Of(2, 6) } : null,
            Coping = new() { Overhang = dice.Next(4) == 0 ? 0 : dice.Of(0.3, 2), Thickness = dice.Of(0.8, 2.4) },
        };
        var budget = ClearanceBudget.Of(dice.Of(0, 1.5), print: dice.Of(0, 0.3), fitting: dice.Of(0, 0.3), laying: dice.Of(0, 0.3), play: play)
            with
        { Rule = dice.Flip() ? BudgetRule.Sum : BudgetRule.RootOfSquares };
        var runs = new List<TrackRun> { new(track, vehicles) { StartsAtBuffers = buffers } };
        if (!buffers && dice.Next(8) == 0)
        {
            runs.Add(new(Beside(track, dice.Of(-30, 30)), [.. dice.Vehicles("other")]));
        }

        return new(seed, runs, spec, budget);
    }

    // A second track at a distance, about the same centres.
    private static Centreline Beside(Centreline track, double aside)
    {
        var elements = new List<CentrelineElement>();
        foreach (var e in track.Elements)
        {
            double pace = 1 - (aside * (e.StartCurvature + e.EndCurvature) / 2);
            var start = elements.Count == 0 ? e.Start + (Point2.FromAngle(e.Heading).Left * aside) : elements[^1].At(elements[^1].Length).Position;
            double heading = elements.Count == 0 ? e.Heading : elements[^1].HeadingAt(elements[^1].Length);
            elements.Add(new(start, heading, e.Length * pace, e.StartCurvature / (1 - (aside * e.StartCurvature)),
                e.EndCurvature / (1 - (aside * e.EndCurvature))));
        }

        return new("other", elements);
    }
}

/// <summary>Draws what a random design is made of.</summary>
internal sealed class Dice(Random random)
{
    public int Next(int sides) => random.Next(sides);

    public bool Flip() => random.Next(2) == 0;

    public double Of(double low, double high) => low + (random.NextDouble() * (high - low));

    public RunningPlay Play() => Next(6) == 0
        ? RunningPlay.None
        : new(Next(4) == 0 ? 0 : Of(0, 0.45), Next(3) == 0 ? 0 : Of(0, 0.25), Next(2) == 0 ? 0 : Of(0, 3) * Math.PI / 180,
            Of(0, 30))
        { Cant = Next(2) == 0 ? 0 : Math.Asin(Of(0, 1) / 16.5) };

    public Centreline Track(out bool buffers, bool atBuffers)
    {
        buffers = Next(12) == 0 || atBuffers;
        double sharpest = Flip() ? 260 : 500, bend = 0;
        bool kinks = Next(4) == 0;
        var elements = new List<CentrelineElement>();
        void Add(double length, double to, bool smooth)
        {
            double kink = kinks && elements.Count > 0 ? Of(-0.006, 0.006) : 0;
            var (start, heading) = elements.Count == 0 ? (default, Of(-3, 3))
                : (elements[^1].At(elements[^1].Length).Position, elements[^1].HeadingAt(elements[^1].Length) + kink);
            elements.Add(new(start, heading, length, smooth ? bend : to, to));
            bend = to;
        }

        Add(buffers ? Of(10, 60) : Of(330, 480), 0, false);
        for (int i = 0; i < 2 + Next(3); i++)
        {
            double to = Next(5) == 0 ? 0 : (Flip() ? 1 : -1) / Of(sharpest, 1500);
            if (Flip())
            {
                Add(Of(60, 160), to, true);
            }

            Add(Of(60, 320), to, false);
        }

        Add(1400, Next(3) == 0 ? bend : 0, false);
        return new("up", elements);
    }

    public IEnumerable<Vehicle> Numbered(int number) => Vehicles($"vehicle {number}");

    /// <summary>A vehicle, or several that hang together.</summary>
    public IEnumerable<Vehicle> Vehicles(string name) => Next(9) switch
    {
        0 or 1 => [Rigid(name)],
        2 => Engine(name),
        3 => Tram(name),
        4 => Set(name),
        _ => [Coach(name)],
    };

    private Vehicle Rigid(string name)
    {
        double wheelbase = Of(30, 110), length = wheelbase * Of(1.2, 2), width = Of(30, 37);
        return new(name, wheelbase, 0, 0, Parts(length, width, wheelbase / 2)) { EitherWayRound = Flip() };
    }

    private Vehicle Coach(string name)
    {
        double pivots = Of(70, 195), length = pivots * Of(1.2, 1.55), width = Of(31, 37), wheelbase = Of(16, 38),
            trailing = Next(3) == 0 ? Of(16, 38) : wheelbase;
        List<VehiclePart> parts = [.. Parts(length, width, pivots / 2)];
        if (Flip())
        {
            double low = Of(0.5, 4);
            parts.Add(VehiclePart.Box("leading frames", PartCarrier.LeadingBogie, -wheelbase * Of(0.5, 0.9), wheelbase * Of(0.5, 0.9), Of(24, 36), low,
                low + Of(2, 9)));
            parts.Add(VehiclePart.Box("trailing frames", PartCarrier.TrailingBogie, -trailing * 0.8, trailing * 0.8, Of(24, 36), low, low + Of(2, 9)));
        }

        return new(name, pivots, wheelbase, trailing, parts) { EitherWayRound = Flip() };
    }

    // A rigid engine with trucks on arms or on two axles.
    private Vehicle[] Engine(string name)
    {
        var engine = Rigid(name);
        double half = engine.PivotCentres / 2, arm = Of(14, 40), pivot = half * Of(0.2, 1.3);
        VehiclePart[] Frames(double axle) => [VehiclePart.Box("frames", PartCarrier.Body, axle - 9, axle + 9, Of(22, 36), 1, Of(6, 12))];
        return Next(3) switch
        {
            0 =>
                [engine, new(name + ", leading truck", arm, 0, engine.PivotCentres, Frames(arm / 2)) { TrailingPivotAhead = pivot, TruckOf = name,
                    SetName = name }],
            1 =>
                [engine, new(name + ", trailing truck", arm, engine.PivotCentres, 0, Frames(-arm / 2)) { LeadingPivotAhead = -pivot, TruckOf = name,
                    SetName = name }],
            _ => [engine, new(name + ", truck", Of(16, 30), 0, 0, Frames(0)) { TruckOf = name, SetName = name }],
        };
    }

    // Two four-wheeled bodies with one hung between them.
    private Vehicle[] Tram(string name)
    {
        double width = Of(28, 34), gap = Of(2, 6), length = Of(60, 90), wheelbase = Of(24, 40), hung = Of(50, 90);
        var end = new Vehicle(name + ", end", wheelbase, 0, 0, Parts(length, width, wheelbase / 2)) { SetName = name };
        double hinge = (length + gap) / 2;
        return [end, new(name + ", middle", hung + gap, wheelbase, wheelbase, Parts(hung, width, hung / 2)) { SetName = name, Hangs = true,
            LeadingPivotAhead = -hinge, TrailingPivotAhead = hinge }];
    }

    // Bodies on shared bogies, whose pivots lie beyond their ends, with gangways that may be wider than the bodies.
    private Vehicle[] Set(string name)
    {
        double width = Of(31, 36), gap = Of(3, 8), length = Of(90, 170), bogie = Of(16, 34), shared = length + gap, own = length * Of(0.7, 0.9);
        var gangway = VehiclePart.Box("gangway", PartCarrier.Body, length / 2, (length / 2) + (gap / 2), width + Of(-12, 3), 10, 40);
        double ahead = ((length - own) / 2) + (gap / 2);
        var moved = gangway with { Outline = [.. gangway.Outline.Select(p => p * -1)] };
        return
        [
            new(name + ", middle", shared, bogie, bogie, [.. Parts(length, width, length / 2), gangway, moved]) { SetName = name },
            new(name + ", end", own, bogie, bogie,
                [.. Parts(length, width, length / 2).Select(p => p with { Outline = [.. p.Outline.Select(c => new Point2(c.X + ahead, c.Y))] })]) { SetName =
                    name },
        ];
    }

    // A body, plain or with ends that narrow, and what sticks out of it: cylinders, steps, buffers.
    private VehiclePart[] Parts(double length, double width, double guided)
    {
        double shift = Of(-4, 4), front = (length / 2) + shift, rear = shift - (length / 2), low = Next(3) == 0 ? Of(0, 6) : Of(6, 18), end = width - Of(1, 8),
            taper = Of(3, 16);
        Point2[] plan = Next(3) == 0
            ? [new(rear, -end / 2), new(rear + taper, -width / 2), new(front - taper, -width / 2), new(front, -end / 2), new(front, end / 2),
                new(front - taper, width / 2), new(rear + taper, width / 2), new(rear, end / 2)]
            : [new(rear, -width / 2), new(front, -width / 2), new(front, width / 2), new(rear, width / 2)];
        var parts = new List<VehiclePart> { new("body", PartCarrier.Body, plan, low, Of(30, 60)) };
        if (Flip())
        {
            double from = guided * Of(0.4, 1.1), under = Of(1, 5);
            parts.Add(VehiclePart.Box("cylinders", PartCarrier.Body, from, from + Of(8, 16), width + Of(-4, 3), under, under + Of(3, 9)));
        }

        if (Next(3) == 0)
        {
            double under = Of(2, 9);
            parts.Add(VehiclePart.Box("steps", PartCarrier.Body, rear * 0.8, front * 0.8, width + Of(-2, 3), under, under + Of(0.6, 3)));
        }

        if (Next(4) == 0)
        {
            parts.Add(VehiclePart.Box("buffers", PartCarrier.Body, front, front + Of(2, 7), Of(22, 30), 10, 16));
        }

        return [.. parts];
    }
}
