using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>
/// Whether a stated joint would fit the readings better elsewhere. The set of lines between joints says that only where nothing at all meets the readings;
/// here the pieces
/// are laid by least squares, with kinks and curvatures as they usually are, once as stated and once with each joint moved.
/// </summary>
internal sealed class JointPlaces
{
    // How far a joint is moved, at most and at a time, mm, and how near to the next one it may come.
    private const double Farthest = 80, Apart = 5, Nearest = 20;

    // Kinks have this part of the greatest as their standard deviation: they lie evenly within it.
    private static readonly double UsualKink = 1 / Math.Sqrt(3);

    // Pieces differ by this part in manufacture (common practice, no source).
    private const double Made = 0.01;

    private readonly Laying laying;
    private readonly (double At, double Value)[] readings;
    private readonly double sigma;

    private JointPlaces(Laying laying, (double At, double Value)[] readings, double sigma) =>
        (this.laying, this.readings, this.sigma) = (laying, readings, sigma);

    /// <summary>The best place for each joint, the others as stated, and what it gains; without those that have no room.</summary>
    /// <param name="laying">How the track was laid.</param>
    /// <param name="readings">Chainages on the stated line, mm, and what was read there: its curvature summed twice and the offset from it, mm.</param>
    /// <param name="error">Ruler error, mm.</param>
    /// <param name="joints">Chainages of the stated joints, rising.</param>
    public static IReadOnlyList<MovedJoint> Best(Laying laying, (double At, double Value)[] readings, double error, double[] joints)
    {
        var own = new JointPlaces(laying, readings, error / Math.Sqrt(3));
        double stated = own.Cost(joints);
        return [.. Enumerable.Range(0, joints.Length).AsParallel().AsOrdered()
            .Select(j => own.Moves(joints, j).Select(at => new MovedJoint(j, at, stated - own.Cost([.. joints.Select((s, i) => i == j ? at : s)])))
                .MaxBy(m => m.Gain)).OfType<MovedJoint>()];
    }

    /// <summary>The sum of squares, in standard deviations, of readings, kinks and curvatures over pieces between joints; the arguments are those of
    /// <see cref="Best"/>.</summary>
    public static double CostOf(Laying laying, (double At, double Value)[] readings, double error, double[] joints) =>
        new JointPlaces(laying, readings, error / Math.Sqrt(3)).Cost(joints);

    private IEnumerable<double> Moves(double[] joints, int j)
    {
        double low = Math.Max(joints[j] - Farthest, j == 0 ? readings[0].At : joints[j - 1]) + Nearest,
            high = Math.Min(joints[j] + Farthest, j + 1 == joints.Length ? readings[^1].At : joints[j + 1]) - Nearest;
        for (double at = joints[j] - Farthest; at <= joints[j] + Farthest; at += Apart)
        {
            if (at > low && at < high)
            {
                yield return at;
            }
        }
    }

    // Sum of squares, in standard deviations, of readings, kinks and curvatures. Where radii are stated, each piece is taken for the one that it is nearest to.
    private double Cost(double[] joints)
    {
        double sharpest = laying.Radii.Count == 0 ? laying.Curvature : 1 / laying.Radii.Min();
        double[] wanted = new double[joints.Length + 1], spread = [.. wanted.Select(_ => sharpest)];
        var (cost, bends) = Solve(joints, wanted, spread);
        if (laying.Radii.Count == 0)
        {
            return cost;
        }

        double[] allowed = [0, .. laying.Radii.SelectMany(r => (double[])[1 / r, -1 / r])];
        wanted = [.. bends.Select(b => allowed.MinBy(k => Math.Abs(k - b)))];
        return Solve(joints, wanted, [.. wanted.Select(_ => Made * sharpest)]).Cost;
    }

    // Figures: offset and slope at the first reading, the curvature of every piece, the kink at every joint.
    private (double Cost, double[] Bends) Solve(double[] joints, double[] wanted, double[] spread)
    {
        int pieces = joints.Length + 1, n = 2 + pieces + joints.Length;
        double kink = UsualKink * laying.GreatestKink, from = readings[0].At;
        double[] ends = [from, .. joints, double.PositiveInfinity];
        var rows = new List<(double[] Row, double Value)>();
        foreach (var (s, value) in readings)
        {
            double[] row = new double[n];
            (row[0], row[1]) = (1 / sigma, (s - from) / sigma);
            for (int p = 0; p < pieces; p++)
            {
                double a = Math.Max(0, s - ends[p]), b = Math.Max(0, s - ends[p + 1]);
                row[2 + p] = ((a * a) - (b * b)) / 2 / sigma;
            }

            for (int j = 0; j < joints.Length; j++)
            {
                row[2 + pieces + j] = Math.Max(0, s - joints[j]) / sigma;
            }

            rows.Add((row, value / sigma));
        }

        for (int f = 2; f < n; f++)
        {
            double[] row = new double[n];
            int p = f - 2;
            row[f] = 1 / (p < pieces ? spread[p] : kink);
            rows.Add((row, p < pieces ? wanted[p] / spread[p] : 0));
        }

        var equations = new PlatformForge.Track.Surveys.Fitting.Lines.NormalEquations(n);
        rows.ForEach(r => equations.Add(r.Row, r.Value));
        double[] figures = equations.Step(0);
        double cost = rows.Sum(r => Math.Pow(r.Row.Zip(figures, (a, b) => a * b).Sum() - r.Value, 2));
        return (cost, figures[2..(2 + pieces)]);
    }
}

/// <summary>A stated joint that would fit better elsewhere.</summary>
/// <param name="Joint">Its index.</param>
/// <param name="At">Where it would fit, chainage in mm.</param>
/// <param name="Gain">By how much the sum of squares would fall.</param>
public sealed record MovedJoint(int Joint, double At, double Gain)
{
    /// <summary>Where the user states it, mm as the readings are told.</summary>
    public double Stated { get; init; }

    /// <summary>Where it would fit, mm as the readings are told, to some spacings.</summary>
    public double Wanted { get; init; }
}

/// <summary>A stated joint that may lie elsewhere.</summary>
/// <param name="Joint">The joint and where it would fit better.</param>
/// <param name="Lines">All lines of pieces with that joint there.</param>
internal sealed record MovedJoints(MovedJoint Joint, JointedLines Lines);
