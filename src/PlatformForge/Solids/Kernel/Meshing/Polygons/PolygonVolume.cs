using PlatformForge.Solids.Kernel.Levels;
using PlatformForge.Solids.Kernel.Noding;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel.Meshing.Polygons;

/// <summary>
/// What polygons enclose, by columns: each triangle's area in plan, exact in grid steps, times its mean height; tops count up, bottoms down.
/// Walls add nothing but where a straight foot or top left out nodes that the grid had moved off it.
/// </summary>
internal sealed class PolygonVolume(PolygonStore store, NodedPlan plan, NodeLevels levels)
{
    private double volume, lost, area;

    /// <summary>Volume of what has been added, mm³.</summary>
    public double Volume => volume * Square;

    /// <summary>Area in plan of all that is not upright, mm².</summary>
    public double Area => area * Square / 2;

    private static double Square => Tolerances.GridStep * Tolerances.GridStep;

    /// <summary>Adds all triangles.</summary>
    public void AddAll() => Add(0, store.TriangleCount);

    /// <summary>Adds the triangles from one to before another.</summary>
    public void Add(int from, int end)
    {
        ReadOnlySpan<int> triangles = store.Triangles, corners = store.Levels;
        for (int i = 3 * from; i < 3 * end; i += 3)
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
    }
}
