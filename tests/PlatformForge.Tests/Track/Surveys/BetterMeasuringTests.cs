using PlatformForge.Tests.Track.Surveys.Admissible;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;
using PlatformForge.Units;
using Xunit;
using Xunit.Abstractions;
using static System.FormattableString;

namespace PlatformForge.Tests.Track.Surveys;

/// <summary>
/// Whoever measures better is charged no more: one track read with one ruler, whose error is stated smaller and smaller, or with readings closer and closer.
/// Read to a fiftieth of an inch, 0.508 mm, so that no reading is off by more than 0.254. Once such surveys were charged 3.5 mm at a stated error of 0.2 and
/// 0.8 at 0.3.
/// </summary>
public class BetterMeasuringTests(ITestOutputHelper output)
{
    private const double Graduation = 25.4 / 50, Close = AdmissibleLines.Closeness;

    private static readonly double[] Errors = [0.2, 0.25, 0.305, 0.4];

    /// <summary>A smaller stated error leaves no more open; where no flexible line meets the readings within it, that is told with an error that
    /// fits.</summary>
    [Theory]
    [InlineData("curve", 100)]
    [InlineData("reverse", 100)]
    [InlineData("curve laid without eases", 100)]
    public void A_smaller_ruler_error_leaves_no_more_open(string track, double spacing)
    {
        var line = Line(track);
        double half = 0, most = double.NegativeInfinity;
        bool begun = false;
        foreach (double error in Errors)
        {
            var found = TrackSurveyor.Fit(Read(line, spacing, error));
            var range = Open(found, line);
            output.WriteLine(Invariant($"{track}, every {spacing:0} mm, {error}: U {range?.Most:0.000}, half range {range?.Half:0.000}, ")
                + Invariant($"told {string.Join(" ", found.Findings.Select(f => f.Code))}"));
            if (range is not { } own)
            {
                Assert.False(begun, "a set that was not empty is with a larger error");
                Assert.Contains(found.Findings, f => f.Code is "PF2160" or "PF2161");
                continue;
            }

            Assert.True(!begun || (own.Half >= half - Close && own.Most >= most - Close), Invariant($"{error}: {own.Most:0.000} {own.Half:0.000} ")
                + Invariant($"after {most:0.000} {half:0.000}"));
            (half, most, begun) = (own.Half, own.Most, true);
        }

        Assert.True(begun);
    }

    /// <summary>Readings among which are all those of another survey leave no more open than it does.</summary>
    [Theory]
    [InlineData("curve", 12, 24, 48)]
    [InlineData("curve", 18, 36, 72)]
    [InlineData("curve", 50, 100, 200)]
    [InlineData("reverse", 12, 24, 48)]
    [InlineData("reverse", 18, 36, 72)]
    [InlineData("reverse", 50, 100, 200)]
    public void Closer_readings_leave_no_more_open(string track, double close, double wider, double widest)
    {
        var line = Line(track);
        LineRange[] ranges =
            [.. new[] { close, wider, widest }.Select(spacing =>
                Open(AdmissibleLines.Of(MadeUpSurvey.Flexible, MadeUpSurvey.Bands(Read(line, spacing, 0.3)), line), line))];
        string Told(LineRange range, double spacing) => Invariant($"every {spacing:0} mm U {range.Most:0.000} half {range.Half:0.000}");
        output.WriteLine($"{track}: {string.Join(", ", ranges.Zip([close, wider, widest], Told))}");
        Assert.All(ranges.Zip(ranges.Skip(1)), p => Assert.True(p.First.Most <= p.Second.Most + Close && p.First.Half <= p.Second.Half + Close));
    }

    // What a coach may reach farther than on the true line, and half of its range, where each is most of nine places along the middle; null where the set is
    // empty.
    private static LineRange? Open(Outcome<SurveyedTrack> found, Centreline line)
    {
        if (found.Value is not { IsBoundAsFlexible: true } track)
        {
            return null;
        }

        return Open(track.Flexible!, line);
    }

    private static LineRange Open(AdmissibleLines set, Centreline line)
    {
        var ranges = new AdmissibleDoubt(set, line).Bound([.. Enumerable.Range(0, 9).SelectMany(i => MadeUpSurvey.Coach(350 + ((line.Length - 700) * i / 8)))]);
        double most = ranges.Max(r => r.Most);
        return new(most - (2 * ranges.Max(r => r.Half)), most);
    }

    private static PlaceSurvey Read(Centreline line, double spacing, double error)
    {
        var exact = MadeUpSurvey.String(line, new Random(1), spacing, 0, MadeUpSurvey.Flexible);
        return exact with { RulerError = error, Runs = [[.. exact.Runs[0].Select(Rounded)]] };
    }

    private static PlaceReading Rounded(PlaceReading reading)
    {
        var own = reading.Ordinate!;
        double read = Graduation * Math.Round(own.Offset / Graduation);
        return reading with { Place = own.Foot + (own.Square * read), Ordinate = own with { Offset = read } };
    }

    private static Centreline Line(string track)
    {
        AlignmentElementSpec[] elements = track switch
        {
            "curve" => [new StraightSpec(300), new TransitionSpec(200, 610, Hand.Left), new CurveSpec(610, Hand.Left, (610 * Math.PI / 3) - 200),
                new TransitionSpec(200, null, Hand.Left), new StraightSpec(300)],
            "reverse" => [new StraightSpec(200), new TransitionSpec(220, 610, Hand.Left), new CurveSpec(610, Hand.Left, 250),
                new TransitionSpec(220, null, Hand.Left), new TransitionSpec(220, 760, Hand.Right), new CurveSpec(760, Hand.Right, 300),
                new TransitionSpec(220, null, Hand.Right), new StraightSpec(200)],
            _ => [new StraightSpec(350), new CurveSpec(610, Hand.Left, 610 * Math.PI / 3), new StraightSpec(350)],
        };
        return TrackLayer.Lay(new("up", default, 0, elements)).Value!;
    }
}
