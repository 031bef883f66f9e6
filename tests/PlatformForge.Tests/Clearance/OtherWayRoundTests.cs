using PlatformForge.Clearance;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Tests.Verification;
using PlatformForge.Track;
using PlatformForge.Verification;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>
/// A vehicle with unequal bogies keeps each under its own end whichever way round it runs. On a circle of radius R a bogie of wheelbase b has its middle
/// √(R² − b²/4) from the centre and lies square to that radius, so that what it carries reaches as far either way round: plain geometry of a chord.
/// </summary>
public class OtherWayRoundTests
{
    private const double Radius = 400, Short = 20, Long = 90, Centres = 150, Half = 30, Width = 30;

    public static TheoryData<PartCarrier, double, double> Bogies() => new()
    {
        { PartCarrier.LeadingBogie, Short, Long }, { PartCarrier.LeadingBogie, Long, Short }, { PartCarrier.TrailingBogie, Short, Long },
        { PartCarrier.TrailingBogie, Long, Short },
    };

    [Theory]
    [MemberData(nameof(Bogies))]
    public void What_a_bogie_carries_is_swept_on_its_own_bogie_either_way_round(PartCarrier carrier, double leading, double trailing)
    {
        var (inner, outer) = Reach(carrier == PartCarrier.LeadingBogie ? leading : trailing);
        var ring = DemoStock.Lay("ring", new CurveSpec(Radius, Hand.Left, Length: 1500));
        var envelope = EnvelopeSweeper.Sweep(new(ring, 700, 800, [new(ring, [Unequal(carrier, leading, trailing)])])).Value!;
        var part = Assert.Single(envelope.Parts);
        double above = envelope.ErrorBound + 1e-9;
        Assert.InRange(part.Left[40], inner, inner + above);
        Assert.InRange(part.Right[40], outer, outer + above);
    }

    [Theory]
    [MemberData(nameof(Bogies))]
    public void What_a_bogie_carries_is_verified_on_its_own_bogie_either_way_round(PartCarrier carrier, double leading, double trailing)
    {
        const double Reach0 = 40;
        const int Facets = 40;
        var (inner, outer) = Reach(carrier == PartCarrier.LeadingBogie ? leading : trailing);
        var track = Pieces.Curve(1500, Radius);
        double Least(double offset) => SectionsVerifier.Verify(
            [Pieces.Section(Pieces.Bar(track, 600, 800, offset, offset + (Math.Sign(offset) * 10), 0, 20, Facets))],
            Pieces.Facts(track, Unequal(carrier, leading, trailing))).Closest!.Clearance;

        // Outside the curve the bar's facets come nearer midway, by their versine.
        double facet = 200.0 / Facets * (Radius + Reach0) / Radius, versine = facet * facet / (8 * (Radius + Reach0));
        Assert.Equal(Reach0 - inner, Least(Reach0), 1e-3);
        Assert.Equal(Reach0 - versine - outer, Least(-Reach0), 1e-3);
    }

    [Theory]
    [InlineData(Short, Long)]
    [InlineData(Long, Short)]
    public void Turned_round_each_bogie_is_under_its_own_end_with_its_own_wheelbase(double leading, double trailing)
    {
        var ring = DemoStock.Lay("ring", new CurveSpec(Radius, Hand.Left, Length: 1500));
        var centre = new Point2(0, Radius);
        Assert.True(PoseSolver.TryPlaceTurned(ring, Unequal(PartCarrier.Body, leading, trailing), 900, out var pose));
        Assert.Equal(Math.Sqrt((Radius * Radius) - (leading * leading / 4)), (pose.LeadingBogie.Origin - centre).Length, 1e-6);
        Assert.Equal(Math.Sqrt((Radius * Radius) - (trailing * trailing / 4)), (pose.TrailingBogie.Origin - centre).Length, 1e-6);

        // The trailing end is ahead on the track, and each bogie's own front looks towards the body's.
        Assert.True(ring.Locate(pose.TrailingBogie.Origin, 900).Chainage > ring.Locate(pose.LeadingBogie.Origin, 750).Chainage + 100);
        Assert.True(Point2.Dot(pose.LeadingBogie.Forward, pose.Body.Forward) > 0.9 && Point2.Dot(pose.TrailingBogie.Forward, pose.Body.Forward) > 0.9);
    }

    // Reach towards the centre of the curve and away from it of a box on a bogie of that wheelbase.
    private static (double Inner, double Outer) Reach(double wheelbase)
    {
        double middle = Math.Sqrt((Radius * Radius) - (wheelbase * wheelbase / 4));
        return (Radius - (middle - (Width / 2)), Math.Sqrt(Math.Pow(middle + (Width / 2), 2) + (Half * Half)) - Radius);
    }

    private static Vehicle Unequal(PartCarrier carrier, double leading, double trailing) =>
        new("unequal", Centres, leading, trailing, [VehiclePart.Box("frames", carrier, -Half, Half, Width, 2, 15)]);
}
