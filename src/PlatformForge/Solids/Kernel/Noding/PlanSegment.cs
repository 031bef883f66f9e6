using PlatformForge.Solids.Kernel.Lending;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>A piece of an outline or of a crossing line as it came, in grid coordinates, and the nodes that its ends round to.</summary>
internal struct PlanSegment
{
    public double StartU, StartV, AheadU, AheadV, LowU, LowV, HighU, HighV, Touch, Reach;
    public int From, To, FirstToggle;

    /// <summary>The straight line it is part of, and that line's length in steps: its own, or in a plan noded anew that of the segment it came from.</summary>
    public int Line;
    public double LineLength;

    /// <summary>The named wall faces that look to its right and left, with the paint of what is behind them; see <see cref="WallName"/>.</summary>
    public WallName OnRight, OnLeft;

    public PlanSegment(double startU, double startV, double endU, double endV, int from, int to, int line)
    {
        (StartU, StartV, AheadU, AheadV) = (startU, startV, endU - startU, endV - startV);
        (LowU, HighU) = startU < endU ? (startU, endU) : (endU, startU);
        (LowV, HighV) = startV < endV ? (startV, endV) : (endV, startV);
        LineLength = Math.Sqrt((AheadU * AheadU) + (AheadV * AheadV));
        Touch = KernelLimits.Touch * LineLength;
        Reach = KernelLimits.PixelReach * (Math.Abs(AheadU) + Math.Abs(AheadV));
        (From, To, FirstToggle, Line) = (from, to, -1, line);
    }

    /// <summary>The distance of a point from the line, times the segment's length; positive on the left.</summary>
    public readonly double Side(double u, double v) => (AheadU * (v - StartV)) - (AheadV * (u - StartU));

    /// <summary>Where two segments cross whose boxes overlap, each with its ends clearly on either side of the other.</summary>
    public static bool Cross(in PlanSegment a, in PlanSegment b, out double u, out double v)
    {
        (u, v) = (0, 0);
        double start = b.Side(a.StartU, a.StartV), end = b.Side(a.StartU + a.AheadU, a.StartV + a.AheadV);
        if (!Parts(start, end, b.Touch))
        {
            return false;
        }

        if (!Parts(a.Side(b.StartU, b.StartV), a.Side(b.StartU + b.AheadU, b.StartV + b.AheadV), a.Touch))
        {
            return false;
        }

        double part = start / (start - end);
        (u, v) = (a.StartU + (part * a.AheadU), a.StartV + (part * a.AheadV));
        return true;
    }

    private static bool Parts(double start, double end, double touch) => (start > touch && end < -touch) || (start < -touch && end > touch);
}
