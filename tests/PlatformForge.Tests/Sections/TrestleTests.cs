using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Trestles;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>Trestles: bents that carry the deck, by the meshes of sections.</summary>
public class TrestleTests
{
    private static readonly ModelScale Scale = new(76.2);

    private static readonly TrestleSpec Timber = TrestleSpec.For(Scale), Concrete = TrestleSpec.For(Scale) with { Kind = TrestleKind.Concrete };

    private static readonly Lazy<PlatformSection> Level = new(() => Workbench.Made(On(Timber, 150), Workbench.Printer, new()).Sections[0]);

    /// <summary>Too deep for the feet of ramps, which are 8 mm high.</summary>
    private static readonly TrestleSpec Deep = Timber with { Cap = 6 };

    /// <summary>Sizes are powers of two, so that every corner of the level platform lies on the kernel's grid.</summary>
    private static readonly TrestleSpec Whole = Timber with { Post = 4, Cap = 4, Bearer = 3, Brace = 1, Posts = 4 };

    /// <summary>What looks up of pads and sills is no deck, and keeps no trestle off the bed.</summary>
    [Theory]
    [InlineData(1.5, 0)]
    [InlineData(0, 2)]
    [InlineData(1, 2)]
    public void A_trestle_with_pads_or_sills_lies_deck_down(double pad, double sill) =>
        Assert.All(Workbench.Made(On(Concrete with { Pad = pad, Sill = sill }, 150), Workbench.Printer, new()).Sections,
            s => Assert.Equal(PrintPose.DeckDown, s.Pose));

    [Theory]
    [InlineData(BraceForm.None)]
    [InlineData(BraceForm.Single)]
    [InlineData(BraceForm.Cross)]
    [InlineData(BraceForm.Web)]
    public void The_volume_is_that_of_its_timbers(BraceForm braces)
    {
        const double length = 150, width = 59, deck = 1.5, height = 18.5, post = 4, cap = 4, bearer = 3, wide = (width - (4 * post)) / 3, under = height - cap;
        var plan = On(Whole with { Braces = braces }, length);
        int bents = plan.Trestle!.Bents.Count;
        Assert.True(bents >= 5);
        Assert.Equal(4, plan.Trestle.Rows.Count);

        // The deck from its bearers' face to its back, the coping a millimetre farther; caps, bearers between them, posts under caps.
        double above = length * ((width * deck) + (1 * 1.2));
        double timbers = (bents * width * post * cap) + (4 * post * bearer * (length - (bents * post))) + (bents * 4 * post * post * under);
        double between = bents * 3 * Between(braces, wide, under);
        Assert.Equal(above + timbers + between, SolidRaiser.Volume([.. PlatformBody.Blocks(plan).All]), 0.05);
    }

    // Of what stands between two posts, mm³: a web as thick as a brace; or braces at 45 degrees from the post's face to the cap's underside, which cross at
    // right angles in one square.
    private static double Between(BraceForm braces, double wide, double under)
    {
        if (braces is BraceForm.None or BraceForm.Web)
        {
            return braces == BraceForm.Web ? wide * under * 1 : 0;
        }

        var line = BraceLine.Of(Whole, wide, under)!;
        Assert.Equal(1, line.Rise);
        double high = under - line.Foot, upper = high - line.Deep, area = (high * high / 2) - (upper * upper / 2);
        return braces == BraceForm.Single ? area : (2 * area) - 1;
    }

    /// <summary>Half way between two bents, 5.1 mm over the baseboard, nothing is met but boards: 0.4 mm behind the posts' faces, as thick as stated.</summary>
    [Theory]
    [InlineData(Side.Left, BoardedSides.Front)]
    [InlineData(Side.Left, BoardedSides.Back)]
    [InlineData(Side.Right, BoardedSides.Front)]
    [InlineData(Side.Right, BoardedSides.Both)]
    public void Boards_close_the_sides_that_are_asked_for_behind_the_posts_faces(Side side, BoardedSides boarded)
    {
        var plan = On(Whole with { Braces = BraceForm.None, Boarded = boarded, Boards = 1.5 }, 150, side);
        var (one, next) = (plan.Trestle!.Bents[1], plan.Trestle.Bents[2]);
        double front = plan.Trestle.Rows[0].Near.At(one.To), back = plan.Trestle.Rows[^1].Far.At(one.To);
        var met = Crossings(SolidRaiser.Raise(PlatformBody.Blocks(plan).All).Mesh, new((one.To + next.From) / 2, 0, 5.1), along: false)
            .Select(m => (Math.Min(Math.Abs(m.From), Math.Abs(m.To)), Math.Max(Math.Abs(m.From), Math.Abs(m.To)))).Order();
        List<(double, double)> boards = [];
        if (boarded != BoardedSides.Back)
        {
            boards.Add((front + 0.4, front + 1.9));
        }

        if (boarded != BoardedSides.Front)
        {
            boards.Add((back - 1.9, back - 0.4));
        }

        Assert.Equal(boards.SelectMany(b => new[] { b.Item1, b.Item2 }), met.SelectMany(m => new[] { m.Item1, m.Item2 }), (a, b) => Math.Abs(a - b) < 1e-4);
    }

    /// <summary>A pad is an oblong round its post, but not before the faces of the outer rows nor beyond the platform's ends.</summary>
    [Fact]
    public void Pads_add_their_oblongs_less_the_posts()
    {
        var padded = Concrete with { Post = 4, Cap = 4, Bearer = 3, Posts = 4, Pad = 0.5, PadHeight = 1 };
        var plan = On(padded, 150);
        double pads = plan.Trestle!.Bents.Sum(b => Math.Min(350, b.To + 0.5) - Math.Max(200, b.From - 0.5)) * (4.5 + 5 + 5 + 4.5) * 1;
        double posts = plan.Trestle.Bents.Count * 4 * 4 * 4 * 1;
        double Volume(PlatformPlan of) => SolidRaiser.Volume([.. PlatformBody.Blocks(of).All]);
        Assert.Equal(pads - posts, Volume(plan) - Volume(On(padded with { Pad = 0 }, 150)), 5e-3); // rows lie off the plan's grid
    }

    /// <summary>However thick posts are, a brace's lower side is over the sill as far as it goes into its post, a quarter of it: by 0.1 mm where it rises at 45
    /// degrees.</summary>
    [Theory]
    [InlineData(2, 20, 18)]
    [InlineData(4, 20, 18)]
    [InlineData(8, 30, 18)]
    [InlineData(8, 6, 18)]
    public void A_brace_keeps_over_the_sill_within_its_post_too(double post, double wide, double under)
    {
        var line = BraceLine.Of(Whole with { Post = post, Sill = 1 }, wide, under)!;
        double within = line.Foot - (line.Rise * post / 4);
        Assert.Equal(Math.Max(1, (under - line.Foot) / wide), line.Rise, 1e-12);
        Assert.InRange(within, line.Rise > 1 ? 1.1 : 1.1 - 1e-9, line.Rise > 1 ? under : 1.1 + 1e-9);
    }

    [Theory]
    [InlineData(Side.Left, true, TrestleRamps.Bents)]
    [InlineData(Side.Right, true, TrestleRamps.Walls)]
    [InlineData(Side.Right, false, TrestleRamps.Bents)]
    public void Sections_are_sound_of_their_volume_and_print_without_supports(Side side, bool ramps, TrestleRamps carried)
    {
        foreach (var trestle in (TrestleSpec[])[Timber, Concrete with { Pad = 0.35 }, Timber with { Boarded = BoardedSides.Both },
            Concrete with { Braces = BraceForm.Web }])
        {
            var set = Workbench.Made(On(trestle with { Ramps = carried }, 420, side, ramps), Workbench.Printer, new());
            Assert.True(set.Sections.Count >= 2);
            Assert.All(set.Sections, SoundSection.Check);
        }
    }

    [Theory]
    [InlineData(TrestleRamps.Bents, PlatformForge.Masonry.WallFinish.Brick)]
    [InlineData(TrestleRamps.Walls, PlatformForge.Masonry.WallFinish.Sheet)]
    public void What_has_walls_is_faced_and_bents_are_not(TrestleRamps ramps, PlatformForge.Masonry.WallFinish finish)
    {
        var facing = PlatformForge.Masonry.FacingSpec.For(Scale) with { Front = finish };
        var plan = Workbench.Straight(420, Side.Left, s => s with { Trestle = Deep with { Ramps = ramps }, Facing = facing, StartRamp = new(Gradient: 8) });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        Assert.All(set.Sections, SoundSection.Check);
        double end = set.Plan.Trestle!.Stretch.From;
        Assert.All(set.Sections, s => Assert.Equal(s.From < end - 1, s.Faced.Count > 0));

        // Front, back and the wall under the ramp's foot, in one piece or three; at the head of a walled ramp is a cut, which takes its trim of both.
        double trim = ramps == TrestleRamps.Walls ? 2 * new JointSpec().EndTrim : 0;
        var ramp = set.Sections[0].Faced;
        Assert.Equal((2 * (end - 200)) + 59 - (4 * facing.Depth) - trim, ramp.SelectMany(w => w.Stretches).Sum(s => s.To - s.From), 0.01);
    }

    [Fact]
    public void On_a_curve_among_boards_and_fences_bents_are_sound_and_keep_off_what_goes_through_the_deck()
    {
        var plan = Workbench.PendlewickAs(p => p with { Trestle = Timber with { Ramps = TrestleRamps.Bents } });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        Assert.All(set.Sections, SoundSection.Check);
        var trestle = set.Plan.Trestle!;
        Assert.True(trestle.Bents.Count > 15);
        var keepouts = set.Plan.Keepouts.Where(k => k.Holds(PlatformForge.Platforms.Plans.KeptOff.RibsAcross) && !k.IsFloored).ToArray();
        Assert.NotEmpty(keepouts);
        Assert.All(trestle.Bents.Where(b => b.From > plan.Stations[0] && b.To < plan.Stations[^1]),
            b => Assert.DoesNotContain(keepouts, k => k.From < b.To && k.To > b.From));
        Assert.All(set.Cuts.Where(c => trestle.Stretch.Holds(c)), c => Assert.Equal(2, trestle.Bents.Count(b => b.Cut == c)));
    }

    [Fact]
    public void Posts_measured_on_the_mesh_are_square_and_evenly_spaced_within_the_pitch()
    {
        var mesh = Level.Value.Solid.Mesh;
        double front = On(Timber, 150).WallFace.Reach[0];
        var posts = Crossings(mesh, new(0, front + 1, 6), along: true);
        Assert.All(posts, p => Assert.Equal(Timber.Post, p.To - p.From, 1e-3));
        double[] middles = [.. posts.Select(p => (p.From + p.To) / 2)], apart = [.. middles.Zip(middles.Skip(1), (a, b) => b - a)];
        Assert.True(posts.Count >= 5);
        Assert.All(apart[1..^1], a => Assert.Equal(apart[1], a, 1e-3));
        Assert.All(apart, a => Assert.InRange(a, 2 * Timber.Post, Timber.Pitch + 1e-6));

        // Across: rows of posts evenly from the front to the back, 6 ft apart at most.
        var rows = Crossings(mesh, new(posts[2].From + 0.3, 0, 0.05), along: false);
        double[] across = [.. rows.Select(r => (r.From + r.To) / 2)];
        Assert.All(rows, r => Assert.Equal(Timber.Post, r.To - r.From, 1e-3));
        Assert.All(across.Zip(across.Skip(1), (a, b) => b - a), a => Assert.Equal(across[1] - across[0], a, 1e-3));
        Assert.InRange(across[1] - across[0], Timber.Post, Timber.Rows);
        Assert.Equal(front, rows[0].From, 1e-3);
    }

    [Fact]
    public void The_report_tells_as_many_posts_as_the_mesh_has_and_says_nothing_of_walls()
    {
        var set = Workbench.Made(On(Timber, 150), Workbench.Printer, new());
        var told = PlatformForge.Exports.Reports.Forms.TrestleReport.Of(set)!;
        var mesh = Level.Value.Solid.Mesh;
        double front = On(Timber, 150).WallFace.Reach[0];
        var along = Crossings(mesh, new(0, front + 1, 6), along: true);
        var across = Crossings(mesh, new(along[2].From + 0.3, 0, 0.05), along: false);
        Assert.Equal((along.Count, across.Count, along.Count * across.Count), (told.Bents, told.Rows, told.Posts));
        Assert.Equal(along.Zip(along.Skip(1), (a, b) => b.From - a.From).Max(), told.PitchGreatest, 1e-3);
        Assert.Null(PlatformForge.Exports.Reports.Forms.TrestleReport.Of(Workbench.PendlewickSections));
    }

    [Fact]
    public void Braces_measured_on_the_mesh_rise_at_45_degrees_or_steeper_and_nothing_stands_before_the_posts()
    {
        var mesh = Level.Value.Solid.Mesh;
        int sloping = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            var (a, b, c) = (mesh.Vertices[mesh.Triangles[3 * t]], mesh.Vertices[mesh.Triangles[(3 * t) + 1]], mesh.Vertices[mesh.Triangles[(3 * t) + 2]]);
            var normal = Point3.Cross(b - a, c - a);
            double up = normal.Z / normal.Length;
            if (Math.Abs(up) is > 0.01 and < 0.99 && Math.Max(a.Z, Math.Max(b.Z, c.Z)) < 18)
            {
                sloping++;

                // Corners of a brace a millimetre thick are moved by half a step of the grid of 2⁻¹⁵ mm.
                Assert.True(Math.Abs(up) < Math.Sqrt(0.5) + 3e-5, $"{up}");
            }
        }

        Assert.True(sloping >= 4 * 3 * 5, $"{sloping}");
        double wall = On(Timber, 150).WallFace.Reach[0];
        Assert.Equal(wall, mesh.Vertices.Where(v => v.Z < 18).Min(v => v.Y), 1e-4);
    }

    [Fact]
    public void Nothing_of_a_section_is_thinner_than_two_lines()
    {
        foreach (var trestle in (TrestleSpec[])[Timber, Timber with { Brace = 0.8, Boarded = BoardedSides.Front }])
        {
            var section = Workbench.Made(On(trestle, 150), Workbench.Printer, new()).Sections[0];
            Assert.InRange(PlatformForge.Verification.Rules.WallRule.Thinnest(section.PrintMesh())!.Value.Thickness, 0.8 - 1e-3, 2);
        }
    }

    [Fact]
    public void Ramps_on_bents_of_falling_height_end_in_a_solid_foot_and_walled_ones_begin_at_their_heads()
    {
        var onBents = PlatformPlanner.Divided(On(Deep, 420, ramps: true), []).Value!;
        var stretch = onBents.Trestle!.Stretch;
        double under = onBents.TopAt(stretch.From, onBents.CopingFront.At(stretch.From)) - 1.5;
        Assert.Equal(Deep.Cap + TrestleSpec.LeastPost, under, 1e-3);
        Assert.True(stretch.From > 200 && stretch.From < onBents.Profile.StartHead);
        Assert.True(onBents.Trestle.Bents.Count(b => b.Middle < onBents.Profile.StartHead) >= 2);
        var walled = On(Timber with { Ramps = TrestleRamps.Walls }, 420, ramps: true);
        Assert.Equal(new TrestleStretch(walled.Profile.StartHead, walled.Profile.To), walled.Trestle!.Stretch);
        Assert.Contains(walled.Ribs, r => r.To == walled.Profile.StartHead && r.Depth is null);
    }

    [Fact]
    public void What_cannot_be_is_told_with_a_figure_that_is_taken()
    {
        (string Code, PlatformSpec Spec, Func<double, TrestleSpec> Cured)[] cases =
        [
            ("PF4180", Spec(Timber with { Cap = 17 }), v => Timber with { Cap = v }),
            ("PF4182", Spec(Timber with { Pitch = 120 }), v => Timber with { Pitch = v }),
            ("PF4184", Spec(Timber with { Posts = 14 }), v => Timber with { Posts = (int)v }),
            ("PF4185", Spec(Timber with { Brace = 4 }), v => Timber with { Brace = v }),
            ("PF4186", Spec(Timber with { Bearer = 9 }), v => Timber with { Bearer = v }),
            ("PF4188", Spec(Timber with { Pitch = 7 }), v => Timber with { Pitch = v }),
        ];
        foreach (var (code, spec, cured) in cases)
        {
            var found = Assert.Single(Rules(spec));
            Assert.Equal(code, found.Code);
            Assert.Empty(Rules(Spec(cured(double.Parse(found.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture)))));
        }

        Assert.Equal("platform[0].trestle", Assert.Single(Rules(Spec(Timber) with { Height = 0.5, Deck = new() { Width = 60, Thickness = 7 } }),
            f => f.Code == "PF4180").Cure!.Key);
    }

    [Fact]
    public void What_needs_a_wall_is_told()
    {
        var faced = PlatformForge.Masonry.FacingSpec.For(Scale);
        Assert.Equal("PF4181", Assert.Single(Rules(Spec(Timber) with { Facing = faced })).Code);
        var ramped = Spec(Timber with { Ramps = TrestleRamps.Walls }) with { StartRamp = new(Gradient: 8) };
        Assert.Empty(Rules(ramped with { Facing = faced }));
        Assert.Equal("PF4183", Assert.Single(Rules(ramped with { Facing = faced with { Piers = PlatformForge.Masonry.PierSpec.For(Scale) } })).Code);
        var holed = faced with { Openings = [PlatformForge.Masonry.OpeningSpec.For(Scale) with { IsBack = true }] };
        Assert.All(new[] { ramped, Spec(Timber) }, s => Assert.Equal("PF4183", Assert.Single(Rules(s with { Facing = holed })).Code));
        Assert.Equal("PF4183", Assert.Single(Rules(Spec(Timber) with { Back = new() { Kind = BackKind.Bank } })).Code);
        Assert.Equal("PF4187", Assert.Single(Planned(On(Deep, 420, ramps: true)), f => f.Severity == Severity.Note).Code);

        static List<Finding> Planned(PlatformPlan plan)
        {
            var findings = new List<Finding>();
            TrestleRule.Feet(plan, findings);
            return findings;
        }
    }

    [Theory]
    [InlineData("PF5059", JointKind.Plate, 1.0, 420)]
    [InlineData("PF4189", JointKind.Dowel, 0.7, 150)]
    public void What_does_not_print_or_hold_is_told_and_cured(string code, JointKind joint, double brace, double length)
    {
        var found = Assert.Single(SectionMaker.Make(On(Timber with { Brace = brace }, length), Workbench.Printer,
            new() { Joint = new() { Kind = joint } }).Findings,
            f => f.Code == code);
        Assert.Equal(code == "PF5059" ? "\"dowel\"" : "0.8", found.Cure!.Value);
    }

    [Fact]
    public void Defaults_follow_scale_and_kind_and_are_never_thinner_than_two_lines()
    {
        // 12 in and 8 ft, 10 ft at 1:76.2; 3 in at 1:148 would be 0.51 mm.
        Assert.Equal([4, 4, 32, 40], new[] { Timber.Post, Timber.Cap, Timber.Pitch, Concrete.Pitch }.Select(v => Math.Round(v, 9)));
        Assert.Equal(0.8, TrestleSpec.For(new(148)).Brace);
        Assert.Equal((BraceForm.Cross, BraceForm.None), (Timber.Braces, Concrete.Braces));
    }

    private static PlatformSpec Spec(TrestleSpec trestle) => On(Timber, 150).Spec with { Trestle = trestle };

    private static List<Finding> Rules(PlatformSpec spec)
    {
        var findings = new List<Finding>();
        TrestleRule.Check(spec, Fixtures.Pendlewick.Site, findings);
        return findings;
    }

    private static PlatformPlan On(TrestleSpec trestle, double length, Side side = Side.Left, bool ramps = false) =>
        Workbench.Straight(length, side, s => s with { Trestle = trestle, StartRamp = ramps ? new(Gradient: 8) : null });

    // Where a line along the platform, or across it, is within a mesh.
    private static List<(double From, double To)> Crossings(Mesh mesh, Point3 through, bool along)
    {
        var met = new List<double>();
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            var (a, b, c) = (mesh.Vertices[mesh.Triangles[3 * t]], mesh.Vertices[mesh.Triangles[(3 * t) + 1]], mesh.Vertices[mesh.Triangles[(3 * t) + 2]]);
            double U(Point3 p) => along ? p.Y - through.Y : p.X - through.X;
            double V(Point3 p) => p.Z - through.Z;
            double area = ((U(b) - U(a)) * (V(c) - V(a))) - ((U(c) - U(a)) * (V(b) - V(a)));
            double u = ((-U(a) * (V(c) - V(a))) - ((U(c) - U(a)) * -V(a))) / area, v = (((U(b) - U(a)) * -V(a)) - (-U(a) * (V(b) - V(a)))) / area;
            if (area != 0 && u >= 0 && v >= 0 && u + v < 1)
            {
                met.Add(along ? a.X + (u * (b.X - a.X)) + (v * (c.X - a.X)) : a.Y + (u * (b.Y - a.Y)) + (v * (c.Y - a.Y)));
            }
        }

        met.Sort();
        return [.. Enumerable.Range(0, met.Count / 2).Select(i => (met[2 * i], met[(2 * i) + 1]))];
    }
}
