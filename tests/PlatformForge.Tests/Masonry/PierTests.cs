using System.Globalization;
using System.Text;
using PlatformForge.Exports.Tables;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Exports;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Piers in walls, by the meshes of sections.</summary>
public class PierTests
{
    private static readonly ModelScale Scale = new(76.2);

    private static readonly FacingSpec Piered = FacingSpec.For(Scale) with { Piers = PierSpec.For(Scale) };

    private static readonly Lazy<PlatformSection> Level =
        new(() => Workbench.Made(Straight(150, Side.Left, Piered, false), Workbench.Printer, new()).Sections[0]);

    [Theory]
    [InlineData(Side.Left, WallFinish.Brick, WallFinish.Brick, false, PierWalls.Front)]
    [InlineData(Side.Right, WallFinish.Brick, WallFinish.Brick, true, PierWalls.Both)]
    [InlineData(Side.Left, WallFinish.Stone, WallFinish.Plain, true, PierWalls.Front)]
    [InlineData(Side.Right, WallFinish.Rubble, WallFinish.Brick, false, PierWalls.Both)]
    [InlineData(Side.Left, WallFinish.Plain, WallFinish.Plain, true, PierWalls.Both)]
    public void Sections_with_piers_are_sound_and_of_their_volume(Side side, WallFinish front, WallFinish ends, bool ramps, PierWalls on)
    {
        var facing = Piered with { Front = front, Ends = ends, Piers = Piered.Piers! with { On = on } };
        Assert.All(Workbench.Made(Straight(ramps ? 260 : 130, side, facing, ramps), Workbench.Printer, new()).Sections,
            s => SoundSection.Check(s, front != WallFinish.Plain));
    }

    [Fact]
    public void Piers_on_a_curve_are_sound_and_of_their_volume() => Assert.All(
        Workbench.Made(Workbench.PendlewickAs(p => p with { Face = p.Face with { To = p.Face.From + 240 }, Features = [], EndRamp = null, Facing = Piered }),
            Workbench.Printer, new()).Sections, s => SoundSection.Check(s, true));

    [Fact]
    public void Piers_are_numbered_from_the_first_on() =>
        Assert.Equal(Enumerable.Range(1, Plan.Piers.Count), Plan.Piers.OrderBy(p => p.From).Select(p => p.Number));

    [Fact]
    public void Courses_measured_on_the_mesh_go_on_level_over_piers_and_panels_and_close_beside_the_piers()
    {
        double wall = Plan.WallFace.Reach[0], back = Piered.Piers!.Projection, header = 112.5 / 76.2;
        var piers = BrickFaces.In(Level.Value.Solid.Mesh, new(0, wall), new(1, 0));
        var panels = BrickFaces.In(Level.Value.Solid.Mesh, new(0, wall + back), new(1, 0));
        Assert.True(piers.Count > 15);
        Assert.Equal(piers.Select(r => Math.Round(r[0].High, 3)), panels.Select(r => Math.Round(r[0].High, 3)));

        // On each pier headers and stretchers in turn: two bricks over a header, a brick and a header.
        int count = Plan.Piers.Count;
        Assert.True(count >= 3);
        Assert.All(piers.Where(r => r[0].High - r[0].Low > 0.6), row => Assert.Contains(row.Count, new[] { 2 * count, 3 * count }));
        Assert.All(piers.Zip(piers.Skip(1)), pair => Assert.True(pair.First.Count != pair.Second.Count || pair.Second[0].Low < 0.5));

        // The panels' courses of headers have a closer beside the quoin header at either side of each panel.
        var headers = panels.Where(r => r.Count == panels.Max(q => q.Count)).ToList();
        Assert.All(headers, row => Assert.Equal(2 * (count + 1), row.Count(b => b.To - b.From + Piered.Joint < 0.6 * header)));
    }

    /// <summary>The foot that the setting-out table tells is where a line square to the track first meets the solid: on a pier, and behind piers on a
    /// panel.</summary>
    [Fact]
    public void The_foot_that_is_told_is_that_of_the_wall_which_stands_there()
    {
        var set = Workbench.Made(Straight(150, Side.Left, Piered, false), Workbench.Printer, new());
        var dossier = HandDossier.Pendlewick(Side.Left);
        string[][] rows = [.. Encoding.UTF8.GetString(SettingOut.Table(dossier, dossier.Platforms[0] with { Plan = set.Plan, Sections = set }, 2))
            .Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(r => r.Split(','))];
        var (onPiers, onPanels) = (0, 0);
        foreach (var (s, told) in rows.Select(r => (Number(r[0]), Number(r[1]) + (dossier.Gauge / 2) + dossier.RailHead)))
        {
            // Within a joint of a pier's side, or at an end, the line meets neither face whole.
            if (set.Plan.Piers.Any(p => Math.Min(Math.Abs(p.From - s), Math.Abs(p.To - s)) < 1) || s < set.Plan.Stations[0] + 1
                || s > set.Plan.Stations[^1] - 1)
            {
                continue;
            }

            double met = Enumerable.Range(1, 24).Min(i => set.Sections.Min(q => FirstMet(q.Solid.Mesh, s, 0.31 * i)));
            Assert.Equal(met, told, 0.006);
            bool isPier = set.Plan.Piers.Any(p => p.From < s && s < p.To);
            (onPiers, onPanels) = (onPiers + (isPier ? 1 : 0), onPanels + (isPier ? 0 : 1));
        }

        Assert.True(onPiers > 0 && onPanels > 5, $"{onPiers}, {onPanels}");

        static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

        // Of a line along y at an x and a height.
        static double FirstMet(Mesh mesh, double x, double z)
        {
            double least = double.PositiveInfinity;
            for (int t = 0; t < mesh.TriangleCount; t++)
            {
                Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
                double area = ((b.X - a.X) * (c.Z - a.Z)) - ((c.X - a.X) * (b.Z - a.Z));
                double u = (((x - a.X) * (c.Z - a.Z)) - ((c.X - a.X) * (z - a.Z))) / area, v = (((b.X - a.X) * (z - a.Z)) - ((x - a.X) * (b.Z - a.Z))) / area;
                least = u >= 0 && v >= 0 && u + v <= 1 ? Math.Min(least, a.Y + (u * (b.Y - a.Y)) + (v * (c.Y - a.Y))) : least;
            }

            return least;
        }
    }

    [Fact]
    public void Piers_measured_on_the_mesh_are_as_wide_and_stand_as_far_out_as_stated_and_nothing_stands_before_the_face()
    {
        double wall = Plan.WallFace.Reach[0];
        var mesh = Level.Value.Solid.Mesh;
        Assert.Equal(wall, mesh.Vertices.Where(v => v.Z < 15).Min(v => v.Y), 1e-4);
        var row = BrickFaces.In(mesh, new(0, wall), new(1, 0))[1];
        foreach (var pier in Plan.Piers)
        {
            var own = row.Where(b => b.From > pier.From - 1 && b.To < pier.To + 1).ToArray();
            Assert.Equal(Piered.Piers!.Width, own[^1].To - own[0].From, 1e-3);
        }

        // The panels' bricks stand a projection behind.
        Assert.NotEmpty(BrickFaces.In(mesh, new(0, wall + Piered.Piers!.Projection), new(1, 0)));
    }

    [Fact]
    public void Plain_piers_have_the_volume_of_their_boxes()
    {
        FacingSpec plain = Piered with
        {
            Front = WallFinish.Plain,
            Back = WallFinish.Plain,
            Ends = WallFinish.Plain,
            Piers = new() { Width = 6, Projection = 1.5 }
        };
        var plan = Straight(150, Side.Left, plain, false);
        double with = Workbench.Made(plan, Workbench.Printer, new()).Sections[0].Volumes.Finished,
            without = Workbench.Made(Straight(150, Side.Left, null, false), Workbench.Printer, new()).Sections[0].Volumes.Finished;

        // The wall goes back with the deck's edge under the coping; the end walls are shorter; the piers stand before it.
        const double back = 1.5, height = 18.5, edge = 1.5 - 1.2, end = 1.625;
        double by = (plan.Piers.Count * 6 * back * (height + edge)) - (150 * back * edge) - (2 * end * back * height);
        Assert.Equal(by, with - without, 1e-3);
    }

    [Theory]
    [InlineData(PierJoints.Beside)]
    [InlineData(PierJoints.Between)]
    public void No_pier_stands_across_a_joint_and_the_joints_lie_where_they_were_asked_for(PierJoints joints) => Assert.All(Simulations.Cases(3, 100), seed =>
    {
        var random = new Random(seed);
        var piers = Piered.Piers! with { Pitch = 20 + (random.NextDouble() * 40), Width = 4 + (random.NextDouble() * 4), Joints = joints };
        var plan = Straight(420 + (random.NextDouble() * 90), (Side)((2 * random.Next(2)) - 1), Piered with { Piers = piers }, random.Next(2) == 0);
        double[] cuts = [plan.Stations[0] + 150 + (20 * random.NextDouble()), plan.Stations[0] + 300 + (20 * random.NextDouble())];
        var divided = PlatformPlanner.Divided(plan, cuts).Value!;
        Assert.NotEmpty(divided.Piers);
        Assert.All(divided.Piers, p => Assert.DoesNotContain(cuts, c => c > p.From - Piered.Depth && c < p.To + Piered.Depth));
        Assert.All(divided.Piers.Zip(divided.Piers.Skip(1)), pair => Assert.True(pair.Second.From - pair.First.To > 2));
        Assert.All(cuts, c => Assert.Equal(joints == PierJoints.Beside ? 1 : 0, divided.Piers.Count(p => p.Cut == c)));

        // A cut between piers has a good part of a panel on either side.
        double nearest = divided.Piers.SelectMany(p => new[] { p.From, p.To }).Min(p => cuts.Min(c => Math.Abs(c - p)));
        Assert.True(joints == PierJoints.Beside ? nearest < 1 : nearest > 0.2 * piers.Pitch - 4);
    });

    [Fact]
    public void Piers_that_crowd_one_another_are_refused_with_a_figure_that_is_taken()
    {
        var pitched = Assert.Single(Rules(Spec(Piered.Piers! with { Pitch = 8 })));
        var stated = Assert.Single(Rules(Spec(Piered.Piers! with { At = [260, 262] })));
        Assert.Equal(["PF4153", "PF4154"], new[] { pitched.Code, stated.Code });
        Assert.Empty(Rules(Spec(Piered.Piers! with { Pitch = Figure(pitched) })));
        Assert.Empty(Rules(Spec(Piered.Piers! with { At = [260, Figure(stated)] })));

        static double Figure(Finding finding) => double.Parse(finding.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public void Stated_piers_off_the_wall_are_told_and_one_across_a_cut_is_moved_beside_it()
    {
        var plan = Straight(300, Side.Left, Piered with { Piers = Piered.Piers! with { At = [150, 260, 352] } }, false);
        var divided = PlatformPlanner.Divided(plan, [350]);
        Assert.Equal(["PF4155", "PF4156"], divided.Findings.Where(f => f.Code.StartsWith("PF415", StringComparison.Ordinal)).Select(f => f.Code));
        Assert.Equal(2, divided.Value!.Piers.Count);
        Assert.Equal(260, divided.Value.Piers[0].Middle, 1e-9);
        Assert.Equal(350 + (Piered.Piers!.Width / 2) + Piered.Joint, divided.Value.Piers[1].Middle, 1e-9);
    }

    [Theory]
    [InlineData("PF5050", 0.9, 1.5, WallFinish.Brick)]
    [InlineData("PF5050", 6.0, 0.3, WallFinish.Brick)]
    [InlineData("PF5051", 6.0, 1.5, WallFinish.Planks)]
    public void Piers_that_a_printer_or_a_wall_does_not_take_are_refused(string code, double width, double projection, WallFinish front)
    {
        var facing = Piered with { Front = front, Ends = WallFinish.Plain, Back = WallFinish.Plain, Piers = new() { Width = width, Projection = projection } };
        var made = SectionMaker.Make(Straight(150, Side.Left, facing, false), Workbench.Printer, new());
        Assert.Equal(code, Assert.Single(made.Findings, f => f.Severity == Severity.Error).Code);
    }

    [Fact]
    public void A_front_is_told_panel_by_panel_and_pier_by_pier_to_its_whole_length_without_the_piers_sides()
    {
        var slices = PlatformForge.Exports.Drawings.Elevations.Walls.WallSlice.Of(Level.Value, PlatformForge.Solids.Bodies.Layers.WallNames.FrontOf(1))
            .ToArray();
        Assert.Equal((2 * Plan.Piers.Count) + 1, slices.Length);
        Assert.All(slices.Select((s, i) => (s, i)), p => Assert.Equal(p.i % 2 == 1, p.s.IsFront));
        Assert.Equal(150 - (2 * Piered.Depth), slices.Sum(s => s.Length), 1e-3);
    }

    [Fact]
    public void An_island_has_no_back_for_piers() => Assert.Equal("PF4157", Assert.Single(Rules(Spec(Piered.Piers! with { On = PierWalls.Back }) with
    {
        OtherFace = new("down", Side.Right, 200, 500, EdgeStyle.Uniform),
    })).Code);

    private static PlatformSpec Spec(PierSpec piers) => Plan.Spec with { Facing = Piered with { Piers = piers } };

    private static List<Finding> Rules(PlatformSpec spec)
    {
        var findings = new List<Finding>();
        PlatformForge.Platforms.Rules.PierRule.Check(spec, findings);
        return findings;
    }

    private static PlatformPlan Plan { get; } = Straight(150, Side.Left, Piered, false);

    private static PlatformPlan Straight(double length, Side side, FacingSpec? facing, bool ramps) =>
        Workbench.Straight(length, side, s => s with { Facing = facing, StartRamp = ramps ? new(Gradient: 8) : null });
}
