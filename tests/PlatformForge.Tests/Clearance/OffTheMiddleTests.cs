using PlatformForge.Clearance;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>What play and lean come to where geometry tells it in closed form.</summary>
public class OffTheMiddleTests
{
    private const double Radius = 330, Pivots = 190, Width = 34;

    // Long enough for the pivots, and nowhere the farthest.
    private static readonly VehiclePart Floor = VehiclePart.Box("floor", PartCarrier.Body, -100, 100, 4, 4, 5);

    /// <summary>
    /// A chord of length a between points at R − q from the centre has its middle √((R − q)² − a²/4) from it: inside a curve the body is off by more than its
    /// wheels are, by q/cos(a/2R) to first order; with both at R + q the ends of the body, x from the middle and half its width farther out, are √(x² + (√((R +
    /// q)² − a²/4) + w)²) away.
    /// </summary>
    [Theory]
    [InlineData(0.4, 0)]
    [InlineData(0.4, 0.2)]
    [InlineData(0, 0.2)]
    public void On_a_circle_a_body_on_its_axles_is_off_as_geometry_says(double wheelset, double pivot)
    {
        // Without a wheelbase pivots are axles and have no play of their own.
        double q = wheelset, middle = Math.Sqrt(((Radius - q) * (Radius - q)) - (Pivots * Pivots / 4));
        var envelope = Ring(new("body", Pivots, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -60, 60, Width, 4, 50), Floor]), new(wheelset, pivot));
        Assert.InRange(envelope.Parts[0].Left[20], Radius - middle + (Width / 2), Radius - middle + (Width / 2) + envelope.ErrorBound + 1e-9);

        double outer = Math.Sqrt((60 * 60) + Square(Math.Sqrt(Square(Radius + q) - (Pivots * Pivots / 4)) + (Width / 2)));
        Assert.InRange(envelope.Parts[0].Right[20], outer - Radius, outer - Radius + envelope.ErrorBound + 1e-9);
    }

    /// <summary>Pivots of a bogie stand √((R − q)² − b²/4) − p from the centre: the wheelset play between axles b apart, and the pivot's own across the
    /// bogie.</summary>
    [Fact]
    public void A_body_on_bogies_has_the_play_of_its_wheels_and_of_its_pivots()
    {
        const double Q = 0.3, P = 0.15, Base = 34;
        double pivot = Math.Sqrt(Square(Radius - Q) - (Base * Base / 4)) - P, middle = Math.Sqrt(Square(pivot) - (Pivots * Pivots / 4));
        var envelope = Ring(new("coach", Pivots, Base, Base, [VehiclePart.Box("body", PartCarrier.Body, -60, 60, Width, 4, 50), Floor]), new(Q, P));
        Assert.InRange(envelope.Parts[0].Left[20], Radius - middle + (Width / 2), Radius - middle + (Width / 2) + envelope.ErrorBound + 1e-9);
        Assert.InRange(envelope.ErrorBound, 0.0001, 0.0101);
    }

    /// <summary>A van, an engine and a hung body have no pivots, whatever the play of pivots is.</summary>
    [Fact]
    public void Pivot_play_is_only_of_vehicles_with_pivots()
    {
        VehiclePart[] parts = [VehiclePart.Box("body", PartCarrier.Body, -45, 45, Width, 4, 50)];
        foreach (var vehicle in new Vehicle[] { new("van", 45, 0, 0, parts),
            new("hung", 60, 30, 30, parts) { Hangs = true, LeadingPivotAhead = -40, TrailingPivotAhead = 40, SetName = "tram" } })
        {
            Assert.Equal(Ring(vehicle, new(0.2)).Parts[0].Left, Ring(vehicle, new(0.2, 0.3)).Parts[0].Left);
        }

        var bogies = new Vehicle("coach", 60, 20, 20, parts);
        Assert.True(Ring(bogies, new(0.2, 0.3)).Parts[0].Left[20] > Ring(bogies, new(0.2)).Parts[0].Left[20] + 0.29);
    }

    /// <summary>A truck's axle is off by the wheels' play; its pivot, o ahead of the middle of axles a apart, by 2o/a times that and by the pivot's
    /// own.</summary>
    [Fact]
    public void Each_end_of_a_truck_has_its_own_play()
    {
        var straight = DemoStock.Lay("straight", new StraightSpec(1000));
        var truck = new Vehicle("truck", 24, 0, 60, [VehiclePart.Box("frames", PartCarrier.Body, 2, 22, 26, 1, 8)])
        {
            TrailingPivotAhead = 45,
            TruckOf = "engine",
            SetName = "engine"
        };
        double Reach(RunningPlay play) =>
            EnvelopeSweeper.Sweep(new(straight, 450, 500, [new(straight, [truck])]) { Play = play, StraightBeyondEnds = true }).Value!.Parts[0].Left[20];

        // Axle 12 ahead of midway off by 0.2, pivot 12 behind off by 0.2 × 1.5 + 0.1 the other way: the front end, 10 beyond the axle, by 0.2 + 0.6 × 10/24.
        Assert.Equal(13 + 0.2 + (0.6 * 10 / 24), Reach(new(0.2, 0.1)), 0.012);
    }

    /// <summary>
    /// With a roll centre above the part, roll and cant add up when they lean opposite ways; at one height, not each at its own worst.
    /// </summary>
    [Fact]
    public void Roll_and_cant_are_one_motion_worst_at_one_height()
    {
        double roll = 0.5 * Math.PI / 180, cant = RunningPlay.CantAngle(16.5, 0.2), centre = 20;
        var play = new RunningPlay(0, 0, roll, centre) { Cant = cant };
        double most = 0;
        foreach (double z in new[] { 3.0, 11 })
        {
            foreach (var (r, c) in new[] { (roll, cant), (-roll, cant), (roll, -cant), (-roll, -cant), (roll, 0), (0, cant) })
            {
                double y = (17 * Math.Cos(r)) - ((z - centre) * Math.Sin(r)), up = centre + (17 * Math.Sin(r)) + ((z - centre) * Math.Cos(r));
                most = Math.Max(most, (y * Math.Cos(c)) - (up * Math.Sin(c)) - 17);
            }
        }

        Assert.Equal(most, Sway.Of(play, VehiclePart.Box("steps", PartCarrier.Body, -9, 9, 34, 3, 11)), 1e-9);
        Assert.True(most < play.LeanAt(3) + play.CantAt(11) - 0.05);
    }

    /// <summary>Roll 1.5° and cant 0.5 mm on 16.5: half a width of 17 lets the lower side sink by 17·sin σ, and by a little more or less for the turn about the
    /// roll centre.</summary>
    [Fact]
    public void The_lower_side_of_a_leaning_body_sinks_by_half_its_width_times_the_sine()
    {
        double roll = 1.5 * Math.PI / 180, cant = RunningPlay.CantAngle(16.5, 0.5), sum = roll + cant;
        var coach = new Vehicle("coach", 60, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -40, 40, 34, 12.6, 50)]);
        double lowest = new RunningPlay(0, 0, roll, 10) { Cant = cant }.Lowest(coach.Parts[0], coach);
        Assert.Equal((-17 * Math.Sin(sum)) + (2.6 * Math.Cos(sum)) + (10 * Math.Cos(cant)), lowest, 1e-9);
        Assert.Equal(12.6 - 0.965, lowest, 0.01);
    }

    private static double Square(double x) => x * x;

    private static SweptEnvelope Ring(Vehicle vehicle, RunningPlay play)
    {
        var ring = DemoStock.Lay("ring", new CurveSpec(Radius, Hand.Left, Length: 1300));
        return EnvelopeSweeper.Sweep(new(ring, 600, 680, [new(ring, [vehicle])]) { Play = play }).Value!;
    }
}
