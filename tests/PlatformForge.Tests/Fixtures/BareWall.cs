using PlatformForge.Geometry;
using PlatformForge.Solids.Bodies.Walls;

namespace PlatformForge.Tests.Fixtures;

/// <summary>Places of a laid wall at which nothing is laid nor sunk: its mortar, cell by cell.</summary>
internal static class BareWall
{
    // Side of a cell, mm.
    private const double Cell = 0.05;

    /// <summary>Middles of oblongs of a stated size that are bare all over, one for each place where there is one, mm along and up.</summary>
    /// <param name="wall">The wall as it was made.</param>
    /// <param name="size">Length and height of the oblong, mm.</param>
    /// <param name="isLooked">Which places are looked at.</param>
    public static IReadOnlyList<Point2> Places(FacedWall wall, Point2 size, Func<Point2, bool> isLooked)
    {
        double low = wall.Wall.Foot.Min(p => p.Y), high = wall.Wall.Top.Max(p => p.Y);
        var (across, up) = ((int)Math.Ceiling(wall.Wall.Length / Cell), (int)Math.Ceiling((high - low) / Cell));
        bool[,] bare = new bool[across, up];
        for (int i = 0; i < across; i++)
        {
            double x = (i + 0.5) * Cell, foot = Height(wall.Wall.Foot, x), top = Height(wall.Wall.Top, x);
            for (int k = 0; k < up; k++)
            {
                double y = low + ((k + 0.5) * Cell);
                bare[i, k] = y > foot && y < top;
            }
        }

        foreach (var region in wall.Regions)
        {
            Cover(region.Outline, 0);
            Cover(region.Outline, -wall.Wall.Length);
        }

        // Whether a place is looked at takes long to say, so it is asked of the few cells alone that are in an oblong that is bare.
        var (along, over) = ((int)(size.X / Cell), (int)(size.Y / Cell));
        bool[,] asked = new bool[across, up], looked = new bool[across, up];
        foreach (var (i, k) in Oblongs(bare, along, over))
        {
            for (int n = 0; n < along * over; n++)
            {
                var (x, y) = (i - (n % along), k - (n / along));
                looked[x, y] = asked[x, y] ? looked[x, y] : isLooked(new((x + 0.5) * Cell, low + ((y + 0.5) * Cell)));
                asked[x, y] = true;
            }
        }

        return OneForEachPlace(Oblongs(looked, along, over), along, over).Select(p => new Point2(p.X * Cell, low + (p.Y * Cell))).ToList();

        // By crossings of each column's middle with the outline's sides.
        void Cover(Point2[] outline, double by)
        {
            var (first, last) = (outline.Min(p => p.X) + by, outline.Max(p => p.X) + by);
            for (int i = Math.Max(0, (int)(first / Cell)); i <= Math.Min(across - 1, (int)(last / Cell)); i++)
            {
                double x = ((i + 0.5) * Cell) - by;
                var crossings = Crossings(outline, x);
                for (int c = 0; c + 1 < crossings.Count; c += 2)
                {
                    for (int k = Math.Max(0, (int)((crossings[c] - low) / Cell)); k < Math.Min(up, (int)Math.Ceiling((crossings[c + 1] - low) / Cell)); k++)
                    {
                        bare[i, k] = false;
                    }
                }
            }
        }
    }

    // Heights at which the sides of an outline cross an upright line, upwards.
    private static List<double> Crossings(Point2[] outline, double x)
    {
        var found = new List<double>(4);
        for (int i = 0; i < outline.Length; i++)
        {
            var (a, b) = (outline[i], outline[(i + 1) % outline.Length]);
            if (a.X > x != b.X > x)
            {
                found.Add(a.Y + ((b.Y - a.Y) * (x - a.X) / (b.X - a.X)));
            }
        }

        found.Sort();
        return found;
    }

    // Last and highest cells of all oblongs of so many cells that are bare.
    private static List<(int I, int K)> Oblongs(bool[,] bare, int across, int up)
    {
        var found = new List<(int, int)>();
        int[] run = new int[bare.GetLength(0)];
        for (int k = 0; k < bare.GetLength(1); k++)
        {
            int beside = 0;
            for (int i = 0; i < run.Length; i++)
            {
                run[i] = bare[i, k] ? run[i] + 1 : 0;
                beside = run[i] >= up ? beside + 1 : 0;
                if (beside >= across)
                {
                    found.Add((i, k));
                }
            }
        }

        return found;
    }

    // Middles, in cells: of oblongs that touch one another the first.
    private static List<Point2> OneForEachPlace(IReadOnlyList<(int I, int K)> oblongs, int across, int up)
    {
        var found = new List<Point2>();
        foreach (var (i, k) in oblongs)
        {
            Point2 at = new(i - (across / 2.0), k - (up / 2.0));
            if (found.TrueForAll(f => Math.Abs(f.X - at.X) > 2 * across || Math.Abs(f.Y - at.Y) > 2 * up))
            {
                found.Add(at);
            }
        }

        return found;
    }

    private static double Height(IReadOnlyList<Point2> edge, double x)
    {
        for (int i = 0; i + 1 < edge.Count; i++)
        {
            if (edge[i].X <= x && edge[i + 1].X > x)
            {
                return edge[i].Y + ((edge[i + 1].Y - edge[i].Y) * (x - edge[i].X) / (edge[i + 1].X - edge[i].X));
            }
        }

        return double.NaN;
    }
}
