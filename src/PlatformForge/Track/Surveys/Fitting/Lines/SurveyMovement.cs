namespace PlatformForge.Track.Surveys.Fitting.Lines;

/// <summary>
/// How far the true centreline may lie from the fitted one, from the ruler error alone, square to the track, at even chainages.
/// </summary>
/// <param name="Chainages">Chainages, mm, rising.</param>
/// <param name="Likely">The stated bound, mm: in <see cref="Coverage"/> of all surveys the whole of the true line lies within it.
/// It allows for what the readings leave open about the kinds of elements too.</param>
/// <param name="Worst">How far the line would move, mm, if every reading were off by the full ruler error in the worst direction, on
/// the condition that straights, curves and transitions stay those recognised; never less than <see cref="Likely"/>. Readings so
/// wrong may also make others look likelier, and move the line by more: no bound is known for that.</param>
public sealed record SurveyMovement(IReadOnlyList<double> Chainages, IReadOnlyList<double> Likely, IReadOnlyList<double> Worst)
{
    /// <summary>Part of all surveys in which the true line lies within <see cref="Likely"/> over its whole length: 19 in 20.</summary>
    public const double Coverage = 0.95;

    /// <summary>The shape alone, where nobody measured the line's place and direction; null where the readings themselves tell them.</summary>
    internal LooseShape? Loose { get; init; }

    /// <summary>How far the line may be off between two chainages, mm: the greatest <see cref="Likely"/>, or that of the shape alone where
    /// place and direction were not measured.</summary>
    public double Most(double from, double to) => Loose?.Likely(from, to) ?? Most(Likely, from, to);

    private double Most(IReadOnlyList<double> movement, double from, double to)
    {
        double most = Math.Max(At(movement, from), At(movement, to));
        for (int k = 0; k < Chainages.Count; k++)
        {
            most = Chainages[k] >= from && Chainages[k] <= to ? Math.Max(most, movement[k]) : most;
        }

        return most;
    }

    /// <summary><see cref="Likely"/> at a chainage, mm; beyond the ends it is that of the end.</summary>
    public double At(double chainage) => At(Likely, chainage);

    private double At(IReadOnlyList<double> movement, double chainage)
    {
        int k = 0;
        while (k < Chainages.Count - 2 && Chainages[k + 1] < chainage)
        {
            k++;
        }

        double part = Math.Clamp((chainage - Chainages[k]) / (Chainages[k + 1] - Chainages[k]), 0, 1);
        return movement[k] + (part * (movement[k + 1] - movement[k]));
    }

    /// <summary>
    /// How far a vehicle's reach, and so the gap beside it, may move where the line may move by so much anywhere, mm. A place x from mid-length of a
    /// body on pivots a apart moves by a weighted sum of the movements at the pivots; the weights add up to max(1, 2x/a).
    /// </summary>
    /// <param name="line">Movement of the line, mm.</param>
    /// <param name="pivots">Distance between the pivots, mm.</param>
    /// <param name="length">Length of the body, mm.</param>
    public static double ReachOf(double line, double pivots, double length) => line * Math.Max(1, length / pivots);
}
