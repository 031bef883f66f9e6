using FsCheck.Xunit;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Geometry;
using PlatformForge.Verification.Distances;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>Outlines widened by play, the one that is swept and the one that is measured, against parts really pushed aside and turned.</summary>
public class PlayedOutlineProperties
{
    private const double Rounding = 1e-9;

    // How far a part that is really off may stick out of the measured outline, mm a mm of play: on a slanted edge one way to lie takes over from another at a place, not gradually.
    private const double Smoothed = 0.05;

    [Property(MaxTest = 200)]
    public void However_a_part_lies_within_its_play_it_stays_inside_the_outline_that_is_swept(int seed)
    {
        var random = new Random(seed);
        var (vehicle, play, half) = Any(random);
        var part = vehicle.Parts[0];
        var swept = new OutlineDistance(PlayInflation.Widen(part, vehicle, play));
        for (int i = 0; i < 40; i++)
        {
            foreach (var p in Lying(part, play, half, random))
            {
                Assert.True(swept.At(p) <= Rounding, $"{p} lies {swept.At(p)} outside");
            }
        }
    }

    [Property(MaxTest = 200)]
    public void The_outline_that_is_measured_keeps_inside_the_one_that_is_swept_and_holds_all_but_a_little_of_the_part_however_it_lies(int seed)
    {
        var random = new Random(seed);
        var (vehicle, play, half) = Any(random);
        var part = vehicle.Parts[0];
        var swept = new OutlineDistance(PlayInflation.Widen(part, vehicle, play));
        var ring = PlayedOutline.Of(part, vehicle, play);
        var measured = new OutlineDistance(ring);
        for (int i = 0; i < ring.Length; i++)
        {
            foreach (double t in new[] { 0, 0.3, 0.5, 0.9 })
            {
                var p = ring[i] + ((ring[(i + 1) % ring.Length] - ring[i]) * t);
                Assert.True(swept.At(p) <= Rounding, $"{p} lies {swept.At(p)} outside");
            }
        }

        for (int i = 0; i < 40; i++)
        {
            foreach (var p in Lying(part, play, half, random))
            {
                Assert.True(measured.At(p) <= Smoothed * (play.Wheelset + play.Pivot), $"{p} lies {measured.At(p)} outside");
            }
        }
    }

    /// <summary>Cylinders between the driving axle and the front: on the inside of a curve it is their rear corner that reaches farthest.</summary>
    [Fact]
    public void A_side_that_swings_out_about_the_middle_comes_nearer_to_it()
    {
        var part = VehiclePart.Box("cylinders", PartCarrier.Body, 25, 37, 38, 2, 10);
        var vehicle = new Vehicle("engine", 50, 0, 0, [part]);
        var rear = new Point2(25 - (0.4 / 25 * 19), 19 + 0.4);
        Assert.Equal(0, new OutlineDistance(PlayInflation.Widen(part, vehicle, new(0.4))).At(rear), Rounding);
        Assert.Equal(0, new OutlineDistance(PlayedOutline.Of(part, vehicle, new(0.4))).At(rear), Rounding);
    }

    // The part with the front guided point off by one amount and the rear by another, leaning to either side.
    private static IEnumerable<Point2> Lying(VehiclePart part, RunningPlay play, double half, Random random)
    {
        double q = play.Wheelset + play.Pivot, front = Off(random, q), rear = Off(random, q), lean = Off(random, play.SwayOf(part));
        double yaw = (front - rear) / (2 * half), shift = ((front + rear) / 2) + lean;
        for (int i = 0; i < part.Outline.Count; i++)
        {
            Point2 a = part.Outline[i], b = part.Outline[(i + 1) % part.Outline.Count];
            foreach (double t in new[] { 0, random.NextDouble() })
            {
                var p = a + ((b - a) * t);
                yield return new(p.X - (yaw * p.Y), p.Y + shift + (yaw * p.X));
            }
        }
    }

    // Mostly one of the extremes.
    private static double Off(Random random, double most) => random.Next(4) == 0 ? Of(random, -most, most) : random.Next(2) == 0 ? most : -most;

    // A box, a box with a nose, or any triangle, up to two and a half times as far from midway as the guided points.
    private static (Vehicle Vehicle, RunningPlay Play, double Half) Any(Random random)
    {
        double half = Of(random, 15, 90), from = Of(random, -2.5, 2) * half, to = from + Of(random, 5, (2.5 * half) - from), width = Of(random, 10, 19);
        Point2[] ring = random.Next(3) switch
        {
            0 => [new(from, -width), new(to, -width), new(to, width), new(from, width)],
            1 => [new(from, -width), new(to, -width * 0.8), new(to + 8, -4), new(to + 8, 4), new(to, width * 0.9), new(from, width)],
            _ => [new(from, -width), new(to, Of(random, -width, width)), new(Of(random, from, to), width)],
        };
        var play = new RunningPlay(Of(random, 0.1, 0.6), Of(random, 0, 0.3), random.Next(2) * Of(random, 0, 0.02), 5);
        return (new Vehicle("any", 2 * half, 0, 0, [new("part", PartCarrier.Body, ring, 2, 10)]), play, half);
    }

    private static double Of(Random random, double low, double high) => low + (random.NextDouble() * (high - low));
}
