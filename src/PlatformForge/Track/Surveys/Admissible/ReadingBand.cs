using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>A reading as a condition on a line: its place lies square to the line at an offset of the measured line, within the reading's
/// error.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="Error">The most by which it is off, mm, square to the track.</param>
public sealed record ReadingBand(PlaceReading Reading, double Error);
