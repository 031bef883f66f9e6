using System.Globalization;
using System.Text;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Geometry;
using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Cli;
using PlatformForge.Tests.Track.Surveys.Admissible;
using PlatformForge.Track;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>From a true track over what a person reads off it to finished sections, and back onto the true track.</summary>
public sealed class SurveyPipelineTests : IDisposable
{
    // Joins between stations, facets and the sweep's own error, mm.
    private const double Fine = 0.05;

    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    /// <summary>
    /// Sections built from a survey keep the whole budget from every vehicle on the true track, and stand no farther away than the range of the reach, U less
    /// L, beyond what the true track would have asked for.
    /// </summary>
    [Theory]
    [InlineData(100, 0.25)]
    [InlineData(50, 0.25)]
    public void Platforms_built_from_a_survey_clear_the_true_track_and_waste_no_more_than_the_doubt(double spacing, double error)
    {
        int[] cases = Simulations.Cases(3, 50);
        var fouled = new List<int>();
        foreach (int k in cases)
        {
            var random = new Random(7300 + k);
            var line = LongEnough(random);
            var project = Project(line, MadeUpSurvey.String(line, random, spacing, error, MadeUpSurvey.Flexible));
            var laid = LaidTrack.LayAll(project).Value!;
            var dossier = DesignRun.Design(project, RunWatch.None).Value!;
            var platform = dossier.Platforms[0];
            var truth = dossier.Tracks[0] with { Ride = new("up", line.Elements) };
            var verdict = TrialVerdict.Of(dossier with { Tracks = [truth] });
            if (!verdict.Passed || verdict.Tightest!.Clearance <= -Fine)
            {
                fouled.Add(k);
            }

            var face = platform.Plan.Spec.Face;
            var request = new EnvelopeRequest(platform.Plan.Chart, face.From, face.To, [truth]) { Play = platform.Budget.Play, StraightBeyondEnds = true };
            var reach = EnvelopeSweeper.Sweep(request).Value!.Composite(face.Side);
            double range = SurveyDoubts.Of(request with { Runs = [truth with { Ride = laid[0].Chart.Ride }] }, [.. laid.Select(l => l.Survey)])
                .Max(d => d.On(face.Side).Max(r => r.Most - r.Least));
            var need = platform.Plan.Requirement;
            foreach (int i in Enumerable.Range(0, need.Stations.Length))
            {
                double wider = need.Swept[i] - reach.At(need.Stations[i]);
                Assert.True(wider > -Fine && wider < range + Fine, FormattableString.Invariant($"survey {k}, chainage {need.Stations[i]:0}: {wider:0.000} ")
                    + FormattableString.Invariant($"of {range:0.000}"));
            }
        }

        Assert.True(fouled.Count <= 0.01 * cases.Length, $"{fouled.Count} of {cases.Length}: {string.Join(" ", fouled)}");
    }

    // Rides of the made-up kind that a platform and a coach beyond both its ends have room on.
    private static Centreline LongEnough(Random random)
    {
        while (true)
        {
            var line = MadeUpSurvey.Track(random);
            if (line.Length > 1300)
            {
                return line;
            }
        }
    }

    private ProjectSpec Project(Centreline line, PlaceSurvey survey)
    {
        var csv = new StringBuilder("distance,offset\n");
        foreach (var reading in survey.Runs[0])
        {
            csv.Append(CultureInfo.InvariantCulture, $"{reading.Ordinate!.Distance:0.####},{reading.Ordinate.Offset:0.####}\n");
        }

        folder.Write("up.csv", csv.ToString());
        Point2 from = line.At(0).Position, taut = line.At(line.Length).Position - from;
        var read = ProjectReader.ReadFile(folder.Write("halt.toml", FormattableString.Invariant($$"""
            [layout]
            name = "Quillhaven"
            scale = "4mm"
            rail_top = 8
            [[track]]
            name = "up"
            start = { x = {{from.X}}, y = {{from.Y}}, heading = {{Math.Atan2(taut.Y, taut.X) * 180 / Math.PI:0.0000000}} }
            survey = { kind = "string", file = "up.csv", side = "left", ruler_error = {{survey.RulerError}}, laid = "flexible" }
            [[vehicle]]
            name = "long coach"
            length = 262
            pivots = 188
            width = 34.5
            low = 3
            [[vehicle]]
            name = "tank engine"
            length = 142
            pivots = 66
            width = 33.5
            low = 3
            [clearance]
            running = 0.7
            [[platform]]
            name = "halt"
            face = { track = "up", side = "right", from = 320, to = {{line.Length - 400:0}} }
            [printer]
            bed = [220, 220]
            """)));
        Assert.DoesNotContain(read.Findings, f => f.Severity == Severity.Error);
        return read.Value!;
    }
}
