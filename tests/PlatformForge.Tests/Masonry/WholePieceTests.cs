using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Tests.Projects;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>No course is split and no piece is smaller than stated, but where a slope or the back of an arch cuts it: of every piece of every wall.</summary>
public class WholePieceTests
{
    // Two bends of a curved wall take so much off a piece at most; numbers, mm.
    private const double AtBends = 0.045, Near = 1e-6;

    // Of the pieces that the back of an arch cuts, each is so high somewhere as a share of its course, and as long as half a closer: common
    // practice, no source.
    private const double OverArches = 0.45;

    [Theory]
    [InlineData("pendlewick-brick")]
    [InlineData("oxenwharf")]
    [InlineData("marrowby-stone")]
    [InlineData("cindlemoor")]
    [InlineData("ottermoss")]
    public void No_piece_of_a_finished_sample_is_smaller_than_stated(string name)
    {
        foreach (var platform in FinishedSampleTests.Designed(name).Platforms)
        {
            Check(platform.Sections);
        }
    }

    [Fact]
    public void No_piece_of_any_wall_is_smaller_than_stated() => Assert.All(Simulations.Cases(4, 100), seed =>
    {
        var random = new Random(seed);
        ModelScale scale = new(76.2);
        var front = (WallFinish)(1 + random.Next(2));
        bool plinth = front == WallFinish.Brick && random.Next(2) == 0;
        var refuge = OpeningSpec.For(scale) with
        {
            Sill = plinth ? 6.4 : 2 + random.NextDouble(),
            Head = (OpeningHead)random.Next(3),
            Height = 6.5 + (random.NextDouble() * 2),
            Width = 5 + (random.NextDouble() * 5),
        };
        var facing = FacingSpec.For(scale) with
        {
            Front = front,
            Back = WallFinish.Plain,
            Ends = WallFinish.Plain,
            Bond = (Bond)random.Next(4),
            Gauge = (BrickGauge)random.Next(2),
            Seed = random.Next(1000),
            Openings = [refuge with { Pitch = 20 + (random.NextDouble() * 30) }],
            Piers = random.Next(2) == 0 ? PierSpec.For(scale) : null,
            Plinth = plinth ? PlinthSpec.For(scale) : null,
        };
        double higher = random.NextDouble() * 2;
        var plan = Workbench.Straight(290 + (random.NextDouble() * 60), (Side)((2 * random.Next(2)) - 1), s => s with
        {
            Height = s.Height + higher,
            Facing = facing,
        });
        Check(Workbench.Made(plan, Workbench.Printer, new()));
    });

    private static void Check(SectionSet set)
    {
        foreach (var section in set.Sections)
        {
            string[] small = [.. section.Faced.SelectMany(w => Small(w, set)).Select(s => $"{section.Name}: {s}")];
            Assert.True(small.Length == 0, string.Join("\n", small));
        }
    }

    private static IEnumerable<string> Small(FacedWall wall, SectionSet set)
    {
        var (spec, site) = (set.Plan.Spec.Facing!, set.Plan.Site);
        double ratio = site.Scale.ToFullSize(1);

        // A closer is a quarter of a brick of 225 by 75 mm with its joint, or of 9 by 3 in (BS EN 771 work size with joints of 10; from memory, no source).
        (double Long, double High) brick = spec.Gauge == BrickGauge.Metric ? (225 / 4.0 / ratio, 75 / ratio) : (228.6 / 4 / ratio, 76.2 / ratio);
        (double Long, double High)? least = wall.Finish switch
        {
            WallFinish.Brick => brick,
            WallFinish.Stone => (0.3 * spec.StoneLength, 0.75 * spec.StoneCourse),
            _ => null,
        };
        if (least is not { } stated)
        {
            yield break;
        }

        double under = WallProfiles.Under(set.Plan);
        foreach (var r in wall.Regions.Where(r => r.Out > 0 && !IsUnderSlope(wall.Wall, r, under)))
        {
            double left = r.Outline.Min(p => p.X), right = r.Outline.Max(p => p.X), low = r.Outline.Min(p => p.Y), high = r.Outline.Max(p => p.Y);
            bool isOfArch = wall.Regions.Any(o => o.Out < 0 && o.Outline.Length > 4 && IsBeside(o, r, spec));
            double share = isOfArch ? OverArches : 1;
            if (right - left < (share * stated.Long) - spec.Joint - AtBends || high - low < (share * (stated.High - spec.Joint)) - Near)
            {
                string faces = string.Join("+", wall.Stretches.Where(s => s.To > left && s.From < right).Select(s => s.Face));
                yield return FormattableString.Invariant($"part {wall.Zone.Number} of {faces}: {left:0.00} to {right:0.00}, ")
                    + FormattableString.Invariant($"{low:0.00} to {high:0.00}, arch {isOfArch}");
            }
        }
    }

    // A ramp, or the fall of the deck towards its back: there the wall's edge lies lower than the deck's underside at the front, and the piece goes up to it.
    private static bool IsUnderSlope(FlatWall wall, WallRegion r, double under)
    {
        double left = r.Outline.Min(p => p.X), right = r.Outline.Max(p => p.X), high = r.Outline.Max(p => p.Y);
        return wall.Top.Zip(wall.Top.Skip(1)).Any(e => e.Second.X >= left && e.First.X <= right && Math.Min(e.First.Y, e.Second.Y) < under - 1e-3
            && high > Math.Min(e.First.Y, e.Second.Y) - 1);
    }

    // A voussoir, or what an arch's back cuts: within a course and a ring of the head of an opening.
    private static bool IsBeside(WallRegion opening, WallRegion piece, FacingSpec spec)
    {
        double left = opening.Outline.Min(p => p.X), right = opening.Outline.Max(p => p.X), crown = opening.Outline.Max(p => p.Y);
        double ring = Math.Max(spec.StoneCourse, 2) + 0.5;
        bool isCut = piece.Outline.Length != 4 || Math.Abs(piece.Outline[0].Y - piece.Outline[1].Y) > Near
            || Math.Abs(piece.Outline[2].Y - piece.Outline[3].Y) > Near;
        return isCut && piece.Outline.Min(p => p.X) < right + ring && piece.Outline.Max(p => p.X) > left - ring && piece.Outline.Min(p => p.Y) < crown + ring;
    }
}
