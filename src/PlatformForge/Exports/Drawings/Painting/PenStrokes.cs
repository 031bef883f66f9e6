using System.Globalization;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings.Painting;

/// <summary>Turns words into the strokes of a pen, in mm on the sheet.</summary>
internal static class PenStrokes
{
    /// <summary>Width of the pen by the size of type.</summary>
    public const double Regular = 0.082, Bold = 0.125;

    // How far towards a rounded corner the handles of its curve reach: a little fuller than a circle's 0.5523.
    private const double Fullness = 0.58;

    private const int Chords = 7; // in a rounded corner
    private const double Hundredth = 0.01;

    /// <summary>Every stroke of a line of words.</summary>
    public static IEnumerable<IReadOnlyList<Point2>> Of(SheetText words)
    {
        double size = words.Style.Size, across = words.Style.Bold ? TextStyle.BoldShare : 1;
        double length = TextStyle.Length(words.Text, words.Style), at = words.Anchor switch { TextAnchor.Start => 0, TextAnchor.Middle => -length / 2, _ => -length };
        var along = Point2.FromAngle(words.Angle * Math.PI / 180);
        foreach (char c in words.Text)
        {
            var letter = LetterShapes.Of(c);
            double advance = TextStyle.Width(c) * Hundredth / 10 * size * across, start = at + ((advance - (letter.Width * Hundredth * size * across)) / 2);
            Point2 Place(Point2 p, double dx, double dy) => words.At + (along * (start + ((p.X + dx) * Hundredth * size * across))) - (along.Left * ((p.Y + dy) * Hundredth * size));
            foreach (var stroke in Strokes(letter.Strokes))
            {
                yield return [.. stroke.Select(p => Place(p, 0, 0))];
            }

            foreach (var stroke in Strokes(letter.Mark))
            {
                yield return [.. stroke.Select(p => Place(p, letter.MarkAcross, letter.MarkUp))];
            }

            at += advance;
        }
    }

    private static IEnumerable<List<Point2>> Strokes(string shape) =>
        shape.Length == 0 ? [] : shape.Split('|').Select(Stroke);

    private static List<Point2> Stroke(string shape)
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
            Corner(line, before.Round ? (before.At + at) * 0.5 : before.At, at, after.Round ? (at + after.At) * 0.5 : after.At);
        }

        return line;
    }

    private static void Corner(List<Point2> line, Point2 from, Point2 corner, Point2 to)
    {
        Point2 a = from + ((corner - from) * Fullness), b = to + ((corner - to) * Fullness);
        for (int k = line.Count > 0 && line[^1] == from ? 1 : 0; k <= Chords; k++)
        {
            double t = (double)k / Chords, u = 1 - t;
            line.Add((from * (u * u * u)) + (a * (3 * u * u * t)) + (b * (3 * u * t * t)) + (to * (t * t * t)));
        }
    }

    private static Point2 Point(string pair)
    {
        int comma = pair.IndexOf(',', StringComparison.Ordinal);
        return new(double.Parse(pair.AsSpan(0, comma), CultureInfo.InvariantCulture), double.Parse(pair.AsSpan(comma + 1), CultureInfo.InvariantCulture));
    }
}
