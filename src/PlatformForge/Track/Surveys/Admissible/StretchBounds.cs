using System.Numerics;
using System.Runtime.InteropServices;

namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>The rows of a stretch of line, with what proves bounds from them.</summary>
internal sealed class Stretch(BandedRows rows)
{
    public BandedRows Rows => rows;

    public ReachProof Proof { get; } = new(rows);
}

/// <summary>
/// The ranges of measures over one stretch. A few are solved; of those between, the multipliers of one that was solved prove a bound, and
/// its line shows how near that is: where it is not near enough, they are solved too. What is solved does not hang on how many programs
/// the machine works at once.
/// </summary>
internal sealed class StretchBounds
{
    // Programs stop when they are so near to their greatest value, mm.
    private const double ProgramGap = 1e-4;

    // A bound is carried over where no line can go farther than the one that was solved by more than this, mm, nor by this share of it.
    private const double Carried = 2e-3, CarriedShare = 0.02;

    // The first ones looked at lie so many (a power of two) apart in the order given, then those midway between.
    private const int Coarsest = 64;

    // So many are looked at before the next may be carried from what was solved for them.
    private const int Together = 16;

    private readonly Stretch stretch;
    private readonly LaneProgram program;
    private readonly Vector<double>[] cost, multipliers;
    private readonly List<SolvedProgram> solved = [];
    private readonly List<Asked> open = [];

    public StretchBounds(Stretch stretch)
    {
        this.stretch = stretch;
        (program, cost, multipliers) = (new(stretch.Rows), new Vector<double>[stretch.Rows.Figures], new Vector<double>[stretch.Rows.Count]);
    }

    private Span<double> Costs => MemoryMarshal.Cast<Vector<double>, double>(cost.AsSpan());

    private Span<double> Multipliers => MemoryMarshal.Cast<Vector<double>, double>(multipliers.AsSpan());

    /// <summary>Finds ranges.</summary>
    /// <param name="measures">Measures.</param>
    /// <param name="which">Indices of those that belong to this stretch; neighbours are alike.</param>
    /// <param name="ranges">Receives the ranges of those.</param>
    public void Solve(IReadOnlyList<LineMeasure> measures, IReadOnlyList<int> which, LineRange[] ranges)
    {
        foreach (int[] some in Order(which.Count).Chunk(Together))
        {
            foreach (int p in some)
            {
                Ask(measures[which[p]], which[p]);
            }

            foreach (var (asked, bound) in Carry(measures))
            {
                Put(ranges, asked, bound);
            }

            foreach (var chunk in open.Chunk(LaneProgram.Lanes))
            {
                Program(measures, chunk, ranges);
            }

            open.Clear();
        }
    }

    /// <summary>The multipliers of the readings at a measure's greatest value.</summary>
    public IEnumerable<(int Row, double Share)> Holding(LineMeasure measure)
    {
        Array.Clear(cost);
        MeasureFigures.Of(measure, stretch.Rows.Grid).AddTo(Costs, 0, 1);
        program.Maximise(cost, multipliers, ProgramGap);
        for (int i = 0; i < multipliers.Length; i++)
        {
            if (stretch.Rows.Reading(i) >= 0)
            {
                yield return (stretch.Rows.Reading(i), Math.Abs(multipliers[i][0]));
            }
        }
    }

    // Positions from coarse to fine.
    private static IEnumerable<int> Order(int count)
    {
        for (int p = 0; p < count; p += Coarsest)
        {
            yield return p;
        }

        for (int half = Coarsest / 2; half >= 1; half /= 2)
        {
            for (int p = half; p < count; p += 2 * half)
            {
                yield return p;
            }
        }
    }

    // Either side of a measure, with the solved program whose line goes farthest.
    private void Ask(in LineMeasure measure, int index)
    {
        var figures = MeasureFigures.Of(measure, stretch.Rows.Grid);
        Asked most = new(index, figures, 1, -1, double.NegativeInfinity), least = most with { Sign = -1 };
        for (int k = 0; k < solved.Count; k++)
        {
            double value = solved[k].Of(figures);
            most = value > most.Value ? most with { From = k, Value = value } : most;
            least = -value > least.Value ? least with { From = k, Value = -value } : least;
        }

        open.Add(most);
        open.Add(least);
    }

    // Those whose bound is near enough, taken out of the open ones.
    private List<(Asked Asked, double Bound)> Carry(IReadOnlyList<LineMeasure> measures)
    {
        var found = new List<(Asked, double)>();
        foreach (var group in open.Where(a => a.From >= 0).GroupBy(a => a.From).ToArray())
        {
            var from = solved[group.Key];
            foreach (var chunk in group.Chunk(LaneProgram.Lanes))
            {
                Array.Clear(cost);
                for (int lane = 0; lane < chunk.Length; lane++)
                {
                    chunk[lane].Figures.AddTo(Costs, lane, chunk[lane].Sign);
                }

                var most = from.Carry(stretch.Rows, cost, multipliers);
                for (int lane = 0; lane < chunk.Length; lane++)
                {
                    if (most[lane] - chunk[lane].Value <= Math.Min(Carried, CarriedShare * chunk[lane].Value))
                    {
                        found.Add((chunk[lane], stretch.Proof.Most(measures[chunk[lane].Index], chunk[lane].Sign, Multipliers[lane..], LaneProgram.Lanes)));
                    }
                }
            }
        }

        var done = found.Select(f => (f.Item1.Index, f.Item1.Sign)).ToHashSet();
        open.RemoveAll(a => done.Contains((a.Index, a.Sign)));
        return found;
    }

    private void Program(IReadOnlyList<LineMeasure> measures, Asked[] asked, LineRange[] ranges)
    {
        Array.Clear(cost);
        for (int lane = 0; lane < asked.Length; lane++)
        {
            asked[lane].Figures.AddTo(Costs, lane, asked[lane].Sign);
        }

        program.Maximise(cost, multipliers, ProgramGap);
        for (int lane = 0; lane < asked.Length; lane++)
        {
            double bound = stretch.Proof.Most(measures[asked[lane].Index], asked[lane].Sign, Multipliers[lane..], LaneProgram.Lanes);
            Put(ranges, asked[lane], bound);
            solved.Add(Kept(asked[lane], lane, bound));
        }
    }

    private SolvedProgram Kept(Asked asked, int lane, double bound)
    {
        double[] weights = new double[multipliers.Length], figures = new double[cost.Length];
        double[] factors = program.Factors(lane, weights);
        for (int j = 0; j < figures.Length; j++)
        {
            figures[j] = program.Figures[j][lane];
        }

        double[] own = [.. cost.Select(c => c[lane])];
        double value = own.Zip(figures, (c, x) => c * x).Sum();
        return new(own, [.. multipliers.Select(m => m[lane])], figures, weights, factors);
    }

    private static void Put(LineRange[] ranges, in Asked asked, double bound)
    {
        ref var range = ref ranges[asked.Index];
        range = asked.Sign > 0 ? range with { Most = bound } : range with { Least = -bound };
    }

    // One side of a measure: the solved program it may be carried from, -1 for none, and its value on that one's line.
    private readonly record struct Asked(int Index, MeasureFigures Figures, int Sign, int From, double Value);
}
