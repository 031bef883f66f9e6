using FsCheck.Fluent;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Surveys.Admissible;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>The parts that carry the doubt of a survey to the reach of a vehicle, each by plain geometry on straight track.</summary>
public class DoubtFigureTests
{
    private static readonly Centreline Straight = DemoStock.Lay("up", new StraightSpec(3000));

    /// <summary>
    /// A line that is moved and turned as a whole takes the vehicle with it, so a place of any carrier moves by the line's own move there: the
    /// weights sum to 1 and their places to its place. A bogie
    /// whose pivot lies ahead of midway between its axles, and one without wheelbase, are no exception. What moves one axle by 1 moves a place by the lever.
    /// </summary>
    [Theory]
    [InlineData(PartCarrier.Body, 0)]
    [InlineData(PartCarrier.Body, 37)]
    [InlineData(PartCarrier.Body, -71)]
    [InlineData(PartCarrier.LeadingBogie, 0)]
    [InlineData(PartCarrier.LeadingBogie, 23)]
    [InlineData(PartCarrier.TrailingBogie, -9)]
    public void A_line_that_moves_as_a_whole_takes_every_place_with_it(PartCarrier carrier, double x)
    {
        foreach (bool turned in (bool[])[false, true])
        {
            var vehicle = new Vehicle("v", 100, 30, 44, [VehiclePart.Box("body", PartCarrier.Body, -80, 60, 30, 1, 9)])
            {
                LeadingPivotAhead = 4,
                TrailingPivotAhead = -5
            };
            Assert.True(turned ? PoseSolver.TryPlaceTurned(Straight, vehicle, 1050, out var pose) : PoseSolver.TryPlace(Straight, vehicle, 1050, out pose));
            var standing = new StandingPose(Straight, vehicle, pose, 1000, 1000);
            var measure = standing.Measure(carrier, x);
            Assert.Equal(carrier == PartCarrier.Body ? 4 : 2, measure.At.Length);
            double sign = Math.Sign(measure.Weights.Sum()), place = pose.Of(carrier).Apply(new(x, 0)).X - Straight.At(0).Position.X;
            Assert.Equal(turned ? -1 : 1, sign);
            Assert.Equal(1, sign * measure.Weights.Sum(), 1e-9);
            Assert.Equal(place, measure.At.Zip(measure.Weights, (s, w) => sign * w * s).Sum(), 1e-6);
        }
    }

    /// <summary>The lever of a body of 100 mm pivots over 30 and 40 mm bogies at 25 mm ahead of its middle: 3/4 and 1/4, half of it for each axle.</summary>
    [Fact]
    public void Each_axle_counts_by_its_lever()
    {
        var vehicle = new Vehicle("v", 100, 30, 40, [VehiclePart.Box("body", PartCarrier.Body, -80, 60, 30, 1, 9)]);
        Assert.True(PoseSolver.TryPlace(Straight, vehicle, 1050, out var pose));
        var standing = new StandingPose(Straight, vehicle, pose, 1000, 1000);
        Assert.Equal([(1065, 0.375), (1035, 0.375), (970, 0.125), (930, 0.125)], Rounded(standing.Measure(PartCarrier.Body, 25)));
        Assert.Equal([(1065, 0.8333), (1035, 0.1667)], Rounded(standing.Measure(PartCarrier.LeadingBogie, 10)));
        Assert.Equal([(970, 0.25), (930, 0.75)], Rounded(standing.Measure(PartCarrier.TrailingBogie, -10)));
        static IEnumerable<(double, double)> Rounded(LineMeasure m) => m.At.Zip(m.Weights, (s, w) => (Math.Round(s, 6), Math.Round(w, 4)));
    }

    /// <summary>Turned round, a vehicle's left is on the right and its leading end looks back.</summary>
    [Theory]
    [InlineData(false, 1020, 14, 9)]
    [InlineData(true, 980, 9, 14)]
    public void A_place_of_a_carrier_stands_where_it_is_drawn(bool turned, double at, double left, double right)
    {
        var vehicle = new Vehicle("v", 100, 30, 40, [VehiclePart.Box("body", PartCarrier.Body, -80, 60, 30, 1, 9)]);
        Assert.True(turned ? PoseSolver.TryPlaceTurned(Straight, vehicle, 1050, out var pose) : PoseSolver.TryPlace(Straight, vehicle, 1050, out pose));
        var trace = new StandingPose(Straight, vehicle, pose, 1000, 1000).Place(Straight, PartCarrier.Body, 20, 14, 9, new(-0.5, 2));
        Assert.Equal((at, left), (Math.Round(trace.LeftAt, 6), Math.Round(trace.LeftReach, 6)));
        Assert.Equal((at, right), (Math.Round(trace.RightAt, 6), Math.Round(trace.RightReach, 6)));
        Assert.Equal(turned ? (-2, 0.5) : (-0.5, 2), (Math.Round(trace.Moves.Least, 9), Math.Round(trace.Moves.Most, 9)));
    }

    /// <summary>
    /// A place that may move 2 mm to the left and 0.5 to the right reaches 2 farther or 0.5 less to the left, 0.5 farther or 2 less to the right.
    /// </summary>
    [Fact]
    public void What_may_move_to_one_side_reaches_less_to_the_other()
    {
        var sheet = new DoubtSheet(100, 160, 10);
        var vehicle = new Vehicle("v", 100, 30, 40, [VehiclePart.Box("body", PartCarrier.Body, -80, 60, 30, 1, 9)]);
        sheet.Add(null, new(90, 12, 90, 11, new(-0.5, 2)));
        Assert.All(sheet.Of(0, vehicle, vehicle.Parts[0]).Left, r => Assert.Equal(default, r));
        sheet.Add(new DoubtTrace(105, 12, 115, 11, new(-0.5, 2)), new(135, 12, 145, 11, new(-0.5, 2)));
        var doubt = sheet.Of(3, vehicle, vehicle.Parts[0]);
        Assert.Equal((3, 100, 10, 7, 7), (doubt.Run, doubt.From, doubt.Spacing, doubt.Left.Count, doubt.Right.Count));
        Assert.Equal([default, new(-0.5, 2), new(-0.5, 2), new(-0.5, 2), default, default, default], doubt.Left);
        Assert.Equal([default, default, new(-2, 0.5), new(-2, 0.5), new(-2, 0.5), default, default], doubt.Right);
        Assert.Equal(new(-0.25, 1), doubt.At(Side.Left, 105));
        Assert.Equal(new(-2, 0.5), doubt.At(Side.Right, 125));
        Assert.Equal(default, doubt.At(Side.Right, 1e6));
        Assert.Equal(default, doubt.At(Side.Left, -1e6));
    }

    /// <summary>
    /// On straight track that may lie 0.8 mm off at every place, each by itself, a box of 100 mm pivots turns about its axles: its ends go aside by
    /// the lever of x over half the pivots. At the most it
    /// reaches so much farther; at the least it reaches 0.8 less, since some place between the pivots comes by that no line moves by more.
    /// </summary>
    [Theory]
    [InlineData(100, 1.6)]
    [InlineData(50, 0.8)]
    [InlineData(75, 1.2)]
    public void A_band_of_doubt_reaches_the_ends_by_their_lever(double end, double most)
    {
        var vehicle = new Vehicle("v", 100, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -end, end, 30, 1, 9)]);
        var request = new EnvelopeRequest(Straight, 1000, 1200, [new(Straight, [vehicle])]);
        var doubt = Assert.Single(SurveyDoubt.Of(request, 0, new BandDoubt(_ => 0.8)));
        Assert.All(doubt.Left.Concat(doubt.Right), r => Assert.Equal((-0.8, most), (Math.Round(r.Least, 6), Math.Round(r.Most, 6))));
        var swept = EnvelopeSweeper.Sweep(request).Value!;
        Assert.All(swept.With([doubt]).Composite(Side.Left).Reach.Zip(swept.Composite(Side.Left).Reach, (a, b) => a - b), d => Assert.Equal(most, d, 1e-5));
    }

    /// <summary>The place that a survey moves farthest at a chainage is an end of the part, two pivots' lever out.</summary>
    [Fact]
    public void The_measure_that_governs_is_that_of_the_end()
    {
        var vehicle = new Vehicle("v", 100, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -100, 100, 30, 1, 9)]);
        var request = new EnvelopeRequest(Straight, 1000, 1200, [new(Straight, [vehicle])]);
        foreach (var (side, sign) in new[] { (Side.Left, 1), (Side.Right, -1) })
        {
            var measure = SurveyDoubt.Widest(request, 0, vehicle, vehicle.Parts[0], side, 1100, new BandDoubt(_ => 0.8))!.Value;
            Assert.Equal(sign, measure.Weights.Sum(), 1e-9);
            Assert.Equal(2, measure.Weights.Sum(Math.Abs), 1e-6);
            Assert.Equal(1100, measure.At.Zip(measure.Weights, (s, w) => sign * s * w).Sum(), SurveyDoubt.Step + 1e-6);
        }
    }

    /// <summary>Half widths of a slanting ring on the straight lines between its corners, with what play adds.</summary>
    [Fact]
    public void An_outline_is_told_by_its_half_widths()
    {
        Point2[] ring = [new(-10, -3), new(20, -6), new(20, 8), new(-10, 2)];
        var outline = new PartOutline(ring, 4, x => 0.01 * (x + 10));
        Assert.Equal([-10, 0, 20], outline.Ends);
        Assert.Equal((-10, 20), (outline.Places[0].X, outline.Places[^1].X));
        Assert.Contains(outline.Places, p => p.X == 0);
        Assert.All(outline.Places.Zip(outline.Places.Skip(1)), p => Assert.InRange(p.Second.X - p.First.X, 1e-12, 4));
        Assert.All(outline.Places, p => Assert.Equal((Math.Round(2 + ((p.X + 10) * (0.2 + 0.01)), 9), Math.Round(3 + ((p.X + 10) * (0.1 + 0.01)),
            9)), (Math.Round(p.Left, 9), Math.Round(p.Right, 9))));
        Assert.Equal([30, 40, 50], new PartOutline([new(30, -1), new(50, -1), new(50, 1), new(30, 1)], 100, _ => 0).Ends);

        LineRange[] ends = [new(-1, 1), new(0, 3), new(-2, 7)];
        Assert.Equal(new(-0.5, 2), outline.Between(ends, -5));
        Assert.Equal(new(-1, 5), outline.Between(ends, 10));
        Assert.Equal(ends[0], outline.Between(ends, -50));
        Assert.Equal(ends[2], outline.Between(ends, 50));
        Assert.Equal(ends[1], outline.Between(ends, 0));
    }

    /// <summary>
    /// Two bodies 4 mm apart, the one behind turned 0.1 rad about the middle of its front: on half widths of 15 its corners lie 15·sin of it to and
    /// fro, along the mean of both directions.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_space_between_two_bodies_is_measured_along_their_mean(bool turned)
    {
        var body = new Vehicle("v", 100, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -60, 70, 30, 1, 9)]);
        double way = turned ? -1 : 1, rear = turned ? 70 : 60, front = turned ? 60 : 70;
        Point2 along = new(1, 0), leaning = Point2.FromAngle(0.1), end = new(200, 50);
        var ahead = PoseOf((end + (along * (4 + rear))), along * way);
        var behind = PoseOf(end - (leaning * front), leaning * way);
        var (left, right) = PlatformForge.Clearance.JointSurvey.Opening((body, ahead), (body, behind), turned);

        // Along the mean, 0.05 from both: 4·cos 0.05, and each end stands out or back by 15·sin 0.05.
        Assert.Equal((4 * Math.Cos(0.05)) + (30 * Math.Sin(0.05)), left, 1e-9);
        Assert.Equal((4 * Math.Cos(0.05)) - (30 * Math.Sin(0.05)), right, 1e-9);
        static VehiclePose PoseOf(Point2 origin, Point2 forward) => new(0, new(origin, forward), default, default);
    }
}
