using System.Globalization;
using System.Text;
using System.Xml.Linq;
using PlatformForge.Cli.Answers;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Surveys;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Results;
using Xunit;

namespace PlatformForge.Tests.Exports;

public class SurveyDrawingTests
{
    private static readonly SurveyedTrack Misread =
        TrackSurveyor.Survey(Track.Surveys.Samples.Offsets(Track.Surveys.Samples.Text("pendlewick-string-misread.csv"))).Value!;

    [Fact]
    public void Every_reading_shows_in_both_plots_and_the_misread_one_by_name()
    {
        var sheet = SurveyDrawing.Draw(Misread, "Pendlewick");

        // Thirteen readings in the plan and in the plot of misses, one of each in the key; the outlier has a mark of its own.
        Assert.Equal(13, sheet.Items.OfType<SheetCircle>().Count(c => c.Radius == 0.75));
        Assert.Equal(13 + 1, sheet.Items.OfType<SheetCircle>().Count(c => c.Radius == 0.9));
        var words = sheet.Items.OfType<SheetText>().Select(t => t.Text).ToList();
        Assert.Contains("line 11: 9.9 off", words);
        Assert.Contains(words, w => w.StartsWith("line 11: 248.", StringComparison.Ordinal) && w.EndsWith("mm would fit", StringComparison.Ordinal));
        Assert.Contains("Pendlewick", words);
    }

    [Fact]
    public void Nothing_is_drawn_off_the_paper()
    {
        var sheet = SurveyDrawing.Draw(Misread, "Pendlewick");
        var points = sheet.Items.SelectMany(i => i switch
        {
            SheetPath p => p.Points,
            SheetCircle c => [c.Middle],
            SheetText t => t.Box(),
            _ => [],
        });
        Assert.All(points, p => Assert.True(p.X >= 0 && p.Y >= 0 && p.X <= sheet.Width && p.Y <= sheet.Height, p.ToString()));
    }

    [Theory]
    [InlineData(0.5, "no further", "moves it no further")]
    [InlineData(0.8, "0.80 mm", "moves it 0.80 mm")]
    public void A_worst_case_that_adds_nothing_is_told_as_that(double worst, string drawn, string written)
    {
        var track = Misread with { Movement = new([0, Misread.Line.Length], [0.5, 0.5], [worst, worst]) };
        Assert.Contains(SurveyDrawing.Draw(track).Items.OfType<SheetText>(), t => t.Text == drawn);
        using var console = new StringWriter();
        SurveyText.Write(console, track, false, null);
        Assert.Contains(written, console.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_drawing_is_well_formed_and_names_itself()
    {
        var root = XDocument.Parse(Encoding.UTF8.GetString(SvgWriter.ToBytes(SurveyDrawing.Draw(Misread)))).Root!;
        Assert.Equal("up: survey", root.Elements().First(e => e.Name.LocalName == "title").Value);
        Assert.Contains("14 readings, 1 left out", root.Elements().First(e => e.Name.LocalName == "desc").Value, StringComparison.Ordinal);
    }

    [Fact]
    public void The_table_of_readings_gives_the_figure_that_would_fit()
    {
        string[] rows = Encoding.UTF8.GetString(SurveyTables.Readings(Misread)).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(15, rows.Length);
        string[] bad = Assert.Single(rows, r => r.EndsWith(",yes", StringComparison.Ordinal)).Split(',');
        Assert.Equal("11", bad[1]);
        Assert.Equal("239", bad[3]);
        Assert.Equal(249, double.Parse(bad[6], CultureInfo.InvariantCulture), 0.5);
    }

    [Fact]
    public void The_files_are_the_same_in_every_culture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
            var plain = SurveyTables.Files(Misread, 200, "x").Select(f => Convert.ToHexString(f.Bytes)).ToArray();
            CultureInfo.CurrentCulture = new("de-DE");
            Assert.Equal(plain, SurveyTables.Files(Misread, 200, "x").Select(f => Convert.ToHexString(f.Bytes)));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
