using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Refuges, openings for cables and weep holes in faced walls, by the meshes of sections.</summary>
public class OpeningTests
{
    private static readonly ModelScale Scale = new(76.2);

    private static readonly OpeningSpec Refuge = OpeningSpec.For(Scale), Cable = Refuge with { Kind = OpeningKind.Cable },
        Weep = Refuge with { Kind = OpeningKind.Weep };

    private static readonly FacingSpec Open = FacingSpec.For(Scale) with
    {
        Openings = [Refuge, Cable with { Pitch = 50 }, Weep],
        Back = WallFinish.Plain,
        Ends = WallFinish.Plain
    };

    private static readonly Lazy<PlatformSection> Level =
        new(() => Workbench.Made(Straight(150, Side.Left, Open, false), Workbench.Printer, new()).Sections[0]);

    [Theory]
    [InlineData(Side.Left, WallFinish.Brick, Bond.English, OpeningHead.Semicircular, true)]
    [InlineData(Side.Right, WallFinish.Brick, Bond.Flemish, OpeningHead.Segmental, false)]
    [InlineData(Side.Left, WallFinish.Stone, Bond.English, OpeningHead.Segmental, true)]
    [InlineData(Side.Right, WallFinish.Rubble, Bond.English, OpeningHead.Semicircular, false)]
    public void Sections_with_openings_are_sound_and_of_their_volume(Side side, WallFinish front, Bond bond, OpeningHead head, bool piers)
    {
        var facing = Open with
        {
            Front = front,
            Bond = bond,
            Back = front,
            Piers = piers ? PierSpec.For(Scale) with { On = PierWalls.Both } : null,
            Openings = [.. Open.Openings.Select(o => o.Kind == OpeningKind.Refuge ? o with { Head = head } : o), Weep with { IsBack = true }],
        };
        var plan = Straight(200, side, facing, true);
        var set = Workbench.Made(plan, Workbench.Printer, new());
        Assert.All(set.Sections, SoundSection.Check);
        Assert.Equal(set.Plan.WallOpenings.Count, set.Sections.Sum(s => s.Faced.Sum(w => w.Regions.Count(r => r.Out < 0))));
        Assert.True(set.Plan.WallOpenings.Count > 8);
    }

    [Fact]
    public void Openings_on_a_curve_are_sound_and_of_their_volume() => Assert.All(
        Workbench.Made(Workbench.PendlewickAs(p => p with { Face = p.Face with { To = p.Face.From + 240 }, Features = [], EndRamp = null, Facing = Open }),
            Workbench.Printer, new()).Sections, SoundSection.Check);

    [Fact]
    public void Openings_of_any_figures_are_sound() => Assert.All(Simulations.Cases(2, 200), seed =>
    {
        var random = new Random(seed);
        var shape = Refuge with
        {
            Head = (OpeningHead)random.Next(3),
            Width = 3 + (random.NextDouble() * 12),
            Height = 7.6 + (random.NextDouble() * 2),
            Sill = 0.5 + (random.NextDouble() * 3),
            Depth = 0.4 + (random.NextDouble() * 0.4),
            Pitch = 15 + (random.NextDouble() * 30),
        };
        var facing = Open with { Bond = (Bond)random.Next(4), Front = (WallFinish)(1 + random.Next(3)), Seed = random.Next(1000), Openings = [shape, Weep] };
        Assert.All(Workbench.Made(Straight(125 + (random.NextDouble() * 60), (Side)((2 * random.Next(2)) - 1), facing, random.Next(2) == 0), Workbench.Printer,
            new()).Sections, SoundSection.Check);
    });

    [Fact]
    public void Bricks_measured_on_the_mesh_end_at_openings_with_closers_halves_and_whole_ones_and_none_is_smaller()
    {
        var rows = BrickFaces.In(Level.Value.Solid.Mesh, new(0, Plan.WallFace.Reach[0]), new(1, 0));
        double header = 112.5 / 76.2, quarter = header / 2, draw = 1 + Level.Value.Faced.Max(w => w.Draw);
        var arch = Level.Value.Faced.SelectMany(w => w.Regions).Where(r => r.Out < 0).MaxBy(r => r.Outline.Max(p => p.Y) - r.Outline.Min(p => p.Y));
        double sill = arch.Outline.Min(p => p.Y), spring = arch.Outline[2].Y;

        // Courses whole beside the jambs of arches: every piece is one to four quarters of a brick, drawn out by no more than is told.
        var beside = rows.Where(r => r[0].Low > sill - 0.1 && r[0].High < spring + 1e-3 && r[0].High - r[0].Low > 0.6).ToList();
        Assert.True(beside.Count >= 3);
        Assert.All(beside, row => Assert.All(row, b => Assert.Contains(new[] { 1, 2, 3, 4 }, n =>
            b.To - b.From + Open.Joint > (n * quarter) - 0.03 && b.To - b.From + Open.Joint < (n * quarter * draw) + 0.12)));

        // Every second course has a closer at each jamb.
        double[] jambs = Jambs();
        int[] closers =
            [.. beside.Select(row =>
                jambs.Count(j => row.Any(b => Math.Min(Math.Abs(b.From - j), Math.Abs(b.To - j)) < 0.1 && b.To - b.From + Open.Joint < 1.3 * quarter)))];
        Assert.All(closers.Zip(closers.Skip(1)), pair => Assert.Equal(jambs.Length, pair.First + pair.Second));
    }

    [Fact]
    public void Recesses_measured_on_the_mesh_are_as_deep_as_stated_and_nothing_stands_before_the_face()
    {
        var mesh = Level.Value.Solid.Mesh;
        double wall = Plan.WallFace.Reach[0];
        Assert.Equal(wall, mesh.Vertices.Where(v => v.Z < 15).Min(v => v.Y), 1e-4);
        var floors = BrickFaces.In(mesh, new(0, wall + Refuge.Depth), new(1, 0)).SelectMany(r => r).ToList();
        Assert.Equal(Plan.WallOpenings.Count, floors.Count);
        var arch = floors.MaxBy(f => f.High - f.Low);
        Assert.Equal(Refuge.Width, arch.To - arch.From, 112.5 / 76.2);
        Assert.Equal(Refuge.Height, arch.High - arch.Low, 75 / 76.2);
        Assert.Equal(Refuge.Sill, arch.Low, 75 / 76.2 / 2);

        // What is laid less what is sunk, by areas on the flat wall.
        double by = Level.Value.Faced.Sum(w => w.Regions.Sum(r => r.Out * new PlatformForge.Solids.Reliefs.ReliefField(r.Outline, r.Out).Area));
        Assert.Equal(by, Level.Value.Volumes.Facing, 1e-6 * by);
    }

    [Fact]
    public void An_arch_has_an_odd_number_of_voussoirs_that_the_nozzle_shows_on_their_circle()
    {
        var wall = Level.Value.Faced[0];
        var arch = wall.Regions.Where(r => r.Out < 0).MaxBy(r => r.Outline.Max(p => p.Y));
        double left = arch.Outline.Min(p => p.X), right = arch.Outline.Max(p => p.X), radius = (right - left) / 2, spring = arch.Outline[2].Y;
        Point2 centre = new((left + right) / 2, spring);
        var ring = wall.Regions.Where(r => r.Out > 0 && r.Outline.All(p => p.Y > spring && (p - centre).Length < radius + 1.7
            && (p - centre).Length > radius - 1e-6)).ToList();
        Assert.True(ring.Count % 2 == 1 && ring.Count > 9, $"{ring.Count}");
        Assert.All(ring, v => Assert.True(v.Outline.Max(p => p.Y) > spring && (v.Outline[0] - v.Outline[^1]).Length > 0.5));
    }

    [Fact]
    public void Openings_keep_off_piers_joints_and_one_another() => Assert.All(Simulations.Cases(3, 100), seed =>
    {
        var random = new Random(seed);
        var plan = Straight(420 + (random.NextDouble() * 90), Side.Left, Open with { Piers = random.Next(2) == 0 ? PierSpec.For(Scale) : null },
            random.Next(2) == 0);
        double[] cuts = [plan.Stations[0] + 150 + (20 * random.NextDouble()), plan.Stations[0] + 300 + (20 * random.NextDouble())];
        var made = PlatformPlanner.Divided(plan, cuts).Value!;
        Assert.All(made.WallOpenings, o =>
        {
            double half = (o.Spec.Width / 2) + (112.5 / 76.2);
            Assert.DoesNotContain(cuts, c => Math.Abs(c - o.Chainage) < half);
            Assert.DoesNotContain(made.Piers, p => p.To > o.Chainage - half && p.From < o.Chainage + half);
        });
    });

    [Fact]
    public void Openings_that_do_not_fit_are_refused_or_told_with_what_would_work()
    {
        Assert.Equal("PF4158", Assert.Single(Rules(Refuge with { Width = 30, Height = 10 })).Code);
        Assert.Empty(Rules(Refuge with { Width = Figure(Rules(Refuge with { Width = 30, Height = 10 })[0]), Height = 10 }));
        Assert.Equal("PF4159", Assert.Single(Rules(Refuge with { Height = 18 })).Code);
        Assert.Empty(Rules(Refuge with { Height = Figure(Rules(Refuge with { Height = 18 })[0]) }));
        var told = PlatformPlanner.Divided(Straight(150, Side.Left, Open with { Openings = [Refuge with { At = [201, 275] }] }, false), []);
        Assert.Equal(["PF4160"], told.Findings.Select(f => f.Code).Where(c => c == "PF4160"));
        Assert.Equal([275.0], told.Value!.WallOpenings.Select(o => o.Chainage));

        static double Figure(Finding finding) => double.Parse(finding.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public void Of_two_kinds_that_are_spread_over_a_wall_both_find_their_places_whichever_comes_first()
    {
        var (wide, small) = (OpeningSpec.For(Scale) with { Head = OpeningHead.Segmental }, OpeningSpec.For(Scale) with { Kind = OpeningKind.Weep });
        foreach (OpeningSpec[] asked in new[] { new[] { wide, small }, [small, wide] })
        {
            var made = PlatformPlanner.Divided(Straight(180, Side.Left, Open with { Openings = asked }, false), []);
            Assert.DoesNotContain(made.Findings, f => f.Code == "PF4160");
            var placed = made.Value!.WallOpenings;
            Assert.Equal(4, placed.Count(o => o.Spec == wide));
            Assert.Equal(8, placed.Count(o => o.Spec == small));
            Assert.Equal(placed.Select(o => Array.IndexOf(asked, o.Spec)).Order(), placed.Select(o => Array.IndexOf(asked, o.Spec)));
            Assert.All(placed.Where(o => o.Spec == small), o => Assert.All(placed.Where(p => p.Spec == wide), p =>
                Assert.True(Math.Abs(o.Chainage - p.Chainage) > (wide.Width + small.Width) / 2)));
        }
    }

    [Theory]
    [InlineData(201, "the wall's end")]
    [InlineData(276, "another opening")]
    [InlineData(301, "a joint between sections")]
    public void A_stated_place_without_room_is_told_with_what_is_there_and_the_nearest_one_that_works(double at, string what)
    {
        PlatformPlan Asked(double place) => Straight(150, Side.Left, Open with { Openings = [Refuge with { At = [272] }, Refuge with { At = [place] }] },
            false);
        var told = PlatformPlanner.Divided(Asked(at), [300]);
        var finding = Assert.Single(told.Findings, f => f.Code == "PF4160");
        Assert.Contains(what, finding.Message, StringComparison.Ordinal);
        Assert.EndsWith("facing.opening[1].at[0]", finding.Cure!.Key, StringComparison.Ordinal);
        double moved = double.Parse(finding.Cure.Value, System.Globalization.CultureInfo.InvariantCulture);
        var cured = PlatformPlanner.Divided(Asked(moved), [300]);
        Assert.DoesNotContain(cured.Findings, f => f.Code == "PF4160");
        Assert.Equal(2, cured.Value!.WallOpenings.Count);
    }

    [Theory]
    [InlineData("PF5052", 1.2, 5.0, WallFinish.Brick)]
    [InlineData("PF5052", 0.2, 5.0, WallFinish.Brick)]
    [InlineData("PF5053", 0.65, 0.6, WallFinish.Brick)]
    [InlineData("PF5054", 0.65, 5.0, WallFinish.Planks)]
    public void Openings_that_a_printer_or_a_wall_does_not_take_are_refused(string code, double depth, double width, WallFinish front)
    {
        var facing = Open with { Front = front, Openings = [Cable with { Depth = depth, Width = width }] };
        var made = SectionMaker.Make(Straight(150, Side.Left, facing, false), Workbench.Printer, new());
        Assert.Equal(code, Assert.Single(made.Findings, f => f.Severity == Severity.Error).Code);
    }

    [Theory]
    [InlineData(BackKind.Bank)]
    [InlineData(BackKind.Open)]
    public void Openings_in_a_back_without_a_wall_are_left_out_and_told_by_the_rule_of_backs_alone(BackKind kind)
    {
        var back = new BackSpec { Kind = kind, Apart = kind == BackKind.Bank };
        var plan = Workbench.Straight(150, Side.Left, s => s with
        {
            Facing = Open with { HasBack = false, Openings = [Cable with { IsBack = true }] },
            Back = back
        });
        Assert.DoesNotContain(SectionMaker.Make(plan, Workbench.Printer, new()).Findings, f => f.Severity == Severity.Error);
        Assert.Empty(PlatformPlanner.Divided(plan, []).Value!.WallOpenings);
        var told = new List<Finding>();
        BankRule.Check(plan.Spec, plan.Site, told);
        Assert.Equal("PF4171", Assert.Single(told).Code);
    }

    private static PlatformPlan Plan { get; } = Straight(150, Side.Left, Open, false);

    private static double[] Jambs() => [.. Level.Value.Faced.SelectMany(w => w.Regions.Where(r => r.Out < 0 && r.Outline.Length > 6)
        .SelectMany(r => new[] { r.Outline.Min(p => p.X), r.Outline.Max(p => p.X) }).Select(x => Along(w, x)))];

    // A place along the front laid flat as a place along the track: on the left the wall is seen with chainage growing to the right.
    private static double Along(PlatformForge.Solids.Bodies.Walls.FacedWall wall, double x) => Plan.Stations[0] + x + ((150 - wall.Wall.Length) / 2);

    private static List<Finding> Rules(OpeningSpec opening)
    {
        var findings = new List<Finding>();
        OpeningRule.Check(Plan.Spec with { Facing = Open with { Openings = [opening] } }, Plan.Site, findings);
        return findings;
    }

    private static PlatformPlan Straight(double length, Side side, FacingSpec? facing, bool ramps) =>
        Workbench.Straight(length, side, s => s with { Facing = facing, StartRamp = ramps ? new(Gradient: 8) : null });
}
