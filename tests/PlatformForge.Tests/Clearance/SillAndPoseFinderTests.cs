using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Clearance;

public class SillAndPoseFinderTests
{
    private static readonly Centreline Curve = DemoStock.Lay("curve", new CurveSpec(760, Hand.Left, Angle: 3));
    private static readonly Vehicle Coach = DemoStock.Coach("coach", 262, 188, 34.5);
    private static readonly EnvelopeRequest Request = new(Curve, 900, 1300, [new(Curve, [Coach])]);

    /// <summary>On a circle the sill runs from the centre throw at mid-length to the end throw at the corners (formulae of STANDARDS F1–F3, derived).</summary>
    [Fact]
    public void Sill_lies_between_centre_throw_and_end_throw_on_a_circular_curve()
    {
        double h = Math.Sqrt((760.0 * 760) - (188.0 * 188 / 4)), half = 17.25, end = Math.Sqrt(((h + half) * (h + half)) + (131.0 * 131)) - 760;
        var outside = Assert.Single(SillSurvey.Over(Request, Side.Right));
        Assert.All(outside.Greatest, r => Assert.Equal(end, r, 0.01));
        Assert.All(outside.Least, r => Assert.Equal(h + half - 760, r, 0.01));
        var inside = Assert.Single(SillSurvey.Over(Request, Side.Left));
        Assert.All(inside.Greatest, r => Assert.Equal(760 - h + half, r, 0.01));
        Assert.All(inside.Least, r => Assert.Equal(760 - Math.Sqrt(((h - half) * (h - half)) + (131.0 * 131)), r, 0.01));
    }

    /// <summary>Where a straight runs into a curve of 450 mm a sill's ends move aside by a third of a millimetre from pose to pose. Poses 0.15 mm apart, chords
    /// by false position.</summary>
    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void Sills_at_the_beginning_of_a_curve_are_those_of_fine_steps(Side side)
    {
        var track = DemoStock.QuillhavenTrack();
        var coach = DemoStock.Quillhaven[0];
        var sill = Assert.Single(SillSurvey.Over(new(track, 230, 330, [new(track, [coach])]), side));
        for (int k = 0; k < sill.Greatest.Length; k += 2)
        {
            double s = sill.From + (k * sill.Spacing), y = (int)side * coach.Sill!.HalfWidth;
            double[] offsets = [.. Enumerable.Range(0, 1001).Select(i =>
            {
                var body = BruteSweep.Place(track, coach, s - 76 + (coach.PivotCentres / 2) + (i * 0.152)).Body;
                Point2 At(double x) => body.Origin + (x * body.Along) + (y * new Point2(-body.Along.Y, body.Along.X));
                return (int)side * Crossing(track.At(s), At(coach.Sill.FromX), At(coach.Sill.ToX));
            }).Where(double.IsFinite)];
            Assert.Equal(offsets.Max(), sill.Greatest[k], 0.02);
            Assert.Equal(offsets.Min(), sill.Least[k], 0.02);
        }
    }

    [Fact]
    public void Sill_never_reaches_beyond_the_envelope()
    {
        var track = DemoStock.PendlewickTrack();
        var request = new EnvelopeRequest(track, 270, 1000, [new(track, DemoStock.Pendlewick)]);
        var envelope = EnvelopeSweeper.Sweep(request).Value!;
        foreach (var sill in SillSurvey.Over(request, Side.Right))
        {
            var line = envelope.Composite(Side.Right);
            Assert.All(Enumerable.Range(0, sill.Greatest.Length),
                i => Assert.InRange(sill.Greatest[i], sill.Least[i], line.At(sill.From + (i * sill.Spacing)) + 1e-3));
        }
    }

    [Fact]
    public void The_pose_found_reaches_as_far_as_the_envelope_says()
    {
        var track = DemoStock.QuillhavenTrack();
        var request = new EnvelopeRequest(track, 400, 600, [new(track, DemoStock.Quillhaven)]);
        var envelope = EnvelopeSweeper.Sweep(request).Value!;
        foreach (double s in new[] { 420.0, 450, 480, 550 })
        {
            foreach (var part in envelope.Parts)
            {
                var pose = PoseFinder.Farthest(request.Runs[0], track, part.Vehicle, part.Part, Side.Left, s)!;
                var ring = pose.Parts.Single(p => ReferenceEquals(p.Part, part.Part)).Ring;
                var truth = ring.Select((p, i) => Crossing(track.At(s), p, ring[(i + 1) % ring.Count])).Max();
                Assert.Equal(new ReachLine(Side.Left, envelope.From, envelope.Spacing, part.Left, []).At(s), truth, 0.03);
            }
        }
    }

    [Fact]
    public void Tightest_poses_name_each_vehicle_that_governs()
    {
        var track = DemoStock.QuillhavenTrack();
        var request = new EnvelopeRequest(track, 400, 700, [new(track, DemoStock.Quillhaven)]);
        var envelope = EnvelopeSweeper.Sweep(request).Value!;
        var poses = PoseFinder.Tightest(request, envelope, envelope.Composite(Side.Left));
        Assert.Equal(["long coach", "tank engine"], poses.Select(p => p.Vehicle.Name).Order(StringComparer.Ordinal));
    }

    private static double Crossing(TrackFrame frame, Point2 a, Point2 b)
    {
        double x = Point2.Dot(a - frame.Position, frame.Tangent), y = Point2.Dot(b - frame.Position, frame.Tangent);
        return x * y > 0 ? double.NegativeInfinity : Point2.Cross(frame.Tangent, a + ((b - a) * (x / (x - y))) - frame.Position);
    }
}
