using System.Globalization;
using PlatformForge.Exports.Looks;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Rules;
using PlatformForge.Solids;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Projects;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Copings of slabs, bricks and timber; nosings and tooled margins.</summary>
public class CopingTests
{
    private const double Length = 96;

    [Theory]
    [InlineData(0.375, Side.Left)]
    [InlineData(0.5, Side.Right)]
    public void A_rounded_nosing_keeps_within_its_arc_and_takes_what_its_chords_leave(double radius, Side side)
    {
        var coping = Bare with { Nosing = Nosing.Rounded, ArrisChamfer = radius };
        var corners = coping.Arris();
        Assert.Equal(((0, radius), (radius, 0)), (corners[0], corners[^1]));
        Assert.All(corners, c => Assert.Equal(radius, Math.Sqrt(Math.Pow(radius - c.Inward, 2) + Math.Pow(radius - c.Drop, 2)), 1e-12)); // on the arc
        foreach (var (a, b) in corners.Zip(corners.Skip(1)))
        {
            double x = radius - ((a.Inward + b.Inward) / 2), z = radius - ((a.Drop + b.Drop) / 2);
            Assert.InRange(radius - Math.Sqrt((x * x) + (z * z)), 0, CopingSpec.ChordOff);
        }

        // By the shoelace formula, the corner that is taken off: from the front face along the chords to the top and round the square corner.
        double taken = 0;
        (double Inward, double Drop)[] ring = [.. corners, (0, 0)];
        for (int i = 0; i < ring.Length; i++)
        {
            var (p, q) = (ring[i], ring[(i + 1) % ring.Length]);
            taken += ((p.Inward * q.Drop) - (q.Inward * p.Drop)) / 2;
        }

        var (plain, rounded) = (Only(Bare, side), Only(coping, side));
        Assert.Equal(Math.Abs(taken) * Length, plain.Solid.ColumnVolume - rounded.Solid.ColumnVolume, 1e-2); // corners on the plan grid
        Sound(rounded);
        Assert.Equal(0, rounded.Overhangs.Unsupported);
        Assert.Equal(PrintPose.DeckDown, rounded.Pose);
        Assert.Equal(plain.Size.Y, rounded.Size.Y, 1e-4); // no nearer to the track, and no farther
    }

    /// <summary>Of every kind at every usual scale: unasked it projects 3 in, or what its wall leaves of it, and the wall lies under it whole.</summary>
    [Fact]
    public void A_coping_lies_on_its_wall_unasked()
    {
        var (bound, free) = (0, 0);
        foreach (double ratio in (double[])[22.5, 43.5, 76.2, 87, 120, 148, 160, 220])
        {
            foreach (var kind in Enum.GetValues<CopingKind>())
            {
                var asked = PlatformSpec.For(new(ratio), "halt", new("main", Side.Left, 300, 500));
                var coping = (asked with { Coping = asked.Coping with { Kind = kind } }).Seated.Coping;
                double usual = 76.2 / ratio, room = Math.Max(0, coping.Width - 1.6);
                Assert.Equal(Math.Min(usual, room), coping.Overhang, 1e-12);
                (bound, free) = (bound + (room < usual ? 1 : 0), free + (room >= usual ? 1 : 0));
                Assert.Equal(2.5, (coping with { Overhang = 2.5 }).Overhang); // what is stated stands, and is judged
            }
        }

        Assert.True(bound > 3 && free > 3);
    }

    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void Bricks_lie_side_by_side_eight_to_a_slab_with_joints_between(Side side)
    {
        var coping = Bare with { Kind = CopingKind.Bricks, Width = 3, SlabLength = 12, JointWidth = 0.375, JointDepth = 0.25, ArrisChamfer = 0 };
        var (made, smooth) = (Only(coping, side), Only(coping with { JointDepth = 0 }, side));

        // 112.5 mm of a brick as a header with its joint (BS EN 771) at 1:76.2 is 1.476: eight to 12 mm.
        Assert.Equal(1.476, coping.BrickPitch, 5e-4);
        int joints = (int)(Length / 12 * 8) - 1;

        // Each goes down the front, 1.2 high, to a foot that slopes, a layer of 0.2 at its lowest over the underside; along the inner edge, in the coping,
        // lies the joint to the deck, but for a line at either end.
        double down = 0.375 * 0.25 * (1.2 - 0.2 - 0.25 - (1.2 * 0.25 / 2)), seam = (Length - 0.8) * 0.375 * 0.25;
        double each = (0.375 * 3 * 0.25) + down - (0.375 * 0.375 * 0.25);
        Assert.Equal((joints * each) + seam, smooth.Solid.ColumnVolume - made.Solid.ColumnVolume, 1e-3);
        Sound(made);
        Assert.Contains((byte)Paint.CopingBrick, made.Solid.Mesh.Paints);
        Assert.DoesNotContain((byte)Paint.Coping, made.Solid.Mesh.Paints);

        // A tone apart from paving bricks and from brick walls: a tenth of the scale of lightness (ITU-R BT.601) darker than either.
        static double Lightness(Paint paint) => (0.299 * Palette.Of(paint).R) + (0.587 * Palette.Of(paint).G) + (0.114 * Palette.Of(paint).B);
        Assert.All([Paint.Paver, Paint.Wall], p => Assert.True(Lightness(p) - Lightness(Paint.CopingBrick) > 25));
    }

    [Fact]
    public void A_tooled_margin_is_a_line_all_round_each_slab()
    {
        var coping = Bare with { SlabLength = 12, JointWidth = 0.375, JointDepth = 0, Margin = 1.5, MarginDepth = 0.25 };
        double along = 12 - 3 + 0.375, across = 8 - 3 - 0.375, each = ((2 * along) + (2 * across)) * 0.375 * 0.25;
        var (made, smooth) = (Only(coping, Side.Left), Only(coping with { Margin = 0 }, Side.Left));
        Assert.Equal(Length / 12 * each, smooth.Solid.ColumnVolume - made.Solid.ColumnVolume, 1e-3);
        Sound(made);
    }

    [Theory]
    [InlineData("thornhithe", "kind=bricks")] // an island: joints are square to their own edge
    [InlineData("thornhithe", "margin=1.2")]
    [InlineData("emberlow", "kind=timber")]
    [InlineData("tawnybrook", "nosing=rounded")]
    public void Copings_follow_curves_ramps_and_both_edges_and_slabs_stay_whole_over_joints(string sample, string change)
    {
        var design = DesignRun.Design(Samples.Read(PresetShelf.Sample(sample)!, "platform[0].coping." + change).Value!, RunWatch.None);
        Assert.True(design.Succeeded, string.Join("; ", design.Findings.Select(f => f.Message)));
        var set = design.Value!.Platforms[0].Sections;
        Assert.All(set.Sections, Sound);
        Assert.All(set.Cuts, cut => Assert.Contains(set.Plan.CopingJoints, j => Math.Abs(j - cut) < 1e-9)); // a cut runs between two slabs
    }

    [Fact]
    public void What_a_kind_has_unasked_is_drawn_to_scale()
    {
        var large = CopingSpec.For(new(43.5));
        Assert.Equal((600 / 43.5, 900 / 43.5, Nosing.Chamfered, 0.3), (large.Width, large.SlabLength, large.Nosing, large.ArrisChamfer));
        var bricks = large with { Kind = CopingKind.Bricks };
        Assert.Equal((225 / 43.5, 900 / 43.5, Nosing.Rounded), (bricks.Width, bricks.SlabLength, bricks.Nosing)); // BS EN 771
        Assert.Equal(8, bricks.SlabLength / bricks.BrickPitch, 1e-9);
        Assert.Equal(3657.6 / 43.5, (large with { Kind = CopingKind.Timber }).SlabLength, 1e-9); // 12 ft
    }

    [Fact]
    public void What_would_not_show_is_refused_with_what_would()
    {
        var bricks = Bare with { Kind = CopingKind.Bricks, SlabLength = 12, JointWidth = 0.8 };
        var narrow = Assert.Single(Check(bricks));
        Assert.Equal(("PF5047", Severity.Error), (narrow.Code, narrow.Severity));
        Assert.Empty(Check(bricks with { JointWidth = Figure(narrow) }));
        foreach (double margin in new[] { 0.5, 5 })
        {
            var slabs = Bare with { SlabLength = 12, JointWidth = 0.4, Margin = margin };
            var fault = Assert.Single(Check(slabs));
            Assert.Equal(("PF5048", Severity.Error), (fault.Code, fault.Severity));
            Assert.Empty(Check(slabs with { Margin = Figure(fault) }));
        }
    }

    private static readonly CopingSpec Bare = new() { Width = 8, Thickness = 1.2, Overhang = 1, SlabLength = 24, JointDepth = 0, ArrisChamfer = 0 };

    private static double Figure(Finding fault) => double.Parse(fault.Cure!.Value, CultureInfo.InvariantCulture);

    private static List<Finding> Check(CopingSpec coping) => [.. CopingRule.Check(Plan(coping, Side.Left), Workbench.Printer)];

    private static PlatformPlan Plan(CopingSpec coping, Side side) => Workbench.Straight(Length, side, s => s with { Coping = coping });

    private static PlatformSection Only(CopingSpec coping, Side side) => Assert.Single(Workbench.Made(Plan(coping, side), Workbench.Printer, new()).Sections);

    private static void Sound(PlatformSection section)
    {
        var report = MeshCheck.Inspect(section.Solid.Mesh);
        Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, report.ToString());
        Assert.True(MeshCheck.Inspect(section.PrintMesh()) is { IsClosed: true, DegenerateTriangles: 0 });
    }
}
