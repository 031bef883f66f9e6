using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Solids;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Copings that turn the corner and go on along an end, by the meshes of sections.</summary>
public class CopingReturnTests
{
    private const double Width = 0.4, Depth = 0.3, Thick = 1.2, Wide = 8, Overhang = 1, Arris = 0.3, Length = 120, Deck = 60;

    // What is left under a joint on a front, and the rise of its foot to its depth: those of the edge's own joints.
    private const double Left = 0.2, Rise = 1.2;

    [Fact]
    public void The_outline_stays_and_the_wall_stands_back_under_the_coping_as_on_the_front()
    {
        Mesh square = Made(CopingReturns.None), turned = Made(CopingReturns.End);
        Assert.Equal(square.Box().Low, turned.Box().Low);
        Assert.Equal(square.Box().High, turned.Box().High);

        double end = turned.Box().High.X, top = turned.Box().High.Z;
        Assert.Equal(end - Overhang, turned.Vertices.Where(v => v.Z < top - Thick - 0.01).Max(v => v.X), 1e-4);
        Assert.Equal(end, square.Vertices.Where(v => v.Z < 0.01).Max(v => v.X), 1e-4);
        Assert.Equal(turned.Box().Low.X, turned.Vertices.Where(v => v.Z < 0.01).Min(v => v.X), 1e-4);
        Assert.Equal(top - Thick, turned.Vertices.Where(v => v.X > end - 1e-4).Min(v => v.Z), 1e-4);
    }

    [Fact]
    public void The_nosing_goes_round_the_corner_in_a_mitre()
    {
        var mesh = Made(CopingReturns.End);
        double end = mesh.Box().High.X, front = mesh.Box().Low.Y, top = mesh.Box().High.Z;
        Assert.Equal(top - Arris, mesh.Vertices.Where(v => v.X > end - 1e-4).Max(v => v.Z), 1e-4);
        Assert.Equal(end - Arris, mesh.Vertices.Where(v => v.Z > top - 1e-4).Max(v => v.X), 1e-4);
        Assert.Contains(mesh.Vertices, v => (v - new Point3(end, front, top - Arris)).Length < 1e-3);
        Assert.Contains(mesh.Vertices, v => (v - new Point3(end - Arris, front + Arris, top)).Length < 1e-3);
    }

    /// <summary>At the back, where nothing stands, the last slab ends in the same arris, up to the joint beside the deck.</summary>
    [Fact]
    public void The_last_slab_of_a_return_ends_in_its_arris_at_the_back()
    {
        var mesh = Made(CopingReturns.End);
        double end = mesh.Box().High.X, back = mesh.Box().High.Y, top = mesh.Box().High.Z;
        Assert.Contains(mesh.Vertices, v => (v - new Point3(end, back, top - Arris)).Length < 1e-3);
        Assert.Contains(mesh.Vertices, v => (v - new Point3(end - Arris, back - Arris, top)).Length < 1e-3);
        Assert.DoesNotContain(mesh.Vertices, v => v.X > end - Wide + Width + 1e-3 && v.Y > back - 1e-3 && v.Z > top - Arris + 1e-3);
        Assert.Contains(mesh.Vertices, v => v.X < end - Wide + 1e-3 && v.Y > back - 1e-3 && v.Z > top - 1e-3);
    }

    /// <summary>A kerb runs on to the end: the coping, and its arris, end at its rebate, which lies in the deck.</summary>
    [Fact]
    public void A_return_ends_at_a_kerb_that_runs_on_to_the_end()
    {
        var kerb = new KerbSpec();
        var plan = Plan(CopingReturns.End, s => s with { Back = new() { Kerb = kerb } });
        var mesh = Assert.Single(Workbench.Made(plan, Workbench.Printer, new()).Sections).Solid.Mesh;
        double end = mesh.Box().High.X, back = mesh.Box().High.Y, top = mesh.Box().High.Z, near = back - BackSpec.Lip - kerb.Taken;
        var coping = Enumerable.Range(0, mesh.TriangleCount).Where(t => mesh.Paints[t] == (byte)Paint.Coping)
            .SelectMany(t => Enumerable.Range(3 * t, 3)).Select(i => mesh.Vertices[mesh.Triangles[i]]).ToArray();
        Assert.Equal(near, coping.Max(v => v.Y), 1e-3);
        Assert.Contains(mesh.Vertices, v => (v - new Point3(end, back, top)).Length < 1e-3);
        Assert.Contains(mesh.Vertices, v => v.X > end - 1e-3 && Math.Abs(v.Y - near) < 1e-3 && Math.Abs(v.Z - (top - kerb.Depth)) < 1e-3);
    }

    [Fact]
    public void Slabs_of_a_return_begin_behind_the_slab_at_the_corner_and_share_what_is_left_evenly()
    {
        var mesh = Made(CopingReturns.End);
        double end = mesh.Box().High.X, front = mesh.Box().Low.Y, top = mesh.Box().High.Z;
        double room = Deck - Wide;
        int slabs = (int)Math.Round(room / 25);
        double[] middles = [front + Wide - (Width / 2), .. Enumerable.Range(1, slabs - 1).Select(k => front + Wide + (room * k / slabs))];

        var floors = BrickFaces.In(mesh, new(end - Depth, 0), new(0, 1)).SelectMany(r => r).Where(b => b.High > top - 1).OrderBy(b => b.From).ToList();
        Assert.Equal(middles.Length, floors.Count);
        Assert.All(floors.Zip(middles), f =>
        {
            Assert.Equal(Width, f.First.To - f.First.From, 2e-3);
            Assert.Equal(f.Second, (f.First.From + f.First.To) / 2, 2e-3);
            Assert.Equal(top - Thick + Left + (Rise * Depth), f.First.Low, 2e-3);
            Assert.Equal(top - Depth, f.First.High, 2e-3);
        });

        // On top they go on into the joint that parts coping and deck, which lies in the coping, the first one along it; no joint of the edge lies in the
        // corner.
        foreach (double y in middles[1..])
        {
            Assert.Equal(end - Wide + Width, mesh.Vertices.Where(v => Math.Abs(v.Y - y) < (Width / 2) + 1e-3 && v.X > end - (1.5 * Wide)
                && Math.Abs(v.Z - (top - Depth)) < 1e-3).Min(v => v.X), 2e-3);
        }

        Assert.DoesNotContain(mesh.Vertices, v => v.Y < front + Wide - Width - 1e-3 && v.X > end - Wide + 1e-3 && v.X < end - Arris - 1e-3 && v.Z < top - 1e-3
            && v.Z > top - Depth - 1e-3 && v.Y > front + Arris + 1e-3);
    }

    [Fact]
    public void A_line_behind_the_coping_ends_at_the_return_and_one_on_it_runs_on()
    {
        LineBand Line(double inset) => Plan(CopingReturns.Both, s => s with { WhiteLine = new() { Inset = inset, Width = 1 } }).WhiteLine!;
        Assert.Equal((200 + Wide, 200 + Length - Wide), (Line(9).From, Line(9).To));
        Assert.Equal((200, 200 + Length), (Line(2).From, Line(2).To));
    }

    [Theory]
    [InlineData(CopingKind.Slabs, Side.Left, Nosing.Chamfered, 1.2)]
    [InlineData(CopingKind.Bricks, Side.Right, Nosing.Rounded, 0)]
    [InlineData(CopingKind.Timber, Side.Left, Nosing.Chamfered, 0)]
    public void Sections_of_every_coping_are_sound_with_faced_walls_a_kerb_and_a_fall(CopingKind kind, Side side, Nosing nosing, double margin)
    {
        var plan = Workbench.Straight(260, side, s => s with
        {
            EndRamp = new(Gradient: 8),
            Coping = s.Coping with
            {
                Kind = kind,
                JointDepth = Depth,
                ArrisChamfer = 0.5,
                Nosing = nosing,
                Margin = margin,
                SlabLength = kind == CopingKind.Bricks ? 11.8 : 25,
                Returns = CopingReturns.Start,
            },
            Deck = s.Deck with { Crossfall = 60, Paving = kind == CopingKind.Slabs ? new() { Kind = PavingKind.Flags, Length = 11.8, Width = 8.3 } : null },
            Facing = FacingSpec.For(new(76.2)) with { Plinth = new(), HasBack = true },
            Back = new() { Kerb = new() },
        });
        Assert.All(Workbench.Made(plan, Workbench.Printer, new()).Sections, SoundSection.Check);
    }

    [Fact]
    public void On_a_curve_nothing_of_a_return_lies_outside_the_platform_and_it_is_nowhere_narrower_than_the_coping()
    {
        var plan = Workbench.PendlewickAs(p => p with
        {
            StartRamp = null,
            Coping = p.Coping with { Returns = CopingReturns.Start },
            Facing = FacingSpec.For(new(76.2))
        });
        var turn = Assert.Single(CopingReturn.Of(plan));
        foreach (double reach in new[] { plan.CopingFront.At(turn.End), plan.Back.At(turn.End) })
        {
            Point2 outer = plan.ToLayout(turn.End, reach), inner = plan.ToLayout(turn.Inner, reach);
            Assert.True((inner - outer).Length > plan.Spec.Coping.Width - 0.01);
        }

        Assert.All(Workbench.Made(plan, Workbench.Printer, new()).Sections, SoundSection.Check);
    }

    [Fact]
    public void What_cannot_turn_is_refused_with_a_word_or_a_figure_that_is_taken()
    {
        var ramp = Assert.Single(Rules(s => s with { StartRamp = new(Gradient: 8) }));
        Assert.Equal(("PF4177", "\"end\""), (ramp.Code, ramp.Cure!.Value));
        Assert.Empty(Rules(s => s with { StartRamp = new(Gradient: 8), Coping = s.Coping with { Returns = CopingReturns.End } }));
        Assert.Equal("PF4177", Assert.Single(Rules(s => s with { Skew = new() { End = 10 } })).Code);
        Assert.Equal("PF4178", Assert.Single(Rules(s => s with { Face = s.Face with { To = s.Face.From + 20 } })).Code);
        var cut = Assert.Single(Rules(s => s with { ForcedCuts = [207] }));
        Assert.Equal(("PF4179", "platform[0].cuts[0]"), (cut.Code, cut.Key));
        double right = double.Parse(cut.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Empty(Rules(s => s with { ForcedCuts = [right] }));
    }

    private static IReadOnlyList<Units.Finding> Rules(Func<PlatformSpec, PlatformSpec> change)
    {
        var spec = change(Plan(CopingReturns.Both).Spec);
        var track = TrackLayer.Lay(new("up", new(0, 0), 0, [new StraightSpec(800)])).Value!;
        return [.. PlatformPlanner.Check(spec, Pendlewick.Site, track, []).Where(f => f.Severity == Units.Severity.Error)];
    }

    private static PlatformPlan Plan(CopingReturns returns, Func<PlatformSpec, PlatformSpec>? change = null) => Workbench.Straight(Length, Side.Left, s =>
    {
        var made = s with
        {
            Coping = s.Coping with { JointDepth = Depth, JointWidth = Width, ArrisChamfer = Arris, Returns = returns },
            Deck = s.Deck with { Thickness = 1.2 }
        };
        return change?.Invoke(made) ?? made;
    });

    private static Mesh Made(CopingReturns returns) => Assert.Single(Workbench.Made(Plan(returns), Workbench.Printer, new()).Sections).Solid.Mesh;
}
