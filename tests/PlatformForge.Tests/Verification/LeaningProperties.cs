using FsCheck.Xunit;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Verification;
using PlatformForge.Verification.Distances;
using PlatformForge.Verification.Poses;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>A leaning part, the height at which something meets it and the poses it is tried in, against trying by plain geometry.</summary>
public class LeaningProperties
{
    private const int Tries = 40;

    /// <summary>
    /// A point (y, z) of a body turned by r about the roll centre (0, c) and then by k about rail top is at y·cos(r + k) − (z − c)·sin(r + k) −
    /// c·sin k across and
    /// y·sin(r + k) + (z − c)·cos(r + k) + c·cos k up.
    /// </summary>
    [Property(MaxTest = 10)]
    public void A_side_is_told_as_far_out_as_anything_of_it_comes_between_two_heights(int seed)
    {
        var random = new Random(seed);
        double Of(double low, double high) => low + (random.NextDouble() * (high - low));
        double half = Of(8, 20), zLow = Of(0, 15), zHigh = zLow + Of(1, 30), roll = Of(0, 0.06), cant = Of(0, 0.04), centre = Of(0, 30);
        var part = VehiclePart.Box("body", PartCarrier.Body, -40, 40, 2 * half, zLow, zHigh);
        double low = Of(-5, 40), high = low + Of(0.5, 15);
        double? most = null;
        foreach (var (r, k, z) in from i in Enumerable.Range(-8, 17)
                                  from j in Enumerable.Range(-8, 17)
                                  from h in Enumerable.Range(0, Tries + 1)
                                  select (roll * i / 8, cant * j / 8, zLow + ((zHigh - zLow) * h / Tries)))
        {
            double across = (half * Math.Cos(r + k)) - ((z - centre) * Math.Sin(r + k)) - (centre * Math.Sin(k));
            double up = (half * Math.Sin(r + k)) + ((z - centre) * Math.Cos(r + k)) + (centre * Math.Cos(k));
            most = up >= low && up <= high ? Math.Max(most ?? across, across) : most;
        }

        var ring = new Leaning(part, new(0, 0, roll, centre) { Cant = cant }).Between(low, high);
        Assert.True(ring is not null || most is null);
        if (ring is not null && most is { } widest)
        {
            double step = (zHigh - zLow) / Tries; // up and down, of which at most the sine of the whole lean comes across
            Assert.InRange(ring.Max(p => p.Y), widest - 1e-9, widest + (step * Math.Sin(roll + cant)) + 1e-9);
            Assert.Equal(ring.Max(p => p.Y), -ring.Min(p => p.Y), 1e-9);
        }
    }

    /// <summary>
    /// A side y beside the middle that leans by r about (0, c) is at y/cos r + |u − c|·tan r across at a height u. Of a coping the foot or the head is as far
    /// from the roll centre as anything of it.
    /// </summary>
    [Theory]
    [InlineData(30, 10)]
    [InlineData(0, 12)]
    [InlineData(11, 12)]
    public void A_body_that_leans_comes_nearer_by_what_lies_between_its_roll_centre_and_the_coping(double centre, double height)
    {
        const double Half = 17, Roll = 0.05, Offset = 21;
        var track = Pieces.Straight(1200);
        var coach = new Vehicle("coach", 188, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -131, 131, 2 * Half, 2, 45)]);
        var coping = Pieces.Bar(track, 500, 700, Offset, 60, Pieces.RailTop + 10, Pieces.RailTop + 12);
        var facts = Pieces.Facts(track, coach) with { Play = new(0, 0, Roll, centre) };
        double side = (Half / Math.Cos(Roll)) + (Math.Abs(height - centre) * Math.Tan(Roll));

        // Beside a height at which faces begin and end slices are 0.05 mm thick.
        Assert.Equal(Offset - side, SectionsVerifier.Verify([Pieces.Section(coping)], facts).Tightest!.Clearance, 0.05 * Math.Tan(Roll));
    }

    /// <summary>A roof that slopes along: a place on its edge stands as high as the edge there; where two edges pass it, the nearer one counts.</summary>
    [Theory]
    [InlineData(10, 20, 0.25)]
    [InlineData(20, 10, 0.8)]
    public void A_place_on_a_sloping_edge_stands_at_the_edges_height_there(double from, double to, double share)
    {
        Point3 a = new(0, 0, from), b = new(40, 0, to), c = new(40, 9, to);
        var mesh = new Mesh([a, b, c], [0, 1, 2], []);
        double height = from + (share * (to - from));
        Assert.Equal(height, MeetingHeight.At(mesh, new(5, 25), new(40 * share, 0, 60))!.Value, 1e-9);
        Assert.Null(MeetingHeight.At(mesh, new(5, 25), new(40 * share, -1, 60)));
        Assert.Null(MeetingHeight.At(mesh, new(30, 45), new(40 * share, 0, 60)));
        Assert.Equal(12, MeetingHeight.At(mesh, new(11, 25), new(40 * share, 0, 12))!.Value);
    }

    /// <summary>An upright edge is as near at every height: the end nearer to the place is told.</summary>
    [Fact]
    public void On_an_upright_edge_the_end_nearer_to_the_place_is_told()
    {
        var mesh = new Mesh([new(0, 0, 10), new(0, 0, 20), new(9, 0, 10)], [0, 1, 2], []);
        Assert.Equal(20, MeetingHeight.At(mesh, new(5, 25), new(0, 0, 30))!.Value, 1e-9);
        Assert.Equal(10, MeetingHeight.At(mesh, new(5, 25), new(0, 0, 2))!.Value, 1e-9);
    }

    [Fact]
    public void Poses_are_no_farther_apart_than_a_step_and_no_more_than_that_takes()
    {
        var track = Pieces.Straight(1500);
        var run = PoseRun.Of(new(track, []), Pieces.Coach(), false, 600, 900)!;
        double[] gaps = [.. run.Fronts.Zip(run.Fronts.Skip(1), (a, b) => b - a)];
        Assert.All(gaps[..^1], gap => Assert.Equal(PoseRun.Step, gap, 1e-9));
        Assert.InRange(gaps[^1], 0, PoseRun.Step + 1e-9);
        Assert.Equal(run.Fronts.Length, run.Poses.Length);

        // From clear air before the stretch to clear air after it: the coach is 262 long, its axles 188 apart.
        Assert.InRange(run.Fronts[0], 600 - 40 - 30, 600 - ((262 - 188) / 2));
        Assert.InRange(run.Fronts[^1], 900 + 188 + ((262 - 188) / 2), 900 + 262 + 30);
    }
}
