using System.Text.RegularExpressions;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Projects;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>No wall is bare beside what interrupts its courses: an arch, a jamb, a pier, a buttress, a corner, a cut.</summary>
public class BareWallTests
{
    // A bare oblong so many joints long, and as high as such a share of a course and the bed beside it, is a place where a piece is missing: what the back
    // of an arch cuts to a point ends where it is a line of the nozzle high.
    private const double Joints = 2, Course = 0.5;

    [Theory]
    [InlineData("oxenwharf")]
    [InlineData("marrowby-stone")]
    public void No_finished_sample_has_a_bare_place(string name)
    {
        foreach (var platform in FinishedSampleTests.Designed(name).Platforms)
        {
            Check(platform.Sections, name);
        }
    }

    /// <summary>An island's cuts lie off the square of its walls: beside a pier the plinth's strip is a little shorter there.</summary>
    [Fact]
    public void No_strip_between_a_cut_and_a_piers_plinth_is_bare_on_an_island()
    {
        string text = Regex.Replace(PresetShelf.Sample("thornhithe")!, "vehicles = \\[\"long coach\".*\\]", "vehicles = [\"long coach\"]");
        text = Regex.Replace(text, @"\[\[platform\.(board|hole)\]\][^\[]*", "");
        var read = Samples.Read(text, "platform[0].face.to=690", "platform[0].facing.plinth={}", "platform[0].facing.piers={}");
        Check(DesignRun.Design(read.Value!, RunWatch.None).Value!.Platforms[0].Sections, "island");
    }

    [Fact]
    public void No_wall_with_openings_and_piers_has_a_bare_place() => Assert.All(Simulations.Cases(4, 200), seed =>
    {
        var random = new Random(seed);
        ModelScale scale = new(random.Next(3) == 0 ? 43.5 : 76.2);
        var front = (WallFinish)(1 + (seed % 2));
        var open = OpeningSpec.For(scale);
        double by = 76.2 / scale.Ratio;
        var refuge = open with
        {
            Sill = (2 + random.NextDouble()) * by,
            Head = (OpeningHead)random.Next(3),
            Height = (6.5 + (random.NextDouble() * 2)) * by,
            Width = (5 + (random.NextDouble() * 5)) * by,
            Pitch = (20 + (random.NextDouble() * 30)) * by,
        };
        PierSpec?[] piers = [null, PierSpec.For(scale), PierSpec.For(scale) with { Height = 11 * by }];
        var facing = FacingSpec.For(scale) with
        {
            Front = front,
            Bond = (Bond)random.Next(4),
            Gauge = (BrickGauge)random.Next(2),
            Seed = random.Next(1000),
            Openings = [refuge, open with { Kind = OpeningKind.Cable, IsBack = true }, open with { Kind = OpeningKind.Weep, IsBack = true, Sill = 8 * by }],
            Piers = piers[random.Next(3)],
        };
        double higher = random.NextDouble() * 2;
        var plan = Workbench.Straight(290 + (random.NextDouble() * 60), (Side)((2 * random.Next(2)) - 1), s => s with
        {
            Height = (s.Height * by) + higher,
            Walls = s.Walls with { FrontThickness = 2.4, BackThickness = 2.4, EndThickness = 2.4 },
            Facing = facing,
        });
        Check(Workbench.Made(plan, Workbench.Printer, new()), FormattableString.Invariant($"{seed} {front} {facing.Bond} {refuge.Head} 1:{scale.Ratio}"));
    });

    private static void Check(SectionSet set, string name)
    {
        var (spec, ratio) = (set.Plan.Spec.Facing!, set.Plan.Site.Scale.ToFullSize(1));
        var bare = new List<string>();
        foreach (var section in set.Sections)
        {
            foreach (var wall in section.Faced.Where(w => w.Regions.Count > 0))
            {
                double course = wall.Finish switch
                {
                    WallFinish.Brick => (spec.Gauge == BrickGauge.Metric ? 75 : 76.2) / ratio,
                    WallFinish.Stone => StoneworkSpec.LeastCourse * spec.StoneCourse,
                    _ => spec.RubbleSize,
                };
                double top = wall.Wall.Top.Max(p => p.Y);

                // A slope over a wall cuts its pieces.
                bool Level(Point2 p) => wall.Wall.Top.Zip(wall.Wall.Top.Skip(1), (a, b) => (Low: Math.Min(a.Y, b.Y), From: a.X, To: b.X))
                    .All(e => e.Low > Math.Min(top - 1e-3, p.Y + (1.5 * course)) || e.To < p.X - course || e.From > p.X + course);

                // In the angle with a wall that stands out what is laid on that one covers so much.
                bool Seen(Point2 p) => !wall.Wall.Runs.Any(r =>
                    (r.InsideBefore && Math.Abs(p.X - r.From) < spec.Depth) || (r.InsideAfter && Math.Abs(p.X - r.To) < spec.Depth));
                var places = BareWall.Places(wall, new(Joints * spec.Joint, (Course * course) + spec.Joint), p => Seen(p) && Level(p));
                bare.AddRange(places.Select(p => FormattableString.Invariant($"{name}: {section.Name}, part {wall.Zone.Number} of {wall.Stretches[0].Face}, ")
                    + FormattableString.Invariant($"{p.X:0.0} along, {p.Y:0.0} up")));
            }
        }

        Assert.True(bare.Count == 0, $"{bare.Count} places, the first:\n{string.Join("\n", bare.Take(10))}");
    }
}
