using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Rubble beside weep holes and ducts, by the triangles of meshes: what of a wall lies in the plane of its stones.</summary>
public class RubbleWeepTests
{
    /// <summary>Round a hole the share of mortar is what it is elsewhere, but for a joint that goes through the hole.</summary>
    [Theory]
    [InlineData(OpeningKind.Weep, 1.25)]
    [InlineData(OpeningKind.Cable, 1.35)]
    public void Rubble_round_a_hole_has_hardly_more_mortar_than_elsewhere(OpeningKind kind, double most) => Assert.All(Simulations.Cases(3, 30), seed =>
    {
        ModelScale scale = new(76.2);
        double[] at = [.. Enumerable.Range(0, 11).Select(i => 230.0 + (14 * i))];
        var hole = OpeningSpec.For(scale) with { Kind = kind, At = at };
        var facing = FacingSpec.For(scale) with { Front = WallFinish.Rubble, Seed = seed, Openings = [hole] };
        var plan = Workbench.Straight(200, Side.Left, s => s with
        {
            Walls = s.Walls with { FrontThickness = 2.4, BackThickness = 2.4, EndThickness = 2.4 },
            Facing = facing,
        });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        Assert.All(set.Sections, SoundSection.Check);
        Assert.Equal(at.Length, plan.WallOpenings.Count);

        // Of the whole wall between its ends, but for the holes, and of what is within a stone of each.
        double low = 0, high = 18.5, size = facing.RubbleSize, own = hole.Width * hole.Height;
        double all = Share(220, 380, low, high, 11 * own);
        double[] round = [.. at.Select(x => Share(x - size, x + size, hole.Sill - (size / 2), hole.Sill + hole.Height + (size / 2), own))];
        Assert.InRange(all, 0.05, 0.3);
        Assert.InRange(round.Average() / all, 0.5, most);

        double Share(double from, double to, double foot, double top, double open)
        {
            double room = ((to - from) * (top - foot)) - open;
            return 1 - (set.Sections.Sum(s => Stones(s.Solid.Mesh, plan.WallFace.Reach[0], (from, to), (foot, top))) / room);
        }
    });

    // Area of the triangles in the plane of the stones' faces, as much of it as lies in an oblong, mm².
    private static double Stones(Mesh mesh, double face, (double From, double To) along, (double From, double To) up)
    {
        double area = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3[] corners = [.. Enumerable.Range(3 * t, 3).Select(i => mesh.Vertices[mesh.Triangles[i]])];
            if (corners.All(c => Math.Abs(c.Y - face) < 1e-3))
            {
                Point2[] ring = [.. corners.Select(c => new Point2(c.X, c.Z))];
                foreach (var (outward, far) in new[] { (new Point2(-1, 0), -along.From), (new(1, 0), along.To), (new(0, -1), -up.From), (new(0, 1), up.To) })
                {
                    ring = Kept(ring, outward, far);
                }

                area += Math.Abs(ring.Select((p, i) => Point2.Cross(p, ring[(i + 1) % ring.Length])).Sum()) / 2;
            }
        }

        return area;
    }

    // What of a convex ring goes no farther in a direction.
    private static Point2[] Kept(Point2[] ring, Point2 outward, double far)
    {
        var kept = new List<Point2>();
        for (int i = 0; i < ring.Length; i++)
        {
            Point2 a = ring[i], b = ring[(i + 1) % ring.Length];
            double over = Point2.Dot(outward, a) - far, next = Point2.Dot(outward, b) - far;
            if (over <= 0)
            {
                kept.Add(a);
            }

            if (over * next < 0)
            {
                kept.Add(a + ((b - a) * (over / (over - next))));
            }
        }

        return [.. kept];
    }
}
