using FsCheck.Xunit;
using PlatformForge.Geometry;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
using PlatformForge.Solids.Reliefs;
using PlatformForge.Tests.Meshes;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Solids.Kernel;

/// <summary>Reliefs in the place of named wall faces: closed with what is around them, and of a volume anyone can work out.</summary>
public class WallReliefTests
{
    private const string Front = "front of face 1";

    [Fact]
    public void A_field_sunk_into_a_straight_wall_takes_its_box()
    {
        var block = Shapes.Box(0, 0, 40, 10, 0, 12) with { WallFaces = [Front, null, null, null] };
        var (solid, report) = Raise([block], _ => [new(5, 15, 2, 8, -1.5)]);
        Assert.Equal(4800 - (10 * 6 * 1.5), report.Volume, 1e-6);
        Assert.Equal(solid.ColumnVolume, report.Volume, 1e-6);
        Assert.Equal(16, solid.Mesh.Vertices.Length);
    }

    [Fact]
    public void A_field_stands_out_of_the_side_that_is_named_and_no_other()
    {
        // The side from (40, 10) to (0, 10) looks towards +y; seen from outside its left end is at x = 40.
        var block = Shapes.Box(0, 0, 40, 10, 0, 12) with { WallFaces = [null, null, "back", null] };
        var (solid, report) = Raise([block], _ => [new(5, 15, 2, 8, 0.5)], "back");
        Assert.Equal(4800 + (10 * 6 * 0.5), report.Volume, 1e-6);
        var outermost = solid.Mesh.Vertices.Where(v => v.Y > 10).ToArray();
        Assert.Equal(4, outermost.Length);
        Assert.All(outermost, v => Assert.InRange(v.X, 25 - 1e-9, 35 + 1e-9));
    }

    [Fact]
    public void A_panel_tells_its_border_vertex_for_vertex_and_its_folds()
    {
        WallPanel? seen = null;
        Raise(Arc(3, 100, 0.3, _ => 12), panel => { seen = panel; return [new(1, 2, 1, 2, 0.1)]; });
        Assert.Equal(Front, seen!.Face);
        Assert.Equal(4, seen.Folds.Count);
        double chord = 2 * 100 * Math.Sin(0.05);
        Assert.Equal(3 * chord, seen.Length, 1e-4);
        Assert.Equal(8, seen.Border.Count);
        Assert.Equal((0, 12), At(seen, chord));
    }

    [Fact]
    public void A_field_over_a_fold_is_mitred()
    {
        // Two facets that meet at a right angle, seen from outside the corner: the floor of a sunk band is shorter by its depth on either side.
        ColumnBlock block = new([new(0, 0), new(20, 0), new(20, 20), new(0, 20)], new(0), new(10), BlockAction.Add,
            Paint.Wall)
        { WallFaces = [Front, Front, null, null] };
        var (_, report) = Raise([block], _ => [new(15, 25, 2, 8, -1)]);
        Assert.Equal(4000 - (6 * 1 * 2 * (5 + 4) / 2.0), report.Volume, 1e-6);
    }

    [Fact]
    public void A_ring_of_one_name_is_opened_once()
    {
        var ring = Shapes.Polygon(8, new(0, 0), 20);
        ColumnBlock block = new(ring, new(0), new(10), BlockAction.Add, Paint.Wall) { WallFaces = [.. Enumerable.Repeat(Front, 8)] };
        int panels = 0;
        Raise([block], panel => { panels++; return [new(1, panel.Length - 1, 2, 8, 0.3)]; });
        Assert.Equal(1, panels);
    }

    [Fact]
    public void What_is_built_against_a_face_parts_it_into_panels()
    {
        var wall = Shapes.Box(0, 0, 40, 10, 0, 12) with { WallFaces = [Front, null, null, null] };
        int panels = 0;
        Raise([wall, Shapes.Box(18, -5, 22, 1, 0, 12)], panel => { panels++; return [new(2, 5, 2, 8, -0.4)]; });
        Assert.Equal(2, panels);
    }

    [Fact]
    public void A_face_without_a_relief_stays_plain()
    {
        var block = Shapes.Box(0, 0, 40, 10, 0, 12) with { WallFaces = [Front, null, null, null] };
        Assert.Equal(12, SolidRaiser.Raise([block]).Mesh.TriangleCount);
    }

    [Fact]
    public void A_field_that_leaves_its_panel_is_refused()
    {
        var block = Shapes.Box(0, 0, 40, 10, 0, 12) with { WallFaces = [Front, null, null, null] };
        Assert.Throws<ArgumentException>(() => Raise([block], _ => [new(35, 41, 2, 8, -1)]));
        Assert.Throws<ArgumentException>(() => Raise([block], _ => [new(5, 15, 2, 8, -1), new(10, 20, 4, 6, -1)]));
    }

    [Property(MaxTest = 200)]
    public void Random_reliefs_on_faceted_and_ramped_walls_are_sound_and_of_their_volume(int seed)
    {
        var random = new Random(seed);
        int facets = 1 + random.Next(6);
        double radius = 60 + (random.NextDouble() * 400), angle = facets * (0.01 + (random.NextDouble() * 0.1)),
            fall = random.Next(2) * random.NextDouble() * 6;
        var blocks = Arc(facets, radius * (random.Next(2) == 0 ? 1 : -1), angle, part => 12 - (fall * part));
        double plain = SolidRaiser.Raise(blocks).ColumnVolume, expected = 0;
        var (solid, report) = Raise(blocks, panel =>
        {
            var fields = Pattern(panel, random).ToArray();
            expected += fields.Sum(f => OfRectangle(panel, f, angle / facets));
            return fields;
        });
        double moved = 2 * Tolerances.GridStep * 3 * angle * radius * 12;
        Assert.InRange(solid.ColumnVolume - plain - expected, -moved, moved);
        Assert.InRange(report.Volume - solid.ColumnVolume, -2 * moved, 2 * moved);
        Assert.Equal(0, report.Genus);

        double OfRectangle(WallPanel panel, ReliefField f, double turn)
        {
            // Each facet's stretch is a trapezium whose floor is longer or shorter by depth times tan of half the turn at each fold that it ends on.
            double from = f.Outline.Min(p => p.X), to = f.Outline.Max(p => p.X), low = f.Outline.Min(p => p.Y), high = f.Outline.Max(p => p.Y);
            int folds = panel.Folds.Skip(1).SkipLast(1).Count(s => s > from && s < to);
            double way = blocks[0].WallFaces[0] is null ? -1 : 1;
            return (high - low) * f.Out * ((to - from) + (way * folds * f.Out * Math.Tan(turn / 2)));
        }
    }

    [Fact]
    public void A_polygon_sunk_into_a_wall_takes_its_area_by_its_depth_however_it_turns()
    {
        var block = Shapes.Box(0, 0, 40, 10, 0, 12) with { WallFaces = [Front, null, null, null] };

        // A triangle of 4 by 3, and an angle of 6 by 6 without its 4 by 4.
        ReliefField triangle = new([new(2, 2), new(6, 2), new(2, 5)], -1.5),
            angle = new([new(10, 2), new(16, 2), new(16, 4), new(12, 4), new(12, 8), new(10, 8)], 0.7);
        var (solid, report) = Raise([block], _ => [triangle, angle]);
        Assert.Equal(4800 - (6 * 1.5) + (20 * 0.7), report.Volume, 1e-6);
        Assert.Equal(solid.ColumnVolume, report.Volume, 1e-6);
        Assert.Equal(8 + 6 + 12, solid.Mesh.Vertices.Length);
    }

    /// <summary>Four corners make no oblong where the foot rises: from 2 to 4 over 10 mm under a level head at 8, 50 mm².</summary>
    [Theory]
    [InlineData(2, 4, 8, 8, 50)]
    [InlineData(4, 2, 8, 8, 50)]
    [InlineData(2, 2, 8, 6, 50)]
    public void A_field_with_a_sloping_foot_or_head_stands_out_by_its_own_area(double left, double right, double highRight, double highLeft, double area)
    {
        var block = Shapes.Box(0, 0, 40, 10, 0, 12) with { WallFaces = [Front, null, null, null] };
        var (solid, report) = Raise([block], _ => [new([new(5, left), new(15, right), new(15, highRight), new(5, highLeft)], 0.5), new(20, 30, 2, 8, 0.5)]);
        Assert.Equal(4800 + (0.5 * (area + 60)), report.Volume, 1e-6);
        Assert.Equal(solid.ColumnVolume, report.Volume, 1e-6);
    }

    /// <summary>The side of a wedge that rises from nought to 10 over 20 mm.</summary>
    [Fact]
    public void A_wall_of_three_corners_takes_a_relief()
    {
        var wedge = Shapes.Box(0, 0, 20, 10, 0, 0) with { Upper = new(0, 0.5), WallFaces = [Front, null, null, null] };
        var (_, report) = Raise([wedge], _ => [new(14, 18, 1, 4, -0.5)]);
        Assert.Equal(1000 - (4 * 3 * 0.5), report.Volume, 1e-6);
    }

    /// <summary>What stands on a wall and meets its face in one point brings a corner in the middle of its top, which the grid lays beside the wall's line: the
    /// volume that is told is the mesh's all the same.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(1.1)]
    [InlineData(2.5)]
    public void A_wall_with_a_corner_in_its_top_tells_the_volume_of_its_mesh_whatever_its_direction(double turn)
    {
        var along = Point2.FromAngle(turn);
        ColumnBlock Turned(ColumnBlock b) => b with { Outline = [.. b.Outline.Select(p => (along * p.X) + (along.Left * p.Y))] };
        ColumnBlock wall = Shapes.Box(0, 0, 100, 10, 0, 8), prow = new([new(51.3, 0), new(60, 10), new(40, 10)], new(8), new(10), BlockAction.Add, Paint.Wall);
        ColumnBlock[] blocks = [Turned(wall) with { WallFaces = [Front, null, null, null] }, Turned(prow)];
        var (solid, report) = Raise(blocks, _ => []);
        Assert.Equal(report.Volume, solid.MeshVolume, 1e-9 * report.Volume);

        // Courses on it take their boxes: what they leave of the wall is cut otherwise, between corners that lie beside its line by half a step.
        var (_, laid) = Raise(blocks, _ => [new(3, 47, 1, 3, 0.25), new(55, 97, 1, 3, 0.25), new(3, 97, 4, 6, 0.25)]);
        Assert.Equal(report.Volume + (0.25 * 2 * (44 + 42 + 94)), laid.Volume, Tolerances.GridStep * 100 * 8);
    }

    [Fact]
    public void Names_beyond_a_rings_sides_name_nothing()
    {
        string?[] names = [null, null, null, null, Front, Front];
        ColumnBlock[] blocks = [Shapes.Box(0, 0, 40, 10, 0, 12), Shapes.Box(40, 0, 50, 10, 0, 12) with { WallFaces = names }];
        var (_, report) = Raise(blocks, _ => [new(1, 2, 1, 2, 0.1)]);
        Assert.Equal(6000, report.Volume, 1e-6);
    }

    [Fact]
    public void A_polygon_over_a_corner_is_mitred_and_its_sloping_sides_are_counted_as_they_are_made()
    {
        ColumnBlock block = new([new(0, 0), new(20, 0), new(20, 20), new(0, 20)], new(0), new(10), BlockAction.Add,
            Paint.Wall)
        { WallFaces = [Front, Front, null, null] };

        // A rhombus about the corner, 8 along and 6 high: at the corner it is 6 high, so that with a floor 1 mm in, the two pieces of 12 mm² lose 6/2 each.
        // A side that rises by 3 on one piece takes two triangles in place of a bent surface: 3·1·1/12 each, of whose four two add what two take.
        var (solid, report) = Raise([block], _ => [new([new(16, 5), new(20, 2), new(24, 5), new(20, 8)], -1)]);
        Assert.Equal(report.Volume, solid.ColumnVolume, 1e-6);
        Assert.Equal(4000 - (2 * 1 * (12 + 9) / 2.0), report.Volume, 1e-6);
    }

    [Fact]
    public void Faces_of_one_relief_are_one_panel_round_their_corner_and_of_two_reliefs_two()
    {
        ColumnBlock block = new([new(0, 0), new(20, 0), new(20, 20), new(0, 20)], new(0), new(10), BlockAction.Add,
            Paint.Wall)
        { WallFaces = ["front", "end", null, null] };
        List<WallPanel> seen = [];
        Given Band(double from, double to) => new(panel =>
        {
            seen.Add(panel);
            return [new(from, to, 2, 3, -0.5)];
        });
        var one = Band(15, 25);
        var round = SolidRaiser.Raise([block], new Dictionary<string, IWallRelief> { ["front"] = one, ["end"] = one });
        Assert.Equal([("front", 0.0, 20.0), ("end", 20.0, 40.0)], Assert.Single(seen).Stretches);
        Assert.Equal(4000 - (0.5 * 2 * (5 + 4.5) / 2), MeshCheck.Inspect(round.Mesh).Volume, 1e-6);
        seen.Clear();
        SolidRaiser.Raise([block], new Dictionary<string, IWallRelief> { ["front"] = Band(5, 15), ["end"] = Band(5, 15) });
        Assert.Equal(2, seen.Count);
    }

    [Fact]
    public void A_course_goes_on_over_the_place_at_which_a_ring_is_opened()
    {
        string[] names = ["front", "end", "back", "start"];
        ColumnBlock block = new([new(0, 0), new(20, 0), new(20, 10), new(0, 10)], new(0), new(10), BlockAction.Add, Paint.Wall) { WallFaces = names };
        var given = new Given(panel =>
        {
            Assert.Equal((true, "front", 60.0), (panel.IsRing, panel.Face, panel.Length));
            return [new(51, 69, 2, 3, -0.5), new(15, 25, 2, 3, -0.5)];
        });
        var solid = SolidRaiser.Raise([block], names.ToDictionary(n => n, _ => (IWallRelief)given));
        var report = MeshCheck.Inspect(solid.Mesh);
        Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, report.ToString());

        // The first runs 9 mm on the side at the start and 9 on the front, round one corner; the other 5 and 5.
        Assert.Equal(2000 - (0.5 * (18 - 0.5)) - (0.5 * (10 - 0.5)), report.Volume, 1e-6);
    }

    [Theory]
    [InlineData("touches a fold", new double[] { 15, 2, 20, 4, 15, 6 })]
    [InlineData("lies along a fold", new double[] { 15, 2, 20, 2, 20, 6, 15, 6 })]
    [InlineData("is clockwise", new double[] { 5, 2, 5, 6, 9, 6 })]
    [InlineData("crosses itself", new double[] { 4, 1, 12, 1, 4, 6, 8, 8 })]
    [InlineData("has two corners", new double[] { 5, 2, 9, 6 })]
    public void A_polygon_that_is_none_or_that_touches_a_bend_is_refused(string what, double[] corners)
    {
        ColumnBlock block = new([new(0, 0), new(20, 0), new(20, 20), new(0, 20)], new(0), new(10), BlockAction.Add,
            Paint.Wall)
        { WallFaces = [Front, Front, null, null] };
        Point2[] outline = [.. corners.Chunk(2).Select(c => new Point2(c[0], c[1]))];
        Assert.NotNull(Assert.Throws<ArgumentException>(() => Raise([block], _ => [new(outline, -0.2)])).Message);
        Assert.NotEmpty(what);
    }

    [Property(MaxTest = 200)]
    public void Random_polygons_over_folds_and_corners_are_sound_and_of_the_volume_that_is_told(int seed)
    {
        var random = new Random(seed);
        int facets = 2 + random.Next(6);
        double radius = 60 + (random.NextDouble() * 200), angle = facets * (0.02 + (random.NextDouble() * 0.25)), expected = 0;
        bool outside = random.Next(2) == 0;
        var blocks = Arc(facets, radius * (outside ? 1 : -1), angle, _ => 12);
        double plain = SolidRaiser.Raise(blocks).ColumnVolume;
        var (solid, report) = Raise(blocks, panel =>
        {
            var fields = Stars(panel, random).ToArray();
            expected += fields.Sum(f => Closed(panel, f, (outside ? 1 : -1) * Math.Tan(angle / facets / 2)));
            return fields;
        });
        double moved = 2 * Tolerances.GridStep * 3 * angle * radius * 12;
        Assert.InRange(solid.ColumnVolume - plain - expected, -moved, moved);
        Assert.InRange(report.Volume - solid.ColumnVolume, -2 * moved, 2 * moved);
        Assert.Equal(0, report.Genus);
    }

    // Area by depth; at every fold what is open there, times depth², times the tangent of half the turn; and for a side that crosses a fold, what two triangles
    // hold more than the surface between them: a twelfth of its rise beside the fold, times depth and the floor's shift there.
    private static double Closed(WallPanel panel, ReliefField field, double half)
    {
        double volume = field.Area * field.Out, shift = field.Out * half;
        double[] folds = [.. panel.Folds.Skip(1).SkipLast(1)];
        for (int i = 0; i < field.Outline.Count; i++)
        {
            Point2 a = field.Outline[i], b = field.Outline[(i + 1) % field.Outline.Count];
            double[] met = [.. folds.Where(f => f > Math.Min(a.X, b.X) && f < Math.Max(a.X, b.X)).OrderBy(f => Math.Abs(f - a.X))];
            double Up(double x) => a.Y + ((b.Y - a.Y) * (x - a.X) / (b.X - a.X));
            for (int k = 0; k < met.Length; k++)
            {
                double before = k == 0 ? a.Y : Up(met[k - 1]), after = k + 1 == met.Length ? b.Y : Up(met[k + 1]);
                int way = b.X > a.X ? 1 : -1;
                volume += -way * Up(met[k]) * field.Out * shift; // lower sides run forward, upper ones back: together what is open
                volume += way * (after - before) * field.Out * shift / 12;
            }
        }

        return volume;
    }

    // Stars of random rays, each in a cell of its own, clear of folds with their corners.
    private static IEnumerable<ReliefField> Stars(WallPanel panel, Random random)
    {
        for (double s = 0.2; s + 6 < panel.Length; s += 6.2 + random.NextDouble())
        {
            for (double z = 0.3; z + 3 < 11; z += 3.3)
            {
                int corners = 3 + random.Next(6);
                Point2 middle = new(s + 3, z + 1.5);
                Point2[] star = [.. Enumerable.Range(0, corners).Select(k =>
                {
                    var ray = Point2.FromAngle(2 * Math.PI * (k + (0.5 * random.NextDouble())) / corners) * (0.4 + (0.6 * random.NextDouble()));
                    return middle + new Point2(2.9 * ray.X, 1.4 * ray.Y);
                })];
                var field = new ReliefField(star, (random.Next(2) == 0 ? -1 : 1) * (0.05 + (0.15 * random.NextDouble())));
                if (field.Area > 0.5 && panel.Folds.All(f => star.All(p => Math.Abs(p.X - f) > 0.15)))
                {
                    yield return field;
                }
            }
        }
    }

    // Height of a panel's foot and of its top at a place along it, mm.
    private static (double Foot, double Top) At(WallPanel panel, double along)
    {
        var heights = Enumerable.Range(0, panel.Border.Count).Select(i => (A: panel.Border[i], B: panel.Border[(i + 1) % panel.Border.Count]))
            .Where(s => Math.Min(s.A.X, s.B.X) <= along && along <= Math.Max(s.A.X, s.B.X) && s.A.X != s.B.X)
            .Select(s => s.A.Y + ((s.B.Y - s.A.Y) * (along - s.A.X) / (s.B.X - s.A.X))).ToArray();
        return (heights.Min(), heights.Max());
    }

    /// <summary>Rows of rectangles, each a little apart from the next, all inside the panel.</summary>
    private static IEnumerable<ReliefField> Pattern(WallPanel panel, Random random)
    {
        double s = 0.05 + random.NextDouble();
        while (s < panel.Length - 0.5)
        {
            double end = Math.Min(s + 0.3 + (random.NextDouble() * 8), panel.Length - 0.1);
            var places = new[] { s, end }.Concat(panel.Folds.Where(f => f > s && f < end)).Select(f => At(panel, f)).ToArray();
            double foot = places.Max(p => p.Foot) + 0.1, top = places.Min(p => p.Top) - 0.1, z = foot;
            bool clear = panel.Folds.All(f => Math.Abs(f - s) > 0.3 && Math.Abs(f - end) > 0.3 || f == 0 || f == panel.Length);
            while (clear && z < top - 0.2)
            {
                double high = Math.Min(top, z + 0.2 + (random.NextDouble() * 3));
                yield return new(s, end, z, high, (random.NextDouble() < 0.5 ? -1 : 1) * (0.05 + (random.NextDouble() * 0.2)));
                z = high + 0.05 + random.NextDouble();
            }

            s = end + 0.05 + random.NextDouble();
        }
    }

    /// <summary>A wall 3 mm thick along an arc about the origin, its outer face named, or with a radius below nought its inner one; tops are told by the share
    /// of the way.</summary>
    private static ColumnBlock[] Arc(int facets, double radius, double angle, Func<double, double> top)
    {
        double r = Math.Abs(radius), step = angle / facets;
        return [.. Enumerable.Range(0, facets).Select(i =>
        {
            Point2 a = Point2.FromAngle(i * step), b = Point2.FromAngle((i + 1) * step);
            var (outer, inner) = radius > 0 ? (r, r - 3) : (r + 3, r);
            Point2[] ring = [a * outer, b * outer, b * inner, a * inner];
            double from = top((double)i / facets), to = top((i + 1.0) / facets);
            var upper = HeightPlane.Through(new(ring[0].X, ring[0].Y, from), new(ring[1].X, ring[1].Y, to), new(ring[3].X, ring[3].Y, from));
            return new ColumnBlock(ring, new(0), upper, BlockAction.Add, Paint.Wall) { WallFaces = radius > 0 ? [Front, null, null, null]
                : [null, null, Front, null] };
        })];
    }

    private static (Solid Solid, MeshReport Report) Raise(ColumnBlock[] blocks, Func<WallPanel, IEnumerable<ReliefField>> fields, string face = Front)
    {
        var solid = SolidRaiser.Raise(blocks, new Dictionary<string, IWallRelief> { [face] = new Given(fields) });
        var report = MeshCheck.Inspect(solid.Mesh);
        Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, report.ToString());
        return (solid, report);
    }

    private sealed class Given(Func<WallPanel, IEnumerable<ReliefField>> fields) : IWallRelief
    {
        public IEnumerable<ReliefField> Fields(WallPanel panel) => fields(panel);
    }
}
