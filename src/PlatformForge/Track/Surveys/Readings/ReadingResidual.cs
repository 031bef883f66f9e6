using PlatformForge.Geometry;

namespace PlatformForge.Track.Surveys.Readings;

/// <summary>One reading against the line.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="Chainage">Chainage of the place it speaks of, mm.</param>
/// <param name="Miss">Reading less line, mm: square to the track and positive to the left for places, along the versine for versines.</param>
/// <param name="Fitting">The figure in mm that would fit: offset from the string, or versine; null for points.</param>
/// <param name="FittingPlace">The nearest place that would fit; null for versines.</param>
/// <param name="IsOutlier">Whether it is named as misread and left out of the fit.</param>
public sealed record ReadingResidual(Reading Reading, double Chainage, double Miss, double? Fitting, Point2? FittingPlace, bool IsOutlier);
