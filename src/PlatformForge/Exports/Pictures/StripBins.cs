namespace PlatformForge.Exports.Pictures;

/// <summary>Which of many things fall on which strip of rows, in their order.</summary>
/// <param name="start">Where the things of each strip begin in the list; one more than there are strips.</param>
/// <param name="items">Indices of things, strip by strip.</param>
internal sealed class StripBins(int[] start, int[] items)
{
    /// <summary>The things on a strip.</summary>
    public ReadOnlySpan<int> On(int strip) => items.AsSpan(start[strip]..start[strip + 1]);

    /// <summary>Files things by the rows they take.</summary>
    /// <param name="count">How many things.</param>
    /// <param name="strips">How many strips.</param>
    /// <param name="rows">Rows of a strip.</param>
    /// <param name="extent">Top and bottom row of a thing, in rows and parts of them; NaN files it on all strips.</param>
    public static StripBins Of(int count, int strips, int rows, Func<int, (double Top, double Bottom)> extent)
    {
        var range = new (int First, int Last)[count];
        var start = new int[strips + 1];
        for (int i = 0; i < count; i++)
        {
            var (top, bottom) = extent(i);
            range[i] = double.IsNaN(top + bottom) ? (0, strips - 1)
                : ((int)Math.Clamp(Math.Floor((top - 1) / rows), 0, strips), (int)Math.Clamp(Math.Floor((bottom + 1) / rows), -1, strips - 1));
            for (int strip = range[i].First; strip <= range[i].Last; strip++)
            {
                start[strip + 1]++;
            }
        }

        for (int strip = 0; strip < strips; strip++)
        {
            start[strip + 1] += start[strip];
        }

        int[] next = [.. start], items = new int[start[^1]];
        for (int i = 0; i < count; i++)
        {
            for (int strip = range[i].First; strip <= range[i].Last; strip++)
            {
                items[next[strip]++] = i;
            }
        }

        return new(start, items);
    }
}
