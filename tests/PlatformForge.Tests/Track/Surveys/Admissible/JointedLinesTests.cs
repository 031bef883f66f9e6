using FsCheck.Xunit;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys.Admissible;

/// <summary>Sectional track with stated joints: the bound over all lines of its pieces.</summary>
public class JointedLinesTests
{
    private const double Error = 0.25, Degree = Math.PI / 180, Close = 0.01;

    /// <summary>The true line lies within, its range is narrower than the bound that knows no joints, and radii narrow it more.</summary>
    [Theory]
    [InlineData(100)]
    [InlineData(50)]
    public void The_true_line_lies_within_and_what_is_said_narrows_the_range(double spacing)
    {
        bool nested = true;
        int covered = 0, count = Simulations.Of(10, 100);
        var halves = new[] { new List<double>(), [], [] };
        for (int k = 0; k < count; k++)
        {
            var (line, joints) = MadeUpPieces.Pieces(new Random(9100 + k));
            var readings = MadeUpSurvey.String(line, new Random(k), spacing, Error, MadeUpPieces.Said(joints, MadeUpPieces.Radii));
            SurveyedTrack Fitted(Laying laying) => TrackSurveyor.Tried(MadeUpPieces.Told(readings with { Laying = laying }, line))!;
            var track = Fitted(MadeUpPieces.Said(joints, MadeUpPieces.Radii));
            Assert.True(track.IsBoundAsSectional || track.Outliers.Any(), $"{k}");
            if (track.Outliers.Any() || track.Doubted.Count > 0)
            {
                covered++;
                continue;
            }

            LineMeasure[] measures = [.. Enumerable.Range(0, 9).SelectMany(i => MadeUpSurvey.Coach(300 + ((track.Line.Length - 600) * i / 8)))];
            SurveyedTrack[] surveys = [track, Fitted(MadeUpPieces.Said(joints, [])), Fitted(MadeUpPieces.Said([], []))];
            var ranges = surveys.Select(s => s.DoubtBeside(200, s.Line.Length - 200).Bound(measures)).ToArray();
            covered += measures.Zip(ranges[0]).All(p => MadeUpSurvey.Of(line, track.Line, p.First) is var off && off > p.Second.Least - Close
                && off < p.Second.Most + Close) ? 1 : 0;
            nested &= Sets(surveys[0], measures).Zip(Sets(surveys[1], measures)).All(p => p.First.Half < p.Second.Half + Close);
            for (int j = 0; j < 3; j++)
            {
                halves[j].AddRange(ranges[j].Select(r => r.Half));
            }
        }

        double[] median = [.. halves.Select(h => h.Order().ElementAt(h.Count / 2))];
        string told = $"{covered} of {count}; halves {string.Join(" ", median.Select(m => $"{m:0.00}"))}";
        Assert.True(covered >= 0.99 * count, told);
        Assert.True(median[0] < median[1] && median[1] < median[2], told);
        Assert.True(nested, told);
    }

    // What the pieces leave with every joint as it is stated.
    private static LineRange[] Sets(SurveyedTrack track, LineMeasure[] measures) =>
        (track with { PerhapsMovedSet = null }).DoubtBeside(200, track.Line.Length - 200).Bound(measures);

    /// <summary>More readings, or better ones, never widen a bound.</summary>
    [Property(MaxTest = 12)]
    public void A_reading_more_or_a_smaller_error_never_widens_a_bound(int seed, bool better)
    {
        var random = new Random(seed);
        var (line, joints) = MadeUpPieces.Pieces(random);
        BandPlace[] all = [.. Enumerable.Range(0, (int)(line.Length / 50))
            .Select(i => new BandPlace(50 * i, ((2 * random.NextDouble()) - 1) * Error, Error, i))];
        int left = random.Next(2, all.Length - 2);
        BandPlace[] fewer = better ? [.. all.Select(p => p with { Error = 1.3 * Error })] : [.. all.Where((_, i) => i != left)];
        LineMeasure[] measures = [.. Enumerable.Range(0, 6).SelectMany(i => MadeUpSurvey.Coach(300 + ((line.Length - 600) * i / 5)))];
        var inner = JointedLines.Of(MadeUpPieces.Said(joints, MadeUpPieces.Radii), line, all, joints).Bound(measures);
        var outer = JointedLines.Of(MadeUpPieces.Said(joints, MadeUpPieces.Radii), line, fewer, joints).Bound(measures);
        Assert.All(inner.Zip(outer), p => Assert.True(p.First.Most <= p.Second.Most + Close && p.First.Least >= p.Second.Least - Close,
            $"{p.First} in {p.Second}"));
    }

    /// <summary>With no kinks, one piece and readings at both its ends and its middle, the middle of a chord h between them lies within
    /// what a parabola through three places leaves (Lagrange's weights, their moduli added up).</summary>
    [Fact]
    public void One_piece_read_at_three_places_leaves_what_Lagrange_says()
    {
        var line = new Centreline("straight", [new(new(0, 0), 0, 400, 0, 0)]);
        BandPlace[] places = [new(0, 0, 0.2, 0), new(200, 0, 0.2, 1), new(400, 0, 0.2, 2)];
        var set = JointedLines.Of(MadeUpPieces.Said([], []), line, places, []);
        var found = set.Bound([LineMeasure.Offset(100)])[0];
        Assert.Equal(0.2 * (0.375 + 0.75 + 0.125), found.Most, 3);
        Assert.Equal(-found.Most, found.Least, 3);
    }

    [Fact]
    public void Pieces_that_contradict_what_is_said_are_told_with_their_place()
    {
        var (line, joints) = MadeUpPieces.Pieces(new Random(5));
        var survey = MadeUpSurvey.String(line, new Random(6), 40, 0.1, MadeUpPieces.Said(joints, MadeUpPieces.Radii));
        Assert.DoesNotContain(TrackSurveyor.Fit(MadeUpPieces.Told(survey, line)).Findings, f => f.Code is "PF2192" or "PF2193");
        var strange = TrackSurveyor.Fit(MadeUpPieces.Told(survey with { Laying = MadeUpPieces.Said(joints, [400, 900]) }, line));
        Assert.Contains(strange.Findings, f => f.Code == "PF2193" && f.Key.EndsWith("radii", StringComparison.Ordinal));
        Assert.False(strange.Value!.IsBoundAsSectional);
        var moved =
            TrackSurveyor.Fit(
                MadeUpPieces.Told(survey with { Laying = MadeUpPieces.Said([joints[0]], MadeUpPieces.Radii) with { GreatestKink = 0.05 * Degree } }, line));
        Assert.Contains(moved.Findings, f => f.Code == "PF2192" && f.Message.Contains("least ruler error", StringComparison.Ordinal));
        var found = TrackSurveyor.Fit(survey with { Laying = MadeUpPieces.Said([], [900]) });
        Assert.Contains(found.Findings, f => f.Code == "PF2195");
    }

    /// <summary>A joint stated 45 mm off its place is told, or named as one that may as well lie elsewhere, wherever a kink or a change of curvature there
    /// shows, mostly with the place where it would fit; between two pieces that turn by little nothing can show, and the bound allows for either place. True
    /// joints are not blamed.</summary>
    [Fact]
    public void A_joint_off_its_place_is_told_with_where_it_would_fit_and_a_true_one_is_not()
    {
        int surveys = Simulations.Long ? 100 : 8, told = 0, right = 0, blamed = 0, honest = 0;
        for (int k = 0; k < surveys; k++)
        {
            var (line, joints) = MadeUpPieces.Pieces(new Random(81100 + k));
            int moved = 1 + (k % (joints.Length - 2));
            PlaceSurvey Survey(double off) =>
                MadeUpPieces.Told(MadeUpSurvey.String(line, new Random(k), 50, Error,
                    MadeUpPieces.Said([.. joints.Select((j, i) => i == moved ? j + off : j)], MadeUpPieces.Radii)), line);
            blamed += TrackSurveyor.Fit(Survey(0)).Findings.Any(f => f.Code is "PF2197" or "PF2198") ? 1 : 0;
            var fitted = TrackSurveyor.Fit(Survey(k % 2 == 0 ? 45 : -45));
            var track = fitted.Value!;
            bool isTold = fitted.Findings.Any(f => f.Code is "PF2192" or "PF2193" or "PF2197" or "PF2198");
            told += isTold || track.JointsInDoubt.Any(m => m.Joint == moved) ? 1 : 0;
            honest += isTold || track.Outliers.Any() || track.Doubted.Count > 0 || IsWithin(line, track) ? 1 : 0;
            right += track.Misplaced is { } m && m.Joint == moved && Math.Abs(m.At - joints[moved]) < 30 ? 1 : 0;
            Assert.False(track.Misplaced is not null && track.IsBoundAsSectional);
        }

        Assert.True(3 * told >= surveys && 4 * right >= surveys && blamed <= 0.01 * surveys && honest >= Math.Min(0.95 * surveys, surveys - 1),
            $"{told} told, {honest} told or within, {right} with their place, {blamed} of true ones blamed, of {surveys}");
    }

    private static bool IsWithin(Centreline line, SurveyedTrack track)
    {
        LineMeasure[] measures = [.. Enumerable.Range(0, 9).SelectMany(i => MadeUpSurvey.Coach(300 + ((track.Line.Length - 600) * i / 8)))];
        return measures.Zip(track.DoubtBeside(200, track.Line.Length - 200).Bound(measures))
            .All(p => MadeUpSurvey.Of(line, track.Line, p.First) is var off && off > p.Second.Least - Close && off < p.Second.Most + Close);
    }

    /// <summary>Joints have their places on whichever side of the string the track lies: offsets read to the right say the same as those read to the left with
    /// their signs turned.</summary>
    [Fact]
    public void Joints_along_a_string_are_the_same_from_either_side()
    {
        var (line, joints) = MadeUpPieces.Pieces(new Random(12));
        var left = MadeUpPieces.Told(MadeUpSurvey.String(line, new Random(13), 50, Error, MadeUpPieces.Said(joints, MadeUpPieces.Radii)), line);
        static PlaceReading Turned(PlaceReading r) => r with { Ordinate = r.Ordinate! with { Offset = -r.Ordinate.Offset, Square = r.Ordinate.Square * -1 } };
        var right = left with { Runs = [[.. left.Runs[0].Select(Turned)]] };
        var mixed = left with { Runs = [[.. left.Runs[0].Select((r, i) => i % 3 == 0 ? Turned(r) : r)]] };
        LineMeasure[] measures = [.. MadeUpSurvey.Coach(line.Length / 2)];
        var ranges = new[] { left, right, mixed }.Select(s => TrackSurveyor.Tried(s)!)
            .Select(t => (t.IsBoundAsSectional, t.DoubtBeside(200, t.Line.Length - 200).Bound(measures))).ToArray();
        Assert.All(ranges, r => Assert.True(r.IsBoundAsSectional));
        Assert.All(ranges, r => Assert.Equal(ranges[0].Item2[0].Most, r.Item2[0].Most, 6));
    }

    [Theory]
    [InlineData(new double[] { 1500, 1668 }, "All stated joints")]
    [InlineData(new double[] { 16.8, -30, 50.1 }, "The joint stated at -30 mm")]
    [InlineData(new double[] { 250, 500 }, null)]
    public void Joints_beyond_the_readings_are_told(double[] joints, string? told)
    {
        var line = TrackLayer.Lay(new("t", new(0, 0), 0, [new StraightSpec(1000)])).Value!;
        var findings = TrackSurveyor.Fit(MadeUpSurvey.String(line, new Random(3), 50, 0.1, MadeUpPieces.Said(joints, []))).Findings
            .Where(f => f.Code == "PF2199");
        Assert.True(told is null ? !findings.Any() : findings.Single().Message.StartsWith(told, StringComparison.Ordinal));
    }

    [Fact]
    public void A_kink_where_no_joint_is_stated_is_told()
    {
        var line = TrackLayer.Lay(new("t", new(0, 0), 0, [new StraightSpec(500), new KinkSpec(2.5 * Degree, Hand.Left), new StraightSpec(500)])).Value!;
        PlaceSurvey Survey(double[] joints) => MadeUpSurvey.String(line, new Random(3), 25, 0.1,
            MadeUpPieces.Said(joints, []) with { GreatestKink = 3 * Degree });
        Assert.Contains(TrackSurveyor.Fit(Survey([200, 800])).Findings, f => f.Code == "PF2198");
        Assert.DoesNotContain(TrackSurveyor.Fit(Survey([200, 500, 800])).Findings, f => f.Code is "PF2197" or "PF2198" or "PF2192");
    }
}
