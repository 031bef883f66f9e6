using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys;

/// <summary>Surveys made up from known lines with reading errors spread evenly within the ruler error, in both directions.</summary>
public class SimulatedSurveyTests
{
    private const int Surveys = 100;
    private const double RulerError = 0.25;

    // A hundred surveys over these lines in turn, a reading every 40 mm or so.
    private static readonly Centreline[] Lines =
    [
        Lay(new StraightSpec(300), new TransitionSpec(260, 760, Hand.Left), new CurveSpec(760, Hand.Left, 620), new TransitionSpec(200, 1500, Hand.Left), new CurveSpec(1500, Hand.Left, 20)),
        Lay(new StraightSpec(400), new CurveSpec(610, Hand.Left, 500), new StraightSpec(400)),
        Lay(new StraightSpec(200), new TransitionSpec(150, 500, Hand.Right), new CurveSpec(500, Hand.Right, 500), new TransitionSpec(150, null, Hand.Right), new StraightSpec(200)),
        Lay(new CurveSpec(900, Hand.Left, 1200)),
        Lay(new StraightSpec(1200)),
    ];

    private static Centreline Lay(params AlignmentElementSpec[] elements) => TrackLayer.Lay(new("t", new(10, 20), 0.3, elements)).Value!;

    private static Point2[] Measure(Centreline line, Random random)
    {
        int count = (int)(line.Length / 40) + 1;
        double U() => RulerError * ((2 * random.NextDouble()) - 1);
        return [.. Enumerable.Range(0, count).Select(i => line.At(line.Length * i / (count - 1)).Position + new Point2(U(), U()))];
    }

    private static SurveyedTrack Fit(Point2[] points) =>
        TrackSurveyor.Fit(new PlaceSurvey("t", "k", RulerError, [points.Select((p, i) => new PlaceReading("f", i + 2, LengthUnit.Millimetre, p, 0)).ToArray()])).Value!;

    [Fact]
    public void The_true_line_lies_within_the_stated_bound_at_the_stated_rate_and_good_readings_are_not_blamed()
    {
        int inside = 0, blamed = 0;
        for (int k = 0; k < Surveys; k++)
        {
            var line = Lines[k % Lines.Length];
            var track = Fit(Measure(line, new Random(k)));
            bool within = true;
            for (double s = 5; s < track.Line.Length - 5; s += 5)
            {
                within &= Math.Abs(line.Locate(track.Line.At(s).Position, s).Offset) <= track.Movement.At(s);
            }

            inside += within ? 1 : 0;
            blamed += track.Outliers.Any() ? 1 : 0;
        }

        Assert.True(inside >= SurveyMovement.Coverage * Surveys, $"{inside} of {Surveys} within the bound");
        Assert.True(blamed < 5, $"{blamed} of {Surveys} with a good reading blamed");
    }

    [Fact]
    public void A_reading_off_by_five_ruler_errors_is_named_in_at_least_95_of_100_surveys()
    {
        int named = 0;
        for (int k = 0; k < Surveys; k++)
        {
            var random = new Random(1000 + k);
            var line = Lines[k % Lines.Length];
            var points = Measure(line, random);
            int bad = random.Next(2, points.Length - 2);
            double chainage = line.Length * bad / (points.Length - 1);
            points[bad] += line.At(chainage).Tangent.Left * (5 * RulerError * ((random.Next(2) * 2) - 1));
            var outliers = Fit(points).Outliers.ToList();
            named += outliers.Exists(o => o.Reading.Row == bad + 2) ? 1 : 0;
        }

        Assert.True(named >= 95, $"{named} of {Surveys} named");
    }
}
