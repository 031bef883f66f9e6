using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;

namespace PlatformForge.Tests.Clearance;

/// <summary>The invented stock and tracks of the demo places; all in model mm.</summary>
internal static class DemoStock
{
    public static Vehicle Coach(string name, double length, double pivots, double width, double wheelbase = 0) =>
        new(name, pivots, wheelbase, wheelbase, [VehiclePart.Box("body", PartCarrier.Body, -length / 2, length / 2, width, 4, 50)])
        {
            Sill = new(width / 2, 14, -length / 2, length / 2),
        };

    public static Vehicle Engine(string name, double length, double wheelbase, double width, double cylinders, double from, double to) =>
        new(name, wheelbase, 0, 0, [
            VehiclePart.Box("body", PartCarrier.Body, -length / 2, length / 2, width, 14, 50),
            VehiclePart.Box("cylinders", PartCarrier.Body, from, to, cylinders, 3, 11)]);

    public static IReadOnlyList<Vehicle> Pendlewick { get; } =
    [
        Coach("long coach", 262, 188, 34.5),
        Coach("suburban coach", 228, 162, 34),
        Engine("tender engine", 150, 74, 32, 35.5, 62, 84),
        Engine("tank engine", 142, 66, 33.5, 36, 56, 76),
        Coach("van", 84, 40, 32.5),
    ];

    public static IReadOnlyList<Vehicle> Quillhaven { get; } =
    [
        Coach("long coach", 136, 97, 18.6),
        Coach("short coach", 118, 82, 18.4),
        Engine("tank engine", 72, 30, 18, 19, 25, 35),
    ];

    /// <summary>300 straight, transition 260 to R 760 (left), arc 620, transition 200 to R 1,500, 20 more.</summary>
    public static Centreline PendlewickTrack() => Lay("up",
        new StraightSpec(300), new TransitionSpec(260, 760, Hand.Left), new CurveSpec(760, Hand.Left, Length: 620),
        new TransitionSpec(200, 1500, Hand.Left), new CurveSpec(1500, Hand.Left, Length: 20));

    /// <summary>Straight 260, R 450 left 78, R 450 right 78, straight 700.</summary>
    public static Centreline QuillhavenTrack() => Lay("main",
        new StraightSpec(260), new CurveSpec(450, Hand.Left, Length: 78), new CurveSpec(450, Hand.Right, Length: 78), new StraightSpec(700));

    public static Centreline Lay(string name, params AlignmentElementSpec[] elements) =>
        TrackLayer.Lay(new(name, default, 0, elements)).Value ?? throw new ArgumentException("The track of a test cannot be laid.", nameof(elements));
}
