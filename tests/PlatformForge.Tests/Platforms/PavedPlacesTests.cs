using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>Where joints of paving lie along the deck, by counting pieces.</summary>
public class PavedPlacesTests
{
    private static PavingLayout Of(double length, double slab = 0, RampSpec? ramp = null) => PavingLayout.Of(Bench.Plan(Bench.Straight(s => s with
    {
        Coping = s.Coping with { SlabLength = slab },
        EndRamp = ramp,
        Deck = s.Deck with { Paving = new() { Kind = PavingKind.Bricks, Courses = PavingCourses.Along, Length = length, Width = 8 } },
    })))!;

    private static double[] Courses(PavingLayout layout) => [.. layout.Joints.Where(j => j.IsAcross && j.Near == 0).Select(j => j.From).Order()];

    /// <summary>600 mm is twenty-four and a half pieces of 24.49, and a little more: twenty-five. Without its rim of a printed line it would be
    /// twenty-four.</summary>
    [Fact]
    public void Pieces_are_counted_over_the_whole_platform() => Assert.Equal(24, Courses(Of(24.489)).Length);

    [Fact]
    public void Without_slabs_a_joint_lies_at_a_ramp_s_head() => Assert.Contains(Courses(Of(24, 0, new(Length: 100))), s => Math.Abs(s - 700) < 1e-9);

    [Theory]
    [InlineData(6)]
    [InlineData(4)]
    public void Slabs_shorter_than_a_piece_do_not_part_it(double slab) => Assert.InRange(Of(24, slab).Length, 23, 25);

    [Fact]
    public void Longer_slabs_do() => Assert.Contains(Courses(Of(24, 60)), s => Math.Abs(s - 260) < 1e-9);
}
