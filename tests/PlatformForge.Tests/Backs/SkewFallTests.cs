using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Backs;

/// <summary>Skew ends and cuts on decks that fall to their backs.</summary>
public class SkewFallTests
{
    private const double Width = 30, Length = 300, Fall = 60, Level = 20;

    /// <summary>Along a straight track the deck is one plane that falls square to it, whatever the angles of ends and cuts, and all the trapezia lie in
    /// it.</summary>
    [Theory]
    [InlineData(Side.Left, 30, -20, 0, BackKind.Wall)]
    [InlineData(Side.Right, -35, 15, 25, BackKind.Open)]
    [InlineData(Side.Left, 0, 0, -30, BackKind.Bank)]
    public void On_a_straight_track_the_deck_is_one_plane(Side side, double start, double end, double cut, BackKind kind)
    {
        var plan = Workbench.Straight(Length, side, s => s with
        {
            Deck = s.Deck with { Width = Width, Crossfall = Fall },
            Skew = new() { Start = start, End = end, Cuts = cut == 0 ? [] : [new() { At = 350, Angle = cut }] },
            ForcedCuts = [350],
            Back = new() { Kind = kind },
            Ribs = new() { Pitch = 30, LongitudinalCount = 1 },
        });
        var set = Workbench.Made(plan, Workbench.Printer, new() { Joint = new() { DowelLength = 6, FaceRelief = 0, EndTrim = 0 } });
        Assert.All(set.Sections, SoundSection.Check);

        double way = side == Side.Left ? 1 : -1, front = plan.CopingFront.Reach[0], area = 0;
        foreach (var mesh in set.Sections.Select(s => s.Solid.Mesh))
        {
            for (int t = 0; t < mesh.TriangleCount; t++)
            {
                Point3[] p = [.. Enumerable.Range(0, 3).Select(k => mesh.Vertices[mesh.Triangles[(3 * t) + k]])];
                double up = Point3.Cross(p[1] - p[0], p[2] - p[0]).Z;
                area += up > 0 && p.All(v => Math.Abs(Level - (((way * v.Y) - front) / Fall) - v.Z) < 1e-4) ? up / 2 : 0;
            }
        }

        Assert.Equal(Width * (Length + (Width * (Tangent(start) + Tangent(end)) / 2)), area, 0.06);
        Assert.Equal(0, DeckFit.Of(plan).FallOff, 1e-6);
        Assert.Equal(0, DeckFit.Of(plan).CopingOff, 1e-6);
    }

    /// <summary>On a curve each section is a plane; coping and fall keep what falling decks with square ends keep.</summary>
    [Theory]
    [InlineData(-20, 25, 0)]
    [InlineData(0, 0, 20)]
    public void On_a_curve_in_brick_sections_are_sound_and_the_deck_falls_as_asked(double start, double end, double cut)
    {
        var plan = Workbench.PendlewickAs(p => p with
        {
            Face = p.Face with { To = p.Face.From + 330 },
            Skew = new() { Start = start, End = end, Cuts = cut == 0 ? [] : [new() { At = p.Face.From + 160, Angle = cut }] },
            BaseboardJoints = cut == 0 ? [] : [p.Face.From + 160],
            StartRamp = null,
            EndRamp = null,
            Features = [],
            Deck = p.Deck with { Crossfall = Fall, Width = 36 },
            Facing = FacingSpec.For(new(76.2)) with { Plinth = new() },
        });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        Assert.All(set.Sections, SoundSection.Check);
        var fit = DeckFit.Of(set.Plan);
        Assert.True(fit.Keeps, $"{fit.CopingOff} {fit.FallOff}");
    }

    private static double Tangent(double degrees) => Math.Tan(degrees * Math.PI / 180);
}
