using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>
/// Cuts the height of what was printed into slices for parts that lean: thin ones beside the heights at which faces begin and end, such as a coping's
/// underside, and others of even
/// thickness between.
/// </summary>
internal static class MeshLevels
{
    // A height with more than this share of the corners is a level, mm apart by more than a file's rounding.
    private const double LeastShare = 0.015, Rounding = 0.001;

    // Thickness of a slice beside a level and the most of any other, mm.
    private const double Thin = 0.05, Thick = 2;

    /// <summary>Heights above the baseboard, mm, from below, between which the slices lie.</summary>
    public static double[] Of(IReadOnlyList<Mesh> placed)
    {
        double[] heights = [.. placed.SelectMany(m => m.Vertices).Select(v => v.Z).Order()];
        if (heights.Length == 0)
        {
            return [];
        }

        var cuts = new SortedSet<double> { heights[0], heights[^1] };
        for (int i = 0, next; i < heights.Length; i = next)
        {
            for (next = i + 1; next < heights.Length && heights[next] - heights[i] < Rounding;)
            {
                next++;
            }

            if (next - i >= LeastShare * heights.Length)
            {
                cuts.UnionWith([heights[i] - Rounding - Thin, heights[i] - Rounding, heights[next - 1] + Rounding, heights[next - 1] + Rounding + Thin]);
            }
        }

        double[] levels = [.. cuts];
        return [.. levels.Zip(levels.Skip(1)).SelectMany(p => Evenly(p.First, p.Second)).Append(levels[^1])];
    }

    private static IEnumerable<double> Evenly(double low, double high)
    {
        int count = (int)Math.Ceiling((high - low) / Thick);
        return Enumerable.Range(0, count).Select(i => low + ((high - low) * i / count));
    }
}
