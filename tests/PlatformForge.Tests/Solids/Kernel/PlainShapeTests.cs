using PlatformForge.Geometry;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
using Xunit;
using static PlatformForge.Tests.Solids.Kernel.Shapes;

namespace PlatformForge.Tests.Solids.Kernel;

/// <summary>Solids whose volume and genus anyone can work out on paper.</summary>
public class PlainShapeTests
{
    private const double Exact = 1e-9;

    [Fact]
    public void A_box_of_10_by_20_by_30_has_6000_cubic_millimetres_and_12_triangles()
    {
        var (solid, report) = RaiseSound(Box(0, 0, 10, 20, 0, 30));
        Assert.Equal(6000, report.Volume, Exact);
        Assert.Equal(12, solid.Mesh.TriangleCount);
        Assert.Equal(0, report.Genus);
    }

    [Fact]
    public void No_blocks_make_an_empty_mesh() => Assert.Empty(SolidRaiser.Raise([]).Mesh.Triangles);

    [Fact]
    public void Removing_all_leaves_an_empty_mesh() =>
        Assert.Empty(SolidRaiser.Raise([Box(0, 0, 1, 1, 0, 1), Box(-1, -1, 2, 2, -1, 2, BlockAction.Remove)]).Mesh.Triangles);

    [Fact]
    public void A_blind_hole_takes_its_volume_and_leaves_genus_nought()
    {
        var (_, report) = RaiseSound(Box(0, 0, 10, 10, 0, 10), Box(4, 4, 6, 6, 5, 11, BlockAction.Remove));
        Assert.Equal(980, report.Volume, Exact);
        Assert.Equal(0, report.Genus);
    }

    [Fact]
    public void A_through_hole_makes_genus_one()
    {
        var (_, report) = RaiseSound(Box(0, 0, 10, 10, 0, 10), Box(4, 4, 6, 6, -1, 11, BlockAction.Remove));
        Assert.Equal(960, report.Volume, Exact);
        Assert.Equal(1, report.Genus);
    }

    [Fact]
    public void A_tunnel_makes_genus_one()
    {
        var (_, report) = RaiseSound(Box(0, 0, 10, 10, 0, 10), Box(-1, 4, 11, 6, 3, 5, BlockAction.Remove));
        Assert.Equal(960, report.Volume, Exact);
        Assert.Equal(1, report.Genus);
    }

    [Fact]
    public void A_closed_hollow_makes_a_second_shell()
    {
        var (_, report) = RaiseSound(Box(0, 0, 10, 10, 0, 10), Box(4, 4, 6, 6, 4, 6, BlockAction.Remove));
        Assert.Equal(992, report.Volume, Exact);
        Assert.Equal(2, report.Components);
    }

    [Fact]
    public void A_lying_bore_through_a_wall_is_a_prism_of_its_sides()
    {
        // A bore of eight sides and radius 2 along x; area of a regular octagon: 2 √2 r².
        var blocks = new List<ColumnBlock> { Box(0, 0, 3, 10, 0, 10) };
        for (int i = -2; i < 2; i++)
        {
            double y0 = 2 * Math.Sin(Math.PI * i / 4), y1 = 2 * Math.Sin(Math.PI * (i + 1) / 4);
            double h0 = 2 * Math.Cos(Math.PI * i / 4), h1 = 2 * Math.Cos(Math.PI * (i + 1) / 4);
            var upper = HeightPlane.Through(new(0, 5 + y0, 5 + h0), new(1, 5 + y0, 5 + h0), new(0, 5 + y1, 5 + h1));
            var lower = HeightPlane.Through(new(0, 5 + y0, 5 - h0), new(1, 5 + y0, 5 - h0), new(0, 5 + y1, 5 - h1));
            blocks.Add(new([new(-1, 5 + y0), new(4, 5 + y0), new(4, 5 + y1), new(-1, 5 + y1)], lower, upper, BlockAction.Remove, Paint.Wall));
        }

        var (_, report) = RaiseSound([.. blocks]);
        Assert.Equal(300 - (3 * 2 * Math.Sqrt(2) * 4), report.Volume, 1e-3); // the sides' places in plan are rounded to the grid
        Assert.Equal(1, report.Genus);
    }

    [Fact]
    public void A_wedge_closes_at_its_feather_edge()
    {
        var (solid, report) = RaiseSound(new ColumnBlock([new(0, 0), new(10, 0), new(10, 4), new(0, 4)], new(0), new(0, 0.5), BlockAction.Add, Paint.Deck));
        Assert.Equal(100, report.Volume, Exact);
        Assert.Equal(8, solid.Mesh.TriangleCount);
    }

    [Fact]
    public void A_block_is_empty_where_its_upper_plane_dips_under_its_lower_one()
    {
        // Of the wedge z = x / 2 − 1 only what lies over nought stands: a triangle of 8 by 4, 4 wide.
        var (_, report) = RaiseSound(new ColumnBlock([new(0, 0), new(10, 0), new(10, 4), new(0, 4)], new(0), new(-1, 0.5), BlockAction.Add, Paint.Deck));
        Assert.Equal(64, report.Volume, Exact);
    }

    [Fact]
    public void Two_crossing_slopes_make_a_roof()
    {
        // The union of two wedges that rise from nought to 10 from opposite sides: 10 high at either end, 5 in the middle.
        Point2[] ring = [new(0, 0), new(10, 0), new(10, 4), new(0, 4)];
        var (_, union) = RaiseSound(new ColumnBlock(ring, new(0), new(0, 1), BlockAction.Add, Paint.Deck),
            new(ring, new(0), new(10, -1), BlockAction.Add, Paint.Deck));
        Assert.Equal(4 * 75, union.Volume, Exact);

        // What both have in common: a ridge 5 high.
        var (_, ridge) = RaiseSound(new ColumnBlock(ring, new(0), new(0, 1), BlockAction.Add, Paint.Deck),
            new(ring, new(10, -1), new(20), BlockAction.Remove, Paint.Deck));
        Assert.Equal(4 * 25, ridge.Volume, Exact);
    }

    [Fact]
    public void Slopes_that_cross_along_a_shared_edge_share_the_point_of_crossing()
    {
        var (_, report) = RaiseSound(
            new ColumnBlock([new(0, 0), new(5, 0), new(5, 10), new(0, 10)], new(0), new(1, 0, 1), BlockAction.Add, Paint.Deck),
            new([new(5, 0), new(10, 0), new(10, 10), new(5, 10)], new(0), new(11, 0, -1), BlockAction.Add, Paint.Deck));
        Assert.Equal(600, report.Volume, Exact);
        Assert.Equal(1, report.Components);
    }

    [Fact]
    public void Blocks_that_stand_flush_are_one_solid()
    {
        var (_, report) = RaiseSound(Box(0, 0, 5, 5, 0, 5), Box(5, 0, 10, 5, 0, 5), Box(0, 0, 10, 5, 5, 6));
        Assert.Equal(300, report.Volume, Exact);
        Assert.Equal(1, report.Components);
        Assert.Equal(0, report.Genus);
    }

    [Fact]
    public void Two_cubes_that_touch_along_an_edge_stay_two()
    {
        var (_, report) = RaiseSound(Box(0, 0, 1, 1, 0, 1), Box(1, 1, 2, 2, 0, 1));
        Assert.Equal(2, report.Components);
        Assert.Equal(2, report.Volume, Exact);
    }

    [Fact]
    public void Two_cubes_that_touch_along_a_level_edge_stay_two()
    {
        var (_, report) = RaiseSound(Box(0, 0, 1, 1, 0, 1), Box(1, 0, 2, 1, 1, 2));
        Assert.Equal(2, report.Components);
    }

    /// <summary>Which walls belong together along the edge is told by their turn about it, wherever on the layout that stands.</summary>
    [Theory]
    [InlineData(3000, 1000)]
    [InlineData(-500, 4000)]
    [InlineData(20, -7000)]
    public void Two_cubes_that_touch_along_an_edge_stay_two_far_from_the_layouts_corner(double x, double y)
    {
        var (_, upright) = RaiseSound(Box(x, y, x + 1, y + 1, 0, 1), Box(x + 1, y + 1, x + 2, y + 2, 0, 1));
        var (_, level) = RaiseSound(Box(x, y, x + 1, y + 1, 0, 1), Box(x + 1, y, x + 2, y + 1, 1, 2));
        var (_, other) = RaiseSound(Box(x + 1, y, x + 2, y + 1, 0, 1), Box(x, y + 1, x + 1, y + 2, 0, 1));
        Assert.All((Meshes.MeshReport[])[upright, level, other], r => Assert.Equal((2, 0, 2), (r.Components, r.Genus, Math.Round(r.Volume, 6))));
    }

    /// <summary>Of the two diagonals of a quadrangle the one is drawn that leaves the larger least triangle: no sliver is cut that need not be.</summary>
    [Fact]
    public void A_quadrangle_is_cut_along_the_diagonal_that_leaves_no_sliver()
    {
        for (int i = 0; i < 24; i++)
        {
            // A trapezium with one corner drawn out, turned by an odd angle each time, so that each of its corners comes first.
            var (along, way) = (Point2.FromAngle(0.2617 * i), i % 2 == 0 ? 1 : -1);
            Point2[] ring = [.. new Point2[] { new(0, 0), new(8, 1), new(9, 6), new(1, 3) }.Select(p => (along * p.X) + (along.Left * p.Y * way))];
            ring = i % 2 == 0 ? ring : [.. ring.Reverse()];
            double Area(int a, int b, int c) => Point2.Cross(ring[b] - ring[a], ring[c] - ring[a]) / 2;
            double least = Math.Max(Math.Min(Area(0, 1, 2), Area(0, 2, 3)), Math.Min(Area(1, 2, 3), Area(1, 3, 0)));
            var mesh = RaiseSound(new ColumnBlock(ring, new(0), new(2), BlockAction.Add, Paint.Deck)).Solid.Mesh;
            double[] tops = [.. Enumerable.Range(0, mesh.TriangleCount).Select(t => Corners(mesh, t)).Where(c => c.All(p => p.Z == 2))
                .Select(c => Point3.Cross(c[1] - c[0], c[2] - c[0]).Z / 2)];
            Assert.Equal(2, tops.Length);
            Assert.Equal(least, tops.Min(), 1e-3); // corners are laid to the grid
        }

        static Point3[] Corners(Mesh mesh, int t) => [.. Enumerable.Range(0, 3).Select(k => mesh.Vertices[mesh.Triangles[(3 * t) + k]])];
    }

    /// <summary>A thousand pillars, tenths of a millimetre high, whose sum in decimal numbers is exact: the polygons' volume is that to the last digits of a
    /// double.</summary>
    [Fact]
    public void A_sum_of_very_many_prisms_loses_nothing_by_their_number()
    {
        static ColumnBlock Pillar(int x, int y, int wide, double high) => Box(x, y, x + wide, y + 2, 0, high);
        ColumnBlock[] pillars = [.. Enumerable.Range(0, 1000).Select(i => Pillar(3 * (i % 50), 3 * (i / 50), 1 + (i % 2), 0.1 + (i % 7 * 0.1)))];
        decimal sum = Enumerable.Range(0, 1000).Sum(i => (1 + (i % 2)) * 2 * (0.1m + (i % 7 * 0.1m)));
        Assert.Equal((double)sum, SolidRaiser.Raise(pillars).MeshVolume, 5e-13);
    }

    [Fact]
    public void Two_cubes_that_touch_at_a_corner_stay_two()
    {
        var (_, report) = RaiseSound(Box(0, 0, 1, 1, 0, 1), Box(1, 1, 2, 2, 1, 2));
        Assert.Equal(2, report.Components);
    }

    [Fact]
    public void Tops_show_the_paint_of_the_last_block_and_walls_that_of_their_material()
    {
        var (solid, _) = RaiseSound(Box(0, 0, 10, 10, 0, 8), Box(0, 0, 10, 10, 8, 10, paint: Paint.Coping),
            Box(4, 4, 6, 6, 9, 11, BlockAction.Remove, Paint.Line));
        for (int t = 0; t < solid.Mesh.TriangleCount; t++)
        {
            var z = Enumerable.Range(0, 3).Select(i => solid.Mesh.Vertices[solid.Mesh.Triangles[(3 * t) + i]].Z).ToArray();
            var expected = z switch
            {
                _ when z.All(v => v == 9) => Paint.Line,
                _ when z.All(v => v >= 8) => Paint.Coping,
                _ => Paint.Wall,
            };
            Assert.Equal(expected, (Paint)solid.Mesh.Paints[t]);
        }
    }
}
