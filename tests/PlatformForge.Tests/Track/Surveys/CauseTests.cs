using PlatformForge.Tests.Track.Surveys.Admissible;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys;

/// <summary>Where readings do not go with what was said of them or of the track, what is told first is what mends it, and what is offered was tried.</summary>
public class CauseTests
{
    private static readonly Laying Pieces = Laying.Usual(76.2, LaidAs.Sectional) with { Joints = [146, 293, 451, 619, 776, 922], Radii = [505] };

    // Made up with these joints, R 505 and a ruler error of 0.25 mm.
    private static readonly double[] Along = [0, 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000, 1070.534],
        Offsets = [0, 56.5, 113, 169, 207, 223.5, 221, 196, 147.5, 91.5, 37.5, 0];

    [Theory]
    [InlineData(7, 1.25)]
    public void One_misread_figure_among_pieces_is_named_first_with_one_that_goes(int index, double off)
    {
        double[] offsets = [.. Offsets];
        offsets[index] += off;
        var survey = String(Along, offsets, 0.25, Pieces);
        var fitted = TrackSurveyor.Fit(survey);
        var finding = fitted.Findings[0];
        Assert.Equal("PF2205", finding.Code);
        Assert.Equal(index + 2, finding.Line);
        var cause = Assert.IsType<MisreadCause>(fitted.Value!.Causes[0]);
        Assert.InRange(cause.Told.Fitting!.Value, Offsets[index] - 0.5, Offsets[index] + 0.5);
        Assert.True(TrackSurveyor.Tried(ReadingTrial.Again(survey, cause.Told))!.IsBoundAsSectional);
    }

    [Theory]
    [InlineData("radius")]
    [InlineData("kink")]
    [InlineData("joint")]
    public void What_is_offered_of_radii_kinks_and_joints_does(string untrue)
    {
        var said = untrue switch
        {
            "radius" => Pieces with { Radii = [650] },
            "kink" => Pieces with { GreatestKink = 0.05 * Math.PI / 180 },
            _ => Pieces with { Joints = [146, 293, 451, 561, 776, 922] },
        };
        var survey = String(Along, Offsets, 0.25, said);
        var track = TrackSurveyor.Fit(survey).Value!;
        Assert.Equal(track.Causes.Count == 0, track.IsBoundAsSectional && !track.RadiiLeftOut);
        Assert.All(track.Causes.DefaultIfEmpty(new KinkCause(2 * Math.PI / 180, 0)),
            cause => Assert.True(TrackSurveyor.Tried(With(survey, cause))!.IsBoundAsSectional));
    }

    /// <summary>The commonest shape of track, which a search that adds one change at a time missed: it drew curves with a kink of 3.88°, and the platform
    /// was kept clear of that.</summary>
    [Fact]
    public void A_curve_between_eases_is_found_as_a_whole()
    {
        double[] offsets = [0.141, 46.557, 93.264, 140.254, 186.588, 231.821, 265.276, 278.645, 267.931, 236.711, 192.339, 145.644, 98.851, 52.142, 5.281];
        var track = TrackSurveyor.Fit(String([.. offsets.Select((_, i) => 100.0 * i)], offsets, 0.25, MadeUpSurvey.Flexible)).Value!;
        Assert.Empty(track.Line.Kinks);
        Assert.True(track.IsBoundAsFlexible);
        Assert.Null(track.Outside);
        Assert.InRange(track.LeastRadius!.Radius, 410, 430);
    }

    /// <summary>A straight, R 610 through 60° without an ease, read every 50 mm: hardly a flexible line meets it, and the search for the middle of those hunts
    /// to and fro. It was then bound as track of which nothing is said, without a word.</summary>
    [Fact]
    public void A_set_that_is_all_but_empty_bounds_the_line_or_is_told()
    {
        double[] offsets =
        [
            20.021, 48.961, 77.755, 106.437, 135.449, 164.185, 193.342, 222.087, 251.107, 275.616, 295.033, 309.341, 319.472, 325.389, 326.757, 324.522,
            317.925, 306.673, 291.390, 270.712, 245.206, 216.237, 186.984, 158.423, 129.326, 100.736, 71.735, 42.851,
        ];
        var fitted = TrackSurveyor.Fit(String([.. offsets.Select((_, i) => 50.0 * i)], offsets, 0.25, MadeUpSurvey.Flexible));
        Assert.True(fitted.Value!.IsBoundAsFlexible || fitted.Findings.Any(f => f.Code is "PF2160" or "PF2161"));
    }

    /// <summary>Errors of a quarter of a millimetre, said to be of a fiftieth: that comes first, with an error that serves, and nothing else is
    /// blamed.</summary>
    [Theory]
    [InlineData(100, 1)]
    [InlineData(50, 2)]
    public void A_ruler_error_stated_far_too_small_is_told_first(double spacing, int seed)
    {
        var random = new Random(seed);
        var line =
            TrackLayer.Lay(new("made up", new(10, 20), 0.3,
                [new StraightSpec(250), new TransitionSpec(250, 700, Hand.Left), new CurveSpec(700, Hand.Left, Length: 300),
                    new TransitionSpec(250, null, Hand.Left), new StraightSpec(350)])).Value!;
        var survey = MadeUpSurvey.String(line, random, spacing, 0.25, MadeUpSurvey.Flexible) with { RulerError = 0.02 };
        var fitted = TrackSurveyor.Fit(survey);
        Assert.Equal("PF2204", fitted.Findings[0].Code);
        Assert.DoesNotContain(fitted.Findings, f => f.Code is "PF2120" or "PF2121" or "PF2145" or "PF2160" or "PF2161");
        double least = fitted.Value!.ErrorTooSmall!.Least;
        Assert.InRange(least, 0.15, 0.4);
        Assert.Null(TrackSurveyor.Fit(survey with { RulerError = least }).Value!.ErrorTooSmall);
    }

    /// <summary>A least radius of 1,200 mm said of a curve of 800: the greatest that does is offered, and no reading is blamed for it.</summary>
    [Fact]
    public void A_least_radius_that_is_not_kept_is_told_with_one_that_is()
    {
        var line =
            TrackLayer.Lay(new("made up", new(10, 20), 0.3,
                [new StraightSpec(250), new TransitionSpec(250, 800, Hand.Left), new CurveSpec(800, Hand.Left, Length: 300),
                    new TransitionSpec(250, null, Hand.Left), new StraightSpec(350)])).Value!;
        var said = MadeUpSurvey.Flexible with { LeastRadius = 1200, InScale = (380, 200) };
        var survey = MadeUpSurvey.String(line, new Random(4), 50, 0.25, said);
        var fitted = TrackSurveyor.Fit(survey);
        double radius = fitted.Value!.CausesOfFlexible!.LeastRadius!.Value;
        Assert.InRange(radius, 700, 900);
        Assert.Contains(fitted.Findings, f => f.Code == "PF2160" && f.Remedy.StartsWith($"State least_radius = {radius:0}", StringComparison.Ordinal));
        Assert.True(TrackSurveyor.Tried(survey with { Laying = said with { LeastRadius = radius } })!.IsBoundAsFlexible);
    }

    [Fact]
    public void What_is_said_of_flexible_track_is_not_passed_over_for_pieces()
    {
        var survey = String(Along, Offsets, 0.25, Pieces with { LeastEase = 50, InScale = (380, 200) });
        Assert.Equal("track[0].survey.least_ease", Assert.Single(TrackSurveyor.Fit(survey).Findings, f => f.Code == "PF2206").Key);
        Assert.DoesNotContain(TrackSurveyor.Fit(survey with { Laying = Pieces }).Findings, f => f.Code == "PF2206");
    }

    private static Survey With(PlaceSurvey survey, SectionalCause cause) => cause switch
    {
        MisreadCause misread => ReadingTrial.Again(survey, misread.Told),
        RadiusCause radius => survey with
        {
            Laying = survey.Laying with
            {
                Radii = radius.Instead
            ? [radius.Radius] : [.. survey.Laying.Radii, radius.Radius]
            }
        },
        KinkCause kink => survey with { Laying = survey.Laying with { GreatestKink = kink.Kink } },
        JointCause joint => survey with
        {
            Laying = survey.Laying with
            {
                Joints = [.. survey.Laying.Joints.Select(j => j == joint.Joint.Stated
            ? joint.Joint.Wanted : j)]
            }
        },
        _ => survey,
    };

    private static PlaceSurvey String(double[] along, double[] offsets, double error, Laying laying) =>
        new("made up", "track[0].survey", error, [[.. along.Select((d, i) =>
        new PlaceReading("f", i + 2, LengthUnit.Millimetre, new(d, offsets[i]), 0, new(d, offsets[i], new(d, 0), new(0, 1))))]])
        { Laying = laying };
}
