using PlatformForge.Solids.Kernel.Levels;
using PlatformForge.Solids.Kernel.Meshing.Cutting;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// Cuts traced surfaces into triangles. A surface with a single border that is monotone in the order of nodes, as nearly all are, is cut at once; another
/// one goes through a plane sweep of its own.
/// </summary>
internal sealed class RegionCutter(RegionMesher regions, NodedPlan plan, NodeLevels levels, PolygonStore store)
{
    private readonly MonotonePolygon polygon = new();
    private readonly RegionSweep sweep = new();

    /// <summary>Surfaces that could not be cut.</summary>
    public List<int> Failed { get; } = [];

    /// <summary>Cuts all surfaces.</summary>
    public void Cut()
    {
        foreach (ref readonly var loop in regions.Loops)
        {
            if (loop.Next != RegionLoop.Inner && !Cut(loop))
            {
                Failed.Add(loop.Surface);
            }
        }
    }

    public void GiveBack()
    {
        polygon.GiveBack();
        sweep.GiveBack();
    }

    private bool Cut(in RegionLoop loop)
    {
        if (loop.Next == RegionLoop.Last)
        {
            var levelsAlong = regions.Border.Slice(loop.From, loop.Count);
            polygon.Clear();
            foreach (int level in levelsAlong)
            {
                int node = levels.NodeOf(level);
                polygon.Add(plan.U[node], plan.V[node]);
            }

            if (loop.Count >= 3 && polygon.Cut())
            {
                Emit(levelsAlong, loop.IsBottom, loop.Shown);
                return true;
            }
        }

        return Sweep(loop);
    }

    private void Emit(ReadOnlySpan<int> along, bool isBottom, byte shown)
    {
        int start = store.Count, n = along.Length;
        for (int i = 0; i < n; i++)
        {
            store.Add(along[isBottom ? n - 1 - i : i]);
        }

        store.Close(start);
        foreach (var (a, b, c) in polygon.Triangles.Span)
        {
            if (isBottom)
            {
                store.AddTriangle(start + n - 1 - a, start + n - 1 - c, start + n - 1 - b, shown);
            }
            else
            {
                store.AddTriangle(start + a, start + b, start + c, shown);
            }
        }
    }

    private bool Sweep(in RegionLoop loop)
    {
        sweep.Clear();
        Enter(loop);
        for (int i = loop.Next; i >= 0; i = regions.Loops[i].Other)
        {
            Enter(regions.Loops[i]);
        }

        return sweep.Cut(store, loop.IsBottom, loop.Shown);

        void Enter(in RegionLoop one)
        {
            if (one.Count == 2)
            {
                return; // a slit, closed by merged levels: what ends at its two sides meets there
            }

            foreach (int level in regions.Border.Slice(one.From, one.Count))
            {
                int node = levels.NodeOf(level);
                sweep.Add(level, plan.U[node], plan.V[node]);
            }

            sweep.Close();
        }
    }
}
