namespace PlatformForge.Track.Surveys.Fitting.Lines;

/// <summary>How a descent is damped, and when it ends.</summary>
/// <param name="First">Damping at the start, as a part of the diagonal.</param>
/// <param name="Least">Damping that a good step does not go below.</param>
/// <param name="Most">Damping at which no step is tried any more.</param>
/// <param name="Rounds">Most rounds.</param>
internal readonly record struct Damping(double First, double Least, double Most, int Rounds);

/// <summary>
/// Levenberg's and Marquardt's rule: from a first shape to the nearest least sum of squares. A step that lowers the sum is taken and the
/// next one less damped, one that does not
/// is tried again ten times as damped.
/// </summary>
internal static class DampedDescent
{
    /// <typeparam name="TShape">What is fitted.</typeparam>
    /// <param name="first">The first shape.</param>
    /// <param name="sum">Its sum of squares.</param>
    /// <param name="rule">Damping and rounds.</param>
    /// <param name="equations">The normal equations of a shape.</param>
    /// <param name="moved">A shape after a step, and its sum of squares; no number or infinity for one that cannot be.</param>
    /// <param name="settled">What a round has to win, given the sum before it, for another to be worth it.</param>
    /// <param name="hopeless">Whether a round, by its number and the sum before it, is not worth trying.</param>
    public static (TShape Shape, double Sum) From<TShape>(
        TShape first, double sum, Damping rule, Func<TShape, NormalEquations> equations, Func<TShape, double[], (TShape Shape, double Sum)> moved,
        Func<double, double> settled, Func<int, double, bool>? hopeless = null)
    {
        var shape = first;
        double damping = rule.First;
        for (int round = 0; round < rule.Rounds && hopeless?.Invoke(round, sum) != true; round++)
        {
            var here = equations(shape);
            double before = sum;
            for (; damping < rule.Most; damping *= 10)
            {
                var (tried, triedSum) = moved(shape, here.Step(damping));
                if (triedSum < sum)
                {
                    (shape, sum) = (tried, triedSum);
                    damping = Math.Max(damping / 10, rule.Least);
                    break;
                }
            }

            if (before - sum <= settled(before))
            {
                break;
            }
        }

        return (shape, sum);
    }
}
