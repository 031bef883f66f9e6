using PlatformForge.Geometry;
using PlatformForge.Tests.Exports;
using PlatformForge.Track;
using PlatformForge.Verification.Distances;
using PlatformForge.Verification.Rules;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>What verification leans on, against counting and measuring by definition.</summary>
public class HandLawTests
{
    /// <summary>Soups of triangles over few corners have edges of every kind: counted one by one they are what is told.</summary>
    [Fact]
    public void Edges_are_counted_as_one_by_one()
    {
        var random = new Random(5);
        for (int trial = 0; trial < 200; trial++)
        {
            int corners = random.Next(3, 7), count = random.Next(0, 9);
            Point3[] vertices = [.. Enumerable.Range(0, corners).Select(_ => new Point3(random.NextDouble(), random.NextDouble(), random.NextDouble()))];
            int[][] triangles = [.. Enumerable.Range(0, count).Select(_ => (int[])[random.Next(corners), random.Next(corners), random.Next(corners)])];
            int[][] whole = [.. triangles.Where(t => t.Distinct().Count() == 3)];
            var edges = whole.SelectMany(t => new[] { (t[0], t[1]), (t[1], t[2]), (t[2], t[0]) }).GroupBy(e => e).ToDictionary(g => g.Key, g => g.Count());
            int open = edges.Sum(e => Math.Max(0, e.Value - edges.GetValueOrDefault((e.Key.Item2, e.Key.Item1)))), crowded = edges.Sum(e => e.Value - 1);
            var told = MeshSoundness.Of(new(vertices, [.. triangles.SelectMany(t => t)], []));
            Assert.Equal((open, crowded, triangles.Length - whole.Length), (told.OpenEdges, told.CrowdedEdges, told.Degenerate));
        }
    }

    /// <summary>A rough distance is off by no more than half a cell's diagonal and half a step, wherever it is asked for and however long the track.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(30)]
    [InlineData(700)]
    public void A_rough_distance_is_no_rougher_than_is_said(double length)
    {
        var ride = TrackLayer.Lay(new("t", new(0, 0), 0.4, [new StraightSpec(length), new CurveSpec(610, Hand.Left, length)])).Value!;
        var field = new RideField(ride);
        double[] along = [.. Enumerable.Range(0, (int)(4 * ride.Length) + 1).Select(i => i / 4.0)];
        Point2[] places = [.. along.Select(s => ride.At(s).Position)];
        var random = new Random(2);
        for (int i = 0; i < 150; i++)
        {
            var p = places[random.Next(places.Length)] + new Point2((random.NextDouble() - 0.5) * 300, (random.NextDouble() - 0.5) * 300);
            double real = places.Min(q => (q - p).Length);
            Assert.InRange(field.Distance(p), real - RideField.Roughness - 0.13, real + RideField.Roughness + 0.13);
            Assert.InRange((ride.At(field.Chainage(p)).Position - p).Length, real - 0.13, real + (2 * RideField.Roughness) + 0.13);
        }
    }

    /// <summary>A box of ten high has levels at its foot and its top, a thin slice beside either and slices of no more than two between; a corner by itself is
    /// none.</summary>
    [Fact]
    public void Slices_lie_beside_the_heights_at_which_faces_end()
    {
        Point3[] box = [.. Enumerable.Range(0, 200).Select(i => new Point3(i, 0, i % 2 == 0 ? 0 : 10))];
        var levels = MeshLevels.Of([new([.. box, new(0, 0, 5.03)], [], [])]);
        double[] beside = [-0.051, -0.001, 0, 0.001, 0.051, 9.949, 9.999, 10, 10.001, 10.051];
        Assert.Equal(levels.Order(), levels);
        Assert.All(beside, z => Assert.Contains(levels, l => Math.Abs(l - z) < 1e-9));
        Assert.Equal(beside.Length + 4, levels.Length); // 9.898 between them in five slices
        Assert.All(levels.Zip(levels.Skip(1)), p => Assert.InRange(p.Second - p.First, 1e-6, 2));
        Assert.DoesNotContain(levels, l => Math.Abs(l - 5.03) < 0.06);
        Assert.Empty(MeshLevels.Of([]));
        Assert.Contains(7.0, MeshLevels.Of([new([new(1, 2, 7)], [], [])]));
    }

    /// <summary>The same solid in another order is the same; one with as many triangles, of the same size, is told where it is another.</summary>
    [Fact]
    public void A_solid_is_known_in_whatever_order_its_triangles_stand()
    {
        var stl = HandSolids.Box(10, 20, 30);
        int[][] triangles = [.. stl.Triangles.Chunk(3)];
        var random = new Random(4);
        for (int i = 0; i < 10; i++)
        {
            int[] order = [.. Enumerable.Range(0, 8).OrderBy(_ => random.Next())];
            Point3[] vertices = [.. Enumerable.Range(0, 8).Select(v => stl.Vertices[Array.IndexOf(order, v)])];
            int[][] shuffled = [.. triangles.OrderBy(_ => random.Next())
                .Select(t => Enumerable.Range(random.Next(3), 3).Select(k => order[t[k % 3]]).ToArray())];
            Assert.Empty(Told(stl, new(vertices, [.. shuffled.SelectMany(t => t)], [])));

            // One triangle twice and another not at all; one turned over.
            Assert.NotEmpty(Told(stl, new(vertices, [.. shuffled[0], .. shuffled[..^1].SelectMany(t => t)], [])));
            int[] over = [shuffled[5][1], shuffled[5][0], shuffled[5][2]];
            Assert.NotEmpty(Told(stl, new(vertices, [.. over, .. shuffled.Where((_, k) => k != 5).SelectMany(t => t)], [])));
        }
    }

    /// <summary>A corner off its place is told with the difference of the boxes, one inside them by its place.</summary>
    [Fact]
    public void A_solid_with_a_corner_elsewhere_is_told()
    {
        var stl = HandSolids.Box(10, 20, 30);
        Mesh With(int corner, Point3 by) => stl with { Vertices = [.. stl.Vertices.Select((v, i) => i == corner ? v + by : v)] };
        int highest = Array.FindIndex(stl.Vertices, v => v == new Point3(10, 20, 30)), lowest = Array.FindIndex(stl.Vertices, v => v == default);
        Assert.Contains("boxes 0.002 mm apart", Assert.Single(Told(stl, With(highest, new(0, 0, 0.002)))), StringComparison.Ordinal);
        Assert.Contains("boxes 0.002 mm apart", Assert.Single(Told(stl, With(lowest, new(-0.002, 0, 0)))), StringComparison.Ordinal);
        Assert.Empty(Told(stl, With(highest, new(0, 0, 0.0004))));
        Assert.Contains("12 triangles, 6000.0 mm³", Assert.Single(Told(stl, stl with { Triangles = stl.Triangles[3..] })), StringComparison.Ordinal);

        // A corner drawn in along an edge that others hold keeps the box.
        Assert.Contains("with another surface at x 10.00", Assert.Single(Told(stl, With(highest, new(0, -0.005, 0)))), StringComparison.Ordinal);
    }

    /// <summary>A slab has its upper face and not its lower one.</summary>
    [Theory]
    [InlineData(0, false)]
    [InlineData(5, true)]
    [InlineData(10, true)]
    [InlineData(10.01, false)]
    public void A_slab_has_its_upper_face(double z, bool holds) => Assert.Equal(holds, new Slab(0, 10).Holds(z));

    /// <summary>A piece 5.237 mm from the edge of its bed keeps a margin of 5.23, one 1.237 beyond it none; the bed's height is the printer's.</summary>
    [Fact]
    public void What_lies_too_near_to_the_edge_is_told_with_the_margin_it_keeps()
    {
        var printer = PlatformForge.Sections.Forms.PrinterSpec.Oblong(100, 100, 30);
        string[] Lying(double x, double z) => [.. BedRule.Check("a.3mf", ["box"], [HandSolids.Box(10, 20, 30).Moved(RigidTransform.Shift(x, 40, z))], printer)
            .Select(f => f.Message + " " + f.Remedy)];
        Assert.Empty(Lying(8, 0));
        Assert.Contains("comes to 5.24 mm from the edge of the bed, and 8.0 mm is to be kept. Build the folder again for this bed, or with a margin of 5.23 mm "
            + "or less", Assert.Single(Lying(5.237, 0)), StringComparison.Ordinal);
        Assert.Contains("up to 1.24 mm beyond the edge", Assert.Single(Lying(-1.237, 0)), StringComparison.Ordinal);
        Assert.Contains("reaches from 0.01 to 30.01 mm above the bed; the printer has 30 mm", Assert.Single(Lying(8, 0.01)), StringComparison.Ordinal);
    }

    /// <summary>What is missing of the air that is asked is told to the next hundredth; with less than was asked one can make do.</summary>
    [Theory]
    [InlineData(0.2, true)]
    [InlineData(0.1, false)]
    public void One_can_make_do_with_what_is_missing_where_nothing_touches(double asked, bool canMakeDo)
    {
        PlatformForge.Verification.Written.Nearness Near(double clearance) => new(clearance, "van", "body", "up", "halt 1 of 1", 300, 19, 12, default, false);
        var told = Assert.Single(ClearanceRule.Check([new("van", "up", Near(0.05), Near(-0.123))], asked));
        Assert.Equal("PF8021", told.Code);
        Assert.Contains("Set that stretch back by 0.13 mm", told.Remedy, StringComparison.Ordinal);
        Assert.Equal(canMakeDo, told.Remedy.Contains("make do with 0.13 mm less than was asked for", StringComparison.Ordinal));
        var foul = Assert.Single(ClearanceRule.Check([new("van", "up", Near(-0.5), Near(-0.705))], asked));
        Assert.Contains("Set that stretch back by 0.71 mm", foul.Remedy, StringComparison.Ordinal);
    }

    private static string[] Told(Mesh stl, Mesh twin) => [.. TwinRule.Check(
        new("halt", "halt 1 of 1", 1, 1, 1, "a.stl", "a.3mf", 1, RigidTransform.Identity), "a.3mf", stl, twin).Select(f => f.Message)];
}
