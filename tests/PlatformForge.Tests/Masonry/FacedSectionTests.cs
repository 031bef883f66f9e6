using System.Collections.Concurrent;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Sections whose walls are faced in brick, by their meshes.</summary>
public class FacedSectionTests
{
    private static readonly ModelScale Scale = new(76.2);

    private static readonly FacingSpec Facing = FacingSpec.For(Scale);

    private static readonly FacingSpec FrontAlone = Facing with { Back = WallFinish.Plain, Ends = WallFinish.Plain };

    // Level platforms of one section that several tests measure, made once for each facing.
    private static readonly ConcurrentDictionary<FacingSpec, Lazy<PlatformSection>> Level = new();

    [Theory]
    [InlineData(Side.Left, Bond.English, false)]
    [InlineData(Side.Right, Bond.Flemish, false)]
    [InlineData(Side.Left, Bond.Stretcher, true)]
    [InlineData(Side.Right, Bond.EnglishGardenWall, true)]
    public void Sections_of_a_faced_platform_are_sound_and_of_their_volume(Side side, Bond bond, bool ramps) => Assert.All(
        Workbench.Made(Straight(ramps ? 200 : 120, side, Facing with { Bond = bond }, ramps), Workbench.Printer, new()).Sections,
        s => SoundSection.Check(s, faced: true));

    [Fact]
    public void Sections_of_a_faced_platform_on_a_curve_are_sound_and_of_their_volume() =>
        Assert.All(
            Workbench.Made(Workbench.PendlewickAs(p => p with
            {
                Face = p.Face with { To = p.Face.From + 240 },
                Features = [],
                EndRamp = null,
                Facing = Facing
            }), Workbench.Printer, new()).Sections, s => SoundSection.Check(s, faced: true));

    [Fact]
    public void Facings_of_any_figures_are_sound() => Assert.All(Simulations.Cases(2, 200), seed =>
    {
        var random = new Random(seed);
        var facing = new FacingSpec
        {
            Bond = (Bond)random.Next(4),
            Gauge = (BrickGauge)random.Next(2),
            Joint = 0.1 + (random.NextDouble() * 0.3),
            Depth = 0.1 + (random.NextDouble() * 0.3),
            Front = random.Next(4) > 0 ? WallFinish.Brick : (WallFinish)(2 + random.Next(6)),
            Back = random.Next(3) > 0 ? WallFinish.Brick : (WallFinish)(2 + random.Next(6)),
            Ends = random.Next(2) == 0 ? WallFinish.Brick : (WallFinish)(random.Next(8)),
            Seed = random.Next(1000),
        };
        var plan = Straight(125 + (random.NextDouble() * 60), (Side)((2 * random.Next(2)) - 1), facing, random.Next(2) == 0, random.Next(2) * 60);
        Assert.All(Workbench.Made(plan, Workbench.Printer, new()).Sections, s => SoundSection.Check(s, faced: true));
    });

    [Theory]
    [InlineData(BrickGauge.Metric, 75.0, 225.0)]
    [InlineData(BrickGauge.Imperial, 76.2, 228.6)]
    public void Courses_and_bricks_measured_on_the_mesh_are_those_of_the_gauge(BrickGauge gauge, double course, double brick)
    {
        var facing = Facing with { Gauge = gauge };
        var (rows, section) = Front(facing);
        Assert.Equal(18, rows.Count);
        Assert.All(rows.Zip(rows.Skip(1)), pair => Assert.Equal(course / 76.2, pair.First[0].High - pair.Second[0].High, 1e-4));
        double draw = section.Faced.Max(w => w.Draw), header = brick / 2 / 76.2;
        Assert.InRange(draw, 0, header / (section.Length - 1));

        // Every brick is a quarter, a half or a whole one with its joint taken off, drawn out by no more than is told; one beside a bend may be 0.02 shorter.
        double[] modules = [header / 2, header, 2 * header];
        Assert.All(rows, row => Assert.All(row, b =>
        {
            double with = b.To - b.From + facing.Joint;
            Assert.Contains(modules, m => with > m - 0.05 && with < (m * (1 + draw)) + 1e-3);
            Assert.Equal((course / 76.2) - facing.Joint, b.High - b.Low, 1e-4);
        }));
    }

    [Fact]
    public void English_bond_measured_on_the_mesh_laps_a_quarter_and_has_closers_at_both_ends()
    {
        var (rows, section) = Front(Facing);
        double header = 112.5 / 76.2, draw = 1 + section.Faced.Max(w => w.Draw);
        double[] At(List<(double From, double To, double Low, double High)> row) => [.. row.Zip(row.Skip(1), (a, b) => (a.To + b.From) / 2)];
        for (int i = 0; i + 3 < rows.Count; i++)
        {
            var (upper, lower, second) = (At(rows[i]), At(rows[i + 1]), At(rows[i + 2]));
            Assert.All(upper, p => Assert.InRange(lower.Min(q => Math.Abs(p - q)), (header / 2) - 0.03, (header * draw) + 0.03));
            Assert.All(upper.Zip(second), pair => Assert.Equal(pair.First, pair.Second, 1e-3));
            Assert.Equal(upper.Length, second.Length);
        }

        // Under the deck lies a course of headers: header, closer, headers, closer, header.
        double Length(int brick) => rows[0][brick].To - rows[0][brick].From + Facing.Joint;
        foreach (var (quoin, closer) in new[] { (0, 1), (rows[0].Count - 1, rows[0].Count - 2) })
        {
            Assert.InRange(Length(quoin), header - 0.03, (header * draw) + 0.03);
            Assert.InRange(Length(closer), (header / 2) - 0.03, (header / 2 * draw) + 0.03);
        }
    }

    [Fact]
    public void No_brick_of_a_level_platform_is_smaller_than_its_gauge()
    {
        var section = LevelOf(Facing);
        double closer = (112.5 / 2 / 76.2) - Facing.Joint, high = (75 / 76.2) - Facing.Joint;
        foreach (var wall in section.Faced)
        {
            Assert.All(wall.Regions, r =>
            {
                Assert.True(r.Outline.Max(p => p.X) - r.Outline.Min(p => p.X) > closer - 0.025);
                Assert.Equal(high, r.Outline.Max(p => p.Y) - r.Outline.Min(p => p.Y), 1e-6);
            });
        }
    }

    [Fact]
    public void A_straight_front_holds_its_bricks_areas_times_their_depth_and_no_more()
    {
        var section = LevelOf(FrontAlone);
        double by = section.Faced.Sum(w => w.Area) * Facing.Depth;
        Assert.Equal(by, section.Volumes.Facing, 1e-6 * by);

        // The same by the box rule: rows of (length - joints) by (course - joint), of the ground of one panel.
        Assert.InRange(by / (section.Faced.Sum(w => w.Wall.Length * w.Wall.Top.Max(p => p.Y)) * Facing.Depth), 0.55, 0.75);
    }

    [Theory]
    [InlineData(Bond.English)]
    [InlineData(Bond.Flemish)]
    public void Bricks_turn_a_corner_in_one_piece(Bond bond)
    {
        var section = LevelOf(Facing with { Bond = bond });
        var wall = Assert.Single(section.Faced);
        Assert.True(wall.Wall.IsRing);
        Assert.Equal(4, wall.Wall.Runs.Count);

        // Its corners' bricks hold the square of the depth by their height more than the areas on the ground, at each of four corners.
        double quoins = wall.Regions.Where(r => wall.Wall.Runs.Any(run => r.Outline.Min(p => p.X) < run.To && r.Outline.Max(p => p.X) > run.To))
            .Sum(r => r.Outline.Max(p => p.Y) - r.Outline.Min(p => p.Y));
        double by = (wall.Area * Facing.Depth) + (quoins * Facing.Depth * Facing.Depth);
        Assert.Equal(by, section.Volumes.Facing, 1e-5 * by);
        Assert.True(quoins > 4 * 10);
    }

    [Fact]
    public void Bricks_stand_where_the_smooth_wall_stood_and_nothing_stands_farther_out()
    {
        foreach (var ramps in new[] { false, true })
        {
            Mesh plain = Solid(Straight(150, Side.Left, null, ramps)).Mesh;
            var faced = ramps ? Solid(Straight(150, Side.Left, Facing, ramps)).Mesh : LevelOf(Facing).Solid.Mesh;
            double wall = Straight(150, Side.Left, null, ramps).WallFace.Reach[0];
            foreach (double height in new[] { 5, 10, 15.0 })
            {
                double Nearest(Mesh mesh) => mesh.Vertices.Where(v => v.Z < height).Min(v => v.Y);
                Assert.Equal(wall, Nearest(plain), 1e-4);
                Assert.Equal(wall, Nearest(faced), 1e-4);
            }

            Assert.Equal(plain.Vertices.Max(v => v.X), faced.Vertices.Max(v => v.X), 1e-4);
            Assert.Equal(plain.Vertices.Min(v => v.X), faced.Vertices.Min(v => v.X), 1e-4);
            Assert.Equal(plain.Vertices.Max(v => v.Y), faced.Vertices.Max(v => v.Y), 1e-4);
        }
    }

    [Fact]
    public void Courses_stay_level_along_a_ramp_and_are_cut_by_its_slope()
    {
        var plan = Straight(200, Side.Left, FrontAlone, ramps: true);
        var set = Workbench.Made(plan, Workbench.Printer, new());
        double course = Course(BrickGauge.Metric), datum = set.Sections[^1].Faced[0].Regions.Max(r => r.Outline.Max(p => p.Y));
        foreach (var region in set.Sections.SelectMany(s => s.Faced).SelectMany(w => w.Regions))
        {
            // Lower edges lie on courses.
            double low = region.Outline.Min(p => p.Y), steps = (datum - (course - Facing.Joint) - low) / course;
            Assert.Equal(Math.Round(steps), steps, 1e-6);
        }

        Assert.Contains(set.Sections[0].Faced[0].Regions, r => r.Outline.Length != 4 || r.Outline[2].Y != r.Outline[3].Y);
    }

    [Fact]
    public void A_platform_without_a_facing_is_what_it_was()
    {
        var spec = Workbench.PendlewickPlan;
        Assert.Null(spec.Body.Ground);
        Assert.Same(spec.Body.WallFace, spec.Body.WallLine);
        Assert.Empty(Workbench.PendlewickSections.Sections[0].Faced);
        Assert.DoesNotContain((byte)Paint.Mortar, Workbench.PendlewickSections.Sections[0].Solid.Mesh.Paints);
    }

    private static PlatformPlan Straight(double length, Side side, FacingSpec? facing, bool ramps, double crossfall = 0) =>
        Workbench.Straight(length, side, s => s with
        {
            Height = (18 * Course(facing?.Gauge ?? BrickGauge.Metric)) + 0.05 + s.Deck.Thickness - Pendlewick.Site.RailTop,
            Facing = facing,
            StartRamp = ramps ? new(Gradient: 8) : null,
            Deck = s.Deck with { Crossfall = crossfall },
        });

    // Walls are eighteen courses high over the ground that is left under the lowest.
    private static double Course(BrickGauge gauge) => (gauge == BrickGauge.Metric ? 75 : 76.2) / 76.2;

    private static Solid Solid(PlatformPlan plan) => Workbench.Made(plan, Workbench.Printer, new()).Sections[^1].Solid;

    // Bricks on the front of a straight platform, row by row from the top.
    private static (List<List<(double From, double To, double Low, double High)>> Rows, PlatformSection Section) Front(FacingSpec facing)
    {
        var section = LevelOf(facing with { Back = WallFinish.Plain, Ends = WallFinish.Plain });
        var rows = BrickFaces.In(section.Solid.Mesh, new(0, Straight(150, Side.Left, null, false).WallFace.Reach[0]), new(1, 0));
        return (rows, section);
    }

    private static PlatformSection LevelOf(FacingSpec facing) => Level.GetOrAdd(facing, f => new(() =>
        Workbench.Made(Straight(150, Side.Left, f, false), Workbench.Printer, new()).Sections[0])).Value;
}
