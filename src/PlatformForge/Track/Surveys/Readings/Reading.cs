using PlatformForge.Geometry;

namespace PlatformForge.Track.Surveys.Readings;

/// <summary>One figure or pair of figures that somebody read off.</summary>
/// <param name="File">File it stands in, as the user named it.</param>
/// <param name="Row">Line of that file, from 1; for a drawing, the number of the point along the line.</param>
/// <param name="Unit">Unit it was written in.</param>
public abstract record Reading(string File, int Row, LengthUnit Unit)
{
    /// <summary>Line of a drawing's file at which the drawn line begins; null for readings that somebody wrote down in a table.</summary>
    public int? DrawnAt { get; init; }

    /// <summary>A figure of this reading's kind as its file has it, in the file's unit and with its sign.</summary>
    /// <param name="mm">The figure in mm: an offset from the string, or a versine, positive to the left.</param>
    public virtual double Written(double mm) => mm / Unit.Millimetres();

    /// <summary>Where it is found, in words: line 12 of a table, or point 12 along a drawn line.</summary>
    public string Whereabouts => DrawnAt is null ? FormattableString.Invariant($"line {Row}") : FormattableString.Invariant($"point {Row}");

    /// <summary>Where it is found with the file: readings.csv:12, or plan.svg, point 12.</summary>
    public string FileAndWhereabouts => DrawnAt is null ? FormattableString.Invariant($"{File}:{Row}") : FormattableString.Invariant($"{File}, point {Row}");
}

/// <summary>A place on the measured line.</summary>
/// <param name="File">File it stands in.</param>
/// <param name="Row">Line of that file.</param>
/// <param name="Unit">Unit it was written in.</param>
/// <param name="Place">The place in the layout, mm.</param>
/// <param name="FromCentre">Offset of the measured line from the centreline, mm, left positive.</param>
/// <param name="Ordinate">How it was measured from a string; null for points and drawings.</param>
public sealed record PlaceReading(string File, int Row, LengthUnit Unit, Point2 Place, double FromCentre, StringOrdinate? Ordinate = null)
    : Reading(File, Row, Unit);

/// <summary>An offset from a string.</summary>
/// <param name="Distance">Distance along the string, mm.</param>
/// <param name="Offset">The figure read, mm, positive along <paramref name="Square"/>.</param>
/// <param name="Foot">The mark on the string, layout mm.</param>
/// <param name="Square">Unit direction of a positive offset.</param>
public sealed record StringOrdinate(double Distance, double Offset, Point2 Foot, Point2 Square);

/// <summary>A versine.</summary>
/// <param name="File">File it stands in.</param>
/// <param name="Row">Line of that file.</param>
/// <param name="Unit">Unit it was written in.</param>
/// <param name="Station">Place of the middle of the chord along the measured line, mm from station 0.</param>
/// <param name="Versine">The figure in mm, positive where the measured line bends to the left.</param>
public sealed record VersineReading(string File, int Row, LengthUnit Unit, double Station, double Versine)
    : Reading(File, Row, Unit)
{
    /// <summary>Hand of a curve with positive figures in the file.</summary>
    public Hand Positive { get; init; } = Hand.Left;

    /// <inheritdoc/>
    public override double Written(double mm) => base.Written(mm) * (int)Positive;
}

/// <summary>A survey file made into readings in layout millimetres.</summary>
public abstract record Survey(string Track, string Key, double RulerError)
{
    /// <summary>How the track was laid.</summary>
    public Laying Laying { get; init; } = Laying.UsualInFourMillimetres;
}

/// <summary>Places on the track, one run in order along the track for each source.</summary>
public sealed record PlaceSurvey(string Track, string Key, double RulerError, IReadOnlyList<IReadOnlyList<PlaceReading>> Runs)
    : Survey(Track, Key, RulerError);

/// <summary>Versines along one measured line.</summary>
public sealed record VersineSurvey(
    string Track, string Key, double RulerError, IReadOnlyList<VersineReading> Readings, double Chord, Point2 Start, double Heading, double FromCentre,
    ClosingChord? Closing)
    : Survey(Track, Key, RulerError);
