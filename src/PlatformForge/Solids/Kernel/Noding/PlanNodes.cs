using PlatformForge.Solids.Kernel.Lending;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>The hot nodes of the plan: grid points at which something ends or crosses, each once.</summary>
internal sealed class PlanNodes(int expected)
{
    private readonly PairTable table = new(expected);
    private readonly GrowingArray<(double U, double V)> origin = new(expected);
    private readonly GrowingArray<(int U, int V)> place = new(expected);

    public int Count => place.Count;

    public (int U, int V) this[int node] => place[node];

    /// <summary>All places, by number.</summary>
    public ReadOnlySpan<(int U, int V)> Places => place.Span;

    /// <summary>The node of a point; a point next to a pixel's border joins its twin on the other side, if there is one.</summary>
    public int Enter(double u, double v)
    {
        double atU = Math.Floor(u + 0.5), atV = Math.Floor(v + 0.5);
        int iu = (int)atU, iv = (int)atV, stepU = Lean(u - atU), stepV = Lean(v - atV);
        if (stepU != 0 || stepV != 0)
        {
            int twin = Twin(u, v, iu + stepU, iv);
            twin = twin >= 0 ? twin : Twin(u, v, iu, iv + stepV);
            twin = twin >= 0 ? twin : Twin(u, v, iu + stepU, iv + stepV);
            if (twin >= 0)
            {
                return twin;
            }
        }

        int node = table.Enter(iu, iv, out bool isNew);
        if (isNew)
        {
            place.Add((iu, iv));
            origin.Add((u, v));
        }

        return node;
    }

    public void GiveBack()
    {
        table.GiveBack();
        origin.GiveBack();
        place.GiveBack();
    }

    private static int Lean(double rest) =>
        Math.Abs(rest) < 0.5 - (0.5 * KernelLimits.SamePoint) ? 0 : Math.Sign(rest);

    private int Twin(double u, double v, int iu, int iv)
    {
        int node = table.Find(iu, iv);
        return node >= 0 && Math.Abs(origin[node].U - u) < KernelLimits.SamePoint && Math.Abs(origin[node].V - v) < KernelLimits.SamePoint
            ? node
            : -1;
    }
}
