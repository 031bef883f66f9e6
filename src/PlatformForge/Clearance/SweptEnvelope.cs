using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Clearance;

/// <summary>
/// All that the vehicles of a request can reach, told in the chart's coordinates at even stations. At a station no reach
/// is below the true one, nor above it by more than <see cref="ErrorBound"/>; between stations the straight join is nowhere below the true reach.
/// Constant entries of the budget are not in it, play is.
/// </summary>
/// <param name="From">Chart chainage of the first station, mm.</param>
/// <param name="Spacing">Distance between stations, mm.</param>
/// <param name="Count">Number of stations, at least 2.</param>
/// <param name="Parts">Reach of every part, in order of runs, vehicles and parts.</param>
/// <param name="ErrorBound">Greatest error of any reach at a station, mm; see docs/decisions/0010-swept-envelope.md.</param>
public sealed record SweptEnvelope(double From, double Spacing, int Count, IReadOnlyList<PartReach> Parts, double ErrorBound)
{
    /// <summary>
    /// Greatest reach on a side of every part whose heights overlap a band.
    /// </summary>
    /// <param name="side">Side of the chart line.</param>
    /// <param name="zLow">Bottom of the band above rail top, mm. Parts that end at or below it do not count.</param>
    /// <param name="zHigh">Top of the band, mm. Parts that begin at or above it do not count.</param>
    /// <param name="run">Index of the track whose vehicles count; the platform's own track is 0.</param>
    public ReachLine Composite(Side side, double zLow, double zHigh, int run = 0)
    {
        var reach = new double[Count];
        var governing = new int[Count];
        Array.Fill(reach, double.NegativeInfinity);
        Array.Fill(governing, -1);
        for (int part = 0; part < Parts.Count; part++)
        {
            var candidate = Parts[part];
            if (candidate.Run != run || candidate.ZHigh <= zLow || candidate.ZLow >= zHigh)
            {
                continue;
            }

            double[] own = side == Side.Left ? candidate.Left : candidate.Right;
            for (int i = 0; i < reach.Length; i++)
            {
                if (own[i] > reach[i])
                {
                    (reach[i], governing[i]) = (own[i], part);
                }
            }
        }

        KeepGoverning(reach, governing, (part, i) => Parts[part].Run == run && Parts[part].ZHigh > zLow && Parts[part].ZLow < zHigh
            ? (side == Side.Left ? Parts[part].Left : Parts[part].Right)[i] : double.NegativeInfinity);
        return new(side, From, Spacing, reach, governing);
    }

    /// <summary>
    /// Which of two parts reaches farther cannot be told within the error bound, so parts that reach alike take no turns: a station keeps
    /// the part that governs at the station before while that reaches as far within the bound. Changes the names only.
    /// </summary>
    /// <param name="reach">Greatest reach at consecutive stations, mm.</param>
    /// <param name="governing">Index of the part that reaches so far; −1 where nothing comes.</param>
    /// <param name="counted">How far a part by index reaches at an entry, as it counts there, mm; negative infinity where it does not.</param>
    public void KeepGoverning(double[] reach, int[] governing, Func<int, int, double> counted)
    {
        for (int i = 1; i < reach.Length; i++)
        {
            int before = governing[i - 1];
            if (before >= 0 && before != governing[i] && counted(before, i) >= reach[i] - ErrorBound)
            {
                governing[i] = before;
            }
        }
    }

    /// <summary>The same over all heights.</summary>
    public ReachLine Composite(Side side, int run = 0) => Composite(side, double.NegativeInfinity, double.PositiveInfinity, run);

    /// <summary>
    /// The same with what surveys leave uncertain added where it arises: every part reaches as far as on the line that brings it farthest.
    /// An edge that is farther away on
    /// the stated line than that is drawn no nearer.
    /// </summary>
    public SweptEnvelope With(IReadOnlyList<PartDoubt> doubts) =>
        this
        with
        {
            Parts =
            [.. Parts.Select(p => Widened(p, doubts.FirstOrDefault(d => d.Run == p.Run && ReferenceEquals(d.Vehicle, p.Vehicle) && d.IsOf(p.Part))))]
        };

    /// <summary>By how much the farthest reach of the platform's own track lies beyond that of another envelope over the same stations:
    /// least and most along them, mm.</summary>
    public (double Least, double Most) BeyondOf(SweptEnvelope other, Side side)
    {
        double[] beyond = [.. Composite(side).Reach.Zip(other.Composite(side).Reach, (a, b) => a - b).Where(double.IsFinite)];
        return beyond.Length == 0 ? (0, 0) : (beyond.Min(), beyond.Max());
    }

    /// <summary>The same between two chainages alone: from the station at or before the first to the one at or after the second.</summary>
    public SweptEnvelope Within(double from, double to)
    {
        int first = Math.Max(0, (int)Math.Floor(((from - From) / Spacing) + Tolerances.Rounding));
        int last = Math.Min(Count - 1, (int)Math.Ceiling(((to - From) / Spacing) - Tolerances.Rounding));
        return first == 0 && last == Count - 1
            ? this
            : this with
            {
                From = From + (first * Spacing),
                Count = last - first + 1,
                Parts = [.. Parts.Select(p => p with { Left = p.Left[first..(last + 1)], Right = p.Right[first..(last + 1)] })],
            };
    }

    private PartReach Widened(PartReach part, PartDoubt? doubt)
    {
        double[] Of(double[] reach, Side side) => [.. reach.Select((r, i) => r + Math.Max(0, doubt!.At(side, From + (i * Spacing)).Most))];
        return doubt is null ? part : part with { Left = Of(part.Left, Side.Left), Right = Of(part.Right, Side.Right) };
    }
}
