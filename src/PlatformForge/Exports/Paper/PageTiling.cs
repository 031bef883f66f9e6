using PlatformForge.Exports.Paper.FullSize;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Paper;

/// <summary>Sheets in rows and columns of one large page, which is turned so that the platform runs along it. Sheets on which nothing would be drawn are
/// left out.</summary>
internal sealed class PageTiling(FullSizeFigures figures, FigureIndex index, SheetRoom room, double overlap)
{
    private const double Step = 5;

    /// <summary>The sheets, row by row; null when there would be more than <paramref name="most"/>.</summary>
    public IReadOnlyList<SheetTile>? Tiles(int most)
    {
        var page = Covering();
        if ((long)page.Columns * page.Rows > (long)most * most)
        {
            return null;
        }

        var used = new List<(int C, int R)>();
        for (int r = 0; r < page.Rows; r++)
        {
            used.AddRange(Enumerable.Range(0, page.Columns).Where(c => IsUsed(page.Frame(c, r))).Select(c => (c, r)));
        }

        if (used.Count > most)
        {
            return null;
        }

        var names = new Dictionary<(int C, int R, bool Down), string>();
        TileJoin Join(int c, int r, bool isDown)
        {
            if (!names.TryGetValue((c, r, isDown), out string? name))
            {
                names.Add((c, r, isDown), name = TileJoin.NameOf(names.Count));
            }

            return page.Join(name, c, r, isDown);
        }

        return [.. used.Select((at, i) => new SheetTile(
            i + 1,
            page.Frame(at.C, at.R),
            room.Window,
            [.. Neighbours(at).Where(n => used.Contains(n.Beyond)).Select(n => Join(n.C, n.R, n.Down))]))];
    }

    // Rows and columns over all that is drawn, whose own middle lies on the middle of it.
    private Page Covering()
    {
        var (from, to) = figures.Range;
        Point2 start = figures.PlaceOf(from, 0), chord = figures.PlaceOf(to, 0) - start, along = chord * (1 / Math.Max(1, chord.Length));
        int steps = Math.Max(1, (int)Math.Ceiling((to - from) / Step));
        var places = Enumerable.Range(0, steps + 1).Select(i => from + ((to - from) * i / steps))
            .SelectMany(s => figures.Across(s) is var (low, high) ? new[] { figures.PlaceOf(s, low), figures.PlaceOf(s, high) } : []).ToArray();
        var turned = Array.ConvertAll(places, p => new Point2(Point2.Dot(p - start, along), -Point2.Cross(along, p - start)));
        double x0 = turned.Min(p => p.X), x1 = turned.Max(p => p.X), y0 = turned.Min(p => p.Y), y1 = turned.Max(p => p.Y);
        double right = room.Window.Width - overlap, down = room.Window.Height - overlap;
        int columns = Needed(x1 - x0, right), rows = Needed(y1 - y0, down);
        double left = ((x0 + x1) / 2) - ((columns - 1) / 2.0 * right), top = ((y0 + y1) / 2) - ((rows - 1) / 2.0 * down);
        return new(columns, rows, start, along, new(left, top), new(right, down), room.Window.Middle);
    }

    // The middle of its first sheet and the way from sheet to sheet are told along the platform from its start, and down.
    private sealed record Page(int Columns, int Rows, Point2 Start, Point2 Along, Point2 First, Point2 Pitch, Point2 Middle)
    {
        public SheetFrame Frame(int c, int r) => new(Place(First.X + (c * Pitch.X), First.Y + (r * Pitch.Y)), Along, Middle);

        // The line at which a sheet meets the one under it, or the one on its right.
        public TileJoin Join(string name, int c, int r, bool isDown)
        {
            var (right, down) = Pitch;
            double x = First.X + (c * right), y = First.Y + (r * down);
            Point2[] line = isDown
                ? [Place(x - (right / 2), y + (down / 2)), Place(x, y + (down / 2)), Place(x + (right / 2), y + (down / 2))]
                : [Place(x + (right / 2), y - (down / 2)), Place(x + (right / 2), y), Place(x + (right / 2), y + (down / 2))];
            return new(name, line[0], line[2], line);
        }

        private Point2 Place(double x, double y) => Start + (Along * x) + (Along.Left * -y);
    }

    private static IEnumerable<(int C, int R, bool Down, (int, int) Beyond)> Neighbours((int C, int R) at) =>
    [
        (at.C - 1, at.R, false, (at.C - 1, at.R)), (at.C, at.R, false, (at.C + 1, at.R)),
        (at.C, at.R - 1, true, (at.C, at.R - 1)), (at.C, at.R, true, (at.C, at.R + 1)),
    ];

    private int Needed(double length, double step) => Math.Max(1, (int)Math.Ceiling((length - overlap) / step));

    // Whether anything is drawn within the lines at which the sheet meets its neighbours.
    private bool IsUsed(SheetFrame frame)
    {
        var window = room.Window;
        var core = new SheetWindow(window.Left + (overlap / 2), window.Top + (overlap / 2), window.Right - (overlap / 2), window.Bottom - (overlap / 2));
        double radius = Math.Sqrt((window.Width * window.Width) + (window.Height * window.Height)) / 2;
        return index.Near(frame.Middle, radius).Any(l => WindowCutter.Lines([.. l.Points.Select(frame.ToSheet)], core).Any());
    }
}
