using FsCheck.Xunit;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Readings;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys.Admissible;

/// <summary>The bounds over all admissible lines: laws, and published inequalities they come to.</summary>
public class AdmissibleLinesTests
{
    // Bounds are told this near to the true ones.
    private const double Close = AdmissibleLines.Closeness;

    /// <summary>More readings, or better ones, never widen a bound.</summary>
    [Property(MaxTest = 12)]
    public bool A_reading_more_or_a_smaller_error_never_widens_a_bound(int seed, bool better)
    {
        var random = new Random(seed);
        var line = MadeUpSurvey.Track(random);
        var all = MadeUpSurvey.Bands(MadeUpSurvey.String(line, random, random.Next(25, 60), 0.2, MadeUpSurvey.Flexible));
        int left = random.Next(3, all.Length - 3);
        ReadingBand[] fewer = better ? [.. all.Select(b => b with { Error = 0.26 })] : [.. all.Where((_, i) => i != left)];
        var (narrow, wide) = (Set(all, line), Set(fewer, line));
        var inner = On(narrow, line);
        var outer = On(wide, line);
        return inner.Zip(outer).All(p => p.First.Most <= p.Second.Most + AdmissibleLines.Nesting && p.First.Least >= p.Second.Least - AdmissibleLines.Nesting);
    }

    /// <summary>The survey of 300 in which a reading more once widened a bound most, by 0.016 mm: stretches ended sooner, and nodes lay farther
    /// apart.</summary>
    [Fact]
    public void The_survey_that_widened_most_keeps_the_law() => Assert.True(A_reading_more_or_a_smaller_error_never_widens_a_bound(32, better: false));

    /// <summary>
    /// The set is one thing, whatever line it was looked for from: the true one, the string itself, lines from reading to reading. Seeds
    /// 14, 102, 125 and 127 once failed from the string.
    /// </summary>
    [Theory]
    [InlineData(14)]
    [InlineData(102)]
    [InlineData(125)]
    [InlineData(127)]
    public void Curves_that_turn_far_are_found_from_the_string(int seed) => Assert.True(Where_the_search_began_makes_no_difference(seed, close: true));

    /// <summary>Readings so close that most of them tell nothing have a middle too.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(0.5)]
    public void A_middle_is_found_among_readings_that_lie_close(double spacing)
    {
        var line = MadeUpSurvey.Track(new Random(11));
        var set = Set(MadeUpSurvey.Bands(MadeUpSurvey.String(line, new Random(12), spacing, 0.25, MadeUpSurvey.Flexible)), line);
        Assert.True(set.IsSettled && !set.IsEmpty);
    }

    /// <summary>Points of a drawing lie closer than any ruler reads: a middle is found among them too.</summary>
    [Theory]
    [InlineData(8)]
    [InlineData(9)]
    public void A_middle_is_found_among_twelve_thousand_points(int seed)
    {
        var random = new Random(seed);
        var line = new Centreline("straight", [new(new(0, 0), 0, 1200, 0, 0)]);
        ReadingBand[] bands =
            [.. Enumerable.Range(0, 12_001)
                .Select(i => new ReadingBand(new PlaceReading("f", i + 2, LengthUnit.Millimetre, new(i * 0.1, (random.NextDouble() * 0.4) - 0.2), 0), 0.25))];
        var set = Set(bands, line);
        Assert.True(set.IsSettled && !set.IsEmpty);
        Assert.InRange(On(set, line).Max(r => r.Half), 0.01, 0.2);
    }

    /// <summary>The set is one thing, whatever line it was looked for from.</summary>
    [Property(MaxTest = 16)]
    public bool Where_the_search_began_makes_no_difference(int seed, bool close)
    {
        var random = new Random(seed);
        var line = MadeUpSurvey.Track(random);
        var bands = MadeUpSurvey.Bands(MadeUpSurvey.String(line, random, close ? 50 : 100, 0.25, MadeUpSurvey.Flexible));
        Point2 first = bands[0].Reading.Place, taut = bands[^1].Reading.Place - first;
        var straight = new Centreline("the string", [new(first, Math.Atan2(taut.Y, taut.X), taut.Length, 0, 0)]);
        var kinked = new Centreline("through the readings",
            [.. bands.Zip(bands.Skip(1)).Select(p => (From: p.First.Reading.Place, Way: p.Second.Reading.Place - p.First.Reading.Place))
                .Select(p => new CentrelineElement(p.From, Math.Atan2(p.Way.Y, p.Way.X), p.Way.Length, 0, 0))]);
        var found = new[] { line, straight, kinked }.Select(start => Set(bands, start)).ToArray();
        return found.All(f => f.IsSettled && !f.IsEmpty)
            && found.Skip(1).All(f => On(f, line).Zip(On(found[0], line))
                .All(p => Math.Abs(p.First.Most - p.Second.Most) < Close && Math.Abs(p.First.Least - p.Second.Least) < Close));
    }

    /// <summary>Nothing is bounded more tightly by saying less.</summary>
    [Fact]
    public void What_is_said_of_the_laying_only_narrows_the_bound()
    {
        var line = MadeUpSurvey.Track(new Random(7));
        var bands = MadeUpSurvey.Bands(MadeUpSurvey.String(line, new Random(8), 60, 0.25, MadeUpSurvey.Flexible));
        double[] halves =
            [.. new[] { (380.0, 200.0), (380, 150), (300, 150) }.Select(p => On(AdmissibleLines.Of(new(LaidAs.Flexible, p.Item1, p.Item2), bands, line), line)
                .Max(r => r.Half))];
        Assert.True(halves[0] < halves[1] && halves[1] < halves[2], string.Join(" ", halves));
    }

    /// <summary>
    /// Between readings without end, a line within ±e of a straight whose curvature changes by J at most leaves its direction by
    /// (9 e² J / 8)^(1/3) at most (A. Kolmogorov 1939: the sharp constants between the derivatives of a function on the whole line).
    /// </summary>
    [Fact]
    public void Dense_readings_of_a_straight_leave_what_Kolmogorov_says()
    {
        double e = 0.25, rate = BandRows.Rate(MadeUpSurvey.Flexible), h = 5;
        var line = new Centreline("straight", [new(new(0, 0), 0, 1600, 0, 0)]);
        ReadingBand[] bands =
            [.. Enumerable.Range(0, 641).Select(i => new ReadingBand(new PlaceReading("f", i + 2, LengthUnit.Millimetre, new(i * 2.5, 0), 0), e))];
        var set = Set(bands, line);
        double at = set.Middle.Length / 2;
        var found = set.Bound([new([at - h, at + h], [-1 / (2 * h), 1 / (2 * h)])]);
        Assert.InRange(found[0].Most / Math.Cbrt(9 * e * e * rate / 8), 0.97, 1.03);
    }

    /// <summary>Readings off by more than any line of the laying explains are told as that, with the least error that explains them.</summary>
    [Fact]
    public void Readings_that_no_line_meets_are_named_with_the_least_error_that_fits()
    {
        var line = new Centreline("straight", [new(new(0, 0), 0, 1500, 0, 0)]);
        ReadingBand Band(int i, double off) => new(new PlaceReading("f", i + 2, LengthUnit.Millimetre, new(i * 25, off), 0), 0.1);
        ReadingBand[] bands = [.. Enumerable.Range(0, 61).Select(i => Band(i, i == 30 ? 1.5 : 0))];
        var set = Set(bands, line);
        Assert.True(set.IsEmpty, $"{set.LeastShare}");
        Assert.Contains(set.AtOdds, b => b.Reading.Row == 32);
        Assert.InRange(set.LeastShare * 0.1, 0.3, 0.75);
        Assert.False(Set([.. bands.Select(b => b with { Error = (set.LeastShare * 0.1) + 0.002 })], line).IsEmpty);
        Assert.True(Set([.. bands.Select(b => b with { Error = (set.LeastShare * 0.1) - 0.002 })], line).IsEmpty, $"{set.LeastShare}");
    }

    /// <summary>
    /// Half of the range of a coach's reach, at 100, 50 and 25 mm: what plain linear programs on a 10 mm grid come to, and no more than is asked.
    /// </summary>
    [Theory]
    [InlineData(100, 0.25, 1.2)]
    [InlineData(50, 0.25, 0.6)]
    [InlineData(25, 0.25, 0.45)]
    [InlineData(50, 0.1, 0.35)]
    public void The_true_line_lies_within_and_the_range_is_narrow(double spacing, double error, double most)
    {
        var halves = new List<double>();
        for (int k = 0; k < Simulations.Of(6, 100); k++)
        {
            var random = new Random(4100 + k);
            var line = MadeUpSurvey.Track(random);
            var set = Set(MadeUpSurvey.Bands(MadeUpSurvey.String(line, random, spacing, error, MadeUpSurvey.Flexible)), line);
            LineMeasure[] measures = [.. Enumerable.Range(0, 12).SelectMany(i => MadeUpSurvey.Coach(550 + ((set.Middle.Length - 1100) * i / 11)))];
            var ranges = set.Bound(measures);
            for (int i = 0; i < measures.Length; i++)
            {
                double truth = MadeUpSurvey.Of(line, set.Middle, measures[i]);
                Assert.InRange(truth, ranges[i].Least, ranges[i].Most);
            }

            halves.AddRange(ranges.Chunk(3).Select(c => (c.Max(r => r.Most) - c.Max(r => r.Least)) / 2));
        }

        double[] sorted = [.. halves.Order()];
        Assert.True(sorted[(int)(0.95 * sorted.Length)] < most, $"{sorted[sorted.Length / 2]:0.000} {sorted[(int)(0.95 * sorted.Length)]:0.000}");
    }

    /// <summary>
    /// Bounds that are carried over from neighbours are the same in every run, and no looser than each place by itself would have by more than bounds are near
    /// to the true ones; that they are not too tight is held below.
    /// </summary>
    [Property(MaxTest = 6)]
    public bool What_is_asked_together_is_bounded_as_when_asked_alone(int seed, bool close)
    {
        var random = new Random(seed);
        var line = MadeUpSurvey.Track(random);
        var set = Set(MadeUpSurvey.Bands(MadeUpSurvey.String(line, random, close ? 40 : 100, 0.25, MadeUpSurvey.Flexible)), line);
        LineMeasure[] all =
            [.. Enumerable.Range(0, 3).SelectMany(end => Enumerable.Range(0, 30).Select(k => MadeUpSurvey.Coach(500 + (10 * k)).ElementAt(end)))];
        var (together, again) = (set.Bound(all), set.Bound(all));
        return together.SequenceEqual(again) && all.Zip(together)
            .All(p => set.Bound([p.First])[0] is var alone && p.Second.Most < alone.Most + Close && p.Second.Least > alone.Least - Close);
    }

    /// <summary>A bound that is carried over is proven for itself: the true line never goes beyond it, at places so close that most are
    /// carried.</summary>
    [Property(MaxTest = 6)]
    public bool The_true_line_lies_within_bounds_that_are_carried(int seed)
    {
        var random = new Random(seed);
        var line = MadeUpSurvey.Track(random);
        var set = Set(MadeUpSurvey.Bands(MadeUpSurvey.String(line, random, 60, 0.25, MadeUpSurvey.Flexible)), line);
        LineMeasure[] all = [.. Enumerable.Range(0, 60).SelectMany(k => MadeUpSurvey.Coach(450 + (5 * k)))];
        return all.Zip(set.Bound(all)).All(p => MadeUpSurvey.Of(line, set.Middle, p.First) is var truth && truth >= p.Second.Least && truth <= p.Second.Most);
    }

    private static AdmissibleLines Set(IReadOnlyList<ReadingBand> bands, Centreline start) => AdmissibleLines.Of(MadeUpSurvey.Flexible, bands, start);

    // Ranges about a line that stays the same, of coaches along its middle part.
    private static LineRange[] On(AdmissibleLines set, Centreline line) =>
        new AdmissibleDoubt(set, line).Bound([.. Enumerable.Range(0, 6).SelectMany(i => MadeUpSurvey.Coach(400 + ((line.Length - 800) * i / 5)))]);
}
