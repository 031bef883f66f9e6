using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Edges;

/// <summary>
/// A linear program whose constraints each touch at most three neighbouring unknowns: least cost·x with a·x ≥ b in every row. Solved by a
/// primal-dual interior-point method with predictor and corrector; each round costs time linear in the size, because the normal matrix has five bands.
/// </summary>
/// <remarks>
/// Laws: 1. every row holds strictly at the answer, because iterates start and stay inside; 2. no feasible x costs less than the answer's cost less
/// the gap given with it: cost·x − cost·x* ≤ slacks·multipliers + residual·(x − x*) for any multipliers above nil (weak duality).
/// </remarks>
internal sealed class BandedProgram(double[] cost)
{
    private readonly List<(int Column, double A, double B, double C, double Bound)> rows = [];

    // Share of the way to the nearest wall that one step goes.
    private const double StepShare = 0.995;
    private const int MostRounds = 60;

    /// <summary>Adds the row a·x[column] + b·x[column+1] + c·x[column+2] ≥ bound.</summary>
    public void AtLeast(int column, double a, double b, double c, double bound) => rows.Add((column, a, b, c, bound));

    /// <param name="x">A point strictly inside all rows; becomes the answer.</param>
    /// <param name="spread">How far any two points inside the rows lie apart in one unknown, at most.</param>
    /// <param name="gapWanted">Difference from the least cost at which to stop.</param>
    /// <returns>The difference from the least cost that was proven; more than wanted only where the rows' rounding allows no better.</returns>
    public double Minimise(double[] x, double spread, double gapWanted)
    {
        int m = rows.Count;
        double[] s = new double[m], z = new double[m], ds = new double[m], dz = new double[m], target = new double[m];
        Slacks(x, s);
        Begin(s, z);
        var system = new PentadiagonalSystem(x.Length);
        double[] dx = new double[x.Length], dualResidual = new double[x.Length], trial = new double[x.Length];
        for (int round = 0; ; round++)
        {
            Residual(z, dualResidual);
            double product = Dot(s, z), gap = product + (spread * dualResidual.Sum(Math.Abs));
            if (gap <= gapWanted || round == MostRounds)
            {
                return gap;
            }

            Factorise(system, s, z);
            Predict(target, s, z);
            Direction(system, s, z, target, dualResidual, dx, ds, dz);
            if (!Array.TrueForAll(dx, double.IsFinite))
            {
                return gap; // rounding has the better of the matrix: what stands is feasible, and as near as was found
            }

            double centring = Math.Pow(Ahead(s, z, ds, dz) / product, 3) * product / m;
            Correct(target, centring, s, z, ds, dz);
            Direction(system, s, z, target, dualResidual, dx, ds, dz);
            if (!Array.TrueForAll(dx, double.IsFinite))
            {
                return gap;
            }

            Advance(x, trial, dx, s, Reach(s, ds, StepShare));
            AddTo(z, dz, Reach(z, dz, StepShare));
        }
    }

    // Multipliers of one size at the start, which is inside of all rows.
    private void Begin(double[] s, double[] z)
    {
        double scale = Math.Max(cost.Sum(Math.Abs) / s.Length, double.Epsilon);
        for (int i = 0; i < s.Length; i++)
        {
            if (!(s[i] > 0))
            {
                throw new BrokenInvariantException(Invariant($"Platforms: row {i} of a fairing program is broken by {-s[i]} at its start."));
            }

            z[i] = scale;
        }
    }

    // The predictor goes for products of slacks and multipliers of nil.
    private static void Predict(double[] target, double[] s, double[] z)
    {
        for (int i = 0; i < target.Length; i++)
        {
            target[i] = -s[i] * z[i];
        }
    }

    // The sum of products that the predictor comes to, its steps cut short at the nearest wall.
    private static double Ahead(double[] s, double[] z, double[] ds, double[] dz)
    {
        double primal = Reach(s, ds, 1), dual = Reach(z, dz, 1), ahead = 0;
        for (int i = 0; i < s.Length; i++)
        {
            ahead += (s[i] + (primal * ds[i])) * (z[i] + (dual * dz[i]));
        }

        return ahead;
    }

    // The corrector goes for equal products, and takes off what the predictor leaves out at second order.
    private static void Correct(double[] target, double centring, double[] s, double[] z, double[] ds, double[] dz)
    {
        for (int i = 0; i < target.Length; i++)
        {
            target[i] = centring - (s[i] * z[i]) - (ds[i] * dz[i]);
        }
    }

    private static void AddTo(double[] values, double[] change, double step)
    {
        for (int i = 0; i < values.Length; i++)
        {
            values[i] += step * change[i];
        }
    }

    // Slacks are computed anew from the unknowns, so that law 1 holds for the answer itself and not for a running sum.
    private void Advance(double[] x, double[] trial, double[] dx, double[] s, double step)
    {
        do
        {
            for (int i = 0; i < x.Length; i++)
            {
                trial[i] = x[i] + (step * dx[i]);
            }

            Slacks(trial, s);
            step /= 2;
        }
        while (Array.Exists(s, v => !(v > 0)) && step > 0);

        trial.CopyTo(x, 0);
    }

    private void Direction(PentadiagonalSystem system, double[] s, double[] z, double[] target, double[] dualResidual, double[] dx, double[] ds, double[] dz)
    {
        Array.Clear(dx);
        Array.Clear(ds);
        var missing = new double[dx.Length];

        // The second pass takes out what rounding left of the first: near the end the matrix is ill-conditioned.
        for (int pass = 0; pass < 2; pass++)
        {
            for (int i = 0; i < dx.Length; i++)
            {
                missing[i] = -dualResidual[i];
            }

            for (int i = 0; i < rows.Count; i++)
            {
                AddTransposed(missing, i, (target[i] - (z[i] * ds[i])) / s[i]);
            }

            system.Solve(missing);
            for (int i = 0; i < dx.Length; i++)
            {
                dx[i] += missing[i];
            }

            for (int i = 0; i < rows.Count; i++)
            {
                ds[i] = Row(i, dx);
            }
        }

        for (int i = 0; i < rows.Count; i++)
        {
            dz[i] = (target[i] - (z[i] * ds[i])) / s[i];
        }
    }

    private void Factorise(PentadiagonalSystem system, double[] s, double[] z)
    {
        system.Clear();
        for (int i = 0; i < rows.Count; i++)
        {
            var (column, a, b, c, _) = rows[i];
            system.AddOuter(column, a, b, c, z[i] / s[i]);
        }

        system.Factorise();
    }

    // cost − Aᵀz: nil when the multipliers are feasible for the dual.
    private void Residual(double[] z, double[] residual)
    {
        cost.CopyTo(residual, 0);
        for (int i = 0; i < rows.Count; i++)
        {
            AddTransposed(residual, i, -z[i]);
        }
    }

    private void Slacks(double[] x, double[] s)
    {
        for (int i = 0; i < rows.Count; i++)
        {
            s[i] = Row(i, x) - rows[i].Bound;
        }
    }

    private double Row(int i, double[] x)
    {
        var (column, a, b, c, _) = rows[i];
        double sum = a * x[column];
        if (b != 0)
        {
            sum += b * x[column + 1];
        }

        return c != 0 ? sum + (c * x[column + 2]) : sum;
    }

    private void AddTransposed(double[] x, int i, double factor)
    {
        var (column, a, b, c, _) = rows[i];
        x[column] += a * factor;
        if (b != 0)
        {
            x[column + 1] += b * factor;
        }

        if (c != 0)
        {
            x[column + 2] += c * factor;
        }
    }

    // Greatest step, at most 1, that keeps values positive, times a share when it is cut short.
    private static double Reach(double[] values, double[] change, double share)
    {
        double step = 1;
        for (int i = 0; i < values.Length; i++)
        {
            if (change[i] < 0)
            {
                step = Math.Min(step, -share * values[i] / change[i]);
            }
        }

        return step;
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
