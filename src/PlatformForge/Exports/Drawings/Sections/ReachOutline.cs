using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings.Sections;

/// <summary>
/// The outline of boxes in a cross-section, taken together: at each height from the farthest on the left to the farthest on the right.
/// </summary>
/// <param name="boxes">From and to reach, from and to height, mm.</param>
internal sealed class ReachOutline(IReadOnlyList<(double T0, double T1, double Z0, double Z1)> boxes)
{
    // Reaches that differ by less are the same on a drawing, mm: each may be told too great by half of it.
    private const double Alike = 0.02;

    /// <summary>A ring for each stretch of heights without a gap, from the lowest up: reach and height.</summary>
    public IReadOnlyList<IReadOnlyList<Point2>> Rings()
    {
        var rings = new List<IReadOnlyList<Point2>>();
        var right = new List<Point2>();
        var left = new List<Point2>();
        void Close()
        {
            if (right.Count > 0)
            {
                left.Reverse();
                rings.Add([.. right, .. left]);
            }

            (right, left) = ([], []);
        }

        double[] levels = Levels(boxes);
        for (int i = 1; i < levels.Length; i++)
        {
            if (Extent((levels[i - 1] + levels[i]) / 2) is not var (t0, t1))
            {
                Close();
                continue;
            }

            right.AddRange([new(t1, levels[i - 1]), new(t1, levels[i])]);
            left.AddRange([new(t0, levels[i - 1]), new(t0, levels[i])]);
        }

        Close();
        return rings;
    }

    /// <summary>Whether it lies wholly inside another outline.</summary>
    public bool IsInside(ReachOutline other)
    {
        double[] levels = Levels([.. boxes, .. other.Boxes]);
        return levels.Zip(levels.Skip(1), (low, high) => (low + high) / 2)
            .All(z => Extent(z) is not var (t0, t1) || (other.Extent(z) is var (u0, u1) && t0 > u0 - Alike && t1 < u1 + Alike));
    }

    private IReadOnlyList<(double T0, double T1, double Z0, double Z1)> Boxes => boxes;

    private (double T0, double T1)? Extent(double z)
    {
        var cut = boxes.Where(b => b.Z0 < z && z < b.Z1).ToArray();
        return cut.Length == 0 ? null : (cut.Min(b => b.T0), cut.Max(b => b.T1));
    }

    private static double[] Levels(IEnumerable<(double T0, double T1, double Z0, double Z1)> of) =>
        [.. of.SelectMany(b => new[] { b.Z0, b.Z1 }).Distinct().Order()];
}
