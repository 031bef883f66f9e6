using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Paper;

/// <summary>Puts words into a window of a sheet where no others stand; words that find no place are left out of that sheet.</summary>
internal sealed class WindowWords(Sheet sheet, SheetWindow window)
{
    private const double Rim = 0.4; // mm of patch round the words
    private const double Inset = 1; // mm from the window's border
    private readonly List<IReadOnlyList<Point2>> taken = [];

    /// <summary>Keeps words out of a box round a place.</summary>
    public void Keep(Point2 middle, double half) =>
        taken.Add([middle + new Point2(-half, -half), middle + new Point2(half, -half), middle + new Point2(half, half), middle + new Point2(-half, half)]);

    /// <summary>Writes words with their middle at the first free place.</summary>
    /// <returns>The place, or null where none was free.</returns>
    public Point2? Put(string text, TextStyle style, double angle, params IEnumerable<Point2> middles)
    {
        // Never upside down.
        angle = angle is > 90.001 or < -89.999 ? angle - (Math.Sign(angle) * 180) : angle;
        var down = Point2.FromAngle((angle + 90) * Math.PI / 180) * (style.Size * HalfCapital);
        foreach (var middle in middles)
        {
            var words = new SheetText(text, middle + down, style, TextAnchor.Middle, angle);
            var box = words.Box(Rim);
            if (!box.All(p => window.Holds(p, Inset)) || taken.Exists(t => Meet(t, box)))
            {
                continue;
            }

            taken.Add(box);
            sheet.Area(box, PaperLooks.Patch);
            sheet.Text(text, words.At, style, TextAnchor.Middle, angle);
            return middle;
        }

        return null;
    }

    // Capitals rise 0.72 of the size.
    private const double HalfCapital = 0.36;

    // Two convex rings are apart where a side of one of them parts them.
    private static bool Meet(IReadOnlyList<Point2> a, IReadOnlyList<Point2> b) => !Parts(a, b) && !Parts(b, a);

    private static bool Parts(IReadOnlyList<Point2> a, IReadOnlyList<Point2> b)
    {
        for (int i = 0; i < a.Count; i++)
        {
            var side = (a[(i + 1) % a.Count] - a[i]).Left;
            double most = a.Max(p => Point2.Dot(p - a[i], side)), least = a.Min(p => Point2.Dot(p - a[i], side));
            if (b.All(p => Point2.Dot(p - a[i], side) > most) || b.All(p => Point2.Dot(p - a[i], side) < least))
            {
                return true;
            }
        }

        return false;
    }
}
