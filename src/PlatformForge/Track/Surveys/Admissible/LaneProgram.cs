using System.Numerics;
using System.Runtime.CompilerServices;

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
    private const double Nothing = 1e-12;

    private readonly BandedRows rows;
    private readonly LaneSystem system, start;
    private readonly RowState[] states;
    private readonly Vector<double>[] step, residual, figures;

    public LaneProgram(BandedRows rows)
    {
        this.rows = rows;
        int n = rows.Figures;
        (system, start) = (new(n), new(n));
        (step, residual, figures) = (new Vector<double>[n], new Vector<double>[n], new Vector<double>[n]);
        states = new RowState[rows.Count];
        for (int i = 0; i < states.Length; i++)
        {
            double up = rows.High(i), down = -rows.Low(i);
            var f = rows.Factors(i);
            states[i] = new() { Column = rows.Column(i), F0 = f[0], F1 = f[1], F2 = f[2], F3 = f[3] };
            start.AddOuter(rows.Column(i), f, new((1 / (up * up)) + (1 / (down * down))));
        }

        start.Factorise();
    }

    /// <summary>The figures at which the last programs ended; they keep every row.</summary>
    public ReadOnlySpan<Vector<double>> Figures => figures;

    /// <summary>Solves one program in each lane.</summary>
    /// <param name="cost">Cost of every figure.</param>
    /// <param name="multipliers">Becomes the multiplier of every row: above nil where its upper bound holds the cost down, below nil where its lower one
    /// does.</param>
    /// <param name="wanted">Difference from the greatest cost at which to stop, mm.</param>
    public void Maximise(ReadOnlySpan<Vector<double>> cost, Span<Vector<double>> multipliers, double wanted)
    {
        Begin(cost);
        Vector<double> primal = default, dual = default;
        for (int round = 0; ; round++)
        {
            var product = Assemble(cost, primal, dual);
            system.Factorise();
            if (round == MostRounds || Vector.LessThanAll(product, new Vector<double>(wanted)))
            {
                break;
            }

            // A lane that has settled stays where it is.
            var open = Vector.GreaterThan(product, new Vector<double>(wanted));
            cost.CopyTo(step);
            system.Solve(step);
            Correct(cost, Centring(product));
            system.Solve(step);
            (primal, dual) = Reach(open);
        }

        Finish(multipliers);
    }

    /// <summary>The weights of the rows and the factors of their sum at which the programs ended, in one lane.</summary>
    /// <param name="lane">The lane.</param>
    /// <param name="weights">Becomes the weight of every row.</param>
    public double[] Factors(int lane, Span<double> weights)
    {
        for (int i = 0; i < states.Length; i++)
        {
            weights[i] = states[i].Weight[lane];
        }

        return system.Factors(lane);
    }

    // Multipliers that balance at the start: the same product in every row, as large as the cost is against what the rows leave open.
    private void Begin(ReadOnlySpan<Vector<double>> cost)
    {
        Array.Clear(figures);
        cost.CopyTo(step);
        start.Solve(step);
        var square = Vector<double>.Zero;
        for (int j = 0; j < step.Length; j++)
        {
            square += cost[j] * step[j];
        }

        var balance = Vector.Max(Vector.SquareRoot(Vector.Max(square, Vector<double>.Zero)), new Vector<double>(Nothing));
        for (int i = 0; i < states.Length; i++)
        {
            ref var s = ref states[i];
            (s.Up, s.Down, s.Change, s.ToUp, s.ToDown) = (new(rows.High(i)), new(-rows.Low(i)), default, default, default);
            (s.Above, s.Below) = (balance / s.Up, balance / s.Down);
        }

        Array.Clear(step);
    }

    // Goes the steps, then sums the weights of the rows into the system and cost − Aᵀ·multipliers into the residual. Slacks times
    // multipliers and what is missing of the cost back.
    private Vector<double> Assemble(ReadOnlySpan<Vector<double>> cost, Vector<double> primal, Vector<double> dual)
    {
        for (int j = 0; j < figures.Length; j++)
        {
            figures[j] += Vector.ConditionalSelect(Vector.Equals(primal, Vector<double>.Zero), Vector<double>.Zero, primal * step[j]);
        }

        cost.CopyTo(residual);
        system.Clear();
        var product = Vector<double>.Zero;
        var moving = Vector.GreaterThan(primal, Vector<double>.Zero);
        for (int i = 0; i < states.Length; i++)
        {
            ref var s = ref states[i];
            var (changeAbove, changeBelow) = s.Changes();
            var moved = primal * s.Change;
            s.Up = Vector.ConditionalSelect(moving, s.Up - moved, s.Up);
            s.Down = Vector.ConditionalSelect(moving, s.Down + moved, s.Down);
            s.Above = Vector.ConditionalSelect(moving, s.Above + (dual * changeAbove), s.Above);
            s.Below = Vector.ConditionalSelect(moving, s.Below + (dual * changeBelow), s.Below);
            (s.ByUp, s.ByDown) = (Vector<double>.One / s.Up, Vector<double>.One / s.Down);
            s.Weight = (s.Above * s.ByUp) + (s.Below * s.ByDown);
            product += (s.Up * s.Above) + (s.Down * s.Below);
            system.AddOuter(s.Column, s.F0, s.F1, s.F2, s.F3, s.Weight);
            s.AddTo(residual, s.Below - s.Above);
        }

        var missing = Vector<double>.Zero;
        foreach (var r in residual)
        {
            missing += Vector.Abs(r);
        }

        return product + missing;
    }

    // What the whole way to the multipliers' and slacks' nil would leave of their product tells how near to keep to the middle. Slack and
    // multiplier of a side go with 1 − p·u and 1 − q·(1 − u), where u is the slack's change over the slack: three sums tell all products.
    private Vector<double> Centring(Vector<double> product)
    {
        Vector<double> primal = default, dual = default, none = default, once = default, twice = default;
        for (int i = 0; i < states.Length; i++)
        {
            ref var s = ref states[i];
            s.Change = s.Of(step);
            Vector<double> u = s.Change * s.ByUp, d = -s.Change * s.ByDown, up = s.Up * s.Above, down = s.Down * s.Below;
            primal = Vector.Max(primal, Vector.Max(u, d));
            dual = Vector.Max(dual, Vector<double>.One - Vector.Min(u, d));
            none += up + down;
            once += (up * u) + (down * d);
            twice += (up * u * u) + (down * d * d);
        }

        Vector<double> p = Capped(primal, 1), q = Capped(dual, 1), rest = Vector<double>.One - q;
        var share = ((rest * none) + ((q - (p * rest)) * once) - (p * q * twice)) / product;
        return share * share * share * product / (2.0 * states.Length);
    }

    // The right side of the corrected direction: cost + Aᵀ·(what the multipliers are to be at no change).
    private void Correct(ReadOnlySpan<Vector<double>> cost, Vector<double> centring)
    {
        cost.CopyTo(step);
        for (int i = 0; i < states.Length; i++)
        {
            ref var s = ref states[i];
            Vector<double> above = s.Above * ((s.Change * s.ByUp) - Vector<double>.One), below = -s.Below * (Vector<double>.One + (s.Change * s.ByDown));
            s.ToUp = s.ByUp * (centring + (s.Change * above));
            s.ToDown = s.ByDown * (centring - (s.Change * below));
            s.AddTo(step, s.ToDown - s.ToUp);
        }
    }

    // Greatest steps, at most 1, that keep slacks and multipliers above nil, times a share where they are cut short; nil for lanes that
    // stay, and for those whose direction rounding has spoilt: multipliers prove a bound wherever they stand.
    private (Vector<double> Primal, Vector<double> Dual) Reach(Vector<long> open)
    {
        Vector<double> primal = default, dual = default, sum = default;
        for (int i = 0; i < states.Length; i++)
        {
            ref var s = ref states[i];
            s.Change = s.Of(step);
            var (changeAbove, changeBelow) = s.Changes();
            primal = Vector.Max(primal, Vector.Max(s.Change * s.ByUp, -s.Change * s.ByDown));
            dual = Vector.Max(dual, Vector.Max(-changeAbove / s.Above, -changeBelow / s.Below));
            sum += s.Change + changeAbove + changeBelow;
        }

        (primal, dual) = (Capped(primal, StepShare), Capped(dual, StepShare));
        sum += primal + dual;
        var moving = open & Vector.Equals(sum - sum, Vector<double>.Zero);
        return (Vector.ConditionalSelect(moving, primal, Vector<double>.Zero), Vector.ConditionalSelect(moving, dual, Vector<double>.Zero));
    }

    private static Vector<double> Capped(Vector<double> most, double share) =>
        Vector.Min(Vector<double>.One, new Vector<double>(share) / Vector.Max(most, new Vector<double>(Nothing)));

    // What the multipliers still miss of the cost is shared among the rows by the last weights, so that they meet it to rounding.
    private void Finish(Span<Vector<double>> multipliers)
    {
        residual.CopyTo(step, 0);
        system.Solve(step);
        for (int i = 0; i < states.Length; i++)
        {
            ref var s = ref states[i];
            var shared = s.Weight * s.Of(step);
            multipliers[i] = s.Above - s.Below + Vector.ConditionalSelect(Vector.Equals(shared - shared, Vector<double>.Zero), shared, Vector<double>.Zero);
        }
    }

    // Slacks of both sides of a row, one over them, their multipliers, what those are to become at no change, and the change of the row.
    private struct RowState
    {
        public Vector<double> Up, Down, ByUp, ByDown, Above, Below, ToUp, ToDown, Change, Weight;
        public double F0, F1, F2, F3;
        public int Column;

        // What the row says of figures.
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public readonly Vector<double> Of(Vector<double>[] figures)
        {
            var x = figures.AsSpan(Column, SplineGrid.Span);
            return (x[0] * F0) + (x[1] * F1) + (x[2] * F2) + (x[3] * F3);
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public readonly void AddTo(Vector<double>[] figures, Vector<double> factor)
        {
            var x = figures.AsSpan(Column, SplineGrid.Span);
            x[0] += factor * F0;
            x[1] += factor * F1;
            x[2] += factor * F2;
            x[3] += factor * F3;
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public readonly (Vector<double> Above, Vector<double> Below) Changes() =>
            (ToUp + (Above * ((Change * ByUp) - Vector<double>.One)), ToDown - (Below * (Vector<double>.One + (Change * ByDown))));
    }
}
