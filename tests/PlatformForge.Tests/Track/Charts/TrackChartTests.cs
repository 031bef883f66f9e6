using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Charts;
using Xunit;

namespace PlatformForge.Tests.Track.Charts;

public class TrackChartTests
{
    private static Centreline Kinked(params (double Length, double Curvature, double Turn)[] parts)
    {
        var elements = new List<CentrelineElement>();
        var (point, heading) = (new Point2(0, 0), 0.0);
        foreach (var (length, curvature, turn) in parts)
        {
            var element = new CentrelineElement(point, heading + turn, length, curvature, curvature);
            elements.Add(element);
            (point, heading) = (element.At(length).Position, element.HeadingAt(length));
        }

        return new("kinked", elements);
    }

    private static readonly Arbitrary<Centreline> Lines = Arb.From(
        from count in Gen.Choose(2, 6)
        from parts in Gen.ArrayOf(
            from length in Gen.Choose(5, 300)
            from curvature in Gen.Choose(-25, 25)
            from turn in Gen.Choose(-60, 60)
            select ((double)length, curvature / 10000.0, turn / 1000.0), count)
        select Kinked(parts));

    [Fact]
    public void A_track_without_kinks_is_its_own_chart()
    {
        var line = Kinked((300, 0, 0), (400, 0.002, 0));
        var chart = KinkRounder.Chart(line);
        Assert.Same(line, chart.Line);
        Assert.Equal(0, chart.Deviation);
    }

    [Fact]
    public void A_kink_between_straights_is_rounded_as_a_circle_touching_both_does()
    {
        // Tangent length a and turn w: radius a / tan(w/2), corner left by a (1 - cos(w/2)) / sin(w/2) (school geometry).
        const double turn = 0.04;
        var chart = KinkRounder.Chart(Kinked((200, 0, 0), (200, 0, turn)));
        var fillet = Assert.Single(chart.Fillets);
        Assert.Equal(10 / Math.Tan(turn / 2), fillet.LeastRadius, 6);
        double corner = 10 * (1 - Math.Cos(turn / 2)) / Math.Sin(turn / 2);
        Assert.InRange(chart.Deviation, corner, corner * 1.05);
        Assert.Equal(200, fillet.Kink.Chainage, 9);
    }

    [Fact]
    public void A_sharp_kink_gets_a_longer_rounding_where_there_is_room()
    {
        var chart = KinkRounder.Chart(Kinked((200, 0, 0), (200, 0, 0.2)));
        Assert.InRange(chart.Fillets[0].LeastRadius, 290, 310);
    }

    [Property(MaxTest = 100)]
    public Property Law_1_a_chart_has_no_kink() =>
        Prop.ForAll(Lines, ride => KinkRounder.Chart(ride).Line.Kinks.Count == 0);

    [Property(MaxTest = 60)]
    public Property Law_2_the_ride_line_is_nowhere_farther_from_its_chart_than_stated() =>
        Prop.ForAll(Lines, ride =>
        {
            var chart = KinkRounder.Chart(ride);
            double worst = 0;
            for (double s = 0; s <= ride.Length; s += 0.37)
            {
                worst = Math.Max(worst, Math.Abs(chart.Line.Locate(ride.At(s).Position, chart.FromRide(s)).Offset));
            }

            return worst <= chart.Deviation + 1e-9;
        });

    [Property(MaxTest = 60)]
    public Property Law_3_outside_the_fillets_chart_and_ride_line_are_the_same_points() =>
        Prop.ForAll(Lines, ride =>
        {
            var chart = KinkRounder.Chart(ride);
            for (double s = 0; s <= ride.Length; s += 1.7)
            {
                if (!chart.Fillets.Any(f => s > f.RideFrom && s < f.RideTo)
                    && (ride.At(s).Position - chart.Line.At(chart.FromRide(s)).Position).Length > 1e-9)
                {
                    return false;
                }
            }

            return true;
        });

    [Property(MaxTest = 60)]
    public Property Law_4_chainages_pass_to_the_chart_and_back_unchanged() =>
        Prop.ForAll(Lines, ride =>
        {
            var chart = KinkRounder.Chart(ride);
            for (double s = -20; s <= ride.Length + 20; s += 0.9)
            {
                if (Math.Abs(chart.ToRide(chart.FromRide(s)) - s) > 1e-9)
                {
                    return false;
                }
            }

            return true;
        });

    [Property(MaxTest = 60)]
    public Property A_place_beside_the_chart_is_found_again_by_chainage_and_offset() =>
        Prop.ForAll(Lines, Gen.Choose(-40, 40).ToArbitrary(), (ride, offset) =>
        {
            var line = KinkRounder.Chart(ride).Line;
            double sharpest = line.Elements.Max(e => Math.Abs(e.StartCurvature));
            double d = sharpest * Math.Abs(offset) < 0.5 ? offset : 0.5 / sharpest * Math.Sign(offset);
            for (double s = 0; s <= line.Length; s += 3.1)
            {
                var place = line.Locate(line.PointAt(s, d), s + 0.5);
                if (Math.Abs(place.Chainage - s) > 1e-7 || Math.Abs(place.Offset - d) > 1e-7)
                {
                    return false;
                }
            }

            return true;
        });
}
