using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Verification.Written;

namespace PlatformForge.Tests.Verification;

/// <summary>Bars of oblong section beside a track, the plainest thing a platform can be, and vehicles to run past them.</summary>
internal static class Pieces
{
    public const double RailTop = 8;

    /// <summary>A closed bar between two chainages, two offsets and two heights above the baseboard, in facets along the track.</summary>
    public static Mesh Bar(Centreline track, double from, double to, double near, double far, double low, double high, int facets = 1)
    {
        var vertices = new List<Point3>();
        var triangles = new List<int>();
        double inner = Math.Max(near, far), outer = Math.Min(near, far);
        for (int i = 0; i <= facets; i++)
        {
            double s = from + ((to - from) * i / facets);
            Point2 right = track.PointAt(s, outer), left = track.PointAt(s, inner);
            vertices.AddRange([new(right.X, right.Y, low), new(left.X, left.Y, low), new(left.X, left.Y, high), new(right.X, right.Y, high)]);
        }

        void Quad(int a, int b, int c, int d) => triangles.AddRange([a, b, c, a, c, d]);
        for (int i = 0; i < facets; i++)
        {
            for (int k = 0; k < 4; k++)
            {
                int a = (4 * i) + k, b = (4 * i) + ((k + 1) % 4);
                Quad(a, b, b + 4, a + 4);
            }
        }

        Quad(3, 2, 1, 0);
        int last = 4 * facets;
        Quad(last, last + 1, last + 2, last + 3);
        return new([.. vertices], [.. triangles], []);
    }

    public static WrittenSection Section(Mesh mesh, string name = "Pendlewick 1 of 1") =>
        new("Pendlewick", name, "pendlewick-1.stl", mesh, RigidTransform.Identity);

    public static Centreline Straight(double length) => new("up", [new(new(0, 0), 0, length, 0, 0)]);

    public static Centreline Curve(double length, double radius) => new("up", [new(new(0, 0), 0, length, 1 / radius, 1 / radius)]);

    /// <summary>A coach with a body only, from 2 to 40 mm above the rails.</summary>
    public static Vehicle Coach(double length = 262, double pivots = 188, double width = 34.5, double wheelbase = 0, string name = "coach") =>
        new(name, pivots, wheelbase, wheelbase, [VehiclePart.Box("body", PartCarrier.Body, -length / 2, length / 2, width, 2, 40)]);

    public static DesignFacts Facts(Centreline track, params Vehicle[] vehicles) => new() { RailTop = RailTop, Runs = [new(track, vehicles)] };
}
