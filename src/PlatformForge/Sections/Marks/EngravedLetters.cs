using System.Collections.Concurrent;
using PlatformForge.Geometry;
using PlatformForge.Geometry.Lettering;

namespace PlatformForge.Sections.Marks;

/// <summary>
/// The program's letters as they are cut into plastic: capitals, every stroke as straight bars of one width of tool. Units are hundredths of the size of type.
/// </summary>
internal static class EngravedLetters
{
    /// <summary>Height of a capital.</summary>
    public const double CapHeight = 72;

    /// <summary>Width of a stroke: wide enough that letters of a few millimetres are cut by a nozzle's line.</summary>
    public const double StrokeWidth = 10.8;

    /// <summary>From line to line.</summary>
    public const double Pitch = 108;

    /// <summary>The sign that is drawn as an arrow along the line of writing, and the one up the sheet.</summary>
    public const char ArrowForward = '→', ArrowUp = '↑';

    // A rounded corner in two pieces: fewer leave a circle square, more cost blocks and are not seen at this size.
    private const int Chords = 2;

    // Strokes are wider than a pen's, and stand so much farther apart.
    private const double Wider = 3;

    // Of each letter: writing is laid out many times before it fits.
    private static readonly ConcurrentDictionary<char, (double Low, double High)> Heights = new();

    /// <summary>Width of a line of writing, without the gap after its last letter.</summary>
    public static double Width(string line) => line.Sum(Advance) - (line.Length > 0 ? Wider : 0);

    /// <summary>How far a line's strokes go below its base and above it: no less than a capital does.</summary>
    public static (double Low, double High) Reach(string line)
    {
        var (low, high) = (0.0, CapHeight);
        foreach (char letter in line)
        {
            var own = Heights.GetOrAdd(letter, static l =>
            {
                double[] heights = [0, .. Drawn(l).SelectMany(s => s).Select(p => p.Y)];
                return (heights.Min(), heights.Max());
            });
            (low, high) = (Math.Min(low, own.Low), Math.Max(high, own.High));
        }

        return (low, high);
    }

    /// <summary>The strokes of a line of writing as counter-clockwise rectangles with square ends, the first letter's lower left corner at the
    /// origin.</summary>
    public static IEnumerable<Point2[]> Strokes(string line)
    {
        double at = 0;
        foreach (char letter in line)
        {
            var origin = new Point2(at, 0);
            foreach (var (a, b) in Sides(letter))
            {
                yield return Bar(origin + a, origin + b);
            }

            at += Advance(letter);
        }
    }

    // A pen that closes a stroke goes over its first corner again, and stops at corners: what is cut is cut once.
    private static List<(Point2 From, Point2 To)> Sides(char letter)
    {
        var sides = new List<(Point2 From, Point2 To)>();
        foreach (var stroke in Drawn(letter))
        {
            for (int i = 0; i + 1 < stroke.Count; i++)
            {
                var (a, b) = (stroke[i], stroke[i + 1]);
                if (a != b && !sides.Exists(s => s.From == a && s.To == b))
                {
                    sides.Add((a, b));
                }
            }
        }

        return sides;
    }

    private static double Advance(char letter) => (LetterWidths.Of(char.ToUpperInvariant(letter)) / 10.0) + Wider;

    private static IEnumerable<List<Point2>> Drawn(char letter)
    {
        var shape = LetterShapes.Of(char.ToUpperInvariant(letter));
        var mark = new Point2(shape.MarkAcross, shape.MarkUp);
        return LetterStrokes.Of(shape.Strokes, Chords).Concat(LetterStrokes.Of(shape.Mark, Chords).Select(s => s.ConvertAll(p => p + mark)));
    }

    // Ends reach on by half the width, so that strokes that meet at a corner close it.
    private static Point2[] Bar(Point2 a, Point2 b)
    {
        var along = (b - a) * (StrokeWidth / 2 / (b - a).Length);
        var left = along.Left;
        return [a - along - left, b + along - left, b + along + left, a - along + left];
    }
}
