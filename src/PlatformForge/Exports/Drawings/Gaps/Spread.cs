namespace PlatformForge.Exports.Drawings.Gaps;

/// <summary>Moves places in a row as little as may be, so that none is nearer to the next than a gap.</summary>
internal static class Spread
{
    /// <param name="wished">Where they would be, ascending.</param>
    /// <param name="gap">Least distance from one to the next.</param>
    /// <returns>Where they are, in the same order: the nearest such places by the sum of squares.</returns>
    public static double[] Of(IReadOnlyList<double> wished, double gap)
    {
        // With the gaps taken out, places only must not fall behind one another: those that would are moved to their mean, together.
        var blocks = new List<(double Sum, int Count)>();
        for (int i = 0; i < wished.Count; i++)
        {
            (double Sum, int Count) block = (wished[i] - (i * gap), 1);
            while (blocks.Count > 0 && blocks[^1].Sum / blocks[^1].Count > block.Sum / block.Count)
            {
                block = (block.Sum + blocks[^1].Sum, block.Count + blocks[^1].Count);
                blocks.RemoveAt(blocks.Count - 1);
            }

            blocks.Add(block);
        }

        return [.. blocks.SelectMany(b => Enumerable.Repeat(b.Sum / b.Count, b.Count)).Select((x, i) => x + (i * gap))];
    }
}
