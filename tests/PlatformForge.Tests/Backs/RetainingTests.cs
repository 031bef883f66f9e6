using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Solids;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Backs;

/// <summary>What stands in a rebate along the back: retaining walls and kerbs, by the meshes of their pieces.</summary>
public class RetainingTests
{
    private static readonly RetainingSpec Wall = new() { Height = 16, Thickness = 2.5, Oversail = 0.375, Coping = 1, Plinth = 3, Depth = 0.75, Fit = 0.125 };

    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void A_retaining_wall_is_plinth_wall_and_coping_and_lies_on_its_coping(Side side)
    {
        var plan = Workbench.Straight(300, side, s => s with { Back = new() { Retaining = Wall } });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        Assert.Equal(set.Sections.Count, set.Lines.Pieces.Count);
        foreach (var piece in set.Lines.Pieces)
        {
            var mesh = piece.Solid.Mesh;
            double length = mesh.Vertices.Max(v => v.X) - mesh.Vertices.Min(v => v.X);
            double profile = (Wall.Thickness * (Wall.Depth + Wall.Plinth + Wall.Coping))
                + ((Wall.Thickness - Wall.Oversail) * (Wall.Height - Wall.Plinth - Wall.Coping));
            Assert.Equal(profile * length, piece.Solid.ColumnVolume, 0.02);
            Assert.Equal(20 - Wall.Depth, mesh.Vertices.Min(v => v.Z), 1e-6);
            Assert.Equal(20 + Wall.Height, mesh.Vertices.Max(v => v.Z), 1e-6);
            Assert.True(MeshCheck.Inspect(mesh) is { IsClosed: true, DegenerateTriangles: 0, Components: 1 });

            Assert.Equal(Wall.Thickness * length, OnBed(piece.WrittenMesh()), 0.02);
        }

        // A lip behind the rebate carries its floor while it is printed. The rebate is what the deck has less.
        Assert.All(set.Sections, s => Assert.InRange(s.Overhangs.Unsupported, 0, 0.2));
        double without = Workbench.Made(Workbench.Straight(300, side), Workbench.Printer, new()).Sections.Sum(s => s.Volumes.Plain);
        Assert.Equal(300 * Wall.Taken * Wall.Depth, without - set.Sections.Sum(s => s.Volumes.Plain), 0.05);
    }

    [Fact]
    public void A_retaining_wall_on_a_curve_is_sound_and_ends_at_the_ramps_tops()
    {
        var plan = Workbench.PendlewickAs(p => p with { Back = new() { Retaining = Wall }, Features = [] });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        Assert.NotEmpty(set.Lines.Pieces);
        Assert.All(set.Lines.Pieces, p => Assert.True(MeshCheck.Inspect(p.WrittenMesh()) is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }));
        var band = Assert.Single(set.Plan.Body.Lines, l => l.Made.Wall is not null);
        Assert.Equal((plan.Profile.StartHead, plan.Profile.EndHead), (band.From, band.To));
    }

    /// <summary>Beside a ramp of 1 in 8 a wall whose coping falls with it has the profile of the level one; one that runs on level has more wall by
    /// half of what the ramp falls.</summary>
    [Theory]
    [InlineData(Side.Left, RampWall.Sloped)]
    [InlineData(Side.Right, RampWall.Sloped)]
    [InlineData(Side.Left, RampWall.Level)]
    [InlineData(Side.Right, RampWall.Level)]
    public void A_retaining_wall_goes_on_beside_ramps_and_lies_on_its_coping(Side side, RampWall ramps)
    {
        const double Length = 420, Level = 20;
        var plan = Workbench.Straight(Length, side, s => s with
        {
            Back = new() { Retaining = Wall with { Ramps = ramps } },
            StartRamp = new(Gradient: 8, FootHeight: 2)
        });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        var onRamp = set.Lines.Pieces.Where(p => set.Sections[p.Section - 1].To <= plan.Profile.StartHead + 1e-6).ToArray();
        Assert.NotEmpty(onRamp);
        Assert.Equal(plan.Profile.From, set.Plan.Body.Lines.Min(l => l.From));
        Assert.All(set.Sections, s => SoundSection.Check(s));
        Assert.All(set.Sections, s => Assert.InRange(s.Overhangs.Unsupported, 0, 0.2));
        foreach (var piece in onRamp)
        {
            var mesh = piece.Solid.Mesh;
            double from = mesh.Vertices.Min(v => v.X), to = mesh.Vertices.Max(v => v.X), length = to - from;
            double middle = plan.Profile.At((from + to) / 2), more = ramps == RampWall.Level ? Level - middle : 0;
            double profile = (Wall.Thickness * (Wall.Depth + Wall.Plinth + Wall.Coping))
                + ((Wall.Thickness - Wall.Oversail) * (Wall.Height + more - Wall.Plinth - Wall.Coping));
            Assert.Equal(profile * length, piece.Solid.ColumnVolume, 0.02);
            double high = ramps == RampWall.Level ? Level : plan.Profile.At(to);
            Assert.Equal(high + Wall.Height, mesh.Vertices.Max(v => v.Z), 1e-4);
            Assert.Equal(plan.Profile.At(from) - Wall.Depth, mesh.Vertices.Min(v => v.Z), 1e-4);
            Assert.True(MeshCheck.Inspect(piece.WrittenMesh()) is { IsClosed: true, DegenerateTriangles: 0, Components: 1 });
            double slope = ramps == RampWall.Level ? 1 : Math.Sqrt(1 + (1 / 64.0));
            Assert.Equal(Wall.Thickness * length * slope, OnBed(piece.WrittenMesh()), 0.02);
        }
    }

    /// <summary>Courses of a wall go on beside ramps at the heights that they have beside the level deck, cut by the slope where its coping falls.</summary>
    [Theory]
    [InlineData(WallFinish.Brick, RampWall.Sloped)]
    [InlineData(WallFinish.Stone, RampWall.Level)]
    public void A_faced_wall_beside_ramps_on_a_curve_is_sound(WallFinish finish, RampWall ramps)
    {
        var facing = FacingSpec.For(new(76.2)) with { Front = finish };
        var plan = Workbench.PendlewickAs(p => p with { Back = new() { Retaining = Wall with { Ramps = ramps } }, Facing = facing, Features = [] });
        var pieces = Workbench.Made(plan, Workbench.Printer, new()).Lines.Pieces;
        Assert.True(pieces.Select(p => p.Line).Distinct().Count() == 3 && pieces.All(p => p.Solid.ReliefVolume > 0));
        Assert.All(pieces, p => Assert.True(MeshCheck.Inspect(p.WrittenMesh()) is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }));
    }

    [Fact]
    public void A_kerb_runs_down_ramps_where_it_is_asked_to()
    {
        var kerb = new KerbSpec { Ramps = true };
        var plan = Workbench.Straight(420, Side.Left, s => s with { Back = new() { Kerb = kerb }, StartRamp = new(Gradient: 8, FootHeight: 2) });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        Assert.Equal(plan.Profile.From, set.Plan.Body.Lines.Min(l => l.From));
        Assert.All(set.Lines.Pieces,
            p => Assert.Equal(kerb.Width * (kerb.Height + kerb.Depth) * (p.Solid.Mesh.Vertices.Max(v => v.X) - p.Solid.Mesh.Vertices.Min(v => v.X)),
                p.Solid.ColumnVolume, 0.02));
        Assert.All(set.Sections, s => SoundSection.Check(s));
    }

    [Fact]
    public void A_retaining_wall_behind_a_trestle_is_refused_with_a_cure_that_is_taken()
    {
        var told = new List<Finding>();
        TrestleRule.Check(Spec(new() { Retaining = Wall }) with { Trestle = TrestleSpec.For(new(76.2)) }, Plan.Site, told);
        var found = Assert.Single(told, f => f.Code == "PF4169");
        Assert.Equal((Cure.LeaveOut("platform[0].back.retaining").Key, "platform[0].back.retaining"), (found.Cure!.Key, found.Key));
        told.Clear();
        TrestleRule.Check(Spec(new()) with { Trestle = TrestleSpec.For(new(76.2)) }, Plan.Site, told);
        Assert.DoesNotContain(told, f => f.Code == "PF4169");
    }

    /// <summary>Faced as the front, its bricks stand where its smooth face would, on a ground behind: sound, nothing before plinth and coping, and of the sum
    /// of its parts.</summary>
    [Theory]
    [InlineData(WallFinish.Brick, Side.Left)]
    [InlineData(WallFinish.Stone, Side.Right)]
    public void A_faced_retaining_wall_is_sound_and_stands_no_farther_out(WallFinish finish, Side side)
    {
        var facing = FacingSpec.For(new(76.2)) with { Front = finish };
        var plan = Workbench.Straight(150, side, s => s with { Back = new() { Retaining = Wall }, Facing = facing });
        var piece = Assert.Single(Workbench.Made(plan, Workbench.Printer, new()).Lines.Pieces);
        var (mesh, way) = (piece.Solid.Mesh, side == Side.Left ? 1 : -1);
        Assert.True(MeshCheck.Inspect(piece.WrittenMesh()) is { IsClosed: true, DegenerateTriangles: 0, Components: 1 });
        double length = mesh.Vertices.Max(v => v.X) - mesh.Vertices.Min(v => v.X), rest = Wall.Height - Wall.Plinth - Wall.Coping;
        double ground = length * ((Wall.Thickness * (Wall.Depth + Wall.Plinth + Wall.Coping)) + ((Wall.Thickness - Wall.Oversail - facing.Depth) * rest));
        Assert.True(piece.Solid.ReliefVolume > 0.5 * facing.Depth * rest * length);
        Assert.Equal(ground + piece.Solid.ReliefVolume, piece.Solid.ColumnVolume, 0.05);
        double front = mesh.Vertices.Min(v => way * v.Y);
        double[] face = [.. mesh.Vertices.Where(v => v.Z > 20 + Wall.Plinth + 0.1 && v.Z < 20 + Wall.Height - Wall.Coping - 0.1).Select(v => way * v.Y)];
        Assert.Equal(front + Wall.Oversail, face.Min(), 1e-4);
    }

    [Fact]
    public void A_kerb_has_the_fences_post_holes_through_it()
    {
        var kerb = new KerbSpec();
        var plan = Workbench.Straight(150, Side.Left, s => s with { Back = new() { Kerb = kerb }, Features = [new FenceSpec()] });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        var piece = Assert.Single(set.Lines.Pieces);
        var report = MeshCheck.Inspect(piece.Solid.Mesh);
        Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, report.ToString());

        // A twelve-sided hole drawn round a circle of 1.2: 12 tan(pi/12) r² of area.
        int posts = plan.Features[0].Openings.Count;
        double length = piece.Solid.Mesh.Vertices.Max(v => v.X) - piece.Solid.Mesh.Vertices.Min(v => v.X), hole = 12 * Math.Tan(Math.PI / 12) * 0.6 * 0.6;
        Assert.True(posts > 3);
        Assert.Equal(((length * kerb.Width) - (posts * hole)) * (kerb.Height + kerb.Depth), piece.Solid.ColumnVolume, 0.05);
    }

    [Fact]
    public void Walls_and_kerbs_that_cannot_be_made_are_refused()
    {
        Assert.Equal("PF5042", Fault(new() { Retaining = Wall with { Thickness = 1, Fit = 0 } }));
        Assert.Equal("PF4174", Assert.Single(Rules(new() { Retaining = Wall, Kerb = new() })).Code);
        Assert.Equal("PF4174", Assert.Single(Rules(new() { Retaining = Wall, Kind = BackKind.Bank })).Code);
        Assert.Contains(PlatformPlanner.Check(Spec(new() { Retaining = Wall with { Depth = 1.4 } }), Plan.Site, Plan.Chart, []),
            f => f.Key == "platform[0].back.retaining.depth");

        // A narrow kerb does not hold the posts: the fence stands in its way, as before any other strip.
        Assert.Equal("PF5041", Fault(new() { Kerb = new() { Width = 2.6 } }));
    }

    // Area on the bed: of the coping, and nothing else lies there.
    private static double OnBed(Mesh lying)
    {
        double area = 0;
        for (int t = 0; t < lying.TriangleCount; t++)
        {
            Point3 a = lying.Vertices[lying.Triangles[3 * t]], b = lying.Vertices[lying.Triangles[(3 * t) + 1]],
                c = lying.Vertices[lying.Triangles[(3 * t) + 2]];
            if (Math.Max(a.Z, Math.Max(b.Z, c.Z)) < 1e-4)
            {
                Assert.Equal((byte)Paint.Coping, lying.Paints[t]);
                area += Point3.Cross(b - a, c - a).Length / 2;
            }
        }

        return area;
    }

    private static PlatformPlan Plan { get; } = Workbench.Straight(150);

    private static PlatformSpec Spec(BackSpec back) => Plan.Spec with { Back = back };

    private static List<Finding> Rules(BackSpec back)
    {
        var findings = new List<Finding>();
        BankRule.Check(Spec(back), Plan.Site, findings);
        return findings;
    }

    private static string Fault(BackSpec back)
    {
        var made = SectionMaker.Make(Workbench.Straight(150, Side.Left, s => s with { Back = back, Features = [new FenceSpec()] }), Workbench.Printer, new());
        return made.Findings.First(f => f.Severity == Severity.Error).Code;
    }
}
