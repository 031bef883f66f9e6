using System.Numerics;

namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>What <see cref="MiddleLine"/> found.</summary>
/// <param name="Figures">Figures of the middle of the set, or of the line that comes nearest where there is no set.</param>
/// <param name="LeastShare">Least share of their stated errors within which all readings can be met, as far as it was looked for; 1 or more where there is
/// no line.</param>
/// <param name="AtOdds">Indices of the readings that hold it there; empty where there is a set.</param>
internal sealed record MiddleFound(double[] Figures, double LeastShare, int[] AtOdds);

/// <summary>
/// The middle of a set of banded rows: first the least share t of all readings' errors that some line meets, then the analytic centre at
/// the whole errors
/// (the place of the greatest product of slacks), which depends on the set alone and not on where it was looked for. Newton's rule on
/// logarithmic barriers
/// (S. Boyd, L. Vandenberghe, Convex Optimization, 2004, chapter 11).
/// </summary>
internal sealed class MiddleLine
{
    // A share below this leaves room enough for the centre to be found from there.
    private const double Roomy = 0.9, Room = 0.9999;
    private const double Sharper = 6, LeastDecrement = 1e-9, ShareClose = 1e-5;
    private const int MostRounds = 60;

    // Readings that carry less than this part of the heaviest one's load do not hold the least share.
    private const double Carries = 0.02;

    private readonly BandedRows rows;
    private readonly LaneSystem system;
    private readonly Vector<double>[] work, border;
    private readonly double[] x, half, middle, load;
    private double t;

    private MiddleLine(BandedRows rows)
    {
        this.rows = rows;
        int n = rows.Figures;
        (system, work, border, x) = (new(n), new Vector<double>[n], new Vector<double>[n], new double[n]);
        half = [.. Enumerable.Range(0, rows.Count).Select(i => (rows.High(i) - rows.Low(i)) / 2)];
        middle = [.. Enumerable.Range(0, rows.Count).Select(i => (rows.High(i) + rows.Low(i)) / 2)];
        load = new double[rows.Count];
    }

    /// <summary>Finds the middle; all figures nil has to keep bends and rates strictly.</summary>
    public static MiddleFound Of(BandedRows rows)
    {
        var search = new MiddleLine(rows);
        search.LeastShare();
        if (!(search.t < Room))
        {
            int[] readings = [.. Enumerable.Range(0, rows.Count).Where(i => rows.Reading(i) >= 0)];
            double heaviest = readings.Max(i => Math.Abs(search.load[i]));
            return new(search.x, search.t, [.. readings.Where(i => !(Math.Abs(search.load[i]) < Carries * heaviest)).Select(rows.Reading).Distinct().Order()]);
        }

        double share = search.t;
        search.t = 1;
        search.Newton(double.NaN);
        return new(search.x, share, []);
    }

    private bool IsReading(int row) => rows.Reading(row) >= 0;

    private double Slack(int row, int way) => (half[row] * (IsReading(row) ? t : 1)) - (way * (rows.Of(row, x) - middle[row]));

    private void LeastShare()
    {
        t = 1;
        for (int i = 0; i < rows.Count; i++)
        {
            t = IsReading(i) ? Math.Max(t, 1.1 * Math.Abs(rows.Of(i, x) - middle[i]) / half[i]) : t;
        }

        int sides = 2 * rows.Count;
        for (double weight = sides / t; ; weight *= Sharper)
        {
            Newton(weight);
            if (t < Roomy || sides / weight < ShareClose)
            {
                break;
            }
        }
    }

    // Least weight·t − Σ log slack, or with t held where no weight is given.
    private void Newton(double weight)
    {
        bool free = !double.IsNaN(weight);
        for (int round = 0; round < MostRounds; round++)
        {
            var (byShare, shareTwice) = Gather(weight, free);
            system.Factorise();
            double[] downhill = [.. work.Select(w => w[0])];
            double step = free ? Share(byShare, shareTwice) : 0;
            system.Solve(work);
            double decrement = (step * byShare) + downhill.Select((g, j) => g * work[j][0]).Sum();
            if (!Take(step, Math.Abs(decrement)) || Math.Abs(decrement) < LeastDecrement || (free && t < Roomy))
            {
                return;
            }
        }
    }

    // The barrier's slopes and second derivatives at the line; those by the share are given.
    private (double ByShare, double ShareTwice) Gather(double weight, bool free)
    {
        system.Clear();
        Array.Clear(work);
        Array.Clear(border);
        double byShare = free ? -weight : 0, shareTwice = 0;
        for (int i = 0; i < rows.Count; i++)
        {
            double up = 1 / Slack(i, 1), down = 1 / Slack(i, -1), both = (up * up) + (down * down), widen = free && IsReading(i) ? half[i] : 0;
            system.AddOuter(rows.Column(i), rows.Factors(i), new(both));
            Add(work, i, down - up);
            Add(border, i, widen * ((down * down) - (up * up)));
            byShare += widen * (up + down);
            shareTwice += widen * widen * both;
            load[i] = up - down;
        }

        return (byShare, shareTwice);
    }

    // The share's own step: one dense column beside the bands.
    private double Share(double byShare, double shareTwice)
    {
        var own = (Vector<double>[])border.Clone();
        system.Solve(own);
        double step = (byShare - Dot(own, work)) / (shareTwice - Dot(own, border));
        for (int j = 0; j < work.Length; j++)
        {
            work[j] -= border[j] * step;
        }

        return step;
    }

    private bool Take(double share, double decrement)
    {
        double most = 1;
        for (int i = 0; i < rows.Count; i++)
        {
            double moved = 0;
            var f = rows.Factors(i);
            for (int k = 0; k < f.Length; k++)
            {
                moved += f[k] * work[rows.Column(i) + k][0];
            }

            double widen = IsReading(i) ? half[i] * share : 0;
            most = Math.Min(most, Math.Min(Way(moved - widen, Slack(i, 1)), Way(-moved - widen, Slack(i, -1))));
        }

        // The whole step where the rule converges by squares, a damped one elsewhere.
        double size = Math.Min(most, decrement < 0.06 ? 1 : 2 / (1 + Math.Sqrt(decrement)));
        for (int j = 0; j < x.Length; j++)
        {
            x[j] += size * work[j][0];
        }

        t += size * share;
        return size > 0;
    }

    // Nine tenths of the way to a wall.
    private static double Way(double approach, double slack) => approach > 0 ? 0.9 * slack / approach : 1;

    private void Add(Vector<double>[] to, int row, double factor)
    {
        var f = rows.Factors(row);
        for (int k = 0; k < f.Length; k++)
        {
            to[rows.Column(row) + k] += new Vector<double>(f[k] * factor);
        }
    }

    private static double Dot(Vector<double>[] a, Vector<double>[] b)
    {
        double sum = 0;
        for (int j = 0; j < a.Length; j++)
        {
            sum += a[j][0] * b[j][0];
        }

        return sum;
    }
}
