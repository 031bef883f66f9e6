using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Marks;
using PlatformForge.Solids;

namespace PlatformForge.Proofs;

/// <summary>Lines of writing cut into a level surface that faces up, as large as their room allows.</summary>
internal static class Lettering
{
    /// <summary>Depth of the cut, mm.</summary>
    public const double Depth = 0.4;

    /// <summary>Over the height of lines, mm, so that a room made for them takes them whatever its sum was rounded to.</summary>
    public const double Spare = 1e-6;

    // mm above the surface that a cut reaches.
    private const double Above = 1;

    /// <summary>Least size of the lettering's unit, mm: strokes one nozzle wide.</summary>
    public static double LeastUnit(PrinterSpec printer) => printer.Nozzle / EngravedLetters.StrokeWidth;

    /// <summary>Room that lines need at the least size, width and height in mm.</summary>
    public static Point2 Room(IReadOnlyList<string> lines, PrinterSpec printer) => Sized(lines, LeastUnit(printer));

    /// <summary>
    /// Cuts lines into the surface, the first on top, from the left; each letter at most so high. Where the room is too small for the least size the lines are
    /// shortened.
    /// </summary>
    /// <param name="lines">What is written.</param>
    /// <param name="low">Lower left corner of the room, mm.</param>
    /// <param name="high">Upper right corner.</param>
    /// <param name="z">Height of the surface.</param>
    /// <param name="printer">Its nozzle says what is legible.</param>
    /// <param name="tallest">Height of letters wanted, mm.</param>
    public static IEnumerable<ColumnBlock> Cut(IReadOnlyList<string> lines, Point2 low, Point2 high, double z, PrinterSpec printer, double tallest = 4)
    {
        double least = LeastUnit(printer);
        string[] kept = Kept(lines, high - low, printer);
        if (kept.Length == 0)
        {
            yield break;
        }

        var block = Block(kept);
        double unit = Math.Min(block.UnitIn(high.X - low.X, high.Y - low.Y), Math.Max(least, tallest / EngravedLetters.CapHeight));
        Point2 corner = new(low.X, high.Y);
        foreach (var stroke in block.FromCorner())
        {
            yield return Shape.Taken(Array.ConvertAll(stroke, p => corner + (p * unit)), z - Depth, z + Above);
        }
    }

    /// <summary>What of lines is cut into a room: each as far as it goes, those below left out where there is no height for them.</summary>
    public static string[] Kept(IReadOnlyList<string> lines, Point2 room, PrinterSpec printer)
    {
        double least = LeastUnit(printer);
        string[] kept = [.. lines.Select(l => Shortened(Engraving.Drawable(l), room.X, least)).Where(l => l.Length > 0)];
        while (kept.Length > 0 && Sized(kept, least).Y > room.Y)
        {
            kept = kept[..^1];
        }

        return kept;
    }

    /// <summary>Words in lines of a width at the least size, broken between words, and within one only where it is wider alone.</summary>
    public static IReadOnlyList<string> Wrapped(string words, double width, PrinterSpec printer)
    {
        double least = LeastUnit(printer);
        var lines = new List<string> { "" };
        foreach (string word in Engraving.Drawable(words).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string longer = lines[^1].Length == 0 ? word : lines[^1] + " " + word;
            if (Sized([longer], least).X <= width)
            {
                lines[^1] = longer;
                continue;
            }

            string rest = word;
            while (rest.Length > 0)
            {
                string part = Shortened(rest, width, least);
                if (part.Length == 0)
                {
                    return [.. lines.Where(l => l.Length > 0)];
                }

                lines.Add(part);
                rest = rest[part.Length..];
            }
        }

        return [.. lines.Where(l => l.Length > 0)];
    }

    /// <summary>The same cut into a surface that faces down, at height nil, to be read from below.</summary>
    public static IEnumerable<ColumnBlock> Under(IReadOnlyList<string> lines, Point2 low, Point2 high, PrinterSpec printer) =>
        Cut(lines, new(-high.X, low.Y), new(-low.X, high.Y), 0, printer).Select(stroke => stroke with
        {
            Outline = ConvexRing.Reversed(Array.ConvertAll(stroke.Outline, p => new Point2(-p.X, p.Y))),
            Lower = new(-Above),
            Upper = new(Depth),
        });

    /// <summary>The same, written about a middle.</summary>
    public static IEnumerable<ColumnBlock> Centred(string line, Point2 middle, double z, PrinterSpec printer)
    {
        var size = Sized([line], LeastUnit(printer));
        return Cut([line], middle - (size * 0.5), middle + (size * 0.5000001), z, printer, 0);
    }

    private static LetterBlock Block(IReadOnlyList<string> lines) => new(lines, LetterBlock.RoundLetters);

    private static Point2 Sized(IReadOnlyList<string> lines, double unit) => new Point2(Block(lines).Width, Block(lines).Height) * unit;

    private static string Shortened(string line, double width, double unit)
    {
        while (line.Length > 0 && Sized([line], unit).X > width)
        {
            line = line[..^1].TrimEnd();
        }

        return line;
    }
}
