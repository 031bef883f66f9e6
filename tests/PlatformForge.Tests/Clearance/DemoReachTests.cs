using PlatformForge.Clearance;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>
/// Reach of the demo places against an independent simulation in 2 mm steps, which the project's user research gives as good to about
/// 0.1 mm.
/// </summary>
public class DemoReachTests
{
    private static readonly Lazy<SweptEnvelope> Pendlewick = new(() => Sweep(DemoStock.PendlewickTrack(), 270, 1000, DemoStock.Pendlewick));
    private static readonly Lazy<SweptEnvelope> Quillhaven = new(() => Sweep(DemoStock.QuillhavenTrack(), 400, 700, DemoStock.Quillhaven));

    [Theory]
    [InlineData(270, 18.5)]
    [InlineData(350, 20.1)]
    [InlineData(450, 21.8)]
    [InlineData(550, 22.46)]
    [InlineData(800, 22.46)]
    public void Outside_of_Pendlewick_is_reached_as_simulated(double chainage, double expected) =>
        Assert.Equal(expected, Pendlewick.Value.Composite(Side.Right).At(chainage), 0.1);

    [Theory]
    [InlineData(350, 18.7)]
    [InlineData(500, 21.9)]
    [InlineData(650, 23.09)]
    [InlineData(900, 23.09)]
    public void Inside_of_Pendlewick_is_reached_as_simulated(double chainage, double expected) =>
        Assert.Equal(expected, Pendlewick.Value.Composite(Side.Left).At(chainage), 0.1);

    [Fact]
    public void Mean_outside_reach_of_Pendlewick_is_as_simulated() =>
        Assert.Equal(21.9, Pendlewick.Value.Composite(Side.Right).Reach.Average(), 0.1);

    [Theory]
    [InlineData(10, 11.3)]
    [InlineData(40, 10.6)]
    [InlineData(60, 10.0)]
    [InlineData(80, 9.6)]
    [InlineData(250, 9.5)]
    public void Straight_past_the_crossover_of_Quillhaven_is_still_reached_by_slewing_vehicles(double past, double expected) =>
        Assert.Equal(expected, Quillhaven.Value.Composite(Side.Left).At(416 + past), 0.1);

    [Fact]
    public void Long_coach_governs_the_outside_of_Pendlewick_and_the_tank_engine_what_is_straight_and_low()
    {
        var line = Pendlewick.Value.Composite(Side.Right);
        Assert.Equal("long coach", Pendlewick.Value.Parts[line.Governing[line.Count / 2]].Vehicle.Name);
        var straight = Sweep(DemoStock.Lay("plain", new StraightSpec(1200)), 500, 600, DemoStock.Pendlewick);
        var low = straight.Composite(Side.Left, 0, 12);
        Assert.All(low.Reach, r => Assert.Equal(18.0, r, 0.01));
        Assert.All(low.Governing, g => Assert.Equal(("tank engine", "cylinders"), (straight.Parts[g].Vehicle.Name, straight.Parts[g].Part.Name)));
        Assert.All(straight.Composite(Side.Left, 12, 60).Reach, r => Assert.Equal(17.25, r, 0.01));
    }

    private static SweptEnvelope Sweep(Centreline track, double from, double to, IReadOnlyList<Vehicle> stock)
    {
        var outcome = EnvelopeSweeper.Sweep(new(track, from, to, [new(track, stock)]));
        Assert.Empty(outcome.Findings);
        return outcome.Value!;
    }
}
