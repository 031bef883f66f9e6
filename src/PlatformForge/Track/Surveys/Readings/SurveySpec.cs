using PlatformForge.Geometry;

namespace PlatformForge.Track.Surveys.Readings;

/// <summary>One survey file, already read into memory.</summary>
/// <param name="File">Its name as the user wrote it, for findings.</param>
/// <param name="Text">Its text.</param>
/// <param name="Measured">What was measured.</param>
/// <param name="Unit">Unit of the figures where the file does not say; null demands that the file say.</param>
public sealed record SurveySource(string File, string Text, MeasuredLine Measured, LengthUnit? Unit = LengthUnit.Millimetre)
{
    /// <summary>Whether the user stated the unit; otherwise it is the usual one, and a file that states another is not at odds with
    /// it.</summary>
    public bool UnitStated { get; init; }
}

/// <summary>
/// A track as it was measured. Several sources, one for each rail for instance, are readings of one and the same track.
/// </summary>
/// <param name="Track">Name of the track.</param>
/// <param name="Key">Key of the survey in the project file, for findings.</param>
/// <param name="Sources">The files; at least one.</param>
/// <param name="RulerError">The most in mm by which a careful reading is off, either way. It is a bound: readings are taken
/// to be spread evenly within it, with a standard deviation of 1/√3 of it.</param>
public abstract record SurveySpec(string Track, string Key, IReadOnlyList<SurveySource> Sources, double RulerError)
{
    /// <summary>How the track was laid.</summary>
    public Laying Laying { get; init; } = Laying.UsualInFourMillimetres;
}

/// <summary>Offsets square to one stretched string, at distances along it.</summary>
/// <param name="Track">Name of the track.</param>
/// <param name="Key">Key of the survey in the project file.</param>
/// <param name="Sources">The files.</param>
/// <param name="RulerError">Greatest reading error, mm.</param>
/// <param name="StringStart">Where distance 0 of the string lies in the layout, mm.</param>
/// <param name="StringHeading">Direction of the string, radians.</param>
/// <param name="Side">Side of the string on which positive offsets lie; a column 'side' of the file goes before it.</param>
public sealed record OffsetsSpec(
    string Track, string Key, IReadOnlyList<SurveySource> Sources, double RulerError, Point2 StringStart, double StringHeading, Hand Side = Hand.Left)
    : SurveySpec(Track, Key, Sources, RulerError);

/// <summary>Points in layout coordinates, in order along the track.</summary>
public sealed record PointsSpec(string Track, string Key, IReadOnlyList<SurveySource> Sources, double RulerError)
    : SurveySpec(Track, Key, Sources, RulerError);

/// <summary>Versines: heights of the track over the middle of one chord, held to it at stations along the track.</summary>
/// <param name="Track">Name of the track.</param>
/// <param name="Key">Key of the survey in the project file.</param>
/// <param name="Sources">The files.</param>
/// <param name="RulerError">Greatest reading error, mm.</param>
/// <param name="Chord">Length of the chord, mm.</param>
/// <param name="Start">Where the measured line is at station 0, or half a chord before the first station if that lies earlier, mm.</param>
/// <param name="Heading">Direction of the track there, radians.</param>
/// <param name="Spacing">Distance in mm between stations that the file only numbers; null when the file gives their distances.</param>
/// <param name="Positive">Hand of a curve with positive versines.</param>
/// <param name="Closing">Measured distances that hold the ends together; null leaves the figures to drift.</param>
public sealed record VersinesSpec(
    string Track,
    string Key,
    IReadOnlyList<SurveySource> Sources,
    double RulerError,
    double Chord,
    Point2 Start,
    double Heading,
    double? Spacing = null,
    Hand Positive = Hand.Left,
    ClosingChord? Closing = null)
    : SurveySpec(Track, Key, Sources, RulerError);

/// <summary>One long chord from station to station, measured once, which takes the drift out of versines.</summary>
/// <param name="From">Station of its first end, mm along the measured line.</param>
/// <param name="To">Station of its last end, mm.</param>
/// <param name="Length">Its length, mm.</param>
/// <param name="Versine">Height of the track over its middle, mm, signed as the versines are; null where not measured.</param>
/// <param name="Error">The most in mm by which length and versine are off; null for the ruler error.</param>
public sealed record ClosingChord(double From, double To, double Length, double? Versine = null, double? Error = null);

/// <summary>A line of a drawing.</summary>
/// <param name="Track">Name of the track.</param>
/// <param name="Key">Key of the survey in the project file.</param>
/// <param name="Sources">The files.</param>
/// <param name="RulerError">Greatest reading error, mm.</param>
/// <param name="Format">How the file is written.</param>
/// <param name="Element">Id of an SVG element or name of a DXF layer; null where the drawing has one line only.</param>
/// <param name="Unit">What one unit of the drawing is where the file does not say; null stops there and asks.</param>
/// <param name="Calibration">A drawn line of known length, which goes before any unit.</param>
/// <param name="Reverse">Whether chainage runs against the drawn direction.</param>
public sealed record DrawingSpec(
    string Track,
    string Key,
    IReadOnlyList<SurveySource> Sources,
    double RulerError,
    DrawingFormat Format,
    string? Element,
    LengthUnit? Unit = null,
    Calibration? Calibration = null,
    bool Reverse = false)
    : SurveySpec(Track, Key, Sources, RulerError);

/// <summary>A drawing's file format.</summary>
public enum DrawingFormat
{
    Svg,
    Dxf,
}

/// <summary>A drawn line whose true length is known.</summary>
/// <param name="Length">Its true length, mm.</param>
/// <param name="Element">Its id or layer.</param>
public sealed record Calibration(double Length, string Element = "calibration");
