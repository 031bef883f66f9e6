using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using PlatformForge.Geometry;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// What the outlines of one vehicle are known to reach at every station so far: a row for either side of each, raised by what is
/// written to it and never lowered. Places along the chart are counted in stations.
/// </summary>
internal sealed class ReachSheet
{
    private readonly ChartTable table;

    public ReachSheet(ChartTable table, int rows)
    {
        this.table = table;
        (Left, Right) = (Blank(rows, table.Count), Blank(rows, table.Count));
    }

    /// <summary>Reach to the left of each outline of the form at each station.</summary>
    public double[][] Left { get; }

    /// <summary>Reach to the right.</summary>
    public double[][] Right { get; }

    /// <summary>Row of a side, +1 left, −1 right, of an outline.</summary>
    public double[] Row(int outline, int sign) => sign > 0 ? Left[outline] : Right[outline];

    /// <summary>Raises everything that is reached by the same, mm.</summary>
    public void Raise(double by)
    {
        foreach (double[] row in by > 0 ? [.. Left, .. Right] : Array.Empty<double[]>())
        {
            foreach (ref double reach in row.AsSpan())
            {
                reach += by;
            }
        }
    }

    /// <summary>Raises the stations between two places to the straight join of what is reached there.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Trace(double[] row, double from, double reachFrom, double to, double reachTo)
    {
        if (to < from)
        {
            (from, reachFrom, to, reachTo) = (to, reachTo, from, reachFrom);
        }

        int first = Math.Max(0, (int)Math.Ceiling(from)), last = Math.Min(row.Length - 1, (int)Math.Floor(to));
        if (first > last)
        {
            return;
        }

        double perStation = to > from ? (reachTo - reachFrom) / (to - from) : 0, reach = reachFrom + ((first - from) * perStation);
        foreach (ref double station in row.AsSpan(first, last - first + 1))
        {
            station = reach > station ? reach : station;
            reach += perStation;
        }
    }

    /// <summary>
    /// A kink leaves a peak in a trace; when it lies between two stations both are raised so that their join passes over it.
    /// </summary>
    /// <param name="row">What is raised.</param>
    /// <param name="place">Where the peak is, in stations.</param>
    /// <param name="peak">What is reached there, mm.</param>
    /// <param name="slopeBack">Rise of the trace before it, mm a station.</param>
    /// <param name="slopeOn">Rise of the trace after it, mm a station.</param>
    /// <returns>By how much the stations were held above the trace, mm.</returns>
    public static double Peak(double[] row, double place, double peak, double slopeBack, double slopeOn)
    {
        int k = (int)Math.Floor(place);
        double share = place - k, fall = slopeBack - slopeOn;
        if (fall <= 0 || k < 0 || k + 1 >= row.Length)
        {
            return 0;
        }

        double excess = fall * share * (1 - share);
        row[k] = Math.Max(row[k], peak - (slopeBack * share) + excess);
        row[k + 1] = Math.Max(row[k + 1], peak + (slopeOn * (1 - share)) + excess);
        return excess;
    }

    /// <summary>Holds both stations beside a place to what is reached there.</summary>
    public static void Hold(double[] row, double place, double reach)
    {
        int k = (int)Math.Floor(place);
        for (int station = Math.Max(0, k); station <= Math.Min(k + 1, row.Length - 1); station++)
        {
            row[station] = Math.Max(row[station], reach);
        }
    }

    /// <summary>An edge in the chart's coordinates: raises every station of a range that it crosses to the offset at which it does.</summary>
    /// <param name="row">What is raised.</param>
    /// <param name="origin">One end of the edge, layout frame.</param>
    /// <param name="edge">The other end from there.</param>
    /// <param name="stations">First and last station.</param>
    /// <param name="sign">+1 for a row of reaches to the left, −1 to the right.</param>
    /// <param name="allowance">What is added, mm.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Draw(double[] row, Point2 origin, Point2 edge, (int First, int Last) stations, int sign, double allowance)
    {
        int first = stations.First, count = stations.Last - first + 1;
        if (count <= 0)
        {
            return;
        }

        ReadOnlySpan<double> x = table.X.Slice(first, count), y = table.Y.Slice(first, count), tx = table.TangentX.Slice(first, count),
            ty = table.TangentY.Slice(first, count);
        var reach = row.AsSpan(first, count);
        var blocks = MemoryMarshal.Cast<double, Vector<double>>(reach);
        DrawBlocks(blocks, MemoryMarshal.Cast<double, Vector<double>>(x), MemoryMarshal.Cast<double, Vector<double>>(y),
            MemoryMarshal.Cast<double, Vector<double>>(tx), MemoryMarshal.Cast<double, Vector<double>>(ty), origin, edge, sign, allowance);
        for (int i = blocks.Length * Vector<double>.Count; i < count; i++)
        {
            double dx = origin.X - x[i], dy = origin.Y - y[i];
            double share = ((dx * tx[i]) + (dy * ty[i])) / ((tx[i] * edge.X) + (ty[i] * edge.Y));
            dx -= share * edge.X;
            dy -= share * edge.Y;
            double at = (((dy * tx[i]) - (dx * ty[i])) * sign) + allowance;
            reach[i] = at > reach[i] ? at : reach[i];
        }
    }

    // The same arithmetic as for a single station, lane by lane, so that the answer does not depend on how many stations the machine takes at once.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void DrawBlocks(
        Span<Vector<double>> reach, ReadOnlySpan<Vector<double>> x, ReadOnlySpan<Vector<double>> y, ReadOnlySpan<Vector<double>> tx,
        ReadOnlySpan<Vector<double>> ty,
        Point2 origin, Point2 edge, int sign, double allowance)
    {
        Vector<double> toX = new(origin.X), toY = new(origin.Y), edgeX = new(edge.X), edgeY = new(edge.Y), side = new(sign), added = new(allowance);
        for (int i = 0; i < reach.Length && i < x.Length && i < y.Length && i < tx.Length && i < ty.Length; i++)
        {
            Vector<double> dx = toX - x[i], dy = toY - y[i];
            var share = ((dx * tx[i]) + (dy * ty[i])) / ((tx[i] * edgeX) + (ty[i] * edgeY));
            dx -= share * edgeX;
            dy -= share * edgeY;
            var at = (((dy * tx[i]) - (dx * ty[i])) * side) + added;
            reach[i] = Vector.ConditionalSelect(Vector.GreaterThan(at, reach[i]), at, reach[i]);
        }
    }

    private static double[][] Blank(int rows, int stations)
    {
        double[][] blank = new double[rows][];
        for (int i = 0; i < rows; i++)
        {
            blank[i] = new double[stations];
            Array.Fill(blank[i], double.NegativeInfinity);
        }

        return blank;
    }
}
