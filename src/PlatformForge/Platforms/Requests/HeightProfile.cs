namespace PlatformForge.Platforms.Requests;

/// <summary>
/// Height of the coping's top over the baseboard along a platform: level between the ramp heads, straight down to the feet.
/// All in mm. Without a ramp, head and end are the same chainage.
/// </summary>
/// <param name="From">First chainage of the platform.</param>
/// <param name="StartHead">Chainage at which the starting ramp has reached the full height.</param>
/// <param name="EndHead">Chainage at which the ending ramp begins to fall.</param>
/// <param name="To">Last chainage of the platform.</param>
/// <param name="StartFoot">Height at <paramref name="From"/>.</param>
/// <param name="Level">Height between the heads.</param>
/// <param name="EndFoot">Height at <paramref name="To"/>.</param>
public sealed record HeightProfile(double From, double StartHead, double EndHead, double To, double StartFoot, double Level, double EndFoot)
{
    /// <summary>Whether an end slopes.</summary>
    public bool HasRamps => StartHead > From || EndHead < To;

    /// <summary>Heads of ramps between two chainages, those not counted.</summary>
    public IEnumerable<double> HeadsBetween(double from, double to) => new[] { StartHead, EndHead }.Where(h => h > from && h < to);

    /// <summary>Height over the baseboard at a chainage, mm; beyond an end, that of the end.</summary>
    public double At(double chainage)
    {
        if (chainage < StartHead && StartHead > From)
        {
            return StartFoot + ((Level - StartFoot) * Math.Max(0, chainage - From) / (StartHead - From));
        }

        return chainage > EndHead && EndHead < To
            ? EndFoot + ((Level - EndFoot) * Math.Max(0, To - chainage) / (To - EndHead))
            : Level;
    }
}
