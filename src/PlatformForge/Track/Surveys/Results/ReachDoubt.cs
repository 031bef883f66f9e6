using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Results;

/// <summary>
/// How much farther a vehicle may reach beside a platform, and so how much nearer it may come, than on the line that the survey found.
/// </summary>
/// <param name="Platform">Name of the platform.</param>
/// <param name="Vehicle">The vehicle that it matters most for.</param>
/// <param name="Most">Greatest figure beside the platform, mm.</param>
/// <param name="At">Chainage of it, mm.</param>
/// <param name="Median">Figure that half of the platform's length stays below, mm.</param>
/// <param name="Spread">Half of what lies between its greatest and least reach, median along the platform, mm.</param>
public sealed record ReachDoubt(string Platform, string Vehicle, double Most, double At, double Median, double Spread)
{
    /// <summary>By how much the farthest reach of all vehicles together grows at most beside the platform, mm: what it takes of the
    /// gap.</summary>
    public double Charged { get; init; }

    /// <summary>What a copied alignment has to state for the track itself, mm, so that its budget is no smaller.</summary>
    public double Line { get; init; }

    /// <summary>What <see cref="Charged"/> would be if the track was said to be laid as flexible track, mm; null where the user has said how it was
    /// laid, the readings contradict it, or they fix no places.</summary>
    public double? IfFlexible { get; init; }

    /// <summary>The same if it was said to be sectional track, its joints not stated; null where the user has said how it was laid, or the readings fix no
    /// places.</summary>
    public double? IfSectional { get; init; }

    /// <summary>What another reading would do; null where no reading would help.</summary>
    public ReadingAdvice? Advice { get; init; }
}
