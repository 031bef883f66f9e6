using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Units;

namespace PlatformForge.Solids.Bodies.Layers;

/// <summary>A piece of the platform's plan, from a chainage to another, over which the walking surface is one plane.</summary>
internal readonly record struct TopPiece(Point2[] Ring, HeightPlane Top, double From, double To);

/// <summary>
/// The walking surface over strips of a plan: one piece from each break of the surface to the next.
/// </summary>
internal sealed class TopSurface(FacetedPlan chart)
{
    /// <summary>Heights nearer than this, mm, are one plane: a tenth of what the kernel asks of neighbours.</summary>
    public const double PlaneAgreement = 1e-8;

    private readonly PlatformPlan plan = chart.Plan;

    /// <summary>Pieces that together cover the strip between two lines and two chainages, each under one plane.</summary>
    public IEnumerable<TopPiece> Cover(PlanLine near, PlanLine far, double from, double to)
    {
        if (from >= to || !Wide(near, far))
        {
            yield break;
        }

        double[] ends = [from, .. plan.Surface.Breaks.Where(s => s > from && s < to), to];
        for (int i = 0; i + 1 < ends.Length; i++)
        {
            yield return new(chart.Ring(near, far, chart.Chainages(ends[i], ends[i + 1])), Along((ends[i] + ends[i + 1]) / 2), ends[i], ends[i + 1]);
        }
    }

    /// <summary>Plane of the walking surface at a chainage; at a break the later one.</summary>
    public HeightPlane Along(double chainage) => plan.Surface.At(chainage);

    private static bool Wide(PlanLine near, PlanLine far) => near.Reach.Zip(far.Reach).Any(w => w.Second - w.First > Tolerances.GridStep);
}
