namespace PlatformForge.Projects.Reading;

/// <summary>Finds the name that somebody most likely meant.</summary>
public static class NearestName
{
    // Names that differ by more letters than this are not compared; rows of so many cells lie on the stack.
    private const int MostApart = 40, FewCells = 384;

    /// <summary>The nearest of the names, or null when none is near enough to be meant: a third of the letters may be wrong, at least two, and never all of
    /// them.</summary>
    public static string? Of(string written, IEnumerable<string> names)
    {
        string? best = null;
        string meant = Plain(written);
        int least = Math.Min(Math.Max(2, written.Length / 3) + 1, Math.Max(1, written.Length));
        foreach (string name in names)
        {
            // A file may have tens of thousands of keys that mean nothing: what differs too much in length is not compared.
            int distance = Math.Abs(name.Length - meant.Length) < least ? Distance(meant, Plain(name)) : least;
            if (distance < least)
            {
                (best, least) = (name, distance);
            }
        }

        return best;
    }

    private static string Plain(string name) => name.Replace('-', '_').Replace(' ', '_').ToLowerInvariant();

    /// <summary>Letters to add, take out, change, or swap with a neighbour to get from one text to the other.</summary>
    public static int Distance(string a, string b)
    {
        if (Math.Abs(a.Length - b.Length) > MostApart)
        {
            return int.MaxValue;
        }

        // Row i of the table of distances between beginnings: how far the first i letters of a are from the first j of b.
        int width = b.Length + 1;
        Span<int> rows = 3 * width <= FewCells ? stackalloc int[3 * width] : new int[3 * width];
        Span<int> before = rows[..width], last = rows[width..(2 * width)], row = rows[(2 * width)..];
        for (int j = 0; j < width; j++)
        {
            row[j] = j;
        }

        for (int i = 1; i <= a.Length; i++)
        {
            var free = before;
            before = last;
            last = row;
            row = free;
            row[0] = i;
            for (int j = 1; j < width; j++)
            {
                int change = a[i - 1] == b[j - 1] ? 0 : 1;
                row[j] = Math.Min(Math.Min(last[j], row[j - 1]) + 1, last[j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
                }
            }
        }

        return row[b.Length];
    }
}
