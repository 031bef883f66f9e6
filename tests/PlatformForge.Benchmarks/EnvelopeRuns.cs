using PlatformForge.Clearance;
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

    public static void Report()
    {
        Console.WriteLine();
        Console.WriteLine("envelope of five vehicles     median ms   least ms    limit  ms a metre  stations  bound mm");
        foreach (int metres in new[] { 1, 10, 30, 100 })
        {
            var request = Request(metres * 1000);
            var envelope = EnvelopeSweeper.Sweep(request).Value!;
            var timing = Timing.Of(() => EnvelopeSweeper.Sweep(request), Math.Max(9, 60 / metres));
            Console.WriteLine($"{metres,4} m                      {timing.Median,10:F2} {timing.Least,10:F2} {(metres == 10 ? "50" : "-"),8} {timing.Median / metres,11:F2} {envelope.Count,9} {envelope.ErrorBound,9:F4}");
        }
    }

    private static EnvelopeRequest Request(double length)
    {
        var elements = new List<AlignmentElementSpec> { new StraightSpec(600) };
        for (double laid = 0; laid < length + 1000; laid += 1230)
        {
            var hand = elements.Count % 8 < 4 ? Hand.Left : Hand.Right;
            elements.AddRange([new TransitionSpec(260, 760, hand), new CurveSpec(760, hand, Length: 620), new TransitionSpec(200, null, hand), new StraightSpec(150)]);
        }

        var track = TrackLayer.Lay(new("track", default, 0, elements)).Value!;
        return new(track, 500, 500 + length, [new(track, Fleet)]);
    }

    private static Vehicle Coach(string name, double length, double pivots, double width, double wheelbase) =>
        new(name, pivots, wheelbase, wheelbase, [VehiclePart.Box("body", PartCarrier.Body, -length / 2, length / 2, width, 4, 50)]);

    private static Vehicle Engine(string name, double length, double wheelbase, double width, double cylinders, double from, double to) =>
        new(name, wheelbase, 0, 0, [
            VehiclePart.Box("body", PartCarrier.Body, -length / 2, length / 2, width, 14, 50),
            VehiclePart.Box("cylinders", PartCarrier.Body, from, to, cylinders, 3, 11)]);
}
