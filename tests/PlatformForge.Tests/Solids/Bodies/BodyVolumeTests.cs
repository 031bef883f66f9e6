using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Solids.Bodies;

/// <summary>Bodies of straight platforms against volumes worked out by hand.</summary>
public class BodyVolumeTests
{
    private const double Length = 300, Height = 20, Width = 60, Deck = 1.5, Coping = 1.2, Overhang = 1, Wall = 1.625;

    // Under the deck: from wall face to back, less the two walls, and between the end walls.
    private const double Clear = Width - Overhang - (2 * Wall), Hollow = Height - Deck;

    private static readonly double Shell =
        (Length * (Width - Overhang) * Deck) + (Length * Overhang * Coping) + (2 * Length * Wall * Hollow) + (2 * Wall * Clear * Hollow);

    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void A_bare_straight_platform_has_the_volume_of_its_slabs_and_walls(Side side) =>
        Agree(Shell, Volume(Workbench.Straight(Length, side)));

    [Fact]
    public void Ribs_add_their_strips_less_their_crossings()
    {
        var plan = Workbench.Straight(Length, change: s =>
            s with { Ribs = new() { Pitch = 40, Thickness = 1.25, LongitudinalCount = 2, LongitudinalThickness = 1.5 } });
        int across = plan.Ribs.Count(r => r.Kind == RibKind.Transverse);
        Assert.InRange(across, 5, 12);
        double strips = (across * 1.25 * Clear) + (2 * 1.5 * (Length - (2 * Wall))) - (across * 2 * 1.25 * 1.5);
        Agree(Shell + (strips * Hollow), Volume(plan), OffGrid);
    }

    [Fact]
    public void Ribs_of_a_depth_hang_under_the_deck_by_that_depth()
    {
        var plan = Workbench.Straight(Length, change: s => s with { Ribs = new() { Pitch = 40, Thickness = 1.25, LongitudinalCount = 0, Depth = 5 } });
        int across = plan.Ribs.Count(r => r.Kind == RibKind.Transverse);
        Agree(Shell + (across * 1.25 * Clear * 5), Volume(plan), OffGrid);
    }

    [Fact]
    public void A_joint_groove_takes_its_width_and_depth_out_of_the_coping()
    {
        var plan = Workbench.Straight(Length, change: s => s with { Coping = s.Coping with { JointWidth = 0.5, JointDepth = 0.3 } });
        Assert.Equal(11, plan.CopingJoints.Length);

        // It goes down the front, to a foot that slopes by 1.2 to 1, a layer of 0.2 at its lowest over the underside;
        // the joint to the deck lies in the coping's inner edge, but for a line at either end.
        double each = 0.5 * ((0.3 * 8) + (0.3 * (Coping - 0.2 - 0.3 - (1.2 * 0.3 / 2))) - (0.3 * 0.5));
        Agree(Shell - (11 * each) - ((Length - 0.8) * 0.5 * 0.3), Volume(plan), Levels);
    }

    [Fact]
    public void The_arris_loses_half_its_chamfer_square() =>
        Agree(Shell - (Length * 0.25 * 0.25 / 2), Volume(Workbench.Straight(Length, change: s => s with { Coping = s.Coping with { ArrisChamfer = 0.25 } })),
            Levels);

    [Fact]
    public void A_white_line_is_colour_only_unless_it_has_a_groove()
    {
        Agree(Shell, Volume(Workbench.Straight(Length, change: s => s with { WhiteLine = new() { Inset = 0.75, Width = 1 } })));
        Agree(Shell - (Length * 1 * 0.2),
            Volume(Workbench.Straight(Length, change: s => s with { WhiteLine = new() { Inset = 0.75, Width = 1, GrooveDepth = 0.2 } })));
    }

    [Fact]
    public void A_white_line_shows_as_an_area_of_its_own()
    {
        var mesh =
            SolidRaiser.Raise(PlatformBody.Blocks(Workbench.Straight(Length, change: s => s with { WhiteLine = new() { Inset = 0.75, Width = 1 } })).All).Mesh;
        double area = 0;
        for (int i = 0; i < mesh.TriangleCount; i++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * i]], b = mesh.Vertices[mesh.Triangles[(3 * i) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * i) + 2]];
            var normal = Point3.Cross(b - a, c - a);
            area += mesh.Paints[i] == (byte)Paint.Line && normal.Z > 0 ? normal.Z / 2 : 0;
        }

        Assert.Equal(Length, area, 0.1);
    }

    [Fact]
    public void A_fence_hole_is_the_polygon_around_its_circle_through_the_deck()
    {
        var plan = Workbench.Straight(Length, change: s => s.With<FenceSpec>([new() { Inset = 6, PinDiameter = 1, Fit = 0.2 }]));
        int holes = plan.PostHoles.Count;
        Assert.InRange(holes, 5, 20);

        // Area of a regular polygon around a circle: n r² tan(π/n). The mouth widens by 0.3 over its upper 0.3 mm: a frustum.
        double k = FeatureSite.HoleSides * Math.Tan(Math.PI / FeatureSite.HoleSides), area = k * 0.6 * 0.6,
            mouth = k * 0.3 / 3 * ((0.6 * 0.6) + (0.6 * 0.9) + (0.9 * 0.9));
        Agree(Shell - (holes * ((area * (Deck - 0.3)) + mouth)), Volume(plan), OffGrid);
    }

    [Fact]
    public void A_pin_of_the_stated_size_fits_at_every_side_of_its_hole()
    {
        var plan = Workbench.Straight(Length, change: s => s.With<FenceSpec>([new() { Inset = 6, PinDiameter = 1, Fit = 0.2 }]));
        foreach (var hole in plan.PostHoles)
        {
            var middle = plan.ToLayout(hole.Chainage, hole.Reach);
            var ring = plan.Features.SelectMany(f => f.Prisms).Single(p => p.Middle == new PlanPlace(hole.Chainage, hole.Reach)).Ring;
            for (int i = 0; i < ring.Length; i++)
            {
                var side = ring[(i + 1) % ring.Length] - ring[i];
                Assert.Equal(hole.Diameter / 2, Point2.Cross(side, middle - ring[i]) / side.Length, 9);
            }
        }
    }

    [Fact]
    public void A_socket_stands_in_a_boss_and_takes_its_box_out()
    {
        var plan = Workbench.Straight(Length, change: s => s.With<SocketSpec>([new(300, 20) { Along = 2, Across = 1.2, Depth = 6, Fit = 0.2 }]));
        var socket = Assert.Single(plan.Sockets);
        double wall = socket.BossWall, boss = (2.2 + (2 * wall)) * (1.4 + (2 * wall)) * (6 + wall - Deck);

        // The mouth widens by 0.3 to every side over its upper 0.3 mm: Simpson's rule is exact for it.
        double mouth = 0.3 / 6 * ((2.2 * 1.4) + (4 * 2.5 * 1.7) + (2.8 * 2.0));
        Agree(Shell + boss - (2.2 * 1.4 * 5.7) - mouth, Volume(plan), OffGrid);
    }

    [Fact]
    public void A_ramp_keeps_the_deck_s_thickness_and_shortens_the_walls()
    {
        // 1 in 8 from 20 to 8 mm over the baseboard: 96 mm long, mean height under the deck (12 + 0)/2 mm lower than level.
        var plan = Workbench.Straight(Length, change: s => s with { StartRamp = new(Gradient: 8) });
        double lost = 96 * 12 / 2.0 * 2 * Wall; // out of front and back wall
        double end = Clear * ((Wall * 12) - (Wall * Wall / 16)); // out of the end wall at the foot, which itself rises with the slope
        Agree(Shell - lost - end, Volume(plan));
    }

    [Fact]
    public void A_ramp_too_low_for_a_hollow_is_solid_there()
    {
        var plan = Workbench.Straight(Length, change: s => s with { StartRamp = new(Length: 96, FootHeight: -6) });
        var (toe, _) = WallBlocks.Toes(plan);

        // The deck rises from 2 to 20 mm in 96: its underside is 2 mm high where the deck is at 3.5.
        Assert.Equal(200 + (1.5 * 96 / 18), toe, 6);
        var solid = SolidRaiser.Raise(PlatformBody.Blocks(new FacetedPlan(plan), 200, toe).All);
        double length = toe - 200, mean = (2 + 3.5) / 2;
        Agree((length * (Width - Overhang) * mean) + (length * Overhang * Coping), solid.ColumnVolume);
    }

    /// <summary>The solid toe ends where the hollow's lowest place, before the back wall, is 2 mm high: the deck, at 3.5 there, has fallen by 58.375/60 from
    /// its edge.</summary>
    [Fact]
    public void A_ramp_with_crossfall_is_solid_until_its_lower_side_is_high_enough()
    {
        var plan = Workbench.Straight(Length, change: s => s with { StartRamp = new(Length: 96, FootHeight: -5), Deck = s.Deck with { Crossfall = 60 } });
        double atEdge = 3.5 + ((Width - Wall) / 60);
        Assert.Equal(200 + ((atEdge - 3) * 96 / 17), WallBlocks.Toes(plan).Start, 1e-6);
    }

    [Fact]
    public void Crossfall_lowers_the_deck_away_from_the_edge()
    {
        // The deck keeps its thickness; what stands under it is shorter by what the deck has fallen there.
        var plan = Workbench.Straight(Length, change: s => s with { Deck = s.Deck with { Crossfall = 80 } });
        double front = Length * Wall * (Overhang + (Wall / 2)) / 80, back = Length * Wall * (Width - (Wall / 2)) / 80;
        double ends = 2 * Wall * Clear * (Overhang + Wall + (Clear / 2)) / 80;
        Agree(Shell - front - back - ends, Volume(plan), Levels);
    }

    [Fact]
    public void Nothing_reaches_below_the_baseboard()
    {
        var plan = Workbench.Straight(Length, change: s => s with { StartRamp = new(Length: 96, FootHeight: -6), Ribs = new() { Pitch = 30, Depth = 10 } });
        var solid = SolidRaiser.Raise(PlatformBody.Blocks(plan).All);
        Assert.Equal(0, solid.Mesh.Box().Low.Z);
        Assert.True(MeshCheck.Inspect(solid.Mesh).IsSound);
    }

    private static double Volume(PlatformPlan plan)
    {
        var solid = SolidRaiser.Raise(PlatformBody.Blocks(plan).All);
        Assert.True(MeshCheck.Inspect(solid.Mesh).IsSound);
        return solid.ColumnVolume;
    }

    /// <summary>Where edges lie off the kernel's plan grid it moves them by up to 6e-5 mm: on these sizes less than this part of the whole.</summary>
    private const double OffGrid = 3e-6;

    /// <summary>Where surfaces run together at a sharp angle the kernel joins heights nearer than 6e-5 mm.</summary>
    private const double Levels = 2e-8;

    private static void Agree(double expected, double actual, double relative = 1e-9) => Assert.Equal(expected, actual, expected * relative);
}
