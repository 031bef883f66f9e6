using PlatformForge.Platforms.Specs;
using PlatformForge.Tests.Clearance.Motion;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>
/// Random designs held against vehicles that a sweeper of another making really moves: every wheelset off by itself, bodies on their pivots, leaning on their
/// springs and with the track. The same trial runs on any number of designs in the benchmarks, a thousand in the gate.
/// </summary>
public class TrueMotionProperties
{
    [SimulatedProperty(15)]
    public void A_platform_stands_neither_nearer_than_the_budget_nor_farther_than_it_must(int seed)
    {
        var trial = DesignTrial.Of(RandomDesign.Of(seed));
        Assert.False(trial.IsTooNear || trial.IsTooFar, FormattableString.Invariant($"design {seed}: {trial.Spare:F4} mm over the budget; {trial.Nearest}"));
    }

    // The trial would not be worth much if an edge could be farther off than it must and nobody said so.
    [SimulatedProperty(12)]
    public void An_edge_drawn_a_tenth_of_a_millimetre_too_far_out_is_found(int seed)
    {
        var trial = DesignTrial.Of(RandomDesign.Of(seed), out _, outward: 0.1);
        Assert.True(!double.IsFinite(trial.Spare) || trial.Design.Spec.Face.Edge != EdgeStyle.Fitted || trial.IsTooFar,
            FormattableString.Invariant($"design {seed}: {trial.Spare:F4} mm over the budget of {trial.Allowed:F4} allowed"));
    }

    // Vehicles that halt at buffers, with their ends or what sticks out of them just beyond the platform's end.
    [SimulatedProperty(10)]
    public void An_end_of_a_platform_keeps_the_budget_to_what_halts_just_beyond_it(int seed)
    {
        var trial = DesignTrial.Of(RandomDesign.AtHalt(seed));
        Assert.False(trial.IsTooNear, FormattableString.Invariant($"design {seed}: {trial.Spare:F4} mm over the budget; {trial.Nearest}"));
    }

    // Only what is swept beside a platform was once held off its end, with the line of that going on straight.
    [Fact]
    public void A_corner_of_a_platforms_end_keeps_the_budget_to_cylinders_that_halt_beyond_it() =>
        A_platform_stands_neither_nearer_than_the_budget_nor_farther_than_it_must(105566);

    // Beside rounded kinks in sharp curves the place of a point was once looked for anywhere, and one side of a vehicle was not swept.
    [Theory]
    [InlineData(102234)]
    [InlineData(106027)]
    public void Beside_rounded_kinks_no_side_of_a_vehicle_is_lost(int seed) => A_platform_stands_neither_nearer_than_the_budget_nor_farther_than_it_must(seed);
}
