using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>Manholes: cover and frame engraved in a deck, by meshes and volumes.</summary>
public class ManholeTests
{
    private static readonly ModelScale Scale = new(76.2);

    private static readonly ManholeSpec Manhole = new(275, 20) { Fit = 0, Pattern = CoverPattern.Plain };

    [Theory]
    [InlineData(Side.Left, CoverPattern.Studs, null)]
    [InlineData(Side.Right, CoverPattern.Bars, PavingKind.Flags)]
    [InlineData(Side.Left, CoverPattern.Studs, PavingKind.Setts)]
    [InlineData(Side.Right, CoverPattern.Plain, PavingKind.Bricks)]
    public void Sections_with_manholes_are_sound_and_lie_flat(Side side, CoverPattern pattern, PavingKind? kind)
    {
        var sections = Made(side, [Manhole with { Pattern = pattern }, Manhole with { Pattern = pattern, Chainage = 320, Inset = 14 }], Paved(kind)).Sections;
        Assert.All(sections, SoundSection.Check);
        Assert.All(sections, s => Assert.Equal(PrintPose.DeckDown, s.Pose));
    }

    [Fact]
    public void A_manhole_takes_the_volume_of_its_rings()
    {
        // Two rings of grooves: outer sizes less inner ones, by the depth.
        double Ring(double along, double across) => ((along + (2 * Manhole.Groove)) * (across + (2 * Manhole.Groove))) - (along * across);
        double out1 = Manhole.Along + (2 * (Manhole.Frame + Manhole.Groove)), out2 = Manhole.Across + (2 * (Manhole.Frame + Manhole.Groove));
        double taken = Manhole.Depth * (Ring(Manhole.Along, Manhole.Across) + Ring(out1, out2));
        Assert.Equal(taken, Volume([], null) - Volume([Manhole], null), 1e-3);
    }

    /// <summary>Grooves follow the walking surface over a ramp's head: as deep as anywhere, on either side of it.</summary>
    [Fact]
    public void A_manhole_across_a_ramps_head_takes_the_volume_of_its_rings()
    {
        PlatformPlan Ramped(params ManholeSpec[] features) =>
            Workbench.Straight(240, Side.Left, s => s with { StartRamp = new(Gradient: 8), Features = features });
        double level = Volume([], null) - Volume([Manhole], null);
        double head = Ramped().Profile.StartHead;
        double Body(PlatformPlan plan) => SolidRaiser.Volume([.. PlatformBody.Blocks(plan).All]);
        Assert.Equal(level, Body(Ramped()) - Body(Ramped(Manhole with { Chainage = head + 1 })), 1e-3);
    }

    [Fact]
    public void Studs_take_what_lies_between_them()
    {
        // Two ways of grooves over the cover, their crossings once.
        var studs = Manhole with { Pattern = CoverPattern.Studs, Pitch = 2 };
        double along = Math.Round(studs.Along / 2) - 1, across = Math.Round(studs.Across / 2) - 1, g = studs.Groove;
        double taken = studs.Depth * ((across * g * studs.Along) + (along * g * studs.Across) - (along * across * g * g));
        Assert.Equal(taken, Volume([Manhole], null) - Volume([studs], null), 1e-3);
    }

    [Fact]
    public void Paving_ends_at_the_frame_and_no_joint_of_it_is_left_within()
    {
        var mesh = Made(Side.Left, [Manhole], Paved(PavingKind.Setts)).Sections[0].Solid.Mesh;
        var plan = Plan(Side.Left, [Manhole], Paved(PavingKind.Setts));
        var middle = plan.ToLayout(Manhole.Chainage, plan.Back.At(Manhole.Chainage) - Manhole.Inset);
        double top = plan.TopAt(Manhole.Chainage, plan.Back.At(Manhole.Chainage) - Manhole.Inset);
        double edge = (Manhole.Along / 2) + Manhole.Groove + Manhole.Frame;

        // Level triangles within the frame, at the depth of the paving's joints: only its own groove round the cover, whose area is known.
        double Area(double half, double low, double high) => Enumerable.Range(0, mesh.TriangleCount).Select(t => Corners(mesh, t))
            .Where(c => c.All(p => p.Z > low && p.Z < high && Math.Abs(p.X - middle.X) < half && Math.Abs(p.Y - middle.Y) < half))
            .Sum(c => Point3.Cross(c[1] - c[0], c[2] - c[0]).Z / 2);
        double inner = Manhole.Along + (2 * Manhole.Groove);
        Assert.Equal((inner * inner) - (Manhole.Along * Manhole.Across), Area(edge + 0.01, top - 0.31, top - 0.29), 0.01);
        Assert.True(Area(30, top - 0.31, top - 0.29) > 50);
    }

    [Fact]
    public void Cuts_keep_off_manholes_and_other_features_are_told()
    {
        var plan = Plan(Side.Left, [Manhole], null);
        var keep = Assert.Single(plan.Keepouts);
        Assert.DoesNotContain(plan.CutCandidates, c => c.Chainage > keep.From - 1 && c.Chainage < keep.To + 1);
        Assert.Equal(Manhole.Along + (2 * (Manhole.Frame + (2 * Manhole.Groove))), keep.To - keep.From, 1e-9);
    }

    [Fact]
    public void Sizes_follow_the_scale()
    {
        var small = Manhole with { Ratio = 148 };
        Assert.Equal(600 / 148.0, small.Along, 1e-12);
        Assert.Equal(0.8, small.Frame);
        Assert.Equal(600 / 43.5, (Manhole with { Ratio = 43.5 }).Along, 1e-12);
        Assert.Equal(75 / 43.5, (Manhole with { Ratio = 43.5 }).Frame, 1e-12);
    }

    [Theory]
    [InlineData("PF4191", 1.5, 2.0)]
    [InlineData("PF4192", 0.3, 0.9)]
    public void Manholes_that_cannot_be_made_are_refused_and_the_remedy_works(string code, double depth, double pitch)
    {
        var spec = Manhole with { Pattern = CoverPattern.Studs, Depth = depth, Pitch = pitch };
        var fault = Assert.Single(Early(spec));
        Assert.Equal(code, fault.Code);
        var cured = code == "PF4191" ? spec with { Depth = double.Parse(fault.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture) }
            : spec with { Pattern = CoverPattern.Plain };
        Assert.Empty(Early(cured));
    }

    /// <summary>A strip or an inlay over a cover would hide it, and a kerb, which posts may go through, as well: told once each, from the frame's outer groove
    /// with a printed line of 0.4 about it. A frame of 7.87 + 2 (0.98 + 2 of 0.4) = 11.44 about 30 reaches from 24.28 to 35.72.</summary>
    [Theory]
    [InlineData(19, 4, false)]
    [InlineData(20.5, 4, true)]
    [InlineData(28, 4, true)]
    [InlineData(36, 4, true)]
    [InlineData(36.5, 4, false)]
    public void A_strip_over_a_manhole_is_told(double inset, double width, bool meets)
    {
        var plan = Workbench.Straight(96, change: s => s with
        {
            WhiteLine = null,
            Tactile = new() { Inset = inset, Width = width },
            Features = [new ManholeSpec(250, 30, InsetFrom.Edge) { Fit = 0 }],
        });
        Assert.Equal(meets ? 1 : 0, PlatformForge.Sections.Rules.LineRule.Check(plan, Workbench.Printer).Count(f => f.Code == "PF5041"));
    }

    [Fact]
    public void A_kerb_over_a_manhole_is_told_though_posts_go_through_it()
    {
        var plan = Workbench.Straight(96, change: s => s with
        {
            Back = new() { Kerb = new() { Width = 12 } },
            Features = [new ManholeSpec(250, 7) { Fit = 0, Along = 2, Across = 2, Pattern = CoverPattern.Plain }],
        });
        Assert.Contains(PlatformForge.Sections.Rules.LineRule.Check(plan, Workbench.Printer), f => f.Code == "PF5041");
    }

    /// <summary>On full-size paper a manhole has its frame and, within it, its cover, at their sizes.</summary>
    [Fact]
    public void Plans_show_a_cover_in_its_frame()
    {
        var mark = Assert.Single(Plan(Side.Left, [Manhole], null).Features.SelectMany(f => f.Marks).OfType<AreaMark>());
        double Size(Point2[] ring, Func<Point2, double> way) => ring.Max(way) - ring.Min(way);
        var (inner, name) = mark.Inner!.Value;
        Assert.Equal(600 / 76.2, Size(inner, p => p.X), 1e-9);
        Assert.Equal(600 / 76.2, Size(inner, p => p.Y), 1e-9);
        Assert.Equal(mark.Along - (2 * (Manhole.Frame + (2 * Manhole.Groove))), Size(inner, p => p.X), 1e-9);
        Assert.Equal("cover 7.87 x 7.87", name);
    }

    private static Finding[] Early(ManholeSpec spec)
    {
        var plan = Plan(Side.Left, [], null);
        return [.. spec.Early(plan.Spec, plan.Site, "platform 'straight'.manhole[0]")];
    }

    private static Point3[] Corners(Mesh mesh, int t) => [.. Enumerable.Range(0, 3).Select(k => mesh.Vertices[mesh.Triangles[(3 * t) + k]])];

    private static PavingSpec? Paved(PavingKind? kind) => kind is { } k ? PavingSpec.For(Scale) with { Kind = k } : null;

    private static double Volume(ManholeSpec[] manholes, PavingSpec? paving) =>
        SolidRaiser.Volume([.. PlatformBody.Blocks(Plan(Side.Left, manholes, paving)).All]);

    private static SectionSet Made(Side side, ManholeSpec[] manholes, PavingSpec? paving) =>
        Workbench.Made(Plan(side, manholes, paving), Workbench.Printer, new());

    private static PlatformPlan Plan(Side side, ManholeSpec[] manholes, PavingSpec? paving) => Workbench.Straight(150, side, s => s with
    {
        Features = manholes,
        Deck = s.Deck with { Paving = paving },
    });
}
