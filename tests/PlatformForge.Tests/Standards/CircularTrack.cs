using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Tests.Standards;

/// <summary>Overthrow of a vehicle standing on a circular curve, from the product's poses on real track.</summary>
internal sealed record CircularTrack(double Radius)
{
    /// <summary>
    /// Throws of a vehicle: centre throw C, end throw E of the outer body corner beyond the half width, the least radius touched by its inner side and
    /// the greatest touched by a corner.
    /// </summary>
    public (double C, double E, double Inner, double Outer) Throws(double length, double pivots, double wheelbase, double width)
    {
        var track = new Centreline("curve", [new(default, 0, 6 * Radius, 1 / Radius, 1 / Radius)]);
        var vehicle = new Vehicle("v", pivots, wheelbase, wheelbase,
            [VehiclePart.Box("body", PartCarrier.Body, -length / 2, length / 2, Math.Max(width, 1e-9), 0, 1)]);
        Assert.True(PoseSolver.TryPlace(track, vehicle, 3.2 * Radius, out var pose));
        var centre = new Point2(0, Radius);
        double Away(double x, double y) => (pose.Body.Apply(new(x, y)) - centre).Length;
        double inner = Away(0, width / 2), outer = Math.Max(Away(length / 2, -width / 2), Away(-length / 2, -width / 2));
        return (Radius - Away(0, 0), outer - Radius - (width / 2), inner, outer);
    }

    /// <summary>Distance from the curve's centre of the body's middle line at a place x from midway between the pivots.</summary>
    public double At(double pivots, double wheelbase, double x)
    {
        var track = new Centreline("curve", [new(default, 0, 6 * Radius, 1 / Radius, 1 / Radius)]);
        var vehicle = new Vehicle("v", pivots, wheelbase, wheelbase, [VehiclePart.Box("body", PartCarrier.Body, -pivots, pivots, 1, 0, 1)]);
        Assert.True(PoseSolver.TryPlace(track, vehicle, 3.2 * Radius, out var pose));
        return (pose.Body.Apply(new(x, 0)) - new Point2(0, Radius)).Length;
    }
}
