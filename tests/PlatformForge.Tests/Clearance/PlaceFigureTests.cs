using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>Where vehicles are tried, and which of them governs, by plain counting on simple track.</summary>
public class PlaceFigureTests
{
    private static readonly Centreline Straight = DemoStock.Lay("up", new StraightSpec(3000));

    /// <summary>
    /// From one step before a vehicle's farthest corner can come to the first station up to one step after the last, ten by ten: a body that ends 80
    /// mm from its middle from 1000 − 80 − 10, a bogie's part of
    /// 45 mm on pivots of 100 mm from 1000 − 95 − 10.
    /// </summary>
    [Theory]
    [InlineData(80, 10, 910, 1290)]
    [InlineData(80, 45, 895, 1305)]
    public void Poses_are_tried_wherever_a_vehicle_can_reach_a_station(double end, double truck, double first, double last)
    {
        var vehicle = new Vehicle("v", 100, 30, 40, [VehiclePart.Box("body", PartCarrier.Body, -end, end - 20, 30, 1, 9), VehiclePart.Box("truck",
            PartCarrier.LeadingBogie, -truck, truck, 20, 1, 9)])
        { EitherWayRound = false };
        var poses = Assert.Single(DoubtPoses.Of(new(Straight, 1000, 1200, [new(Straight, [vehicle])]), Straight, vehicle, 10));
        Assert.Equal(((last - first) / 10) + 1, poses.Count, 1e-9);
        Assert.All(poses, (p, i) => Assert.Equal(first + (10 * i), p.Guess, 1e-6));
    }

    /// <summary>
    /// A vehicle that runs either way round is tried both ways unless it looks the same: a place ahead of its middle lies ahead in one and behind in
    /// the other.
    /// </summary>
    [Theory]
    [InlineData(false, 30, -60, 60, 1)]
    [InlineData(true, 30, -60, 60, 1)]
    [InlineData(true, 40, -60, 60, 2)]
    [InlineData(true, 30, -60, 70, 2)]
    public void Both_ways_round_are_tried_where_they_differ(bool eitherWay, double trailing, double rear, double front, int ways)
    {
        var vehicle = new Vehicle("v", 100, 30, trailing, [VehiclePart.Box("body", PartCarrier.Body, rear, front, 30, 1, 9)]) { EitherWayRound = eitherWay };
        var tried = DoubtPoses.Of(new(Straight, 1000, 1200, [new(Straight, [vehicle])]), Straight, vehicle, 10);
        Assert.Equal(ways, tried.Count);
        for (int way = 0; way < ways; way++)
        {
            var pose = tried[way][5];
            Assert.Equal(pose.Guess + (way == 0 ? 20 : -20), pose.Place(Straight, PartCarrier.Body, 20, 1, 1, default).LeftAt, 1e-6);
        }
    }

    /// <summary>Beside a vehicle that is the wider one everywhere a narrow one is never the tightest.</summary>
    [Fact]
    public void Only_what_governs_somewhere_is_shown_as_the_tightest()
    {
        Vehicle wide = DemoStock.Coach("wide", 200, 140, 36), narrow = DemoStock.Coach("narrow", 100, 70, 30);
        var request = new EnvelopeRequest(Straight, 1000, 1200, [new(Straight, [narrow, wide])]);
        var envelope = EnvelopeSweeper.Sweep(request).Value!;
        Assert.Same(wide, Assert.Single(PoseFinder.Tightest(request, envelope, envelope.Composite(Side.Left))).Vehicle);
    }

    [Fact]
    public void Where_no_part_is_of_that_height_nothing_governs()
    {
        var envelope = EnvelopeSweeper.Sweep(new(Straight, 1000, 1200, [new(Straight, [DemoStock.Coach("coach", 200, 140, 36)])])).Value!; // 4 to 50 mm
        foreach (var line in new[] { envelope.Composite(Side.Left, 50, 60), envelope.Composite(Side.Right, 0, 4) })
        {
            Assert.All(line.Governing, g => Assert.Equal(-1, g));
            Assert.All(line.Reach, r => Assert.True(double.IsNegativeInfinity(r)));
        }

        Assert.All(envelope.Composite(Side.Left, 49.9, 60).Governing, g => Assert.Equal(0, g));
    }

    /// <summary>On all but a whole circle of R 600 the start lies beside the end: a vehicle at either is told at its own.</summary>
    [Fact]
    public void A_vehicle_at_the_start_of_a_ring_is_not_taken_for_one_at_its_end()
    {
        var ring = DemoStock.Lay("ring", new CurveSpec(600, Hand.Left, Length: 600 * 2 * Math.PI * 0.97));
        var vehicle = new Vehicle("v", 100, 0, 20, [VehiclePart.Box("body", PartCarrier.Body, -80, 60, 30, 1, 9)]) { EitherWayRound = false };

        // A corner so many mm from midway between the pivots lies at the angle whose tangent is that over 600·cos of half the pivots' angle, less or
        // more half the width.
        double middle = Math.Sqrt((600.0 * 600) - (50.0 * 50));
        Assert.Equal((600 * Math.Atan2(60, middle - 15)) + 10 + 50, KnownTrack.Reached(ring, ring, vehicle, atStart: true)!.Value, 0.3);
        Assert.Equal(ring.Length - (600 * Math.Atan2(80, middle - 15)) - 50, KnownTrack.Reached(ring, ring, vehicle, atStart: false)!.Value, 0.3);
    }

    [Fact]
    public void Kinks_of_two_stretches_add_up()
    {
        var bent = new Centreline("bent", [new(default, 0, 500, 0, 0), new(new(500, 0), 0.05, 500, 0, 0), new(new Point2(500,
            0) + (Point2.FromAngle(0.05) * 500), 0.02, 500, 0, 0)]);
        Assert.Equal(0.08, CurvatureSpan.Over(bent, 400, 600).Join(CurvatureSpan.Over(bent, 900, 1100)).KinkTurn, 1e-12);
        Assert.Equal(0.08, CurvatureSpan.Over(bent, 400, 1100).KinkTurn, 1e-12);
    }

    /// <summary>A lean of 45 degrees and more all told is no lean.</summary>
    [Theory]
    [InlineData(0.39, 0.39, true)]
    [InlineData(0.40, 0.39, false)]
    public void Roll_and_cant_stay_under_45_degrees_together(double roll, double cant, bool sound)
    {
        var request = new EnvelopeRequest(Straight, 1000, 1200, [new(Straight, [DemoStock.Coach("coach", 200, 140, 36)])])
        {
            Play = new(0, 0, roll,
            10)
            { Cant = cant }
        };
        Assert.Equal(sound ? [] : ["PF3003"], RequestRule.Findings(request).Select(f => f.Code));
    }

    /// <summary>
    /// Equal bogies under a body whose door sill is not in the middle: run either way round the sill stands where it stands one way and where it
    /// stands turned.
    /// </summary>
    [Fact]
    public void A_sill_that_is_not_in_the_middle_is_surveyed_both_ways_round()
    {
        var track = DemoStock.Lay("up", new StraightSpec(500), new CurveSpec(500, Hand.Left, Length: 900));
        var drawn = new Vehicle("v", 120, 30, 30, [VehiclePart.Box("body", PartCarrier.Body, -110, 110, 30, 1, 20)]) { Sill = new(15, 14, -40, 100) };
        SillReach Of(DoorSill sill, bool eitherWay) => Assert.Single(SillSurvey.Over(new(track, 420, 760, [new(track, [drawn with { Sill = sill,
            EitherWayRound = eitherWay }])]), Side.Right));
        SillReach both = Of(new(15, 14, -40, 100), true), one = Of(new(15, 14, -40, 100), false), other = Of(new(15, 14, -100, 40), false);
        Assert.All(Enumerable.Range(0, both.Greatest.Length), i => Assert.Equal(Math.Max(one.Greatest[i], other.Greatest[i]), both.Greatest[i], 1e-6));
        Assert.All(Enumerable.Range(0, both.Least.Length), i => Assert.Equal(Math.Min(one.Least[i], other.Least[i]), both.Least[i], 1e-6));
        Assert.Contains(Enumerable.Range(0, both.Greatest.Length), i => other.Greatest[i] > one.Greatest[i] + 0.05);
    }
}
