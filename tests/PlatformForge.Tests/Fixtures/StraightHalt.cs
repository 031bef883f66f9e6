using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;

namespace PlatformForge.Tests.Fixtures;

/// <summary>A straight platform that fits on one bed, for first tries: the van and the tank engine of Pendlewick, everything else at its default.</summary>
public static class StraightHalt
{
    public static AlignmentSpec Alignment { get; } = new("branch", new Point2(0, 0), 0, [new StraightSpec(600)], "track[0].alignment");

    public static Centreline Track { get; } = TrackLayer.Lay(Alignment).Value!;

    public static IReadOnlyList<Vehicle> Vehicles { get; } = [Pendlewick.TankEngine, Pendlewick.Van];

    public static PlatformSite Site => Pendlewick.Site;

    public static ClearanceBudget Budget { get; } = ClearanceBudget.Of(running: 1);

    public static PlatformSpec Platform { get; } = PlatformSpec.For(Pendlewick.Scale, "halt", new FaceSpec("branch", Side.Left, 200, 380));

    public static TrackRun Run { get; } = new(Track, Vehicles);
}
