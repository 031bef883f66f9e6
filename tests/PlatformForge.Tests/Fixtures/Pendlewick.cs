using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Tests.Fixtures;

/// <summary>
/// Pendlewick, an invented station: a side platform on the outside of a curve with transitions, 1:76.2 on 16.5 mm gauge, and five vehicles.
/// Lengths, pivots and widths are those of USERS.md (f) 1; heights are made up for this fixture.
/// </summary>
public static class Pendlewick
{
    public const double RailTop = 8;

    public static ModelScale Scale { get; } = new(76.2);

    public static PlatformSite Site { get; } = new(Scale, RailTop);

    public static AlignmentSpec Alignment { get; } = new(
        "up",
        new Point2(0, 0),
        0,
        [new StraightSpec(300), new TransitionSpec(260, 760, Hand.Left), new CurveSpec(760, Hand.Left, Length: 620), new TransitionSpec(200, 1500, Hand.Left),
            new CurveSpec(1500, Hand.Left, Length: 20)],
        "track[0].alignment");

    public static Centreline Track { get; } = TrackLayer.Lay(Alignment).Value!;

    public static Vehicle LongCoach { get; } = Coach("long coach", 262, 188, 34.5);

    public static Vehicle SuburbanCoach { get; } = Coach("suburban coach", 228, 162, 34);

    public static Vehicle TenderEngine { get; } = Engine("tender engine", 150, 74, 32, 35.5, 62, 84);

    public static Vehicle TankEngine { get; } = Engine("tank engine", 142, 66, 33.5, 36, 56, 76);

    public static Vehicle Van { get; } = new("van", 40, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -42, 42, 32.5, 13, 48)]);

    public static IReadOnlyList<Vehicle> Vehicles { get; } = [LongCoach, SuburbanCoach, TenderEngine, TankEngine, Van];

    public static ClearanceBudget Budget { get; } = ClearanceBudget.Of(running: 1, print: 0.15, fitting: 0.15, laying: 0.2);

    /// <summary>The platform: 62 wide, 12 high, ramps 1 in 8, slabs 12 × 8 projecting 1, crossfall 1 in 80, four fence panels with a gate, two
    /// boards.</summary>
    public static PlatformSpec Platform(EdgeStyle edge = EdgeStyle.Fitted) => new("up side", new FaceSpec("up", Side.Right, 270, 1000, edge))
    {
        Height = 12,
        StartRamp = new(Gradient: 8),
        EndRamp = new(Gradient: 8),
        Deck = new() { Width = 62, Crossfall = 80 },
        Coping = new() { Width = 8, SlabLength = 12, Overhang = 1 },
        Features =
        [
            new SocketSpec(400, 6) { Along = 2, Across = 1.2 },
            new SocketSpec(440, 6) { Along = 2, Across = 1.2 },
            new FenceSpec { From = 560, To = 760, Pitch = 40, Gaps = [new(640, 680)] },
        ],
        WhiteLine = new(),
    };

    public static TrackRun Run { get; } = new(Track, Vehicles);

    private static Vehicle Coach(string name, double length, double pivots, double width) =>
        new(name, pivots, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -length / 2, length / 2, width, 13, 50)])
        {
            // Floor 4 ft above rail.
            Sill = new(width / 2, 16, (-length / 2) + 10, (length / 2) - 10),
        };

    private static Vehicle Engine(string name, double length, double pivots, double width, double cylinders, double from, double to) =>
        new(
            name,
            pivots,
            0,
            0,
            [
                VehiclePart.Box("body", PartCarrier.Body, -length / 2, length / 2, width, 14, 50),
                VehiclePart.Box("cylinders", PartCarrier.Body, from, to, cylinders, 3, 11),
            ]);
}
