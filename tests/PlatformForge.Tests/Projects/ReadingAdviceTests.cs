using System.Globalization;
using System.Text;
using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using PlatformForge.Tests.Cli;
using PlatformForge.Tests.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Results;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>What a survey promises of one reading more, held against the survey with that reading.</summary>
public class ReadingAdviceTests
{
    // What is told was tried; the figure is told in hundredths of a millimetre, mm.
    private const double Slack = 0.01;

    [Fact]
    public void What_is_promised_of_a_reading_is_less_than_is_charged_and_is_kept()
    {
        int advised = 0, surveys = Simulations.TellsRates ? 6 : 4;
        Parallel.For(0, surveys, k =>
        {
            var line = MadeUpSurvey.Track(new Random(6400 + k));
            var rows = MadeUpSurvey.String(line, new Random(k), k % 2 == 0 ? 55 : 100, 0.25, MadeUpSurvey.Flexible).Runs[0]
                .Select(r => (r.Ordinate!.Distance, r.Ordinate.Offset)).ToList();
            var before = Surveyed(rows);
            var doubt = Assert.Single(before.Doubts);
            if (!before.IsBoundAsFlexible || doubt.Advice is not { } advice)
            {
                return;
            }

            Interlocked.Increment(ref advised);
            if (advice is { MoreAt: { } at, MoreLeaves: { } leaves })
            {
                Assert.InRange(leaves, 0, doubt.Charged - 0.01);
                var place = before.Line.At(at).Position;
                IsKept(leaves, doubt.Charged, Surveyed([.. rows.Append((place.X, place.Y)).OrderBy(r => r.Item1)], advised: false), $"one more, {k}");
            }

            if (advice is { Repeat: { } again, RepeatLeaves: { } kept })
            {
                Assert.InRange(kept, 0, doubt.Charged - 0.01);
                double fitting = Math.Round(advice.RepeatFigure!.Value, 2);
                IsKept(kept, doubt.Charged, Surveyed([.. rows.Select((r, i) => i == again.Row - 2 ? (r.Distance, fitting) : r)], advised: false),
                    $"again, {k}");
            }
        });
        Assert.True(2 * advised >= surveys, $"{advised}");
    }

    private static void IsKept(double promised, double present, SurveyedTrack after, string what)
    {
        double charged = Assert.Single(after.Doubts).Charged;
        Assert.True(Math.Abs(charged - promised) < Slack, $"{what}: {promised:0.000} promised of {present:0.000}, {charged:0.000} kept");
    }

    // What another reading would do is found by many fits: it is left out where nobody asks for it.
    private static SurveyedTrack Surveyed(IReadOnlyList<(double Distance, double Offset)> rows, bool advised = true)
    {
        using var folder = new TempFolder();
        var csv = new StringBuilder("distance,offset\n");
        foreach (var (distance, offset) in rows)
        {
            csv.Append(CultureInfo.InvariantCulture, $"{distance:0.######},{offset:0.######}\n");
        }

        folder.Write("r.csv", csv.ToString());
        string text = Samples.Small
            .Replace("alignment = [{ straight = 900 }]", "start = { x = 0, y = 0, heading = 0 }\nsurvey = { kind = \"string\", file = \"r.csv\", side = "
                + "\"left\", ruler_error = 0.25, laid = \"flexible\" }", StringComparison.Ordinal)
            .Replace("[clearance]", "[[vehicle]]\nname = \"tank engine\"\nlength = 142\npivots = 66\nwidth = 33.5\n[clearance]", StringComparison.Ordinal)
            .Replace("from = 350, to = 540", "from = 350, to = 900", StringComparison.Ordinal);
        var project = ProjectReader.ReadFile(folder.Write("halt.toml", text)).Value!;
        var tracks = LaidTrack.LayAll(project).Value!;
        return SurveyDoubts.With(project, tracks[0], tracks, advised);
    }
}
