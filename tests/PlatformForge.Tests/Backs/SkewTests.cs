using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Backs;

/// <summary>Ends cut on the skew, by the meshes of sections.</summary>
public class SkewTests
{
    private const double Width = 30, Length = 300;

    [Theory]
    [InlineData(Side.Left, 30, -20, BackKind.Open)]
    [InlineData(Side.Right, -40, 0, BackKind.Wall)]
    [InlineData(Side.Right, 15, 25, BackKind.Bank)]
    public void Ends_lie_at_their_angles_and_the_deck_is_a_trapezium(Side side, double start, double end, BackKind kind)
    {
        var plan = Straight(side, start, end, kind);
        var set = Workbench.Made(plan, Workbench.Printer, new() { Joint = new() { FaceRelief = 0, EndTrim = 0 } });
        Assert.All(set.Sections, SoundSection.Check);

        // Corners of the deck: the edge's ends are where they were asked for, the back's are off by its width's tangent.
        Point3[] top = [.. set.Sections.SelectMany(s => s.Solid.Mesh.Vertices).Where(v => v.Z > 19.99)];
        double way = side == Side.Left ? 1 : -1, front = plan.CopingFront.Reach[0], back = front + Width;
        var edge = top.Where(v => Math.Abs((way * v.Y) - front) < 1e-3).ToArray();
        var behind = top.Where(v => Math.Abs((way * v.Y) - back) < 1e-3).ToArray();
        Assert.Equal(200, edge.Min(v => v.X), 1e-3);
        Assert.Equal(200 + Length, edge.Max(v => v.X), 1e-3);
        Assert.Equal(200 - (Width * Tangent(start)), behind.Min(v => v.X), 1e-3);
        Assert.Equal(200 + Length + (Width * Tangent(end)), behind.Max(v => v.X), 1e-3);
        double area = set.Sections.Sum(s => Level(s.Solid.Mesh, 20));
        Assert.Equal(Width * (Length + (Width * (Tangent(start) + Tangent(end)) / 2)), area, 0.05);
    }

    /// <summary>Every upright face of the first section's end has one normal, at the angle asked for from the track.</summary>
    [Fact]
    public void An_end_wall_faces_askew_by_the_angle_asked()
    {
        var mesh = Workbench.Made(Straight(Side.Left, 30, 0, BackKind.Open), Workbench.Printer, new()).Sections[0].Solid.Mesh;
        double wall = 0, most = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
            var normal = Point3.Cross(b - a, c - a);
            bool askew = Math.Abs(normal.Z) < 1e-6 * normal.Length && Math.Abs(Math.Atan2(-normal.Y, -normal.X) * 180 / Math.PI - 30) < 0.01;
            (wall, most) = askew ? (wall + (normal.Length / 2), Math.Max(most, normal.Length / 2)) : (wall, most);
        }

        // The end face over its whole height: as long as the slope of the end, less the coping's overhang below it.
        double whole = Width / Math.Cos(Math.PI / 6) * 20, overhang = 1 / Math.Cos(Math.PI / 6) * 18.8;
        Assert.Equal(whole - overhang, wall, 0.5);
    }

    /// <summary>A cut at an angle parts the deck into trapezia; both joint faces lie at that angle, and bores are square to them and meet.</summary>
    [Theory]
    [InlineData(Side.Left, 25, false)]
    [InlineData(Side.Right, 25, true)]
    [InlineData(Side.Right, -40, false)]
    public void A_stated_cut_lies_at_its_angle_and_parts_the_deck_into_trapezia(Side side, double angle, bool baseboard)
    {
        const double At = 340;
        var plan = Workbench.Straight(Length, side, s => s with
        {
            Skew = new() { Cuts = [new() { At = At, Angle = angle }] },
            Deck = s.Deck with { Width = Width },
            Ribs = new() { Pitch = 30, LongitudinalCount = 1 },
            ForcedCuts = baseboard ? [] : [At],
            BaseboardJoints = baseboard ? [At] : [],
        });
        var set = Workbench.Made(plan, Workbench.Printer, new() { Joint = new() { DowelLength = 7, FaceRelief = 0, EndTrim = 0 } });
        Assert.All(set.Sections, SoundSection.Check);
        double before = At - 200, slant = Width * Tangent(angle) / 2;
        Assert.Equal(Width * (before + slant), set.Sections.Where(s => s.To <= At + 1e-6).Sum(s => Level(s.Solid.Mesh, 20)), 0.05);
        Assert.Equal(Width * (Length - before - slant), set.Sections.Where(s => s.From >= At - 1e-6).Sum(s => Level(s.Solid.Mesh, 20)), 0.05);

        // The joint's faces are those of its normal: as large on either side, and of the height of the walls.
        double way = side == Side.Left ? 1 : -1;
        Point3 normal = new(Math.Cos(angle * Math.PI / 180), -way * Math.Sin(angle * Math.PI / 180), 0);
        Point3 on = new(At, way * plan.CopingFront.Reach[0], 0);
        double ahead = Facing(set.Sections.Single(s => Math.Abs(s.To - At) < 1e-6).Solid.Mesh, normal, on),
            behind = Facing(set.Sections.Single(s => Math.Abs(s.From - At) < 1e-6).Solid.Mesh, normal * -1, on);
        double face = ((Width * 20) - (1 * 18.8)) / Math.Cos(angle * Math.PI / 180);
        Assert.Equal(ahead, behind, 0.05);
        double bores = face - ahead;
        Assert.True(baseboard ? Math.Abs(bores) < 0.5 : bores is > 5 and < 60, $"{bores}");

        // Its wall is as thick at the back as at the edge: its inner face is parallel to the joint's.
        var joint = new JointSpec();
        Assert.True(Facing(set.Sections.Single(s => Math.Abs(s.To - At) < 1e-6).Solid.Mesh, normal * -1,
            on - (normal * (joint.EndWall * Math.Cos(angle * Math.PI / 180)))) > 0.3 * face);
    }

    [Fact]
    public void Skew_cuts_on_a_curve_in_brick_with_a_bank_are_sound()
    {
        var plan = Workbench.PendlewickAs(p => p with
        {
            Skew = new() { Cuts = [new() { At = p.Face.From + 330, Angle = 25 }, new() { At = p.Face.From + 450, Angle = -15 }] },
            ForcedCuts = [p.Face.From + 330],
            BaseboardJoints = [p.Face.From + 450],
            Features = [],
            Deck = p.Deck with { Crossfall = 0 },
            Back = new() { Kind = BackKind.Bank },
            Facing = FacingSpec.For(new(76.2)) with { HasBack = false },
        });
        Assert.All(Workbench.Made(plan, Workbench.Printer, new()).Sections, SoundSection.Check);
    }

    [Theory]
    [InlineData(Side.Left, 25, -25)]
    [InlineData(Side.Right, 25, 25)]
    [InlineData(Side.Right, -40, 10)]
    public void A_bank_with_skew_ends_stands_on_the_baseboard_and_not_in_it(Side side, double start, double end)
    {
        var plan = Workbench.Straight(260, side, s => s with
        {
            Skew = new() { Start = start, End = end },
            Deck = s.Deck with { Width = 32 },
            Back = new() { Kind = BackKind.Bank },
        });
        Assert.All(Workbench.Made(plan, Workbench.Printer, new()).Sections, s => Assert.Equal(0, s.Solid.Mesh.Box().Low.Z, 1e-6));
    }

    [Fact]
    public void Cuts_that_are_not_stated_or_have_no_room_to_turn_are_refused_with_a_figure_that_is_taken()
    {
        var stray = Assert.Single(Rules(s => s with { ForcedCuts = [340], Skew = new() { Cuts = [new() { At = 300, Angle = 10 }] } }));
        Assert.Equal(("PF4176", "platform[0].skew.cut[0].at", "340"), (stray.Code, stray.Key, stray.Cure!.Value));
        var near = Assert.Single(Rules(s => s with { ForcedCuts = [220], Skew = new() { Cuts = [new() { At = 220, Angle = -40 }] } }));
        Assert.Equal(("PF4175", "platform[0].skew.cut[0].angle"), (near.Code, near.Key));
        double angle = double.Parse(near.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(-Math.Atan((20 - 4) / (2 * Width)) * 180 / Math.PI, angle, 0.1);
        Assert.Empty(Rules(s => s with { ForcedCuts = [220], Skew = new() { Cuts = [new() { At = 220, Angle = angle }] } }));
        Assert.NotEmpty(
            Rules(s => s with { ForcedCuts = [300, 330], Skew = new() { Cuts = [new() { At = 300, Angle = 30 }, new() { At = 330, Angle = -30 }] } }));
    }

    // Area of what faces one way within a hundredth of a degree in the plane through a point, mm².
    private static double Facing(Mesh mesh, Point3 way, Point3 on)
    {
        double area = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
            var normal = Point3.Cross(b - a, c - a);
            area += Point3.Cross(normal, way).Length < 2e-4 * normal.Length && Point3.Dot(normal, way) > 0 && Math.Abs(Point3.Dot(a - on,
                way)) < 1e-3 ? normal.Length / 2 : 0;
        }

        return area;
    }

    [Fact]
    public void Skew_ends_on_a_curve_in_brick_are_sound()
    {
        var plan = Workbench.PendlewickAs(p => p with
        {
            Face = p.Face with { To = p.Face.From + 300 },
            Skew = new() { Start = -20, End = 25 },
            StartRamp = null,
            EndRamp = null,
            Features = [],
            Deck = p.Deck with { Crossfall = 0 },
            Facing = FacingSpec.For(new(76.2)),
        });
        Assert.All(Workbench.Made(plan, Workbench.Printer, new()).Sections, SoundSection.Check);
    }

    [Fact]
    public void Ends_that_cannot_be_cut_on_the_skew_are_refused_with_a_figure_that_is_taken()
    {
        var shortOne = Assert.Single(Rules(s => s with { Skew = new() { Start = 35 }, Deck = s.Deck with { Width = 260 } }));
        Assert.Equal(("PF4175", "platform[0].skew.start"), (shortOne.Code, shortOne.Key));
        double angle = double.Parse(shortOne.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Empty(Rules(s => s with { Skew = new() { Start = angle }, Deck = s.Deck with { Width = 260 } }));
        var ramped = Assert.Single(Rules(s => s with { Skew = new() { End = 10 }, EndRamp = new(Gradient: 8, FootHeight: 0) }));
        Assert.Equal("PF4176", ramped.Code);
    }

    private static List<Finding> Rules(Func<PlatformSpec, PlatformSpec> change)
    {
        var findings = new List<Finding>();
        var plan = Straight(Side.Left, 0, 0, BackKind.Wall);
        SkewRule.Check(change(plan.Spec), plan.Site, findings);
        return findings;
    }

    private static PlatformPlan Straight(Side side, double start, double end, BackKind kind) => Workbench.Straight(Length, side, s => s with
    {
        Back = new() { Kind = kind },
        Skew = new() { Start = start, End = end },
        Deck = s.Deck with { Width = Width },
        Ribs = new() { Pitch = 30, LongitudinalCount = 1 },
    });

    private static double Tangent(double degrees) => Math.Tan(degrees * Math.PI / 180);

    // Area that looks up at a height, mm².
    private static double Level(Mesh mesh, double height)
    {
        double area = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
            var normal = Point3.Cross(b - a, c - a);
            area += Math.Abs(a.Z - height) < 1e-4 && normal.Z > 0.99 * normal.Length ? normal.Z / 2 : 0;
        }

        return area;
    }
}
