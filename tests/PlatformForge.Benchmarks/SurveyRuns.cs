using System.Globalization;
using System.Text;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Benchmarks;

/// <summary>Survey files of many rows, read and fitted: a curve between transitions and straights, 1.6 m, ruler error 0.25 mm.</summary>
internal static class SurveyRuns
{
    private const double Chord = 200, RulerError = 0.25;

    private static readonly Centreline Line = TrackLayer.Lay(new("up", default, 0, [
        new StraightSpec(400), new TransitionSpec(150, 700, Hand.Left), new CurveSpec(700, Hand.Left, 500), new TransitionSpec(150, null, Hand.Left),
        new StraightSpec(400)])).Value!;

    public static void Report()
    {
        Console.WriteLine();
        Console.WriteLine("survey, rows                  median ms   least ms    limit  elements");
        foreach (int rows in new[] { 30, 240, 10_000, 100_000 })
        {
            string limit = rows == 100_000 ? "2000" : "-";
            Row($"points, {rows}",
                new PointsSpec("up", "benchmark", [Source("x;y", rows, 0, Line.Length, (s, error) => (Line.At(s).Position.X, Line.At(s).Position.Y + error))],
                    RulerError), limit);
            Row($"string, {rows}",
                new OffsetsSpec("up", "benchmark",
                    [Source("distance;offset", rows, 0, Line.Length, (s, error) => (Line.At(s).Position.X, Line.At(s).Position.Y + error))], RulerError,
                    default, 0), limit);
            Row($"versines, {rows}",
                new VersinesSpec("up", "benchmark",
                    [Source("station;versine", rows, Chord / 2, Line.Length - (Chord / 2), (s, error) => (s, VersineOfLine.Of(Line, s, Chord) + error))],
                    RulerError, Chord, default, 0), limit);
        }
    }

    private static void Row(string what, SurveySpec spec, string limit)
    {
        var fitted = TrackSurveyor.Survey(spec).Value!;
        var timing = Timing.Of(() => TrackSurveyor.Survey(spec), 3);
        Console.WriteLine($"{what,-28} {timing.Median,10:F1} {timing.Least,10:F1} {limit,8} {fitted.Elements.Count,9}");
    }

    private static SurveySource Source(string heads, int rows, double from, double to, Func<double, double, (double First, double Second)> measure)
    {
        var random = new Random(1);
        var text = new StringBuilder(heads + "\n");
        for (int i = 0; i < rows; i++)
        {
            var (first, second) = measure(from + ((to - from) * i / (rows - 1)), RulerError * ((2 * random.NextDouble()) - 1));
            text.Append(CultureInfo.InvariantCulture, $"{first:0.######};{second:0.###}\n");
        }

        return new("survey.csv", text.ToString(), MeasuredLine.Centre);
    }
}
