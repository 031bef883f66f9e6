using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Remarks;
using PlatformForge.Track.Surveys.Results;
using Xunit;
using static System.FormattableString;

namespace PlatformForge.Tests.Track.Surveys;

/// <summary>String-lining tables of surveys: which figures they take.</summary>
public class SurveyLiningTests
{
    // Versines of a straight, a curve of 800 mm radius and a straight, to 0.01 mm, at given stations over a chord of 200 mm.
    private static SurveyedTrack Versines(IEnumerable<double> stations, (double At, double Add)? misread = null)
    {
        var line =
            TrackLayer.Lay(new("up", default, 0, [new StraightSpec(500), new TransitionSpec(200, 800, Hand.Left), new CurveSpec(800, Hand.Left, 600),
                new TransitionSpec(200, null, Hand.Left), new StraightSpec(500)])).Value!;
        string rows =
            string.Concat(stations.Select(s => Invariant($"{s};{VersineOfLine.Of(line, s, 200) + (misread is { } m && m.At == s ? m.Add : 0):0.00}\n")));
        var outcome = TrackSurveyor.Survey(Samples.Versines("station;versine\n" + rows, error: 0.1));
        Assert.True(outcome.Succeeded, string.Join("\n", outcome.Findings));
        return outcome.Value!;
    }

    private static IEnumerable<double> Every(double step) => Enumerable.Range(0, (int)(1800 / step) + 1).Select(i => 100 + (i * step));

    [Fact]
    public void Readings_at_half_chords_are_taken_as_read()
    {
        var track = Versines(Every(100));
        var table = StringLining.Of(track, 200);
        Assert.Equal(track.Versines.Select(v => v.Versine), table.Rows.Select(r => r.Measured));
        Assert.Empty(table.Notes);
    }

    [Fact]
    public void A_misread_versine_has_no_part_in_the_slews()
    {
        var track = Versines(Every(100), (900, 4));
        Assert.Equal(900, Assert.IsType<VersineReading>(Assert.Single(track.Outliers).Reading).Station);
        var table = StringLining.Of(track, 200);
        var row = table.Rows.Single(r => r.Note.Length > 0);
        Assert.Equal(200 * 200 / (8.0 * 800), row.Measured, 0.1);
        Assert.Contains("10.27 mm was read", row.Note, StringComparison.Ordinal);
        Assert.Contains("1 reading named as misread is not used", Assert.Single(table.Notes), StringComparison.Ordinal);
        Assert.InRange(table.LargestThrow, 0, 1);
    }

    [Fact]
    public void Of_readings_at_quarter_chords_every_other_one_is_used()
    {
        var track = Versines(Every(50));
        var table = StringLining.Of(track, 200);
        Assert.Equal(Every(100), table.Rows.Select(r => r.Station), (a, b) => Math.Abs(a - b) < 1e-6);
        Assert.Contains("1 reading in 2", Assert.Single(table.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void Another_chord_than_that_measured_over_is_told_from_the_fitted_line()
    {
        var table = StringLining.Of(Versines(Every(100)), 300);
        Assert.Equal(300, table.Chord);
        Assert.Equal(800 - Math.Sqrt((800 * 800) - (150 * 150)), table.Rows.MaxBy(r => r.Measured)!.Measured, 0.1);
        Assert.Equal(0, table.LargestThrow, 1e-9);
        Assert.Contains("over a chord of 200 mm, not 300 mm", Assert.Single(table.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void Uneven_stations_give_no_table_of_readings_and_no_odd_and_even_sums()
    {
        var track = Versines([100, 150, 260, 380, 470, 560, 700, 790, 880, 1010, 1100, 1210, 1290, 1400, 1520, 1600, 1710, 1800]);
        Assert.Contains("not evenly spaced", Assert.Single(StringLining.Of(track, 200).Notes), StringComparison.Ordinal);
        var check = OddEvenCheck.Of(track.Versines, track.RulerError);
        Assert.False(check.Applies);
        Assert.Contains("not evenly spaced", check.AsFinding("k").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_misread_offset_has_no_part_in_the_table_either()
    {
        var good = TrackSurveyor.Survey(Samples.Offsets(Samples.Text("pendlewick-string.csv"))).Value!;
        var misread = TrackSurveyor.Survey(Samples.Offsets(Samples.Text("pendlewick-string-misread.csv"))).Value!;
        var table = StringLining.Of(misread, 200);
        Assert.InRange(table.LargestThrow, 0, StringLining.Of(good, 200).LargestThrow + 1);
        Assert.Contains("1 reading named as misread is not used", Assert.Single(table.Notes), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Hand.Left)]
    [InlineData(Hand.Right)]
    public void A_slew_says_which_way_and_a_figure_that_would_fit_has_the_sign_it_was_read_with(Hand hand)
    {
        // The same figures of a curve to either hand; the one at 900 is 4 mm too large.
        var line = TrackLayer.Lay(new("up", default, 0, [new StraightSpec(500), new CurveSpec(800, Hand.Left, 800), new StraightSpec(500)])).Value!;
        string rows = string.Concat(Every(100).Where(s => s <= 1700)
            .Select(s => Invariant($"{s};{VersineOfLine.Of(line, s, 200) + (s == 900 ? 4 : 0):0.00}\n")));
        var outcome = TrackSurveyor.Survey(Samples.Versines("station;versine\n" + rows, error: 0.1) with { Positive = hand });
        Assert.Contains("The versine of 10.27 mm at 900 mm does not fit; 6.2", Assert.Single(outcome.Findings, f => f.Code == "PF2120").Message,
            StringComparison.Ordinal);
        var residual = outcome.Value!.Outliers.Single();
        Assert.Equal(6.25, residual.Reading.Written(residual.Fitting!.Value), 0.1);

        // One versine too large in a curve: the track there lies outward of its neighbours, and slewing it inward lessens it.
        double sign = (int)hand;
        double[] stations = [0, 100, 200, 300, 400], measured = [6 * sign, 5.5 * sign, 7 * sign, 5.5 * sign, 6 * sign],
            proposed = [.. Enumerable.Repeat(6 * sign, 5)];
        var row = StringLining.Of(stations, measured, proposed).Rows[2];
        Assert.Equal("inward", row.Way);
        Assert.Equal(-sign, Math.Sign(row.FullThrow));
        Assert.Equal(6 * sign, row.Measured + row.FullThrow, 1e-12);
        Assert.Equal("", StringLining.Of(stations, measured, proposed).Rows[0].Way);
        Assert.Equal("to the right", (row with { Proposed = 0, FullThrow = 0.2 }).Way);
    }

    [Fact]
    public void A_bound_is_a_number_or_there_is_none()
    {
        // Stations a millimetre apart under a chord of 200 mm say next to nothing of the track; the reader refuses them.
        double[] figures = [-0.01, 0.07, 0.57, 4.42, 6.75, 6.67, 8.03, 6.74, 6.35, 4.48, 0.79, -0.1, -0.23];
        var outcome =
            TrackSurveyor.Fit(new VersineSurvey("up", "k", 0.25,
                [.. figures.Select((v, i) => new VersineReading("v.csv", i + 2, LengthUnit.Millimetre, i + 1, v))], 200, default, 0, 0, null));
        Assert.True(outcome.Value is { } track ? track.Movement.Worst.All(double.IsFinite) && track.Movement.Likely.All(double.IsFinite)
            : outcome.Findings.Any(f => f.Code == "PF2149"));
    }
}
