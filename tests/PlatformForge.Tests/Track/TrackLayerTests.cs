using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Track;

public class TrackLayerTests
{
    [Fact]
    public void All_faults_of_an_alignment_are_told_at_once_by_their_own_key()
    {
        var findings = Lay(
            new StraightSpec(-5), new CurveSpec(0, Hand.Left, Length: 100), new CurveSpec(500, Hand.Right),
            new TransitionSpec(double.NaN, 600, Hand.Left), new TransitionSpec(100, double.PositiveInfinity, Hand.Left),
            new CurveSpec(100, Hand.Left, Length: 700)).Findings;
        Assert.Equal(["track[0].straight", "track[1].curve", "track[2].angle", "track[3].transition", "track[4].to_radius", "track[5]"],
            findings.Select(f => f.Key));
        Assert.Equal(["PF2002", "PF2003", "PF2004", "PF2002", "PF2003", "PF2005"], findings.Select(f => f.Code));
        Assert.All(findings, f => Assert.Equal(Severity.Error, f.Severity));
    }

    [Fact]
    public void An_empty_alignment_and_one_over_a_kilometre_are_faults()
    {
        Assert.Equal("PF2001", Assert.Single(Lay().Findings).Code);
        Assert.Equal("PF2006", Assert.Single(Lay(new StraightSpec(9e5), new StraightSpec(2e5)).Findings).Code);
        Assert.False(Lay(new StraightSpec(1e308)).Succeeded);
    }

    [Fact]
    public void Length_and_angle_say_the_same_curve()
    {
        var byLength = Lay(new CurveSpec(610, Hand.Right, Length: 610 * 0.6)).Value!;
        var byAngle = Lay(new CurveSpec(610, Hand.Right, Angle: 0.6)).Value!;
        Assert.Equal(byLength.Length, byAngle.Length, 1e-9);
        Assert.Equal(0, (byLength.At(byLength.Length).Position - byAngle.At(byAngle.Length).Position).Length, 1e-9);
        Assert.True(byAngle.At(100).Position.Y < 0, "a right-hand curve bends towards negative y");
    }

    /// <summary>Curvature runs on from what went before: a transition after a curve begins at that curve's radius.</summary>
    [Fact]
    public void Transitions_begin_at_the_curvature_reached_so_far()
    {
        var line = Lay(new CurveSpec(600, Hand.Left, Length: 100), new TransitionSpec(80, 400, Hand.Right), new StraightSpec(10)).Value!;
        Assert.Equal(1.0 / 600, line.At(100.0001).Curvature, 1e-6);
        Assert.Equal(-1.0 / 400, line.At(179.9999).Curvature, 1e-6);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-2)]
    [InlineData(31)]
    [InlineData(double.NaN)]
    public void A_kink_that_is_none_or_would_derail_anything_is_refused(double degrees) =>
        Assert.Contains(Lay(new StraightSpec(100), new KinkSpec(degrees * Math.PI / 180, Hand.Left), new StraightSpec(100)).Findings, f => f.Code == "PF2007");

    private static Outcome<Centreline> Lay(params AlignmentElementSpec[] elements) => TrackLayer.Lay(new("t", default, 0, elements));
}
