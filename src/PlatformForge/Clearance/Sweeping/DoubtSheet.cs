using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track.Surveys.Admissible;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>One place of a part in one pose: where both its sides stand in the chart, and by how much they may stand elsewhere, left
/// positive.</summary>
internal readonly record struct DoubtTrace(double LeftAt, double LeftReach, double RightAt, double RightReach, LineRange Moves);

/// <summary>Reach of a part at even stations on the stated line, on the one that brings it farthest and on the one that keeps it nearest.</summary>
internal sealed class DoubtSheet
{
    private readonly double from, spacing;
    private readonly double[][] left, right;

    public DoubtSheet(double from, double to, double step)
    {
        int count = Math.Max(2, (int)Math.Ceiling((to - from) / step) + 1);
        (this.from, spacing) = (from, (to - from) / (count - 1));
        (left, right) = (Blank(count), Blank(count));
    }

    /// <summary>Raises the stations between two neighbouring poses.</summary>
    public void Add(DoubtTrace? last, DoubtTrace next)
    {
        if (last is not { } before)
        {
            return;
        }

        double a = (before.LeftAt - from) / spacing, b = (next.LeftAt - from) / spacing;
        ReachSheet.Trace(left[0], a, before.LeftReach, b, next.LeftReach);
        ReachSheet.Trace(left[1], a, before.LeftReach + before.Moves.Most, b, next.LeftReach + next.Moves.Most);
        ReachSheet.Trace(left[2], a, before.LeftReach + before.Moves.Least, b, next.LeftReach + next.Moves.Least);
        (a, b) = ((before.RightAt - from) / spacing, (next.RightAt - from) / spacing);
        ReachSheet.Trace(right[0], a, before.RightReach, b, next.RightReach);
        ReachSheet.Trace(right[1], a, before.RightReach - before.Moves.Least, b, next.RightReach - next.Moves.Least);
        ReachSheet.Trace(right[2], a, before.RightReach - before.Moves.Most, b, next.RightReach - next.Moves.Most);
    }

    public PartDoubt Of(int run, Vehicle vehicle, VehiclePart part) => new(run, vehicle, part, from, spacing, Ranges(left), Ranges(right));

    private static LineRange[] Ranges(double[][] rows) =>
        [.. Enumerable.Range(0, rows[0].Length).Select(i => double.IsFinite(rows[0][i]) ? new LineRange(rows[2][i] - rows[0][i], rows[1][i] - rows[0][i])
            : default)];

    // On the stated line, farthest, nearest.
    private static double[][] Blank(int count)
    {
        double[][] rows = [new double[count], new double[count], new double[count]];
        foreach (double[] row in rows)
        {
            Array.Fill(row, double.NegativeInfinity);
        }

        return rows;
    }
}
