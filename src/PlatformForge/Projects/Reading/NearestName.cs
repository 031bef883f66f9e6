namespace PlatformForge.Projects.Reading;

/// <summary>Finds the name that somebody most likely meant.</summary>
public static class NearestName
{
    /// <summary>The nearest of the names, or null when none is near enough to be meant: a third of the letters may be wrong, at least two, and never all of them.</summary>
    public static string? Of(string written, IEnumerable<string> names)
    {
        string? best = null;
        int least = Math.Min(Math.Max(2, written.Length / 3) + 1, Math.Max(1, written.Length));
        foreach (string name in names)
        {
            int distance = Distance(Plain(written), Plain(name));
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
        if (Math.Abs(a.Length - b.Length) > 40)
        {
            return int.MaxValue;
        }

        var rows = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            for (int j = 0; j <= b.Length; j++)
            {
                if (i == 0 || j == 0)
                {
                    rows[i, j] = i + j;
                    continue;
                }

                int change = a[i - 1] == b[j - 1] ? 0 : 1;
                rows[i, j] = Math.Min(Math.Min(rows[i - 1, j], rows[i, j - 1]) + 1, rows[i - 1, j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    rows[i, j] = Math.Min(rows[i, j], rows[i - 2, j - 2] + 1);
                }
            }
        }

        return rows[a.Length, b.Length];
    }
}
