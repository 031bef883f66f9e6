using PlatformForge.Exports.Paper.FullSize;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Paper;

/// <summary>
/// Sheets one after another along the track, each turned to its stretch; where a platform is wider than the paper, in rows. Neighbours meet at a line
/// square to the track, and show half the overlap beyond it.
/// </summary>
internal sealed class TrackTiling(FullSizeFigures figures, SheetRoom room, double overlap)
{
    private const double Step = 5; // mm of chainage between places looked at
    private const double Shortest = 20; // mm of chainage on a sheet
    private const double CrossInset = 4; // mm from a join's end to its cross
    private const int MostRows = 12;

    private double From => figures.Range.From;

    private double To => figures.Range.To;

    /// <summary>The sheets; null when there would be more than <paramref name="most"/>.</summary>
    public IReadOnlyList<SheetTile>? Tiles(int most)
    {
        IReadOnlyList<SheetTile>? best = null;
        for (int rows = 1; rows <= MostRows; rows++)
        {
            if (Cuts(rows, most / rows) is { } cuts)
            {
                var tiles = Laid(cuts, rows);
                best = best is null || tiles.Count < best.Count ? tiles : best;
                if (cuts.Count == 2)
                {
                    break; // more rows cannot make fewer sheets
                }
            }
        }

        return best;
    }

    // Chainages at which sheets begin and end: as few as possible, then as even as possible. Null when a row is too low for any stretch.
    private List<double>? Cuts(int rows, int most)
    {
        var cuts = new List<double> { From };
        while (cuts[^1] < To)
        {
            double from = cuts[^1], low = from + Shortest, high = To;
            if (cuts.Count > most || !Fits(from, Math.Min(To, low), rows))
            {
                return null;
            }

            if (Fits(from, To, rows))
            {
                cuts.Add(To);
                break;
            }

            while (high - low > 0.5)
            {
                double middle = (low + high) / 2;
                (low, high) = Fits(from, middle, rows) ? (middle, high) : (low, middle);
            }

            cuts.Add(low);
        }

        int count = cuts.Count - 1;
        var even = Enumerable.Range(0, count + 1).Select(i => From + ((To - From) * i / count)).ToList();
        return even.Zip(even.Skip(1)).All(p => Fits(p.First, p.Second, rows)) ? even : cuts;
    }

    private bool Fits(double from, double to, int rows)
    {
        var box = Box(from, to);
        return box.Width <= room.Window.Width && box.Height <= (rows * room.Window.Height) - ((rows - 1) * overlap);
    }

    private (Point2 Along, double X0, double Y0, double Width, double Height, Point2 Origin) Box(double from, double to)
    {
        double a = Math.Max(From, from - (overlap / 2)), b = Math.Min(To, to + (overlap / 2));
        Point2 start = figures.PlaceOf(a, 0), chord = figures.PlaceOf(b, 0) - start, along = chord * (1 / chord.Length);
        int steps = Math.Max(1, (int)Math.Ceiling((b - a) / Step));
        double x0 = double.MaxValue, x1 = double.MinValue, y0 = double.MaxValue, y1 = double.MinValue;
        for (int i = 0; i <= steps; i++)
        {
            double s = a + ((b - a) * i / steps);
            var (least, greatest) = figures.Across(s);
            foreach (double d in (double[])[least, greatest])
            {
                var p = figures.PlaceOf(s, d) - start;
                double x = Point2.Dot(p, along), y = -Point2.Cross(along, p);
                (x0, x1, y0, y1) = (Math.Min(x0, x), Math.Max(x1, x), Math.Min(y0, y), Math.Max(y1, y));
            }
        }

        return (along, x0, y0, x1 - x0, y1 - y0, start);
    }

    private List<SheetTile> Laid(List<double> cuts, int rows)
    {
        var tiles = new List<SheetTile>();
        int names = cuts.Count - 2; // first those across the track
        for (int i = 0; i + 1 < cuts.Count; i++)
        {
            var box = Box(cuts[i], cuts[i + 1]);
            var middle = box.Origin + (box.Along * (box.X0 + (box.Width / 2))) + (box.Along.Left * -(box.Y0 + (box.Height / 2)));
            double apart = room.Window.Height - overlap;
            Point2 RowMiddle(int row) => middle + (box.Along.Left * (((rows - 1) / 2.0 - row) * apart));
            for (int row = 0; row < rows; row++)
            {
                var frame = new SheetFrame(RowMiddle(row), box.Along, room.Window.Middle);
                var joins = new List<TileJoin>();
                joins.AddRange(new[] { i - 1, i }.Where(c => c >= 0 && c + 2 < cuts.Count).Select(c => AcrossTrack(c, cuts[c + 1])));
                for (int seam = Math.Max(0, row - 1); seam <= Math.Min(rows - 2, row); seam++)
                {
                    joins.Add(AlongTrack(TileJoin.NameOf(names + (i * (rows - 1)) + seam), (RowMiddle(seam) + RowMiddle(seam + 1)) * 0.5, box.Along));
                }

                tiles.Add(new(tiles.Count + 1, frame, room.Window, joins) { Range = (cuts[i], cuts[i + 1]) });
            }
        }

        return tiles;
    }

    private TileJoin AcrossTrack(int index, double s)
    {
        var (least, greatest) = figures.Across(s);
        Point2 At(double d) => figures.PlaceOf(s, d);
        return new(TileJoin.NameOf(index), At(least), At(greatest), [At(least + CrossInset), At((least + greatest) / 2), At(greatest - CrossInset)]);
    }

    private TileJoin AlongTrack(string name, Point2 middle, Point2 along)
    {
        double half = room.Window.Width / 2;
        Point2 At(double x) => middle + (along * x);
        return new(name, At(-half), At(half), [At(-half + (3 * CrossInset)), At(0), At(half - (3 * CrossInset))]);
    }
}
