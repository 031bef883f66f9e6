using System.Numerics;

namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>
/// Linear programs over the same banded rows, one in each lane of a vector: greatest cost·x with low ≤ a·x ≤ high in every row, begun at x
/// = 0, which has to
/// lie strictly inside. Primal-dual interior-point method with predictor and corrector (S. Mehrotra, 1992); each round costs time linear in the size.
/// </summary>
/// <remarks>What is handed back are the multipliers of the rows. Whatever they are, they prove a bound (<see cref="ReachProof"/>): how far
/// the iteration came decides
/// only how close that is.</remarks>
internal sealed class LaneProgram
{
    /// <summary>Programs that are worked at once.</summary>
    public static int Lanes => Vector<double>.Count;

    // Share of the way to the nearest wall that one step goes.
    private const double StepShare = 0.99;
    private const int MostRounds = 40;

    private readonly BandedRows rows;
    private readonly LaneSystem system;
    private readonly int[] columns;
    private readonly double[] factors;
    private readonly Vector<double>[] up, down, byUp, byDown, above, below, toUp, toDown, change, changeAbove, changeBelow, weight, step, residual;

    public LaneProgram(BandedRows rows)
    {
        this.rows = rows;
        int m = rows.Count, n = rows.Figures;
        system = new(n);
        columns = [.. Enumerable.Range(0, m).Select(rows.Column)];
        factors = new double[m * SplineGrid.Span];
        for (int i = 0; i < m; i++)
        {
            rows.Factors(i).CopyTo(factors.AsSpan(i * SplineGrid.Span));
        }

        (up, down, above, below) = (new Vector<double>[m], new Vector<double>[m], new Vector<double>[m], new Vector<double>[m]);
        (toUp, toDown, change, changeAbove, changeBelow) = (new Vector<double>[m], new Vector<double>[m], new Vector<double>[m], new Vector<double>[m], new Vector<double>[m]);
        (byUp, byDown, weight, step, residual) = (new Vector<double>[m], new Vector<double>[m], new Vector<double>[m], new Vector<double>[n], new Vector<double>[n]);
    }

    /// <summary>Solves one program in each lane.</summary>
    /// <param name="cost">Cost of every figure.</param>
    /// <param name="multipliers">Becomes the multiplier of every row: above nil where its upper bound holds the cost down, below nil where its lower one does.</param>
    /// <param name="wanted">Difference from the greatest cost at which to stop, mm.</param>
    public void Maximise(Vector<double>[] cost, Vector<double>[] multipliers, double wanted)
    {
        Begin(cost);
        int m = columns.Length;
        for (int round = 0; round < MostRounds; round++)
        {
            var product = Residual(cost);
            if (Vector.LessThanAll(product, new Vector<double>(wanted)))
            {
                break;
            }

            Factorise();
            for (int i = 0; i < m; i++)
            {
                (toUp[i], toDown[i]) = (-up[i] * above[i], -down[i] * below[i]);
            }

            Direction();
            var (primal, dual) = Reach(1);
            var ahead = Vector<double>.Zero;
            for (int i = 0; i < m; i++)
            {
                ahead += ((up[i] - (primal * change[i])) * (above[i] + (dual * changeAbove[i]))) + ((down[i] + (primal * change[i])) * (below[i] + (dual * changeBelow[i])));
            }

            // A lane that has settled stays where it is.
            var open = Vector.GreaterThan(product, new Vector<double>(wanted));
            var share = ahead / product;
            var centring = share * share * share * product / (2.0 * m);
            for (int i = 0; i < m; i++)
            {
                (toUp[i], toDown[i]) = (centring - (up[i] * above[i]) + (change[i] * changeAbove[i]), centring - (down[i] * below[i]) - (change[i] * changeBelow[i]));
            }

            Direction();
            (primal, dual) = Reach(StepShare);
            Advance(primal, dual, open);
        }

        Finish(cost, multipliers);
    }

    // What the multipliers still miss of the cost is shared among the rows by the last weights, so that they meet it to rounding.
    private void Finish(Vector<double>[] cost, Vector<double>[] multipliers)
    {
        Residual(cost);
        residual.CopyTo(step, 0);
        system.Solve(step);
        for (int i = 0; i < multipliers.Length; i++)
        {
            var shared = weight[i] * Of(i, step);
            multipliers[i] = above[i] - below[i] + Vector.ConditionalSelect(IsFinite(shared), shared, Vector<double>.Zero);
        }
    }

    // Multipliers that balance at the start: the same product in every row, as large as the cost is against what the rows leave open.
    private void Begin(Vector<double>[] cost)
    {
        system.Clear();
        for (int i = 0; i < columns.Length; i++)
        {
            (up[i], down[i]) = (new(rows.High(i)), new(-rows.Low(i)));
            weight[i] = (Vector<double>.One / (up[i] * up[i])) + (Vector<double>.One / (down[i] * down[i]));
            system.AddOuter(columns[i], Factors(i), weight[i]);
        }

        system.Factorise();
        cost.CopyTo(step, 0);
        system.Solve(step);
        var square = Vector<double>.Zero;
        for (int j = 0; j < step.Length; j++)
        {
            square += cost[j] * step[j];
        }

        var balance = Vector.Max(Vector.SquareRoot(Vector.Max(square, Vector<double>.Zero)), new Vector<double>(1e-12));
        for (int i = 0; i < columns.Length; i++)
        {
            (above[i], below[i]) = (balance / up[i], balance / down[i]);
        }
    }

    // cost − Aᵀ·multipliers into the residual; slacks times multipliers back.
    private Vector<double> Residual(Vector<double>[] cost)
    {
        cost.CopyTo(residual, 0);
        var product = Vector<double>.Zero;
        for (int i = 0; i < columns.Length; i++)
        {
            AddTransposed(residual, i, below[i] - above[i]);
            product += (up[i] * above[i]) + (down[i] * below[i]);
        }

        var missing = Vector<double>.Zero;
        foreach (var r in residual)
        {
            missing += Vector.Abs(r);
        }

        return product + missing;
    }

    private void Factorise()
    {
        system.Clear();
        for (int i = 0; i < columns.Length; i++)
        {
            (byUp[i], byDown[i]) = (Vector<double>.One / up[i], Vector<double>.One / down[i]);
            weight[i] = (above[i] * byUp[i]) + (below[i] * byDown[i]);
            system.AddOuter(columns[i], Factors(i), weight[i]);
        }

        system.Factorise();
    }

    private void Direction()
    {
        residual.CopyTo(step, 0);
        for (int i = 0; i < columns.Length; i++)
        {
            AddTransposed(step, i, (toDown[i] * byDown[i]) - (toUp[i] * byUp[i]));
        }

        system.Solve(step);
        for (int i = 0; i < columns.Length; i++)
        {
            var moved = Of(i, step);
            change[i] = moved;
            changeAbove[i] = (toUp[i] + (above[i] * moved)) * byUp[i];
            changeBelow[i] = (toDown[i] - (below[i] * moved)) * byDown[i];
        }
    }

    // Greatest steps, at most 1, that keep slacks and multipliers above nil, times a share where they are cut short.
    private (Vector<double> Primal, Vector<double> Dual) Reach(double share)
    {
        Vector<double> primal = Vector<double>.Zero, dual = Vector<double>.Zero;
        for (int i = 0; i < columns.Length; i++)
        {
            primal = Vector.Max(primal, Vector.Max(change[i] * byUp[i], -change[i] * byDown[i]));
            dual = Vector.Max(dual, Vector.Max(-changeAbove[i] / above[i], -changeBelow[i] / below[i]));
        }

        Vector<double> One(Vector<double> most) => Vector.Min(Vector<double>.One, new Vector<double>(share) / Vector.Max(most, new Vector<double>(1e-12)));
        return (One(primal), One(dual));
    }

    // Lanes that are not open stay, and so do those whose direction rounding has spoilt: multipliers prove a bound wherever they stand.
    private void Advance(Vector<double> primal, Vector<double> dual, Vector<long> open)
    {
        var sum = primal + dual;
        for (int i = 0; i < columns.Length; i++)
        {
            sum += change[i] + changeAbove[i] + changeBelow[i];
        }

        var moving = open & IsFinite(sum);
        for (int i = 0; i < columns.Length; i++)
        {
            up[i] = Vector.ConditionalSelect(moving, up[i] - (primal * change[i]), up[i]);
            down[i] = Vector.ConditionalSelect(moving, down[i] + (primal * change[i]), down[i]);
            above[i] = Vector.ConditionalSelect(moving, above[i] + (dual * changeAbove[i]), above[i]);
            below[i] = Vector.ConditionalSelect(moving, below[i] + (dual * changeBelow[i]), below[i]);
        }
    }

    private static Vector<long> IsFinite(Vector<double> x) => Vector.Equals(x - x, Vector<double>.Zero);

    private ReadOnlySpan<double> Factors(int row) => factors.AsSpan(row * SplineGrid.Span, SplineGrid.Span);

    private Vector<double> Of(int row, Vector<double>[] figures)
    {
        var f = Factors(row);
        int c = columns[row];
        return (figures[c] * f[0]) + (figures[c + 1] * f[1]) + (figures[c + 2] * f[2]) + (figures[c + 3] * f[3]);
    }

    private void AddTransposed(Vector<double>[] to, int row, Vector<double> factor)
    {
        var f = Factors(row);
        int c = columns[row];
        to[c] += factor * f[0];
        to[c + 1] += factor * f[1];
        to[c + 2] += factor * f[2];
        to[c + 3] += factor * f[3];
    }
}
