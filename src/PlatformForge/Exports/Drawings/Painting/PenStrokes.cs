using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Geometry;
using PlatformForge.Geometry.Lettering;

namespace PlatformForge.Exports.Drawings.Painting;

/// <summary>Turns words into the strokes of a pen, in mm on the sheet.</summary>
internal static class PenStrokes
{
    /// <summary>Width of the pen by the size of type.</summary>
    public const double Regular = 0.082, Bold = 0.125;

    private const int Chords = 7; // in a rounded corner
    private const double Hundredth = 0.01;

    /// <summary>Every stroke of a line of words.</summary>
    public static IEnumerable<IReadOnlyList<Point2>> Of(SheetText words)
    {
        double size = words.Style.Size, across = words.Style.Bold ? TextStyle.BoldShare : 1;
        double length = TextStyle.Length(words.Text, words.Style),
            at = words.Anchor switch { TextAnchor.Start => 0, TextAnchor.Middle => -length / 2, _ => -length };
        var along = Point2.FromAngle(words.Angle * Math.PI / 180);
        foreach (char c in words.Text)
        {
            var letter = LetterShapes.Of(c);
            double advance = TextStyle.Width(c) * Hundredth / 10 * size * across, start = at + ((advance - (letter.Width * Hundredth * size * across)) / 2);
            Point2 Place(Point2 p, double dx, double dy) => words.At + (along * (start + ((p.X + dx) * Hundredth * size * across)))
                - (along.Left * ((p.Y + dy) * Hundredth * size));
            foreach (var stroke in LetterStrokes.Of(letter.Strokes, Chords))
            {
                yield return [.. stroke.Select(p => Place(p, 0, 0))];
            }

            foreach (var stroke in LetterStrokes.Of(letter.Mark, Chords))
            {
                yield return [.. stroke.Select(p => Place(p, letter.MarkAcross, letter.MarkUp))];
            }

            at += advance;
        }
    }
}
