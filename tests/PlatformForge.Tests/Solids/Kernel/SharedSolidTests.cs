using PlatformForge.Benchmarks;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
using PlatformForge.Solids.Reliefs;
using Xunit;

namespace PlatformForge.Tests.Solids.Kernel;

/// <summary>A solid is the same to the last bit whether one thread raises it or two share it.</summary>
public sealed class SharedSolidTests
{
    [Fact]
    public void Two_threads_raise_the_same_random_solids_as_one()
    {
        for (int seed = 0; seed < 1500; seed++)
        {
            Same([.. RandomBlocks.From(seed), .. RandomBlocks.From(seed + 7), .. RandomBlocks.From(seed + 14)]);
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Two_threads_raise_the_same_section_as_one(bool brick)
    {
        for (int i = 0; i < 12; i++)
        {
            Same(ReferenceSection.Blocks(brick, 0.3 * i));
        }
    }

    [Fact]
    public void Two_threads_raise_the_same_solid_with_a_relief_as_one()
    {
        var wall = Shapes.Box(0, 0, 40, 10, 0, 12) with { WallFaces = ["front", "front", null, null] };
        for (int seed = 0; seed < 200; seed++)
        {
            Same([wall, .. RandomBlocks.From(seed)], new Dictionary<string, IWallRelief> { ["front"] = new Sunk() });
        }
    }

    [Fact]
    public void A_fault_in_a_part_comes_out_as_itself_after_all_parts_are_done()
    {
        using var sides = new SideBySide(2, blocks: 1000);
        for (int round = 0; round < 200; round++)
        {
            int done = 0;
            Assert.Throws<InvalidTimeZoneException>(() => sides.Run(4, part =>
            {
                Interlocked.Increment(ref done);
                if (part == 2)
                {
                    throw new InvalidTimeZoneException();
                }
            }));
            Assert.Equal(4, done);
        }
    }

    [Theory]
    [InlineData(0, 3)]
    [InlineData(1, 2)]
    [InlineData(10, 4)]
    [InlineData(int.MaxValue, 4)]
    public void Parts_follow_one_another_and_leave_nothing_out(int items, int parts)
    {
        var ranges = Enumerable.Range(0, parts).Select(part => SideBySide.Range(part, parts, items)).ToArray();
        Assert.Equal(0, ranges[0].From);
        Assert.Equal(items, ranges[^1].End);
        Assert.All(ranges.Zip(ranges.Skip(1)), pair => Assert.Equal(pair.First.End, pair.Second.From));
    }

    private static void Same(IReadOnlyList<ColumnBlock> blocks, IReadOnlyDictionary<string, IWallRelief>? reliefs = null)
    {
        Solid one = SolidRaiser.Raise(blocks, reliefs, threads: 1), two = SolidRaiser.Raise(blocks, reliefs, threads: 2);
        Assert.Equal(one.Mesh.Vertices, two.Mesh.Vertices);
        Assert.Equal(one.Mesh.Triangles, two.Mesh.Triangles);
        Assert.Equal(one.Mesh.Paints, two.Mesh.Paints);
        Assert.Equal((one.ColumnVolume, one.MeshVolume, one.ReliefVolume), (two.ColumnVolume, two.MeshVolume, two.ReliefVolume));
    }

    // An oblong near the right end of every panel, which is plain wall whatever is cut into the rest.
    private sealed class Sunk : IWallRelief
    {
        public IEnumerable<ReliefField> Fields(WallPanel panel) => panel.Length > 20 ? [new(panel.Length - 18, panel.Length - 12, 4, 6, -0.3)] : [];
    }
}
