using PlatformForge.Clearance;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Verification.Rules;
using Xunit;

namespace PlatformForge.Tests.Backs;

/// <summary>Ends of platforms on curves, by random values: half-relief with skew ends, banks that turn round an end.</summary>
public class CurvedEndTests
{
    /// <summary>Least wall of a usual nozzle, 0.4 mm, twice; the mesh is on a grid.</summary>
    private const double LeastWall = 0.8 - 1e-3;

    /// <summary>Sound, of the told volume, and no wall thinner than two lines.</summary>
    [Theory]
    [InlineData(5)]
    [InlineData(6)]
    public void Open_backs_with_skew_ends_on_curves_are_sound(int seed)
    {
        var random = new Random(seed);
        for (int i = 0; i < 10; i++)
        {
            double radius = Between(random, 400, 1100), start = Between(random, -35, 35), end = Between(random, -35, 35), width = Between(random, 20, 45);
            bool isFaced = random.Next(2) == 0;
            var plan = Curved(radius, Turned(random), (Side)Sign(random), s => s with
            {
                Skew = new() { Start = start, End = end },
                Back = new() { Kind = BackKind.Open },
                Deck = s.Deck with { Width = width },
                Facing = isFaced ? FacingSpec.For(new(76.2)) with { Ends = WallFinish.Brick } : null,
            });
            Sound(plan);
        }
    }

    /// <summary>The same of banks, on decks narrower than they are high too, where no dowel goes.</summary>
    [Theory]
    [InlineData(7)]
    [InlineData(8)]
    public void Banks_that_turn_round_an_end_on_curves_are_sound_on_narrow_decks_too(int seed)
    {
        var random = new Random(seed);
        for (int i = 0; i < 10; i++)
        {
            double radius = Between(random, 400, 1100), width = i % 2 == 0 ? Between(random, 12, 19) : Between(random, 20, 40);
            double slope = Between(random, 0.7, 0.98), ground = random.Next(2) * Between(random, 0, 6);
            var back = new BackSpec { Kind = BackKind.Bank, Slope = slope, Ground = ground, Returns = (BankReturns)(1 + random.Next(3)) };
            var plan = Curved(radius, Turned(random), (Side)Sign(random), s => s with
            {
                Back = back,
                Deck = s.Deck with { Width = width },
                Coping = s.Coping with { Width = Math.Min(s.Coping.Width, width / 2) },
            });
            Assert.NotEmpty(plan.Bank!.Returns);
            Sound(plan, width < 20 ? JointKind.None : JointKind.Dowel);
        }
    }

    private static void Sound(PlatformPlan plan, JointKind joint = JointKind.Dowel)
    {
        foreach (var section in Workbench.Made(plan, Workbench.Printer, new() { Joint = new() { Kind = joint, DowelLength = 6 } }).Sections)
        {
            SoundSection.Check(section);
            Assert.InRange(WallRule.Thinnest(section.PrintMesh())!.Value.Thickness, LeastWall, 5);
            Assert.True(section.Solid.Mesh.Vertices.Min(v => v.Z) > -1e-6);
        }
    }

    private static PlatformPlan Curved(double radius, Hand hand, Side side, Func<PlatformSpec, PlatformSpec> change)
    {
        const double from = 200, length = 260;
        var track = TrackLayer.Lay(new("up", new(0, 0), 0, [new CurveSpec(radius, hand, from + length + from)])).Value!;
        var spec = new PlatformSpec("curved", new FaceSpec("up", side, from, from + length, EdgeStyle.Uniform))
        {
            Height = 12,
            Deck = new() { Width = 40, Thickness = 1.6 },
            Ribs = new() { Pitch = 30, LongitudinalCount = 0 },
        };
        var outcome = PlatformPlanner.Plan(new(change(spec), Pendlewick.Site, track, Platforms.Bench.Envelope(track, side, _ => 18),
            ClearanceBudget.Of(running: 1)));
        Assert.True(outcome.Succeeded, string.Join("; ", outcome.Findings.Select(f => f.Message)));
        return outcome.Value!;
    }

    private static double Between(Random random, double low, double high) => low + (random.NextDouble() * (high - low));

    private static int Sign(Random random) => (random.Next(2) * 2) - 1;

    private static Hand Turned(Random random) => (Hand)Sign(random);
}
