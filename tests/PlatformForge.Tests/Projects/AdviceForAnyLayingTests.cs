using System.Globalization;
using System.Text;
using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using PlatformForge.Tests.Cli;
using PlatformForge.Tests.Track.Surveys.Admissible;
using PlatformForge.Track;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>What a survey promises of another reading, however the track was laid and where the readings contradict that: followed, it is found.</summary>
public class AdviceForAnyLayingTests
{
    // Figures are written in whole thousandths of a millimetre, and places along the string too.
    private const double Slack = 0.03;

    /// <summary>Not said, and pieces without stated joints.</summary>
    [Theory]
    [InlineData("laid = \"unknown\"", 55, 1)]
    [InlineData("laid = \"unknown\"", 100, 4)]
    [InlineData("laid = \"sectional\"", 100, 2)]
    public void A_reading_more_leaves_what_is_promised(string laid, double spacing, int seed)
    {
        var line = MadeUpSurvey.Track(new Random(seed));
        Follow(Rows(MadeUpSurvey.String(line, new Random(seed), spacing, 0.25, MadeUpSurvey.Flexible)), laid);
    }

    /// <summary>Pieces whose joints are stated.</summary>
    [Fact]
    public void A_reading_more_leaves_what_is_promised_of_pieces_with_joints()
    {
        var (line, joints) = MadeUpPieces.Pieces(new Random(12));
        var survey = MadeUpPieces.Told(MadeUpSurvey.String(line, new Random(3), 100, 0.25, MadeUpPieces.Said(joints, MadeUpPieces.Radii)), line);
        Follow(Rows(survey), "laid = \"sectional\", joints = "
            + $"[{string.Join(", ", survey.Laying.Joints.Select(j => j.ToString(CultureInfo.InvariantCulture)))}]");
    }

    /// <summary>Said to be flexible, and contradicted by one misread figure that the fit still meets: the advice names a reading that alone stands in the way,
    /// and with the figure that the others ask for it is as promised, over flexible lines.</summary>
    [Fact]
    public void The_reading_that_contradicts_flexible_track_is_named_and_restores_it()
    {
        var line = MadeUpSurvey.Track(new Random(0));
        var rows = Rows(MadeUpSurvey.String(line, new Random(0), 15, 0.25, MadeUpSurvey.Flexible));
        rows[^2] = (rows[^2].Distance, rows[^2].Offset + 0.75);
        const string Laid = "laid = \"flexible\"";
        var before = Surveyed(rows, Laid);
        Assert.True(before.Flexible!.IsEmpty);
        var advice = Assert.Single(before.Doubts).Advice!;
        Assert.True(advice.RepeatRestores);
        Assert.InRange(advice.Repeat!.Row, rows.Count - 1, rows.Count + 1);
        var after = Surveyed([.. rows.Select((r, i) => i == advice.Repeat.Row - 2 ? (r.Distance, advice.RepeatFigure!.Value) : r)], Laid, advised: false);
        Assert.True(after.IsBoundAsFlexible);
        IsKept(advice.RepeatLeaves!.Value, before.Doubts[0].Charged, after);
    }

    /// <summary>A false least radius makes the set empty: what is charged is no less than where nothing is said, and what to read again is told all the
    /// same.</summary>
    [Fact]
    public void A_false_least_radius_is_charged_no_less_than_what_is_not_said()
    {
        var rows = Rows(MadeUpSurvey.String(Curve, new Random(5), 110, 0.25, MadeUpSurvey.Flexible));
        double Charged(string laid) => Assert.Single(Surveyed(rows, laid, advised: false).Doubts).Charged;
        Assert.Equal(Charged("laid = \"unknown\""), Charged("laid = \"flexible\", least_radius = 900"), 0.006);
    }

    private static readonly Centreline Curve = TrackLayer.Lay(new("curve", new(10, 20), 0.3,
        [new StraightSpec(250), new TransitionSpec(220, 560, Hand.Left), new CurveSpec(560, Hand.Left, Length: 350), new TransitionSpec(220, null, Hand.Left),
            new StraightSpec(350)])).Value!;

    private static List<(double Distance, double Offset)> Rows(PlaceSurvey survey) =>
        [.. survey.Runs[0].Select(r => (r.Ordinate!.Distance, r.Ordinate.Offset))];

    /// <summary>Another reading is offered nowhere where one stands, left out or not: a file with two at one distance is refused.</summary>
    [Fact]
    public void No_reading_is_offered_where_one_stands()
    {
        var rows = Rows(MadeUpSurvey.String(Curve, new Random(5), 100, 0.25, MadeUpSurvey.Flexible));
        rows[6] = (rows[6].Distance, rows[6].Offset + 3);
        var track = Surveyed(rows, "laid = \"flexible\"", advised: false);
        var left = Assert.Single(track.Outliers);
        Assert.Equal(8, left.Reading.Row);
        Assert.Null(ReadingTrial.More(track.Read!, track, left.Chainage));
        var more = ReadingTrial.More(track.Read!, track, left.Chainage + 41.3)!.Value.Reading as PlaceReading;
        Assert.Equal(more!.Ordinate!.Distance, Math.Round(more.Ordinate.Distance));
        Assert.Equal(0, track.Line.Locate(more.Place).Offset, 0.006);
    }

    private static void Follow(List<(double Distance, double Offset)> rows, string laid)
    {
        var before = Surveyed(rows, laid);
        var doubt = Assert.Single(before.Doubts);
        var advice = Assert.IsType<ReadingAdvice>(doubt.Advice);
        Assert.InRange(advice.MoreLeaves!.Value, 0, doubt.Charged - 0.01);
        IsKept(advice.MoreLeaves.Value, doubt.Charged, Surveyed([.. rows.Append((advice.MoreAlong!.Value, advice.MoreFigure!.Value)).OrderBy(r => r.Item1)],
            laid, advised: false));
        if (advice is { Repeat: { } again, RepeatLeaves: { } kept, RepeatFigure: { } figure })
        {
            IsKept(kept, doubt.Charged, Surveyed([.. rows.Select((r, i) => i == again.Row - 2 ? (r.Distance, figure) : r)], laid, advised: false));
        }
    }

    private static void IsKept(double promised, double present, SurveyedTrack after)
    {
        double charged = Assert.Single(after.Doubts).Charged;
        Assert.True(Math.Abs(charged - promised) < Slack, $"{promised:0.000} promised of {present:0.000}, {charged:0.000} kept");
    }

    // What another reading would do is found by many fits: it is left out where nobody asks for it.
    private static SurveyedTrack Surveyed(IReadOnlyList<(double Distance, double Offset)> rows, string laid, bool advised = true)
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
                + $"\"left\", ruler_error = 0.25, {laid} }}", StringComparison.Ordinal)
            .Replace("from = 350, to = 540", "from = 350, to = 900", StringComparison.Ordinal);
        var project = ProjectReader.ReadFile(folder.Write("halt.toml", text)).Value!;
        var tracks = LaidTrack.LayAll(project).Value!;
        return SurveyDoubts.With(project, tracks[0], tracks, advised);
    }
}
