using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Fitting.Lines;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys;

/// <summary>
/// Sectional track on a curve, six pieces of 170 mm with kinks at some of their joints, measured by points: kinks are kept as
/// kinks, in their places, and not drawn as short curves. R 505 mm is a radius of sectional track (common practice, no source).
/// </summary>
public class SectionalTrackTests
{
    private const int Pieces = 6;

    // A rate of 95 in 100 is not told by fewer kinks than so many surveys have: where few are asked for, one more may be missed.
    private static readonly int Surveys = Simulations.Of(24, 200);

    private const double Piece = 170, Degree = Math.PI / 180;

    [Theory]
    [InlineData(505, 25, 0.1, 2)]
    [InlineData(505, 40, 0.2, 4)]
    public void Kinks_in_a_sharp_curve_are_found_in_their_places(double radius, double spacing, double rulerError, double degrees)
    {
        int kinks = 0, found = 0, others = 0, inside = 0;
        Parallel.For(0, Surveys, k =>
        {
            var random = new Random(k);
            var line = Laid(radius, degrees * Degree, random);
            var track = TrackSurveyor.Tried(Measured(line, spacing, rulerError, random))!;
            var left = track.Line.Kinks.ToList();
            int here = 0;
            foreach (var kink in line.Kinks)
            {
                int at = left.FindIndex(f => Math.Abs(f.Chainage - kink.Chainage) < spacing && Math.Abs(f.Turn - kink.Turn) < 0.4 * Math.Abs(kink.Turn));
                if (at >= 0)
                {
                    left.RemoveAt(at);
                    here++;
                }
            }

            Interlocked.Add(ref kinks, line.Kinks.Count);
            Interlocked.Add(ref found, here);
            Interlocked.Add(ref others, left.Count);
            Interlocked.Add(ref inside, IsInside(line, track) ? 1 : 0);
        });
        string told = $"{found} of {kinks} kinks found, {others} where there is none, {inside} of {Surveys} within the bound";
        Assert.True(Simulations.AreAt(0.95, found, kinks), told);
        Assert.True(others < (0.05 * kinks) + (Simulations.TellsRates ? 0 : 1), told);
        Assert.True(Simulations.AreAt(SurveyMovement.Coverage, inside, Surveys), told);
    }

    [Fact]
    public void A_sharp_curve_of_sectional_track_without_kinks_has_none()
    {
        Parallel.For(0, Surveys, k =>
        {
            var random = new Random(k);
            var track = TrackSurveyor.Tried(Measured(Laid(505, 0, random), 25, 0.2, random))!;
            Assert.Empty(track.Line.Kinks);
        });
    }

    [Fact]
    public void Short_curves_that_may_be_kinks_are_told_as_that()
    {
        // 60 mm of a sharp curve in a gentle one, which nobody lays, measured so finely that it shows for what it is.
        var line =
            TrackLayer.Lay(new("t", new(10, 20), 0.3, [new CurveSpec(600, Hand.Left, 300), new CurveSpec(300, Hand.Left, 60),
                new CurveSpec(600, Hand.Left, 300)])).Value!;
        var outcome = TrackSurveyor.Fit(Measured(line, 20, 0.1, new Random(5)));
        Assert.Empty(outcome.Value!.Line.Kinks);
        var told = Assert.Single(outcome.Findings, f => f.Code == "PF2144");

        // Who says that joints turn by less than that is told of none.
        var pieces = Laying.Usual(76.2, LaidAs.Sectional);
        Finding[] Said(double most) =>
            [.. TrackSurveyor.Fit(Measured(line, 20, 0.1, new Random(5)) with { Laying = pieces with { GreatestKink = most * Degree } }).Findings
                .Where(f => f.Code == "PF2144")];
        Assert.Empty(Said(2));
        Assert.Single(Said(8));

        // What it turns by more than its neighbours do: 60 mm of 1/300 less 1/600.
        var degrees = Regex.Match(told.Message, @"kink of ([\d.]+)° to the left");
        Assert.True(degrees.Success, told.Message);
        Assert.Equal(60 * ((1 / 300.0) - (1 / 600.0)) / Degree, double.Parse(degrees.Groups[1].Value, CultureInfo.InvariantCulture), 0.6);
    }

    private static Centreline Laid(double radius, double turn, Random random)
    {
        var elements = new List<AlignmentElementSpec>();
        for (int i = 0; i < Pieces; i++)
        {
            if (i > 0 && turn > 0 && random.Next(3) > 0)
            {
                elements.Add(new KinkSpec(turn, random.Next(4) == 0 ? Hand.Right : Hand.Left));
            }

            elements.Add(new CurveSpec(radius, Hand.Left, Piece));
        }

        return TrackLayer.Lay(new("t", new(10, 20), 0.3, elements)).Value!;
    }

    private static PlaceSurvey Measured(Centreline line, double spacing, double rulerError, Random random)
    {
        double Error() => rulerError * ((2 * random.NextDouble()) - 1);
        int count = (int)(line.Length / spacing) + 1;
        var places = Enumerable.Range(0, count)
            .Select(i => new PlaceReading("f", i + 2, LengthUnit.Millimetre, line.At(line.Length * i / (count - 1)).Position + new Point2(Error(), Error()),
                0));
        return new PlaceSurvey("t", "k", rulerError, [places.ToArray()]);
    }

    private static bool IsInside(Centreline truth, SurveyedTrack track)
    {
        for (double s = 5; s < track.Line.Length - 5; s += 5)
        {
            if (!(Math.Abs(truth.Locate(track.Line.At(s).Position, s).Offset) <= track.Movement.At(s)))
            {
                return false;
            }
        }

        return true;
    }
}
