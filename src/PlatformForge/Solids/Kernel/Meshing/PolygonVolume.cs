using PlatformForge.Solids.Kernel.Noding;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// What polygons enclose, by columns: each triangle's area in plan, exact in grid steps, times its mean height; tops count up, bottoms down.
/// Walls add nothing but where a straight foot or top left out nodes that the grid had moved off it.
/// </summary>
internal static class PolygonVolume
{
    /// <summary>Volume in mm³, and the area in plan of all tops and bottoms in mm².</summary>
    public static (double Volume, double Area) Of(PolygonStore store, NodedPlan plan, NodeLevels levels)
    {
        double volume = 0, lost = 0, area = 0;
        ReadOnlySpan<int> triangles = store.Triangles, corners = store.Levels;
        for (int i = 0; i < triangles.Length; i += 3)
        {
            int a = corners[triangles[i]], b = corners[triangles[i + 1]], c = corners[triangles[i + 2]];
            int na = levels.NodeOf(a), nb = levels.NodeOf(b), nc = levels.NodeOf(c);
            if (na == nb || nb == nc || nc == na)
            {
                continue; // upright
            }

            double turn = plan.Turn(na, nb, nc);
            area += Math.Abs(turn);
            double term = (turn * (levels.Height(a) + levels.Height(b) + levels.Height(c)) / 6) - lost, sum = volume + term;
            (lost, volume) = (sum - volume - term, sum);
        }

        const double square = Tolerances.GridStep * Tolerances.GridStep;
        return (volume * square, area * square / 2);
    }
}
