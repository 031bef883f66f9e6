using System.Globalization;

namespace PlatformForge.Geometry.Lettering;

/// <summary>The way of a pen, or of a cutter, along the strokes of a letter's shape.</summary>
internal static class LetterStrokes
{
    // How far towards a rounded corner the handles of its curve reach: a little fuller than a circle's 0.5523.
    private const double Fullness = 0.58;

    /// <summary>Every stroke as a row of points, hundredths of the size of type.</summary>
    /// <param name="shape">The shape, as <see cref="LetterShapes"/> writes it.</param>
    /// <param name="chords">In how many straight pieces a rounded corner is drawn.</param>
    public static IEnumerable<List<Point2>> Of(string shape, int chords) =>
        shape.Length == 0 ? [] : shape.Split('|').Select(stroke => Stroke(stroke, chords));

    private static List<Point2> Stroke(string shape, int chords)
    {
        string[] words = shape.Split(' ');
        bool closed = words[^1] == "z";
        var points = words.Take(words.Length - (closed ? 1 : 0)).Select(w => (At: Point(w.TrimStart('~')), Round: w[0] == '~')).ToArray();
        var line = new List<Point2>();
        for (int i = 0; i < points.Length + (closed ? 1 : 0); i++)
        {
            var (at, round) = points[i % points.Length];
            if (!round)
            {
                line.Add(at);
                continue;
            }

            var before = points[(i + points.Length - 1) % points.Length];
            var after = points[(i + 1) % points.Length];
            Corner(line, chords, before.Round ? (before.At + at) * 0.5 : before.At, at, after.Round ? (at + after.At) * 0.5 : after.At);
        }

        return line;
    }

    private static void Corner(List<Point2> line, int chords, Point2 from, Point2 corner, Point2 to)
    {
        Point2 a = from + ((corner - from) * Fullness), b = to + ((corner - to) * Fullness);
        for (int k = line.Count > 0 && line[^1] == from ? 1 : 0; k <= chords; k++)
        {
            double t = (double)k / chords, u = 1 - t;
            line.Add((from * (u * u * u)) + (a * (3 * u * u * t)) + (b * (3 * u * t * t)) + (to * (t * t * t)));
        }
    }

    private static Point2 Point(string pair)
    {
        int comma = pair.IndexOf(',', StringComparison.Ordinal);
        return new(double.Parse(pair.AsSpan(0, comma), CultureInfo.InvariantCulture), double.Parse(pair.AsSpan(comma + 1), CultureInfo.InvariantCulture));
    }
}
