namespace PlatformForge.Track.Surveys;

/// <summary>
/// How far a vehicle's reach beside a platform, and with it the gap between them, may differ from what is computed on a surveyed
/// line, from the reading error alone.
/// </summary>
/// <param name="Platform">Name of the platform.</param>
/// <param name="Vehicle">The vehicle that it matters most for.</param>
/// <param name="Likely">Bound in mm that holds in <see cref="SurveyMovement.Coverage"/> of all surveys.</param>
/// <param name="Worst">Movement in mm if every reading were off by the full ruler error in the worst direction
/// and the elements of the line stayed those recognised; never less than <paramref name="Likely"/>.</param>
public sealed record ReachDoubt(string Platform, string Vehicle, double Likely, double Worst)
{
    /// <summary>How far the track itself may lie off, mm, over the stretch that vehicles stand on while any part of them is
    /// beside the platform; as likely as <see cref="Likely"/>.</summary>
    public double Line { get; init; }
}
