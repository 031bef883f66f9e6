using PlatformForge.Geometry;
using PlatformForge.Units;

namespace PlatformForge.Exports.Stock;

/// <summary>A sheet with the parts on it.</summary>
/// <param name="Kind">What it is of.</param>
/// <param name="Number">From 1, by kind.</param>
/// <param name="Parts">The parts where they lie, mm from the sheet's lower left corner.</param>
public sealed record CutSheet(StockKind Kind, int Number, IReadOnlyList<CutPart> Parts);

/// <summary>
/// Lays parts on sheets in shelves: the tallest first, each on the first shelf that has room, lying along the sheet. Straight cuts part the shelves, so
/// that a sheet can
/// be cut up with a guillotine first. The order is that of size, then of name: the same parts give the same sheets.
/// </summary>
internal static class StockNesting
{
    public static IReadOnlyList<CutSheet> Of(IEnumerable<CutPart> parts, StockSpec stock) =>
        [.. parts.GroupBy(p => p.Kind).OrderBy(g => g.Key).SelectMany(g => OfKind(g.Key, [.. g], stock))];

    /// <summary>Whether a part goes on a sheet, lying or upright.</summary>
    public static bool Fits(CutPart part, StockSpec stock) => Laid(part, stock) is not null;

    private static Point2 Room(StockSpec stock) => stock.Size - new Point2(2 * stock.Margin, 2 * stock.Margin);

    /// <summary>The part as it lies: its longer side along the sheet where it goes so, else the other way; null where it does not fit.</summary>
    private static CutPart? Laid(CutPart part, StockSpec stock)
    {
        var room = Room(stock);
        bool Goes(Point2 size) => size.X <= room.X && size.Y <= room.Y;
        var upright = Turned(part);
        CutPart[] ways = part.Size.X >= part.Size.Y ? [part, upright] : [upright, part];
        return ways.FirstOrDefault(p => Goes(p.Size));
    }

    // A quarter turn to the left.
    private static CutPart Turned(CutPart part)
    {
        double height = part.Size.Y;
        return part.Moved(p => new(height - p.Y, p.X));
    }

    private static IEnumerable<CutSheet> OfKind(StockKind kind, IReadOnlyList<CutPart> parts, StockSpec stock)
    {
        var room = Room(stock);
        var shelves = new List<Shelf>();
        var order = parts.Select((p, i) => (Part: Laid(p, stock), i)).Where(p => p.Part is not null)
            .OrderByDescending(p => p.Part!.Size.Y).ThenByDescending(p => p.Part!.Size.X).ThenBy(p => p.i);
        foreach (var (part, _) in order)
        {
            var size = part!.Size;
            var shelf = shelves.Find(s => s.Used + size.X <= room.X + Tolerances.Rounding && size.Y <= s.Height + Tolerances.Rounding);
            if (shelf is null)
            {
                shelf = NewShelf(shelves, size.Y, room.Y, stock.Gap);
                shelves.Add(shelf);
            }

            var corner = new Point2(stock.Margin + shelf.Used, stock.Margin + shelf.Bottom);
            shelf.Parts.Add(part.Moved(p => p + corner));
            shelf.Used += size.X + stock.Gap;
        }

        return shelves.GroupBy(s => s.Sheet).Select(g => new CutSheet(kind, g.Key, [.. g.SelectMany(s => s.Parts)]));
    }

    private static Shelf NewShelf(List<Shelf> shelves, double height, double room, double gap)
    {
        int last = shelves.Count == 0 ? 1 : shelves.Max(s => s.Sheet);
        for (int sheet = 1; sheet <= last; sheet++)
        {
            double used = shelves.Where(s => s.Sheet == sheet).Select(s => s.Bottom + s.Height + gap).DefaultIfEmpty(0).Max();
            if (used + height <= room + Tolerances.Rounding)
            {
                return new(sheet, used, height);
            }
        }

        return new(last + 1, 0, height);
    }

    private sealed class Shelf(int sheet, double bottom, double height)
    {
        public int Sheet { get; } = sheet;

        public double Bottom { get; } = bottom;

        public double Height { get; } = height;

        public double Used { get; set; }

        public List<CutPart> Parts { get; } = [];
    }
}
