using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys;

/// <summary>Offsets from one string every 100 mm with one figure grossly wrong, as slips of the pen make them.</summary>
public class GrossMisreadingTests
{
    private static readonly (double Distance, double Offset)[] Rows =
        [(0, 0), (100, 46.5), (200, 93), (300, 139.5), (400, 183.5), (500, 219), (600, 240.5), (700, 249), (800, 244), (900, 225.5), (1000, 192),
            (1100, 142.5), (1200, 72.5), (1282, 0)];

    private static Outcome<SurveyedTrack> Measured(int row = -1, double written = 0)
    {
        string text = "distance,offset\n"
            + string.Join("\n", Rows.Select((r, i) => FormattableString.Invariant($"{r.Distance},{(i == row ? written : r.Offset)}")));
        return TrackSurveyor.Survey(new OffsetsSpec("t", "k", [new("up.csv", text, MeasuredLine.Centre)], 0.25, new Point2(0, 0), 0, Hand.Right));
    }

    [Theory]
    [InlineData(5, 21.9)] // the point slipped
    [InlineData(6, 2405)] // the point forgotten
    [InlineData(4, -183.5)] // the sign lost
    [InlineData(8, 344)] // one hundred too many
    public void The_row_that_sticks_out_is_named_with_a_value_that_would_fit(int row, double written)
    {
        var finding = Assert.Single(Measured(row, written).Findings);
        Assert.Equal(("PF2143", row + 2), (finding.Code, finding.Line));
        double fitting = double.Parse(finding.Remedy.Split(':')[1].Trim().Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(fitting, Rows[row].Offset - 2, Rows[row].Offset + 2);
    }

    [Fact]
    public void A_sharp_bend_told_by_the_last_two_readings_alone_is_warned_of()
    {
        var warning = Assert.Single(Measured(12, 62.5).Findings, f => f.Code == "PF2142");
        Assert.Equal((Severity.Warning, 15), (warning.Severity, warning.Line));
        Assert.DoesNotContain(Measured().Findings, f => f.Code == "PF2142");
    }

    [Fact]
    public void Figures_changed_about_in_the_last_reading_but_one_are_named()
    {
        // 27.5 for 72.5: a bend that met it would be sharper than anything runs on.
        var outlier = Assert.Single(Measured(12, 27.5).Value!.Outliers);
        Assert.Equal(14, outlier.Reading.Row);
        Assert.InRange(outlier.Fitting!.Value, 70.5, 74.5);
    }

    [Theory]
    [InlineData(7, 279)]
    [InlineData(10, 129)]
    [InlineData(8, 304)]
    public void A_misread_row_that_is_left_out_does_not_lengthen_the_track(int row, double written)
    {
        var track = Measured(row, written).Value!;
        Assert.Equal(row + 2, Assert.Single(track.Outliers).Reading.Row);
        Assert.Equal(Measured().Value!.Line.Length, track.Line.Length, 0.5);
    }

    [Fact]
    public void The_worst_is_nowhere_less_than_the_likely()
    {
        foreach (var track in new[] { Measured(), Measured(7, 279), Measured(12, 27.5) }.Select(o => o.Value!))
        {
            Assert.All(track.Movement.Worst.Zip(track.Movement.Likely), p => Assert.True(p.First >= p.Second));
        }
    }
}
