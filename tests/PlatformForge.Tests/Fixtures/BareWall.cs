using PlatformForge.Geometry;
using PlatformForge.Solids.Bodies;

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
                bare[i, k] = y > foot && y < top && isLooked(new(x, y));
            }
        }

        foreach (var region in wall.Regions)
        {
            Cover(region.Outline, 0);
            Cover(region.Outline, -wall.Wall.Length);
        }

        return Oblongs(bare, (int)(size.X / Cell), (int)(size.Y / Cell)).Select(p => new Point2(p.X * Cell, low + (p.Y * Cell))).ToList();

        // By crossings of each column's middle with the outline's sides.
        void Cover(Point2[] outline, double by)
        {
            var (first, last) = (outline.Min(p => p.X) + by, outline.Max(p => p.X) + by);
            for (int i = Math.Max(0, (int)(first / Cell)); i <= Math.Min(across - 1, (int)(last / Cell)); i++)
            {
                double x = ((i + 0.5) * Cell) - by;
                double[] crossings = [.. outline.Select((p, n) => (A: p, B: outline[(n + 1) % outline.Length])).Where(s => s.A.X > x != s.B.X > x)
                    .Select(s => s.A.Y + ((s.B.Y - s.A.Y) * (x - s.A.X) / (s.B.X - s.A.X))).Order()];
                for (int c = 0; c + 1 < crossings.Length; c += 2)
                {
                    for (int k = Math.Max(0, (int)((crossings[c] - low) / Cell)); k < Math.Min(up, (int)Math.Ceiling((crossings[c + 1] - low) / Cell)); k++)
                    {
                        bare[i, k] = false;
                    }
                }
            }
        }
    }

    // Middles of all oblongs of so many cells that are bare, in cells: of those that touch one another the first.
    private static List<Point2> Oblongs(bool[,] bare, int across, int up)
    {
        var found = new List<Point2>();
        int[] run = new int[bare.GetLength(0)];
        for (int k = 0; k < bare.GetLength(1); k++)
        {
            int beside = 0;
            for (int i = 0; i < run.Length; i++)
            {
                run[i] = bare[i, k] ? run[i] + 1 : 0;
                beside = run[i] >= up ? beside + 1 : 0;
                Point2 at = new(i - (across / 2.0), k - (up / 2.0));
                if (beside >= across && found.TrueForAll(f => Math.Abs(f.X - at.X) > 2 * across || Math.Abs(f.Y - at.Y) > 2 * up))
                {
                    found.Add(at);
                }
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
