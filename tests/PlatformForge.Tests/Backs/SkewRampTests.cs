using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Backs;

/// <summary>Cuts on the skew across ramps, by the meshes of sections against plane geometry.</summary>
public class SkewRampTests
{
    // A deck 20 mm over the baseboard, that falls by 1 in 8 over the last 96 mm, to 8; cut 46 mm before its foot.
    private const double Width = 30, Level = 20, Foot = 8, Gradient = 8, From = 200, Length = 300, Head = From + Length - (Gradient * (Level - Foot)),
        At = From + Length - 46;

    /// <summary>The walking surface is one plane on both sides of the cut, parted into trapezia; the joint's faces lie at its angle and are as large as the
    /// trapezium under the falling line across, less what the coping hangs over and the bores.</summary>
    [Theory]
    [InlineData(Side.Left, 25, false, BackKind.Wall)]
    [InlineData(Side.Right, 30, true, BackKind.Wall)]
    [InlineData(Side.Right, -30, false, BackKind.Open)]
    [InlineData(Side.Left, -25, true, BackKind.Bank)]
    public void A_cut_across_a_ramp_lies_at_its_angle_under_one_plane(Side side, double angle, bool baseboard, BackKind kind)
    {
        var plan = Ramped(side, angle, baseboard, kind);
        var set = Workbench.Made(plan, Workbench.Printer, new() { Joint = new() { DowelLength = 6, FaceRelief = 0, EndTrim = 0 } });
        Assert.All(set.Sections, SoundSection.Check);

        double ramp = At - Head, slant = Width * Tangent(angle) / 2;
        Assert.Equal(Width * (ramp + slant), set.Sections.Where(s => s.To <= At + 1e-6).Sum(s => Sloping(s.Solid.Mesh)), 0.05);
        Assert.Equal(Width * (46 - slant), set.Sections.Where(s => s.From >= At - 1e-6).Sum(s => Sloping(s.Solid.Mesh)), 0.05);

        double way = side == Side.Left ? 1 : -1, radians = angle * Math.PI / 180;
        Point3 normal = new(Math.Cos(radians), -way * Math.Sin(radians), 0), on = new(At, way * plan.CopingFront.Reach[0], 0);
        double ahead = Facing(set.Sections.Single(s => Math.Abs(s.To - At) < 1e-6).Solid.Mesh, normal, on),
            behind = Facing(set.Sections.Single(s => Math.Abs(s.From - At) < 1e-6).Solid.Mesh, normal * -1, on);
        Assert.Equal(ahead, behind, 0.05);
        if (kind == BackKind.Wall)
        {
            double HeightAt(double across) => Level - ((At + (across * Tangent(angle)) - Head) / Gradient);
            double face = ((Width * HeightAt(Width / 2)) - (1 * (HeightAt(0.5) - 1.2))) / Math.Cos(radians), bores = face - ahead;
            Assert.True(baseboard ? Math.Abs(bores) < 0.3 : bores is > 5 and < 40, $"{bores}");
        }
    }

    [Theory]
    [InlineData(25, -15)]
    [InlineData(-20, 20)]
    public void Skew_cuts_across_ramps_on_a_curve_in_brick_are_sound(double start, double end)
    {
        var plan = Workbench.PendlewickAs(p => p with
        {
            Skew = new() { Cuts = [new() { At = p.Face.From + 55, Angle = start }, new() { At = p.Face.To - 60, Angle = end }] },
            ForcedCuts = [p.Face.From + 55],
            BaseboardJoints = [p.Face.To - 60],
            Features = [],
            Deck = p.Deck with { Crossfall = 0, Width = 36 },
            StartRamp = new(Length: 120),
            EndRamp = new(Length: 120),
            Facing = FacingSpec.For(new(76.2)) with { Plinth = new() },
        });
        Assert.All(Workbench.Made(plan, Workbench.Printer, new() { Joint = new() { DowelLength = 8 } }).Sections, SoundSection.Check);
    }

    [Fact]
    public void A_cut_too_near_to_a_head_or_a_foot_is_refused_with_an_angle_that_is_taken()
    {
        foreach (double at in new[] { Head + 15, From + Length - 20 })
        {
            var near = Assert.Single(Rules(at, 30));
            Assert.Equal(("PF4175", "platform[0].skew.cut[0].angle"), (near.Code, near.Key));
            double angle = double.Parse(near.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture), room = Math.Min(at - Head, From + Length - at);
            Assert.Equal(Math.Atan((room - 4) / (2 * Width)) * 180 / Math.PI, angle, 0.1);
            Assert.Empty(Rules(at, angle));
        }

        Assert.Empty(Rules(At, 30));
    }

    /// <summary>Bores are square to the cut, so towards the back they run out by their depth's sine of the angle: refused with a length that is taken, and no
    /// vertex of either section lies behind the back then. The same on level deck.</summary>
    [Theory]
    [InlineData(BackKind.Open, 30, true)]
    [InlineData(BackKind.Wall, 38, false)]
    [InlineData(BackKind.Open, 30, false)]
    public void Dowels_that_would_run_out_of_the_back_are_refused_with_a_length_that_is_taken(BackKind kind, double angle, bool isRamp)
    {
        var plan = Ramped(Side.Left, angle, false, kind, isRamp ? At : From + 120);
        var findings = SectionMaker.Make(plan, Workbench.Printer, new()).Findings;
        var told = Assert.Single(findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF5068", "joint.dowel_length"), (told.Code, told.Key));
        double length = double.Parse(told.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(length, 5, 11.9);
        double back = plan.Back.Reach[0];
        Assert.All(Workbench.Made(plan, Workbench.Printer, new() { Joint = new() { DowelLength = length } }).Sections, s =>
        {
            SoundSection.Check(s);
            Assert.InRange(s.Solid.Mesh.Vertices.Max(v => v.Y), back - 1e-3, back + 1e-3);
        });
        Assert.Contains(SectionMaker.Make(plan, Workbench.Printer, new() { Joint = new() { DowelLength = length + 0.2 } }).Findings, f => f.Code == "PF5068");
    }

    private static List<Finding> Rules(double at, double angle)
    {
        var findings = new List<Finding>();
        var plan = Ramped(Side.Left, 0, false, BackKind.Wall);
        SkewRule.Check(plan.Spec with { ForcedCuts = [at], Skew = new() { Cuts = [new() { At = at, Angle = angle }] } }, plan.Site, findings);
        return findings;
    }

    internal static PlatformPlan Ramped(Side side, double angle, bool baseboard, BackKind kind, double at = At) => Workbench.Straight(Length, side, s => s with
    {
        Skew = new() { Cuts = [new() { At = at, Angle = angle }] },
        Deck = s.Deck with { Width = Width },
        Ribs = new() { Pitch = 30, LongitudinalCount = 1 },
        Back = new() { Kind = kind },
        EndRamp = new(Gradient: Gradient, FootHeight: 0),
        ForcedCuts = baseboard ? [] : [at],
        BaseboardJoints = baseboard ? [at] : [],
    });

    private static double Tangent(double degrees) => Math.Tan(degrees * Math.PI / 180);

    // Area in plan of what lies in the ramp's plane, mm².
    private static double Sloping(Mesh mesh) => Sum(mesh, (a, b, c, normal) =>
        new[] { a, b, c }.All(p => Math.Abs(Level - ((p.X - Head) / Gradient) - p.Z) < 1e-4) && normal.Z > 0.9 * normal.Length ? normal.Z / 2 : 0);

    // Area of what faces one way within a hundredth of a degree in the plane through a point, mm².
    private static double Facing(Mesh mesh, Point3 way, Point3 on) => Sum(mesh, (a, _, _, normal) =>
        Point3.Cross(normal, way).Length < 2e-4 * normal.Length && Point3.Dot(normal, way) > 0 && Math.Abs(Point3.Dot(a - on, way)) < 1e-3 ? normal.Length / 2
            : 0);

    private static double Sum(Mesh mesh, Func<Point3, Point3, Point3, Point3, double> of) => Enumerable.Range(0, mesh.TriangleCount).Sum(t =>
    {
        Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
        return of(a, b, c, Point3.Cross(b - a, c - a));
    });
}
