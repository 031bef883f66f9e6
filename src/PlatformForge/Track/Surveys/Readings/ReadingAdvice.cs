namespace PlatformForge.Track.Surveys.Readings;

/// <summary>Which reading to take again, and where one more does most: places that would make what is taken of the gap smaller, told as that would then
/// be.</summary>
/// <param name="Repeat">The reading to take again; null where none would help.</param>
/// <param name="RepeatLeaves">What would be taken of the gap if the figure read again said what the line says, mm.</param>
/// <param name="IsLeftOut">Whether that reading was left out as misread or in doubt.</param>
/// <param name="MoreAt">Chainage at which one more reading helps most, mm; null where none would.</param>
/// <param name="MoreLeaves">What would be taken of the gap if it said what the line says, mm.</param>
public sealed record ReadingAdvice(Reading? Repeat, double? RepeatLeaves, bool IsLeftOut, double? MoreAt, double? MoreLeaves)
{
    /// <summary>The figure that the reading taken again is taken to say, mm: an offset from the string, or a versine; null for points.</summary>
    public double? RepeatFigure { get; init; }

    /// <summary>Whether the readings contradict how the track is said to be laid, and would not with that figure.</summary>
    public bool RepeatRestores { get; init; }

    /// <summary>The reading more as it is taken to be; null where none would help.</summary>
    public Reading? MoreReading { get; init; }

    /// <summary>Where it is put along the string, or at which station, mm; null where places are not told so.</summary>
    public double? MoreAlong => MoreReading switch { PlaceReading { Ordinate: { } o } => o.Distance, VersineReading v => v.Station, _ => null };

    /// <summary>What it is taken to say, mm: an offset from the string, or a versine; null for points.</summary>
    public double? MoreFigure => MoreReading switch { PlaceReading { Ordinate: { } o } => o.Offset, VersineReading v => v.Versine, _ => null };
}
