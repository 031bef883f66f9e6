using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys;

/// <summary>Points read off a plan, few and many, with errors spread evenly or as chance has it: what is told of their scatter is theirs, and the track is
/// told as what it is made of.</summary>
public class ManyPointsTests
{
    private const double RulerError = 0.25;

    // Within this factor of the true standard deviation; 60 readings tell it to within a tenth.
    private const double Factor = 1.3;

    [Theory]
    [InlineData(60)]
    [InlineData(241)]
    [InlineData(300)]
    [InlineData(1000)]
    [InlineData(6000)]
    public void The_scatter_told_is_that_of_the_readings_and_the_track_is_told_as_it_was_laid(int readings)
    {
        int surveys = Simulations.Of(2, 20);
        Parallel.For(0, surveys, k =>
        {
            var random = new Random((10 * readings) + k);
            double radius = 500 + random.Next(600), ease = 200 + random.Next(100), sigma = RulerError / Math.Sqrt(3);
            bool chance = k % 2 == 1;
            var line =
                TrackLayer.Lay(new("t", new(10, 20), 0.3,
                    [new StraightSpec(400), new TransitionSpec(ease, radius, Hand.Left), new CurveSpec(radius, Hand.Left, Length: 500),
                        new TransitionSpec(ease, null, Hand.Left), new StraightSpec(400)])).Value!;
            var fitted = TrackSurveyor.Fit(Points(line, readings, () => chance ? sigma * Normal(random) : RulerError * ((2 * random.NextDouble()) - 1)));
            var track = fitted.Value!;
            Assert.InRange(track.Scatter, sigma / Factor, sigma * Factor);
            Assert.DoesNotContain(fitted.Findings, f => f.Code is "PF2121" or "PF2124" or "PF2129" or "PF2144");
            Assert.Equal(5, track.Elements.Count);
            Assert.Equal(radius, track.LeastRadius!.Radius, radius / 100);
        });
    }

    /// <summary>Means of many neighbours lie well within the stated error when the readings themselves do not.</summary>
    [Theory]
    [InlineData(400)]
    [InlineData(5000)]
    public void Many_readings_worse_than_stated_are_told_to_be(int readings)
    {
        var random = new Random(readings);
        var line = TrackLayer.Lay(new("t", new(10, 20), 0.3, [new StraightSpec(500), new CurveSpec(900, Hand.Right, Length: 700)])).Value!;
        var fitted = TrackSurveyor.Fit(Points(line, readings, () => 0.4 * Normal(random)));
        Assert.InRange(fitted.Value!.Scatter, 0.4 / 1.1, 0.4 * 1.1);
        Assert.Contains(fitted.Findings, f => f.Code == "PF2121");
    }

    /// <summary>Readings that are off by more than their x and y may be are counted and the farthest is named.</summary>
    [Theory]
    [InlineData(0.144, "PF2196")]
    [InlineData(0.05, null)]
    public void Misses_beyond_the_ruler_error_are_told(double sigma, string? code)
    {
        var random = new Random(5);
        var line = TrackLayer.Lay(new("t", new(10, 20), 0.3, [new StraightSpec(500), new CurveSpec(900, Hand.Right, Length: 700)])).Value!;
        var fitted = TrackSurveyor.Fit(Points(line, 600, () => sigma * Normal(random)));
        var told = fitted.Findings.SingleOrDefault(f => f.Code == "PF2196");
        Assert.Equal(code, told?.Code);
        if (told is not null)
        {
            double most = fitted.Value!.Residuals.Where(r => !r.IsOutlier).Max(r => Math.Abs(r.Miss));
            Assert.Contains(FormattableString.Invariant($"by {most:0.00} mm"), told.Message, StringComparison.Ordinal);
        }
    }

    private static PlaceSurvey Points(Centreline line, int readings, Func<double> error)
    {
        var points = Enumerable.Range(0, readings).Select(i => line.At(line.Length * i / (readings - 1)).Position + new Point2(error(), error()));
        return new("t", "track[0].survey", RulerError, [[.. points.Select((p, i) => new PlaceReading("f", i + 2, LengthUnit.Millimetre, p, 0))]]);
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
