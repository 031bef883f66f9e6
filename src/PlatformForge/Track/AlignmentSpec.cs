using PlatformForge.Geometry;

namespace PlatformForge.Track;

/// <summary>Which way a curve turns, seen along increasing chainage.</summary>
public enum Hand
{
    Left = 1,
    Right = -1,
}

/// <summary>One entry of an alignment list.</summary>
public abstract record AlignmentElementSpec;

/// <summary>A straight of a length in mm.</summary>
public sealed record StraightSpec(double Length) : AlignmentElementSpec;

/// <summary>A circular curve of a radius in mm, either by arc length in mm or by the angle turned in radians; one of the two is set.</summary>
public sealed record CurveSpec(double Radius, Hand Hand, double? Length = null, double? Angle = null) : AlignmentElementSpec;

/// <summary>
/// A clothoid of a length in mm from the curvature reached so far to a radius; a null radius leads to straight track.
/// </summary>
public sealed record TransitionSpec(double Length, double? ToRadius, Hand Hand) : AlignmentElementSpec;

/// <summary>A sudden turn of an angle in radians, above zero, as a badly made joint of sectional track has.</summary>
public sealed record KinkSpec(double Turn, Hand Hand) : AlignmentElementSpec;

/// <summary>A track given by what it is made of.</summary>
/// <param name="Name">Name of the track.</param>
/// <param name="Start">First point, mm.</param>
/// <param name="Heading">First direction, radians from the x axis.</param>
/// <param name="Elements">Elements in order.</param>
/// <param name="Key">Key of the alignment in the project file, for findings.</param>
public sealed record AlignmentSpec(string Name, Point2 Start, double Heading, IReadOnlyList<AlignmentElementSpec> Elements, string Key = "track");
