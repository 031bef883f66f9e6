using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;

namespace PlatformForge.Benchmarks;

/// <summary>Five vehicles swept along transitions, curves of 760 mm and reverse curves, at the default error of 0.01 mm.</summary>
internal static class EnvelopeRuns
{
    private static readonly Vehicle[] Fleet =
    [
        Coach("long coach", 262, 188, 34.5, 34),
        Coach("suburban coach", 228, 162, 34, 32),
        Engine("tender engine", 150, 74, 32, 35.5, 62, 84),
        Engine("tank engine", 142, 66, 33.5, 36, 56, 76),
        Coach("van", 84, 40, 32.5, 0),
    ];

    /// <summary>The five vehicles.</summary>
    public static IReadOnlyList<Vehicle> Vehicles => Fleet;

    // Three bodies on four bogies, one of the five being a set.
    private static readonly Vehicle[] WithTriplet = [.. Fleet[1..], Body("first", 168, 105.5, -81), Body("middle", 214, 104, -104),
        Body("last", 168, 81, -105.5)];

    public static void Report()
    {
        Console.WriteLine();
        Console.WriteLine("envelope                      median ms   least ms  processor ms    limit  ms a metre  kB a metre  stations  bound mm");
        foreach (int metres in new[] { 1, 10, 30, 100 })
        {
            Line($"{metres} m, five vehicles", metres, Fleet, metres == 10 ? "50" : "-");
        }

        Line("10 m, four and a triplet", 10, WithTriplet, "-");
        Line("10 m, five, wheelsets loose", 10, Fleet, "-", new(0.25));
        Line("10 m, five, all play and lean", 10, Fleet, "-", new(0.25, 0.1, Math.PI / 180, 6) { Cant = 0.012 });
    }

    private static void Line(string what, int metres, Vehicle[] fleet, string limit, RunningPlay? play = null)
    {
        var request = Request(metres * 1000, fleet) with { Play = play ?? RunningPlay.None };
        var envelope = EnvelopeSweeper.Sweep(request).Value!;
        var timing = Timing.Of(() => EnvelopeSweeper.Sweep(request), Math.Max(9, 200 / metres));
        long before = GC.GetTotalAllocatedBytes(precise: true);
        EnvelopeSweeper.Sweep(request);
        double kilobytes = (GC.GetTotalAllocatedBytes(precise: true) - before) / 1024.0;
        Console.WriteLine(
            $"{what,-28} {timing.Median,10:F2} {timing.Least,10:F2} {timing.Processor,13:F2} {limit,8} {timing.Median / metres,11:F2} "
            + $"{kilobytes / metres,11:F0} {envelope.Count,9} {envelope.ErrorBound,9:F4}");
    }

    private static EnvelopeRequest Request(double length, Vehicle[] fleet)
    {
        var elements = new List<AlignmentElementSpec> { new StraightSpec(600) };
        for (double laid = 0; laid < length + 1000; laid += 1230)
        {
            var hand = elements.Count % 8 < 4 ? Hand.Left : Hand.Right;
            elements.AddRange([new TransitionSpec(260, 760, hand), new CurveSpec(760, hand, Length: 620), new TransitionSpec(200, null, hand),
                new StraightSpec(150)]);
        }

        var track = TrackLayer.Lay(new("track", default, 0, elements)).Value!;
        return new(track, 500, 500 + length, [new(track, fleet)]);
    }

    private static Vehicle Coach(string name, double length, double pivots, double width, double wheelbase) =>
        new(name, pivots, wheelbase, wheelbase, [VehiclePart.Box("body", PartCarrier.Body, -length / 2, length / 2, width, 4, 50)]);

    private static Vehicle Body(string name, double pivots, double front, double rear) =>
        new(name, pivots, 34, 34, [VehiclePart.Box("body", PartCarrier.Body, rear, front, 35, 10, 50)]) { SetName = "triplet" };

    private static Vehicle Engine(string name, double length, double wheelbase, double width, double cylinders, double from, double to) =>
        new(name, wheelbase, 0, 0, [
            VehiclePart.Box("body", PartCarrier.Body, -length / 2, length / 2, width, 14, 50),
            VehiclePart.Box("cylinders", PartCarrier.Body, from, to, cylinders, 3, 11)]);
}
