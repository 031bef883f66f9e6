using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>
/// Track so jagged that the first guess at an axle's place leads nowhere: a pose is exact all the same, or it is refused. Straights with jogs of 4 mm, 80
/// degrees aside.
/// </summary>
public class JogTests
{
    private const double Turn = 80 * Math.PI / 180, Pivots = 90, Jog = 4;

    /// <summary>The place first looked at lies in the jog. The true one is √(90² − (4 sin 80°)²) back along the first straight.</summary>
    [Fact]
    public void A_pivot_is_found_behind_a_jog_in_the_track()
    {
        double aside = Jog * Math.Sin(Turn), on = 200 + (Jog * Math.Cos(Turn));
        Assert.True(PoseSolver.TryPlace(Jogged(1, 200), Vehicle(0, 0), 292, out var pose));
        Assert.Equal(on + 88, pose.LeadingBogie.Origin.X, 1e-9);
        Assert.Equal(on + 88 - Math.Sqrt((Pivots * Pivots) - (aside * aside)), pose.TrailingBogie.Origin.X, 1e-6);
        Assert.Equal(0, pose.TrailingBogie.Origin.Y, 1e-9);
    }

    [Theory]
    [InlineData(1, 0, 0)]
    [InlineData(1, 24, 24)]
    [InlineData(1, 0, 24)]
    [InlineData(12, 0, 0)]
    [InlineData(12, 24, 24)]
    [InlineData(12, 0, 24)]
    public void A_pose_on_jagged_track_is_exact_or_refused(int jogs, double leading, double trailing)
    {
        var ride = Jogged(jogs, 300);
        var vehicle = Vehicle(leading, trailing);
        var warm = RunningGear.Of(ride, vehicle, turned: false);
        int stood = 0;
        for (double u = 150; u < 450; u += 0.7)
        {
            foreach (var pose in new[] { warm.Place(u, out var w) ? w : (VehiclePose?)null, PoseSolver.TryPlace(ride, vehicle, u, out var c) ? c : null }
                .OfType<VehiclePose>())
            {
                stood++;
                Assert.Equal(Pivots, (pose.LeadingBogie.Origin - pose.TrailingBogie.Origin).Length, 1e-6);
                foreach (var (bogie, half) in new[] { (pose.LeadingBogie, leading / 2), (pose.TrailingBogie, trailing / 2) })
                {
                    Assert.Equal(0, FromLine(ride, bogie.Apply(new(half, 0))), 1e-6);
                    Assert.Equal(0, FromLine(ride, bogie.Apply(new(-half, 0))), 1e-6);
                }
            }
        }

        Assert.InRange(stood, 300, 2 * 429);
    }

    private static Vehicle Vehicle(double leading, double trailing) =>
        new("v", Pivots, leading, trailing, [VehiclePart.Box("body", PartCarrier.Body, -70, 70, 30, 4, 50)]) { EitherWayRound = false };

    // A straight, jogs to the left and to the right by turns with 6 mm between them, a straight.
    private static Centreline Jogged(int jogs, double after)
    {
        var elements = new List<CentrelineElement> { new(default, 0, 200, 0, 0) };
        void Add(double heading, double length) => elements.Add(new(elements[^1].At(elements[^1].Length).Position, heading, length, 0, 0));
        for (int i = 0; i < jogs; i++)
        {
            Add(i % 2 == 0 ? Turn : -Turn, Jog);
            Add(0, i == jogs - 1 ? after : 6);
        }

        return new("jogged", elements);
    }

    private static double FromLine(Centreline line, Point2 p) => line.Elements.Min(e =>
    {
        Point2 start = e.At(0).Position, run = e.At(e.Length).Position - start;
        double share = Math.Clamp(Point2.Dot(p - start, run) / Point2.Dot(run, run), 0, 1);
        return (p - start - (run * share)).Length;
    });
}
