using PlatformForge.Geometry;

namespace PlatformForge.Track.Surveys.Fitting.Lines;

/// <summary>
/// A profile fitted to what was measured on the true geometry of the line: residuals square to the track or on the chord
/// itself, by Gauss's and Newton's rule with damping. The search works with small offsets from a reference; this removes what
/// that leaves out.
/// </summary>
internal sealed class ExactFit
{
    // A round that takes less than this part off the sum of squares is the last.
    private const double LeastGain = 1e-9;
    private static readonly Damping Damped = new(First: 1e-6, Least: 1e-6, Most: 1e3, Rounds: 12);

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
        if (fit.Profile.Freedom == 0)
        {
            return fit;
        }

        var ((profile, line), sum) = DampedDescent.From(
            (fit.Profile, fit.Line),
            fit.SquareSum,
            Damped,
            shape =>
            {
                (fit.Profile, fit.Line) = shape;
                return fit.Equations();
            },
            (shape, step) => fit.Stepped(shape.Profile, step),
            before => LeastGain * (1 + before));
        (fit.Profile, fit.Line, fit.SquareSum) = (profile, line, sum);
        return fit;
    }

    // A wild step would wind the line up on itself, and laying it would take all memory.
    private ((CurvatureProfile Profile, Centreline Line) Shape, double Sum) Stepped(CurvatureProfile from, double[] step)
    {
        var profile = from.With([.. from.Figures().Zip(step, (f, d) => f + d)]);
        if (profile.Curvatures.Any(k => !(Math.Abs(k) * profile.Length < MostTurning)))
        {
            return ((profile, Line), double.PositiveInfinity);
        }

        var line = Lay(profile);
        return ((profile, line), Sum(line));
    }

    /// <summary>
    /// The line with one figure moved by a small step, and the step. Where order or bounds hold the figure one way it is moved
    /// the other; where they hold it both ways the line stays.
    /// </summary>
    public (Centreline Line, double Step) Moved(int figure)
    {
        double step = StepOf(figure);
        foreach (double way in new[] { step, -step })
        {
            double[] figures = Profile.Figures();
            figures[figure] += way;
            var moved = Profile.With(figures);
            double[] kept = moved.Figures();
            if (kept.Zip(figures).All(p => Math.Abs(p.First - p.Second) <= Held * Math.Abs(p.Second)))
            {
                return (Lay(moved), way);
            }
        }

        return (Line, step);
    }

    // Track on a layout turns by less than this, radians: over a hundred full circles.
    private const double MostTurning = 1000;

    // A figure that order or bounds have altered by more than this part is held by them.
    private const double Held = 1e-12;

    /// <summary>What is known of each figure before any reading: nothing on a layout is sharper, longer or more kinked.</summary>
    public double[] Beforehand()
    {
        double[] known = new double[Profile.Freedom];
        for (int f = 0; f < known.Length; f++)
        {
            known[f] = KindOf(f).Beforehand;
        }

        return known;
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

    private double StepOf(int figure) => KindOf(figure).Step;

    private (double Step, double Beforehand) KindOf(int figure)
    {
        int at = 0;
        if (Profile.Placed && figure < (at += 2))
        {
            return figure == 0 ? (OffsetStep, Profile.Length) : (TurnStep, 1);
        }

        if (figure < (at += Profile.Straight.Count(s => !s)))
        {
            return (CurvatureStep, SharpestCurvature);
        }

        for (int j = 0; j < Profile.Middles.Length && !Profile.Knotted; j++)
        {
            double room = Math.Min(
                Profile.Middles[j] - (j == 0 ? 0 : Profile.Middles[j - 1]),
                (j == Profile.Middles.Length - 1 ? Profile.Length : Profile.Middles[j + 1]) - Profile.Middles[j]);
            if (figure < ++at)
            {
                return (ChainageStep, room / 2);
            }

            if (!Profile.Sudden[j] && figure < ++at)
            {
                return (Math.Max(SquareStep, Profile.Squares[j] / 1000), room * room);
            }
        }

        return (figure - at) % 2 == 0 ? (ChainageStep, Profile.Length / 4) : (TurnStep, SharpestKink);
    }

    // Curvature, 1/mm, and kink, radians, that a figure is taken to be within, as standard deviations.
    private const double SharpestCurvature = 1 / 300.0, SharpestKink = 0.1;
}
