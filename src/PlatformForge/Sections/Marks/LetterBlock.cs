using PlatformForge.Geometry;

namespace PlatformForge.Sections.Marks;

/// <summary>
/// Lines of engraved writing laid out as one block, in units of the lettering: how large it is, and where each line's strokes lie. Everything that is cut into
/// plastic is laid out here; who cuts it says only where the block stands and how large a unit is.
/// </summary>
/// <param name="Lines">What is written, the first on top.</param>
/// <param name="Round">How far round letters may go beyond capitals: lines of one size then have one height, but for accents. 0 takes letters as they
/// are.</param>
internal sealed record LetterBlock(IReadOnlyList<string> Lines, double Round = 0)
{
    /// <summary>How far round letters go beyond capitals.</summary>
    public const double RoundLetters = 2;

    /// <summary>From the left edge of the widest line's strokes to their right.</summary>
    public double Width => Lines.Max(EngravedLetters.Width) + EngravedLetters.StrokeWidth;

    /// <summary>From the lowest edge of all strokes to the highest.</summary>
    public double Height => High - Low + EngravedLetters.StrokeWidth;

    /// <summary>The unit at which the block fills a room, in the room's unit.</summary>
    public double UnitIn(double width, double height) => Math.Min(width / Width, height / Height);

    /// <summary>Strokes of all lines, each line about one middle, the block's middle at the origin.</summary>
    public IEnumerable<Point2[]> Centred() => Placed(line => -EngravedLetters.Width(line) / 2, -((Low + High) / 2));

    /// <summary>Strokes of all lines from one left edge, the block's upper left corner at the origin.</summary>
    public IEnumerable<Point2[]> FromCorner() => Placed(_ => EngravedLetters.StrokeWidth / 2, -((EngravedLetters.StrokeWidth / 2) + High));

    // Middles of the lowest and the highest strokes, told from the first line's base.
    private double Low => Lines.Select((line, i) => Reach(line).Low - (i * EngravedLetters.Pitch)).Min();

    private double High => Lines.Select((line, i) => Reach(line).High - (i * EngravedLetters.Pitch)).Max();

    private (double Low, double High) Reach(string line)
    {
        var (low, high) = EngravedLetters.Reach(line);
        return Round > 0 ? (Math.Min(low, -Round), Math.Max(high, EngravedLetters.CapHeight + Round)) : (low, high);
    }

    private IEnumerable<Point2[]> Placed(Func<string, double> left, double top)
    {
        for (int i = 0; i < Lines.Count; i++)
        {
            Point2 at = new(left(Lines[i]), top - (i * EngravedLetters.Pitch));
            foreach (var stroke in EngravedLetters.Strokes(Lines[i]))
            {
                yield return Array.ConvertAll(stroke, p => p + at);
            }
        }
    }
}
