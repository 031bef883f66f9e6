using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// Finds the plan lines along which surfaces of overlapping blocks cross, so that the order of surfaces is constant over every
/// face of the plan. A block whose upper plane dips under its lower one is cut along that line as well.
/// </summary>
internal sealed class SurfaceCrossings
{
    private readonly BlockTable blocks;
    private readonly PlanNoder noder;
    private readonly BlockRanges ranges;
    private readonly GrowingArray<double> breaks = new(16);

    private SurfaceCrossings(BlockTable blocks, PlanNoder noder, BlockRanges ranges) => (this.blocks, this.noder, this.ranges) = (blocks, noder, ranges);

    /// <summary>Enters the lines.</summary>
    public static void Enter(BlockTable blocks, PlanNoder noder)
    {
        var lying = new BlockRanges(blocks);
        if (!lying.AnySloped)
        {
            return;
        }

        var crossings = new SurfaceCrossings(blocks, noder, lying);
        crossings.FindWithin();
        crossings.FindBetween(new BlockBuckets(blocks.Boxes, lying.Sloped));
        crossings.breaks.GiveBack();
    }

    /// <summary>Lines along which blocks dip under themselves.</summary>
    private void FindWithin()
    {
        for (int i = 0; i < blocks.Count; i++)
        {
            if (ranges.Sloped[i])
            {
                FindBetween(i, blocks.Lower[i], i, blocks.Upper[i], blocks.Boxes[i]);
            }
        }
    }

    private void FindBetween(BlockBuckets buckets)
    {
        var pairs = new GrowingArray<(int A, int B)>(64);
        for (int bucket = 0; bucket < buckets.Buckets; bucket++)
        {
            buckets.Pairs(bucket, pairs);
            foreach (var (a, b) in pairs.Span)
            {
                Meet(a, b);
            }
        }

        pairs.GiveBack();
    }

    private void Meet(int a, int b)
    {
        // Few surfaces share heights, so that is asked before the boxes are.
        uint overlaps = ranges.Overlaps(a, b);
        if (overlaps == 0)
        {
            return;
        }

        var shared = blocks.Boxes[a].Shared(blocks.Boxes[b]);
        if (shared.IsEmpty)
        {
            return;
        }

        for (int pair = 0; pair < 4; pair++)
        {
            if ((overlaps & (1u << pair)) != 0)
            {
                FindBetween(a, pair < 2 ? blocks.Lower[a] : blocks.Upper[a], b, pair % 2 == 0 ? blocks.Lower[b] : blocks.Upper[b], shared);
            }
        }
    }

    private void FindBetween(int a, int planeA, int b, int planeB, in PlanBox shared)
    {
        if (planeA == planeB)
        {
            return;
        }

        var gap = blocks.Planes[planeA] - blocks.Planes[planeB];
        var (low, high) = gap.Over(shared);
        if (low >= -KernelLimits.SameSurface || high <= KernelLimits.SameSurface)
        {
            return;
        }

        double square = (gap.X * gap.X) + (gap.Y * gap.Y), slope = Math.Sqrt(square);
        double middleU = 0.5 * (shared.LowU + shared.HighU), middleV = 0.5 * (shared.LowV + shared.HighV);
        double shift = gap.At(middleU, middleV) / square;
        var line = new CrossingLine(gap, middleU - (shift * gap.X), middleV - (shift * gap.Y), -gap.Y / slope, gap.X / slope, slope);
        breaks.Clear();
        Break(a, line);
        if (b != a)
        {
            Break(b, line);
        }

        breaks.Span.Sort();
        for (int i = 0; i + 1 < breaks.Count; i++)
        {
            Keep(a, b, line, breaks[i], breaks[i + 1]);
        }
    }

    private void Keep(int a, int b, in CrossingLine line, double from, double to)
    {
        if (to - from <= 2 * KernelLimits.CrossingClearance)
        {
            return;
        }

        double middle = 0.5 * (from + to), u = line.U(middle), v = line.V(middle);
        if (IsWellInside(a, u, v) && (a == b || IsWellInside(b, u, v)))
        {
            noder.AddLine(line.U(from), line.V(from), line.U(to), line.V(to));
        }
    }

    /// <summary>Distances along the line at which it crosses a block's ring or passes a corner of it.</summary>
    private void Break(int block, in CrossingLine line)
    {
        int start = blocks.RingStart[block], end = blocks.RingStart[block + 1];
        double lastU = blocks.U[end - 1], lastV = blocks.V[end - 1], last = line.Gap.At(lastU, lastV);
        for (int i = start; i < end; i++)
        {
            double u = blocks.U[i], v = blocks.V[i], here = line.Gap.At(u, v);
            if (last >= 0 != here >= 0)
            {
                double part = last / (last - here);
                breaks.Add(line.Along(lastU + (part * (u - lastU)), lastV + (part * (v - lastV))));
            }

            if (Math.Abs(here) <= KernelLimits.CrossingClearance * line.Slope)
            {
                breaks.Add(line.Along(u, v));
            }

            (lastU, lastV, last) = (u, v, here);
        }
    }

    /// <summary>Whether a point lies within a block's ring and not close to it.</summary>
    private bool IsWellInside(int block, double u, double v)
    {
        bool inside = false;
        int start = blocks.RingStart[block], end = blocks.RingStart[block + 1];
        for (int i = start, j = end - 1; i < end; j = i++)
        {
            double du = blocks.U[i] - blocks.U[j], dv = blocks.V[i] - blocks.V[j], pu = u - blocks.U[j], pv = v - blocks.V[j];
            double square = (du * du) + (dv * dv), part = square > 0 ? Math.Clamp(((pu * du) + (pv * dv)) / square, 0, 1) : 0;
            if (blocks.V[i] > v != blocks.V[j] > v && (pv * du > pu * dv) == (dv > 0))
            {
                inside = !inside;
            }

            double gu = pu - (part * du), gv = pv - (part * dv);
            if ((gu * gu) + (gv * gv) < KernelLimits.CrossingClearance * KernelLimits.CrossingClearance)
            {
                return false;
            }
        }

        return inside;
    }

    /// <summary>The zero line of a difference of planes: a point on it, its unit direction, and how steeply the difference grows beside it.</summary>
    private readonly record struct CrossingLine(GridPlane Gap, double StartU, double StartV, double AheadU, double AheadV, double Slope)
    {
        public double U(double along) => StartU + (along * AheadU);

        public double V(double along) => StartV + (along * AheadV);

        public double Along(double u, double v) => ((u - StartU) * AheadU) + ((v - StartV) * AheadV);
    }
}
