using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Rules;
using PlatformForge.Solids;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Pavings engraved in decks, by their joints' places and by meshes.</summary>
public class PavingTests
{
    private static readonly PavingSpec Flags = PavingSpec.For(new(76.2));

    [Theory]
    [InlineData(PavingKind.Flags, Paint.Concrete, Side.Left)]
    [InlineData(PavingKind.Setts, Paint.Stone, Side.Right)]
    [InlineData(PavingKind.Planks, Paint.Timber, Side.Left)]
    [InlineData(PavingKind.Bricks, Paint.Paver, Side.Right)]
    public void A_paved_section_is_sound_lies_on_its_deck_and_holds_less_by_its_joints(PavingKind kind, Paint paint, Side side)
    {
        var plan = Straight(Flags with { Kind = kind }, side);
        var section = Assert.Single(Workbench.Made(plan, Workbench.Printer, new()).Sections);
        var report = MeshCheck.Inspect(section.Solid.Mesh);
        Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, report.ToString());
        Assert.True(MeshCheck.Inspect(section.PrintMesh()) is { IsClosed: true, DegenerateTriangles: 0 });
        Assert.Equal(PrintPose.DeckDown, section.Pose);
        Assert.Contains((byte)paint, section.Solid.Mesh.Paints);
        Assert.DoesNotContain((byte)Paint.Deck, section.Solid.Mesh.Paints);
        Assert.Equal(0, section.Overhangs.Unsupported);

        // Closed form on a straight deck: joints' lengths by width and depth, less where two meet, a square of half a joint by a joint at either end of one
        // along.
        var paving = plan.Spec.Deck.Paving!;
        var layout = PavingLayout.Of(plan)!;
        double width = layout.Far.Reach[0] - layout.Near.Reach[0];
        double across = layout.Joints.Where(j => j.IsAcross).Sum(j => (j.Far - j.Near) * width),
            along = layout.Joints.Where(j => !j.IsAcross).Sum(j => j.To - j.From);
        double bare = Assert.Single(Workbench.Made(Straight(null, side), Workbench.Printer, new()).Sections).Solid.ColumnVolume;
        double most = (across + along) * paving.Joint * paving.Depth;
        double meetings = layout.Joints.Count(j => !j.IsAcross) + layout.Joints.Count(j => j.IsAcross);
        Assert.InRange(bare - section.Solid.ColumnVolume, most - (meetings * paving.Joint * paving.Joint * paving.Depth), most + 1e-3);
    }

    [Fact]
    public void Flags_lie_in_courses_square_to_the_edge_with_joints_broken_by_half_from_course_to_course()
    {
        var plan = Straight(Flags, Side.Left);
        var layout = PavingLayout.Of(plan)!;

        // 900 by 600 mm, a designated size of BS 7263-1 (from memory), at 1:76.2 is 11.81 by 7.87, drawn in to whole ones between slabs of 12.
        Assert.InRange(layout.Length, 0.8 * 11.81, 1.2 * 11.81);
        Assert.InRange(layout.Width, 0.74 * 7.87, 1.2 * 7.87);
        double[] lines = [.. layout.Joints.Where(j => j.IsAcross).Select(j => j.From)];
        Assert.All(layout.Joints.Where(j => j.IsAcross), j => Assert.Equal((0.0, 1.0), (j.Near, j.Far)));
        Assert.All(plan.CopingJoints, j => Assert.Contains(lines, l => Math.Abs(l - j) < 1e-9)); // so a cut runs along a joint
        var courses = layout.Joints.Where(j => !j.IsAcross).GroupBy(j => j.From).Select(c => c.Select(j => j.Near).ToArray()).ToArray();
        Assert.Equal(lines.Length + 1, courses.Length);
        Assert.All(courses.Zip(courses.Skip(1)),
            pair => Assert.Empty(pair.First.Select(s => Math.Round(s, 6)).Intersect(pair.Second.Select(s => Math.Round(s, 6)))));
    }

    [Fact]
    public void Stretcher_wise_courses_run_along_the_edge_and_their_joints_are_broken_by_half()
    {
        var layout = PavingLayout.Of(Straight(Flags with { Courses = PavingCourses.Along }, Side.Left))!;
        var rows = layout.Joints.Where(j => j.IsAcross).GroupBy(j => j.Near).OrderBy(r => r.Key).Select(r => r.Select(j => Math.Round(j.From, 6)).ToArray())
            .ToArray();
        Assert.Equal(rows.Length - 1, layout.Joints.Count(j => !j.IsAcross));
        Assert.All(rows.Zip(rows.Skip(1)), pair => Assert.Empty(pair.First.Intersect(pair.Second)));
    }

    [Fact]
    public void Joints_turn_with_the_curve_and_go_on_over_cuts()
    {
        var plan = Workbench.PendlewickAs(p => p with
        {
            Face = p.Face with { To = p.Face.From + 240 },
            Features = [],
            StartRamp = null,
            EndRamp = null,
            Deck = p.Deck with { Paving = Flags with { Courses = PavingCourses.Along } },
        });
        var set = Workbench.Made(plan, Workbench.Printer with { Bed = PrinterSpec.Oblong(160, 160, 250).Bed }, new());
        Assert.True(set.Sections.Count > 1);
        Assert.All(set.Sections, s => Assert.True(MeshCheck.Inspect(s.Solid.Mesh) is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }));

        // Under a joint along, a share of the deck's width at every chainage, there is a groove in both sections at each cut.
        var layout = PavingLayout.Of(set.Plan)!;
        double share = layout.Joints.First(j => !j.IsAcross).Near;
        foreach (double cut in set.Cuts)
        {
            foreach (var (section, off) in new[] { (set.Sections.Single(s => s.To == cut), -1.0), (set.Sections.Single(s => s.From == cut), 1.0) })
            {
                double at = cut + off, top = set.Plan.TopAt(at, layout.At(share).At(at));
                var place = set.Plan.ToLayout(at, layout.At(share).At(at));
                Assert.Equal(top - Flags.Depth, Highest(section.Solid.Mesh, place), 1e-3);
            }
        }
    }

    [Fact]
    public void Loose_decks_are_what_they_were() => Assert.Null(PavingLayout.Of(Workbench.PendlewickPlan));

    [Fact]
    public void What_cannot_be_printed_or_laid_is_refused_with_a_figure_that_is_taken()
    {
        Assert.Empty(Check(Flags));
        Assert.All(Enum.GetValues<PavingKind>(), k => Assert.Empty(Check(Flags with { Kind = k })));
        Refused("PF5038", Flags with { Kind = PavingKind.Setts, Width = 0.9 }, (f, v) => f with { Width = v });
        Refused("PF5039", Flags with { Length = 90 }, (f, v) => f with { Length = v });
        Refused("PF5040", Flags with { Depth = 1.2 }, (f, v) => f with { Depth = v });
    }

    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void Expansion_joints_cross_the_deck_in_line_with_the_copings(Side side)
    {
        PlatformPlan Plan(double pitch, double thick = 1.5) => Workbench.Straight(
            96, side, s => s with { Deck = s.Deck with { ExpansionJoints = pitch, Thickness = thick }, Coping = s.Coping with { SlabLength = 12 } });
        var plan = Plan(30);
        Assert.Equal(2, ExpansionJoints.Of(plan).Count); // 96 is three of 32; joints of slabs of 12 lie nearest to those
        Assert.All(ExpansionJoints.Of(plan), j => Assert.Contains(j, plan.CopingJoints));
        var made = Assert.Single(Workbench.Made(plan, Workbench.Printer, new()).Sections);
        Assert.True(MeshCheck.Inspect(made.Solid.Mesh) is { IsClosed: true, DegenerateTriangles: 0, Components: 1 });
        Assert.True(MeshCheck.Inspect(made.PrintMesh()) is { IsClosed: true, DegenerateTriangles: 0 });
        double bare = Assert.Single(Workbench.Made(Plan(0), Workbench.Printer, new()).Sections).Solid.ColumnVolume;
        Assert.Equal(2 * 0.4 * 0.3 * (60 - 8 - 0.4), bare - made.Solid.ColumnVolume, 0.01); // the plan's grid
        Assert.Equal(0, made.Overhangs.Unsupported);
        var thin = Assert.Single(PavingRule.Check(Plan(30, 1), Workbench.Printer));
        Assert.Equal("PF5049", thin.Code);
        Assert.Empty(PavingRule.Check(Plan(30, double.Parse(thin.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture)), Workbench.Printer));
    }

    private static void Refused(string code, PavingSpec paving, Func<PavingSpec, double, PavingSpec> mend)
    {
        var fault = Assert.Single(Check(paving));
        Assert.Equal((code, Severity.Error), (fault.Code, fault.Severity));
        Assert.Empty(Check(mend(paving, double.Parse(fault.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture))));
    }

    private static List<Finding> Check(PavingSpec paving) => [.. PavingRule.Check(Straight(paving, Side.Left), Workbench.Printer)];

    private static PlatformPlan Straight(PavingSpec? paving, Side side) =>
        Workbench.Straight(96, side, s => s with { Deck = s.Deck with { Paving = paving }, Coping = s.Coping with { SlabLength = 12 } });

    // Height of the topmost surface over a place in plan.
    private static double Highest(Mesh mesh, Point2 at)
    {
        double highest = double.NegativeInfinity;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
            double area = Cross(a, b, c.X, c.Y), u = Cross(b, c, at.X, at.Y), v = Cross(c, a, at.X, at.Y), w = Cross(a, b, at.X, at.Y);
            if (area > 1e-9 && u >= 0 && v >= 0 && w >= 0)
            {
                highest = Math.Max(highest, ((u * a.Z) + (v * b.Z) + (w * c.Z)) / area);
            }
        }

        return highest;
    }

    private static double Cross(Point3 a, Point3 b, double x, double y) => ((b.X - a.X) * (y - a.Y)) - ((b.Y - a.Y) * (x - a.X));
}
