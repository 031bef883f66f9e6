using PlatformForge.Geometry;
using PlatformForge.Tests.Track.Surveys.Admissible;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Remarks;
using PlatformForge.Track.Surveys.Results;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys;

/// <summary>What is said of readings, of joints and of the laying is held to what it is.</summary>
public class SayingOfReadingsTests
{
    private static readonly Centreline Curve = TrackLayer.Lay(new("curve", new(10, 20), 0.3,
        [new StraightSpec(300), new TransitionSpec(220, 560, Hand.Left), new CurveSpec(560, Hand.Left, Length: 350), new TransitionSpec(220, null, Hand.Left),
            new StraightSpec(350)])).Value!;

    /// <summary>A misread first figure has one account: the fit's kink there is that reading's, not the track's, and flexible track is not contradicted by
    /// it.</summary>
    [Theory]
    [InlineData(2.6)]
    [InlineData(-3)]
    public void The_first_reading_misread_is_told_once(double off)
    {
        var found = TrackSurveyor.Fit(Changed(MadeUpSurvey.String(Curve, new Random(2), 50, 0.25, MadeUpSurvey.Flexible), (i, o) => i == 0 ? o + off : o));
        Assert.Single(found.Findings, f => f.Code is "PF2120" or "PF2145" or "PF2161" or "PF2124" or "PF2190" or "PF2191");
        Assert.True(found.Value!.IsBoundAsFlexible);
        Assert.Equal(2, found.Value.Outliers.Concat(found.Value.Doubted).Single().Reading.Row);
    }

    /// <summary>Figures all written to half a millimetre are off by a fourth of one: less than that is not to be claimed of them, more is.</summary>
    [Theory]
    [InlineData(0.5, 0.1, true)]
    [InlineData(0.5, 0.25, false)]
    [InlineData(1, 0.25, true)]
    [InlineData(0.1, 0.1, false)]
    public void Rounding_coarser_than_the_ruler_error_is_told(double step, double error, bool told)
    {
        var survey = Changed(MadeUpSurvey.String(Curve, new Random(3), 60, 0.05, MadeUpSurvey.Flexible), (_, o) => Math.Round(o / step) * step)
            with
        { RulerError = error };
        Assert.Equal(told, RoundingRule.Check(survey) is { Code: "PF2202" });
    }

    /// <summary>Joints beyond the readings are told as that; no reading is blamed, and the bound is the one without joints.</summary>
    [Fact]
    public void Joints_beyond_the_readings_blame_no_reading()
    {
        var survey = MadeUpSurvey.String(Curve, new Random(4), 60, 0.25, MadeUpPieces.Said([5000], []));
        var found = TrackSurveyor.Fit(survey);
        Assert.Contains(found.Findings, f => f.Code == "PF2199");
        Assert.DoesNotContain(found.Findings, f => f.Code is "PF2192" or "PF2193" or "PF2197" or "PF2120");
        Assert.Null(found.Value!.Sectional);
    }

    /// <summary>Radii that no piece has are told as that, not as a joint off its place, and the joints still bound the line.</summary>
    [Fact]
    public void False_radii_are_told_as_radii()
    {
        int told = 0;
        for (int k = 0; k < 4; k++)
        {
            var (line, joints) = MadeUpPieces.Pieces(new Random(300 + k));
            double radius = 1 / line.Elements.Max(e => Math.Abs(e.StartCurvature)), other = MadeUpPieces.Radii.MaxBy(r => Math.Abs(r - radius));
            var found = TrackSurveyor.Fit(MadeUpPieces.Told(MadeUpSurvey.String(line, new Random(k), 50, 0.25, MadeUpPieces.Said(joints, [other])), line));
            Assert.DoesNotContain(found.Findings, f => f.Code == "PF2197");
            told += found.Findings.Any(f => f.Code is "PF2200" or "PF2193" or "PF2192") ? 1 : 0;
        }

        Assert.True(told >= 3, $"{told}");
    }

    /// <summary>Good readings of pieces whose joints are stated are not named; a misread one among close readings is.</summary>
    [Fact]
    public void Stated_joints_speak_for_good_readings_and_not_for_a_misread_one()
    {
        int good = 0, misread = 0;
        for (int k = 0; k < 4; k++)
        {
            var (line, joints) = MadeUpPieces.Pieces(new Random(700 + k));
            SurveyedTrack Fitted(double off) =>
                TrackSurveyor.Fit(MadeUpPieces.Told(MadeUpSurvey.String(line, new Random(k), 50, 0.25, MadeUpPieces.Said(joints, MadeUpPieces.Radii), off),
                    line)).Value!;
            good += Fitted(0) is var clean && clean.Outliers.Concat(clean.Doubted).Any() ? 1 : 0;
            misread += Fitted(2.5) is var spoilt && spoilt.Outliers.Concat(spoilt.Doubted).Any() ? 1 : 0;
        }

        Assert.True(good == 0 && misread >= 3, $"{good} good ones named, {misread} misread ones");
    }

    /// <summary>What is said of the laying means nothing to versines, and is told so.</summary>
    [Theory]
    [InlineData(LaidAs.Flexible, 1)]
    [InlineData(LaidAs.Unknown, 0)]
    public void Laying_said_of_versines_is_told_to_mean_nothing(LaidAs laid, int told)
    {
        VersineReading[] readings =
            [.. Enumerable.Range(0, 12).Select(i => new VersineReading("v", i + 2, LengthUnit.Millimetre, 100 * (i + 1), i is > 2 and < 9 ? 6.5 : 0.1))];
        var survey = new VersineSurvey("up", "track[0].survey", 0.25, readings, 200, new Point2(0, 0), 0, 0, null) { Laying = Laying.Usual(76.2, laid) };
        Assert.Equal(told, TrackSurveyor.Fit(survey).Findings.Count(f => f.Code == "PF2201"));
    }

    /// <summary>The shorter the ease that is said, the wider the bound; the shortest ones are taken as one, so that their nodes are counted.</summary>
    [Fact]
    public void Eases_of_next_to_nothing_are_bounded_alike()
    {
        Laying With(double ease) => MadeUpSurvey.Flexible with { LeastEase = ease };
        Assert.Equal(With(0.01).Rate, With(5).Rate);
        Assert.True(With(7).Rate > With(50).Rate && With(5).Smoothed is > 0.01 and < 0.03 && With(7).Smoothed == 0);
        Assert.Equal((380, 200), (Laying.Usual(76.2).LeastRadius, Laying.Usual(76.2).Ease));
    }

    private static PlaceSurvey Changed(PlaceSurvey survey, Func<int, double, double> offset) => survey with
    {
        Runs = [[.. survey.Runs[0].Select((r, i) => (Reading: r, Of: r.Ordinate!, New: offset(i, r.Ordinate!.Offset)))
            .Select(p => p.Reading with { Place = p.Of.Foot + (p.Of.Square * p.New), Ordinate = p.Of with { Offset = p.New } })]],
    };
}
