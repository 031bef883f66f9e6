using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Platforms.Plans;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Rubble under the sloped heads of buttresses, whose faces are as low as the head's lower edge.</summary>
public class RubbleHeadTests
{
    /// <summary>No square as wide as one and a half of the narrowest stones with its joints is left bare on the front of a buttress.</summary>
    [Fact]
    public void Rubble_covers_the_front_of_a_buttress_up_to_its_head() => Assert.All(Simulations.Cases(6, 40), seed =>
    {
        var random = new Random(seed);
        ModelScale scale = new(76.2);
        var facing = FacingSpec.For(scale) with
        {
            Front = WallFinish.Rubble,
            Seed = random.Next(1000),
            Piers = PierSpec.For(scale) with { Height = 10 + (random.NextDouble() * 4) },
        };
        Check(Workbench.Straight(200, Side.Left, s => s with { Facing = facing }), 2, seed);
    });

    /// <summary>The same of low buttresses beside ramps, whose heads are cut by the slope or lie right under it.</summary>
    [Fact]
    public void Rubble_covers_the_front_of_a_low_buttress_on_a_ramp() => Assert.All(Simulations.Cases(8, 60), seed =>
    {
        var random = new Random(seed);
        ModelScale scale = new(76.2);
        var facing = FacingSpec.For(scale) with
        {
            Front = WallFinish.Rubble,
            Seed = random.Next(1000),
            Piers = PierSpec.For(scale) with { Height = 7 + (random.NextDouble() * 5), Pitch = 25 + (random.NextDouble() * 10) },
        };
        Check(Workbench.Straight(300, Side.Left, s => s with { Facing = facing, EndRamp = new(Gradient: 8 + (random.NextDouble() * 4)) }), 4, seed);
    });

    private static void Check(PlatformPlan plan, int least, int seed)
    {
        var facing = plan.Spec.Facing!;
        double side = (1.5 * RubbleSpec.Narrowest * facing.RubbleSize) + (2 * facing.Joint);
        var bare = new List<string>();
        int fronts = 0;
        var all = Workbench.Made(plan, Workbench.Printer, new()).Sections.SelectMany(s => s.Faced).Where(w => w.Regions.Count > 0).ToList();
        foreach (var wall in all)
        {
            // A front is as long as a buttress is wide, but for joints' depths.
            var runs = wall.Wall.Runs.Where(r => Math.Abs(r.To - r.From - facing.Piers!.Width) < 0.7).ToArray();
            fronts += runs.Length;
            bare.AddRange(BareWall.Places(wall, new(side, side), p => runs.Any(r => p.X > r.From && p.X < r.To)).Select(p => $"{p.X:0.00} {p.Y:0.00}"));
        }

        Assert.True(fronts > least, $"{seed}: {fronts} fronts");
        Assert.True(bare.Count == 0, $"{seed}: {bare.Count} of {fronts}: {string.Join("; ", bare.Take(5))}");
    }
}
