using PlatformForge.Benchmarks;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
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

    private static void Same(IReadOnlyList<ColumnBlock> blocks)
    {
        Solid one = SolidRaiser.Raise(blocks, threads: 1), two = SolidRaiser.Raise(blocks, threads: 2);
        Assert.Equal(one.Mesh.Vertices, two.Mesh.Vertices);
        Assert.Equal(one.Mesh.Triangles, two.Mesh.Triangles);
        Assert.Equal(one.Mesh.Paints, two.Mesh.Paints);
        Assert.Equal((one.ColumnVolume, one.MeshVolume), (two.ColumnVolume, two.MeshVolume));
    }
}
