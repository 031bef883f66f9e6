using PlatformForge.Geometry;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// A profile fitted to what was measured on the true geometry of the line: residuals square to the track or on the chord
/// itself, by Gauss's and Newton's rule with damping. The search works with small offsets from a reference; this removes what
/// that leaves out.
/// </summary>
internal sealed class ExactFit
{
    private const int MostRounds = 12;
    private const double Settled = 1e-9;
    private const double FirstDamping = 1e-6;
    private const double MostDamping = 1e3;

    // Steps for differences, by kind of figure: each moves the far end of a track by a small part of a millimetre.
    private const double OffsetStep = 1e-3, TurnStep = 1e-6, CurvatureStep = 1e-9, ChainageStep = 1e-2, SquareStep = 1;

    private readonly Point2 origin;
    private readonly double direction;
    private readonly IReadOnlyList<FitTarget> targets;
    private readonly bool[] leftOut;

    private ExactFit(string name, CurvatureProfile profile, Point2 start, double heading, IReadOnlyList<FitTarget> targets, bool[] leftOut)
    {
        (Name, Profile, origin, direction, this.targets, this.leftOut) = (name, profile, start, heading, targets, leftOut);
        Line = Lay(profile);
        SquareSum = Sum(Line);
    }

    public string Name { get; }

    public CurvatureProfile Profile { get; private set; }

    public Centreline Line { get; private set; }

    /// <summary>Sum of squared residuals in standard deviations, without those left out.</summary>
    public double SquareSum { get; private set; }

    /// <summary>Readings used less free figures.</summary>
    public int DegreesOfFreedom => leftOut.Count(x => !x) - Profile.Freedom;

    public IReadOnlyList<bool> LeftOut => leftOut;

    /// <summary>Standard deviation of a target, mm.</summary>
    public double Sigma(int target) => targets[target].Sigma;

    /// <summary>Fits, beginning with a profile told from a start point and heading.</summary>
    public static ExactFit Polish(string name, CurvatureProfile first, Point2 start, double heading, IReadOnlyList<FitTarget> targets, bool[] leftOut)
    {
        var fit = new ExactFit(name, first, start, heading, targets, leftOut);
        double damping = FirstDamping;
        for (int round = 0; round < MostRounds && fit.Profile.Freedom > 0; round++)
        {
            var equations = fit.Equations();
            double before = fit.SquareSum;
            double[] figures = fit.Profile.Figures();
            while (damping < MostDamping)
            {
                double[] step = equations.Step(damping);
                var profile = fit.Profile.With([.. figures.Zip(step, (f, d) => f + d)]);
                var line = fit.Lay(profile);
                double sum = fit.Sum(line);
                if (sum < before)
                {
                    (fit.Profile, fit.Line, fit.SquareSum) = (profile, line, sum);
                    damping = Math.Max(damping / 10, FirstDamping);
                    break;
                }

                damping *= 10;
            }

            if (before - fit.SquareSum <= Settled * (1 + before))
            {
                break;
            }
        }

        return fit;
    }

    /// <summary>The line with one figure moved by a small step, and the step.</summary>
    public (Centreline Line, double Step) Moved(int figure)
    {
        double[] figures = Profile.Figures();
        double step = StepOf(figure);
        figures[figure] += step;
        var moved = Profile.With(figures);

        // Where order or bounds hold the figure, it is moved the other way.
        if (moved.Figures()[figure] != figures[figure])
        {
            figures[figure] -= 2 * step;
            step = -step;
            moved = Profile.With(figures);
        }

        return (Lay(moved), step);
    }

    /// <summary>Slope of every target's line value by every figure, in standard deviations; rows of those left out are filled too.</summary>
    public double[][] Jacobian()
    {
        int count = Profile.Freedom;
        double[] now = Misses(Line);
        double[][] rows = [.. targets.Select(_ => new double[count])];
        for (int f = 0; f < count; f++)
        {
            var (line, step) = Moved(f);
            double[] then = Misses(line);
            for (int i = 0; i < rows.Length; i++)
            {
                rows[i][f] = -(then[i] - now[i]) / step / targets[i].Sigma;
            }
        }

        return rows;
    }

    public NormalEquations Equations() => Equations(Jacobian());

    public NormalEquations Equations(double[][] jacobian)
    {
        double[] misses = Misses(Line);
        var equations = new NormalEquations(Profile.Freedom);
        for (int i = 0; i < targets.Count; i++)
        {
            if (!leftOut[i])
            {
                equations.Add(jacobian[i], misses[i] / targets[i].Sigma);
            }
        }

        return equations;
    }

    /// <summary>Misses of all targets, mm.</summary>
    public double[] Misses(Centreline line) => [.. targets.Select(t => t.Miss(line))];

    private Centreline Lay(CurvatureProfile profile)
    {
        var start = origin + (Point2.FromAngle(direction).Left * profile.Offset);
        return ProfileLine.Build(Name, profile, start, direction + profile.Heading);
    }

    private double Sum(Centreline line)
    {
        double sum = 0;
        for (int i = 0; i < targets.Count; i++)
        {
            double r = leftOut[i] ? 0 : targets[i].Miss(line) / targets[i].Sigma;
            sum += r * r;
        }

        return sum;
    }

    private double StepOf(int figure)
    {
        int at = 0;
        if (Profile.Placed && figure < (at += 2))
        {
            return figure == 0 ? OffsetStep : TurnStep;
        }

        if (figure < (at += Profile.Straight.Count(s => !s)))
        {
            return CurvatureStep;
        }

        for (int j = 0; j < Profile.Middles.Length; j++)
        {
            if (figure < ++at)
            {
                return ChainageStep;
            }

            if (!Profile.Sudden[j] && figure < ++at)
            {
                return Math.Max(SquareStep, Profile.Squares[j] / 1000);
            }
        }

        return (figure - at) % 2 == 0 ? ChainageStep : TurnStep;
    }
}
