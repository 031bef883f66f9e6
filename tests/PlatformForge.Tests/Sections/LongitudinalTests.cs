using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Exports.Workshop;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Rules;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Trestles;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>Braces along a trestle, by the meshes of sections and by plane geometry.</summary>
public class LongitudinalTests
{
    private const double Deck = 1.5, Height = 20;

    private static readonly TrestleSpec Timber = TrestleSpec.For(new(76.2)) with
    {
        Post = 4,
        Cap = 4,
        Bearer = 3,
        Brace = 1,
        Posts = 4,
        Braces = BraceForm.None
    };

    /// <summary>A brace at 45 degrees is what lies under its upper side and over its lower one, from the post's face to the bearer's underside: the
    /// difference of two right-angled triangles. Two that meet at right angles share what lies over the lower sides of both in the middle of the bay.</summary>
    [Theory]
    [InlineData(LongitudinalForm.Raking, BracedRows.Both, Side.Left)]
    [InlineData(LongitudinalForm.Raking, BracedRows.All, Side.Right)]
    [InlineData(LongitudinalForm.Cross, BracedRows.Front, Side.Right)]
    [InlineData(LongitudinalForm.Knee, BracedRows.Back, Side.Left)]
    public void Their_volume_is_that_of_triangles(LongitudinalForm form, BracedRows rows, Side side)
    {
        var spec = Timber with { Longitudinal = form, Braced = rows, Knee = 6 };
        PlatformPlan bare = On(Timber, 150, side), braced = On(spec, 150, side);
        var bents = braced.Trestle!.Bents;
        double under = Height - Deck - 3, added = 0;
        for (int i = 0; i + 1 < bents.Count; i++)
        {
            // 0.1 mm over the baseboard a quarter of a post within the post, and so higher by that at its face.
            double wide = bents[i + 1].From - bents[i].To, foot = form == LongitudinalForm.Knee ? under - 6 : 0.1 + 1, high = under - foot;
            Assert.InRange(wide, high, form == LongitudinalForm.Knee ? 100 : 2 * high);
            double upper = high - Math.Sqrt(2), one = ((high * high) - (upper * upper)) / 2, shared = Shared(wide, high, upper);
            added += form == LongitudinalForm.Raking ? one : form == LongitudinalForm.Knee ? 2 * one : (2 * one) - shared;
        }

        int many = rows switch { BracedRows.All => 4, BracedRows.Both => 2, _ => 1 };
        double volume = Volume(braced) - Volume(bare);
        Assert.Equal(many * added, volume, 2e-3 * many * bents.Count); // rows lie off the plan's grid
    }

    // Of two braces from either end of a bay, mm², by strips one ten-thousandth of it wide: from the later of the lower sides to the earlier of the upper
    // ones, under the bearer.
    private static double Shared(double wide, double high, double upper)
    {
        const int strips = 100000;
        double sum = 0;
        for (int i = 0; i < strips; i++)
        {
            double x = (i + 0.5) * wide / strips, low = Math.Max(x, wide - x), top = Math.Min(Math.Min(x, wide - x) + high - upper, high);
            sum += Math.Max(0, top - low) * wide / strips;
        }

        return sum;
    }

    /// <summary>As they lie on the bed, no triangle of a section looks down by less than 45 degrees but what is level, on ramps and on curves too, and the
    /// account of overhangs finds nothing.</summary>
    [Theory]
    [InlineData(LongitudinalForm.Cross, BracedRows.All, Side.Left)]
    [InlineData(LongitudinalForm.Raking, BracedRows.Both, Side.Right)]
    [InlineData(LongitudinalForm.Knee, BracedRows.Both, Side.Left)]
    public void Braced_sections_are_sound_and_every_brace_lies_at_45_degrees_or_more_on_the_bed(LongitudinalForm form, BracedRows rows, Side side)
    {
        var spec = TrestleSpec.For(new(76.2)) with { Longitudinal = form, Braced = rows };
        PlatformPlan[] plans =
        [
            Workbench.Straight(420, side, s => s with { Trestle = spec, StartRamp = new(Gradient: 8) }),
            Workbench.Straight(300, side, s => s with { Trestle = spec with { Pitch = 14 }, Deck = s.Deck with { Crossfall = 60 } }),
            Workbench.PendlewickAs(p => p with { Trestle = spec }),
        ];
        foreach (var set in plans.Select(p => Workbench.Made(p, Workbench.Printer, new())))
        {
            Assert.NotEmpty(LongitudinalBraces.Of(new(set.Plan), out _));
            Assert.All(set.Sections, SoundSection.Check);
            foreach (var section in set.Sections)
            {
                var mesh = section.PrintMesh();
                var leaning = Enumerable.Range(0, mesh.TriangleCount).Where(t => mesh.Paints[t] == (byte)Paint.Timber)
                    .Select(t => Normal(mesh, t)).Where(n => n.Length > 0.2 && n.Z / n.Length is < -0.02 and > -0.98).ToArray();
                Assert.All(leaning, n => Assert.True(-n.Z / n.Length < Math.Sqrt(0.5) + 2e-4, $"{section.Name}: {-n.Z / n.Length}"));
            }
        }
    }

    [Theory]
    [InlineData(BracedRows.Front)]
    [InlineData(BracedRows.Both)]
    public void Nothing_of_them_stands_before_the_posts_on_a_curve_and_what_would_is_refused_with_a_pitch_that_is_taken(BracedRows rows)
    {
        var spec = TrestleSpec.For(new(76.2)) with { Longitudinal = LongitudinalForm.Cross, Braced = rows };
        Outcome<SectionSet> Made(TrestleSpec trestle) => SectionMaker.Make(
            Workbench.PendlewickAs(p => p with { Trestle = trestle, Deck = p.Deck with { Thickness = 4 } }), Workbench.Printer, new());
        PlatformPlan bare = Made(spec with { Longitudinal = LongitudinalForm.None }).Value!.Plan, braced = Made(spec).Value!.Plan;
        Assert.Equal(Nearest(bare), Nearest(braced), 1e-4);

        // Bays of 50 mm at some 760 mm radius bow by c² / 8 r, 0.4 mm, and posts of 1.2 leave braces of 1 a tenth.
        var wide = spec with { Post = 1.2, Pitch = 60, Bearer = 4 };
        var told = Assert.Single(Made(wide).Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF4193", "platform[0].trestle.pitch"), (told.Code, told.Cure!.Key));
        double pitch = double.Parse(told.Cure.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(pitch, 10, 50);
        Assert.True(Made(wide with { Pitch = pitch }).Succeeded);
    }

    // The least reach of any corner of a section under its coping.
    private static double Nearest(PlatformPlan plan) => SolidRaiser.Raise(PlatformBody.Blocks(plan).All).Mesh.Vertices
        .Where(v => v.Z < plan.Profile.Level - 6).Min(v => plan.Side.Reach(plan.Chart.Locate(new(v.X, v.Y), plan.Stations[plan.Stations.Length / 2]).Offset));

    /// <summary>A lamp's hole right through bearer and brace leaves that brace out; posts whose holes end within deck and bearer leave all.</summary>
    [Fact]
    public void Braces_in_the_way_of_a_deep_hole_are_left_out_and_counted()
    {
        var spec = Timber with { Longitudinal = LongitudinalForm.Raking, Braced = BracedRows.Back };
        double at = On(spec, 150, Side.Left).Trestle!.Bents[2].To + 8; // the third bay's brace rises onward and is 9 to 10.5 mm high there
        SectionSet Made(double depth) => Workbench.Made(
            Workbench.Straight(150, Side.Left, s => (s with { Trestle = spec }).With<HoleSpec>([new HoleSpec(at, 2) { Diameter = 2, Depth = depth }])),
            Workbench.Printer, new());
        var (shallow, deep) = (TrestleReport.Of(Made(2.5))!, TrestleReport.Of(Made(12))!);
        Assert.Equal((0, 1), (shallow.LongitudinalLeftOut, deep.LongitudinalLeftOut));
        Assert.StartsWith("1 of ", Assert.Single(TrestlePrintRule.Along(new(Made(12).Plan)), f => f.Code == "PF4195").Message, StringComparison.Ordinal);
        Assert.Equal(shallow.LongitudinalBraces - 1, deep.LongitudinalBraces);
        Assert.Equal(shallow.Bents - 1, shallow.LongitudinalBraces);
    }

    /// <summary>A brace adds its two sides and its two edges to what is painted, and hides a parallelogram of each post: by hand, for braces that do not
    /// meet.</summary>
    [Fact]
    public void Paint_is_reckoned_for_all_sides_of_them()
    {
        var spec = Timber with { Longitudinal = LongitudinalForm.Raking, Braced = BracedRows.Both };
        double Area(TrestleSpec trestle) => SurfaceAreas.Of(Workbench.Made(On(trestle, 150, Side.Left), Workbench.Printer, new()))[(int)Paint.Timber];
        int braces = 2 * (On(spec, 150, Side.Left).Trestle!.Bents.Count - 1);
        double high = Height - Deck - 3 - 1.1, upper = high - Math.Sqrt(2), side = ((high * high) - (upper * upper)) / 2;
        double edges = (high + upper) * Math.Sqrt(2), lost = Math.Sqrt(2); // what it covers of the post; undersides of bearers are not painted
        Assert.Equal(braces * ((2 * side) + edges - lost), Area(spec) - Area(Timber), 0.05 * braces);
    }

    [Fact]
    public void Braces_behind_boards_are_told_and_the_cure_is_taken()
    {
        (BracedRows Braced, BoardedSides Boarded, string Key, string Cure)[] cases =
        [
            (BracedRows.Both, BoardedSides.Front, "platform[0].trestle.braced", "\"back\""),
            (BracedRows.All, BoardedSides.Back, "platform[0].trestle.braced", "\"front\""),
            (BracedRows.Front, BoardedSides.Both, "platform[0].trestle.longitudinal", "\"none\""),
        ];
        foreach (var (braced, boarded, key, cure) in cases)
        {
            var told = Assert.Single(Rules(Timber with { Longitudinal = LongitudinalForm.Cross, Braced = braced, Boarded = boarded }));
            Assert.Equal(("PF4194", key, cure), (told.Code, told.Cure!.Key, told.Cure.Value));
        }

        Assert.Empty(Rules(Timber with { Longitudinal = LongitudinalForm.Cross, Braced = BracedRows.Back, Boarded = BoardedSides.Front }));
        Assert.Empty(Rules(Timber with { Longitudinal = LongitudinalForm.Cross, Braced = BracedRows.Front, Boarded = BoardedSides.Back }));
        Assert.Equal("PF4185", Assert.Single(Rules(Timber with { Longitudinal = LongitudinalForm.Cross, Brace = 4 })).Code);
    }

    private static List<Finding> Rules(TrestleSpec trestle)
    {
        var findings = new List<Finding>();
        TrestleRule.Check(On(Timber, 150, Side.Left).Spec with { Trestle = trestle }, Pendlewick.Site, findings);
        return findings;
    }

    private static double Volume(PlatformPlan plan) => SolidRaiser.Volume([.. PlatformBody.Blocks(plan).All]);

    private static PlatformPlan On(TrestleSpec trestle, double length, Side side) => Workbench.Straight(length, side, s => s with { Trestle = trestle });

    private static Point3 Normal(Mesh mesh, int t)
    {
        Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
        return Point3.Cross(b - a, c - a);
    }
}
