using FsCheck.Xunit;
using PlatformForge.Geometry;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Meshes;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Solids.Kernel;

public class RandomBlockProperties
{
    [Property(MaxTest = 600)]
    public void Any_blocks_make_a_sound_mesh_of_the_columns_volume(int seed) => Sound(RandomBlocks.From(seed));

    /// <summary>Merged levels leave one of a surface's borders with two corners, a slit: its sides meet one another.</summary>
    [Theory]
    [InlineData(681)]
    public void A_surface_with_a_slit_is_sound(int seed) => Sound(RandomBlocks.From(seed));

    /// <summary>The first four: slits. The others: a top and a bottom that merged levels brought together, cut into triangles with the same corners.</summary>
    [Theory]
    [InlineData(222)]
    [InlineData(396)]
    [InlineData(5703)]
    [InlineData(5784)]
    [InlineData(100981)]
    [InlineData(103657)]
    [InlineData(115653)]
    [InlineData(117710)]
    public void Slits_and_flaps_among_many_turned_blocks_are_sound(int seed) => Sound(ManyTurned(seed));

    /// <summary>Surfaces that cross along an edge which the grid has bent: where they do is put on the edge as it came, or they cross for ever.</summary>
    [Theory]
    [InlineData(264)]
    [InlineData(296)]
    public void Surfaces_that_cross_along_bent_edges_are_sound(int seed) => Sound(ManyTurned(seed));

    /// <summary>A line along which two surfaces cross passes a corner of an outline within a step or two.</summary>
    [Theory]
    [InlineData(3)]
    public void Surfaces_that_cross_beside_a_corner_are_sound(int seed) => Sound(ManyTurned(seed));

    private static ColumnBlock[] ManyTurned(int seed)
    {
        var along = Point2.FromAngle(0.37 * seed);
        ColumnBlock[] blocks = [.. RandomBlocks.From(seed), .. RandomBlocks.From(~seed), .. RandomBlocks.From(seed + 7777)];
        var noise = new Random(seed);
        return [.. blocks.Select(Moved)];

        ColumnBlock Moved(ColumnBlock b) =>
            b with { Outline = [.. b.Outline.Select(p => Far(along, p, noise))], Lower = Tilted(along, b.Lower), Upper = Tilted(along, b.Upper) };
    }

    [SimulatedProperty(60)]
    public void The_volume_is_that_of_an_independent_overlay(int seed)
    {
        var blocks = RandomBlocks.From(seed);
        double oracle = CellOracle.Volume(blocks), kernel = SolidRaiser.Raise(blocks).ColumnVolume;
        Assert.Equal(oracle, kernel, Rounding(blocks));
    }

    [Property(MaxTest = 300)]
    public void The_volume_by_arithmetic_is_the_raised_solid_s(int seed)
    {
        var blocks = RandomBlocks.From(seed);
        double raised = SolidRaiser.Raise(blocks).ColumnVolume;
        Assert.Equal(raised, SolidRaiser.Volume(blocks), 1e-9 * Math.Max(1, raised));
    }

    [Property(MaxTest = 60)]
    public void A_mirror_image_has_the_same_volume(int seed)
    {
        var blocks = RandomBlocks.From(seed);
        ColumnBlock[] mirrored =
            [.. blocks.Select(b => b with { Outline = [.. b.Outline.Reverse().Select(p => new Point2(-p.X, p.Y))], Lower = Flip(b.Lower),
                Upper = Flip(b.Upper) })];
        Assert.Equal(Sound(blocks), Sound(mirrored), Rounding(blocks));

        static HeightPlane Flip(HeightPlane p) => p with { X = -p.X };
    }

    [Property(MaxTest = 60)]
    public void A_quarter_turn_keeps_the_volume(int seed)
    {
        var blocks = RandomBlocks.From(seed);
        ColumnBlock[] turned = [.. blocks.Select(b => b with { Outline = [.. b.Outline.Select(p => p.Left)], Lower = Turn(b.Lower), Upper = Turn(b.Upper) })];
        Assert.Equal(Sound(blocks), Sound(turned), Rounding(blocks));

        static HeightPlane Turn(HeightPlane p) => new(p.Z, -p.Y, p.X);
    }

    /// <summary>Faces of hundredths of a millimetre as of millimetres: which surface is higher is found inside a face, however small it is.</summary>
    [Property(MaxTest = 60)]
    public void The_same_a_hundredth_as_large_has_a_millionth_of_the_volume(int seed)
    {
        const double Small = 0.01;
        var blocks = RandomBlocks.From(seed);
        ColumnBlock[] small = [.. blocks.Select(b => b with { Outline = [.. b.Outline.Select(p => p * Small)], Lower = Less(b.Lower), Upper = Less(b.Upper) })];
        Assert.Equal(SolidRaiser.Raise(blocks).ColumnVolume * Small * Small * Small, SolidRaiser.Raise(small).ColumnVolume, Rounding(small) * Small);

        static HeightPlane Less(HeightPlane p) => p with { Z = p.Z * Small };
    }

    /// <summary>Turned blocks of some micrometres, so near one another that rounding brings corners onto edges and the plan is noded a second time.</summary>
    [Theory]
    [InlineData(1003)]
    [InlineData(1011)]
    [InlineData(1655)]
    public void Blocks_of_micrometres_are_closed_and_keep_their_volume(int seed)
    {
        const double Small = 0.004;
        var along = Point2.FromAngle(0.37 * seed);
        ColumnBlock[] large = [.. Enumerable.Range(0, 6).SelectMany(i => RandomBlocks.From((31 * seed) + i))], small = [.. large.Select(Turned)];
        var raised = SolidRaiser.Raise(small);
        Assert.Equal(SolidRaiser.Raise(large).ColumnVolume * Small * Small * Small, raised.ColumnVolume, Rounding(small) * Small);
        Assert.True(MeshCheck.Inspect(raised.Mesh) is { IsClosed: true, DegenerateTriangles: 0 });

        HeightPlane Less(HeightPlane p) => ((along * p.X) + (along.Left * p.Y)) is var slope ? new(p.Z * Small, slope.X, slope.Y) : default;
        ColumnBlock Turned(ColumnBlock b) =>
            b with
            {
                Outline = [.. b.Outline.Select(p => (along * (p.X * Small)) + (along.Left * (p.Y * Small)))],
                Lower = Less(b.Lower),
                Upper = Less(b.Upper)
            };
    }

    /// <summary>Surfaces that rounding has in another order at a corner than within the face beside it.</summary>
    [Theory]
    [InlineData(1212)]
    public void Surfaces_out_of_order_at_a_corner_keep_the_volume(int seed) => The_same_a_hundredth_as_large_has_a_millionth_of_the_volume(seed);

    [Property(MaxTest = 150)]
    public void A_turn_by_any_angle_far_from_the_origin_keeps_the_volume(int seed, ushort angle)
    {
        // What touched or coincided before now does so but for the rounding of doubles and a noise of 10⁻⁸ mm.
        var noise = new Random(seed);
        var along = Point2.FromAngle(angle);
        ColumnBlock[] blocks = [.. RandomBlocks.From(seed), .. RandomBlocks.From(~seed)];
        ColumnBlock[] moved =
            [.. blocks.Select(b => b with { Outline = [.. b.Outline.Select(p => Far(along, p, noise))], Lower = Tilted(along, b.Lower),
                Upper = Tilted(along, b.Upper) })];
        Assert.Equal(Sound(blocks), SolidRaiser.Raise(moved).ColumnVolume, Rounding(blocks));
    }

    [Property(MaxTest = 60)]
    public void Solids_apart_from_each_other_add_their_volumes_in_any_order(int first, int second)
    {
        ColumnBlock[] a = RandomBlocks.From(first), b = [.. RandomBlocks.From(second).Select(Away)];
        double sum = Sound(a) + Sound(b), rounding = Rounding([.. a, .. b]); // the sweep may run along another axis and round ties the other way
        Assert.Equal(sum, Sound([.. a, .. b]), rounding);
        Assert.Equal(sum, Sound([.. b, .. a]), rounding);

        // 64 mm along x: a whole number of grid steps.
        static ColumnBlock Away(ColumnBlock block) => block with
        {
            Outline = [.. block.Outline.Select(p => new Point2(p.X + 64, p.Y))],
            Lower = Shift(block.Lower),
            Upper = Shift(block.Upper)
        };
        static HeightPlane Shift(HeightPlane p) => p with { Z = p.Z - (64 * p.X) };
    }

    [Fact]
    public void Solids_raised_side_by_side_are_the_same_as_one_after_the_other()
    {
        var alone = Enumerable.Range(0, 40).Select(s => SolidRaiser.Raise(RandomBlocks.From(s)).Mesh).ToArray();
        var together = new Mesh[alone.Length];
        Parallel.For(0, alone.Length, new ParallelOptions { MaxDegreeOfParallelism = 2 }, s => together[s] = SolidRaiser.Raise(RandomBlocks.From(s)).Mesh);
        Assert.All(Enumerable.Range(0, alone.Length),
            s => Assert.True(alone[s].Vertices.SequenceEqual(together[s].Vertices) && alone[s].Triangles.SequenceEqual(together[s].Triangles)));
    }

    /// <summary>A point turned and moved by 3 m and 1 m.</summary>
    private static Point2 Far(Point2 along, Point2 p, Random noise) =>
        (along * p.X) + (along.Left * p.Y) + new Point2(3000 + (1e-8 * noise.NextDouble()), 1000 + (1e-8 * noise.NextDouble()));

    private static HeightPlane Tilted(Point2 along, HeightPlane p)
    {
        var slope = (along * p.X) + (along.Left * p.Y);
        return new(p.Z - Point2.Dot(slope, new(3000, 1000)), slope.X, slope.Y);
    }

    private static double Sound(ColumnBlock[] blocks)
    {
        var solid = SolidRaiser.Raise(blocks);
        var report = MeshCheck.Inspect(solid.Mesh);
        Assert.True(report.IsSound || solid.Mesh.TriangleCount == 0, report.ToString());
        Assert.Equal(solid.Mesh.TriangleCount, solid.Mesh.Paints.Length);
        Shapes.Agree(solid, report);
        return report.Volume;
    }

    /// <summary>Outlines and crossing lines move by less than a step; what that can change is their length times the height.</summary>
    private static double Rounding(ColumnBlock[] blocks)
    {
        const double height = 15;
        double length = blocks.Sum(b => b.Outline.Select((p, i) => (b.Outline[(i + 1) % b.Outline.Length] - p).Length).Sum());
        return Tolerances.GridStep * height * length;
    }
}
