using PlatformForge.Geometry;

namespace PlatformForge.Platforms.Islands;

/// <summary>A straight line across a body: where places lie along it and beside it. Lengths in mm.</summary>
/// <param name="Origin">Where the reach along it is nil.</param>
/// <param name="Away">Unit direction away from the track.</param>
internal readonly record struct CrossLine(Point2 Origin, Point2 Away)
{
    /// <summary>How far along the line the foot of a point lies, mm.</summary>
    public double Reach(Point2 point) => Point2.Dot(Away, point - Origin);

    /// <summary>How far a point lies off the line, mm, left of its direction positive.</summary>
    public double Beside(Point2 point) => Point2.Cross(Away, point - Origin);
}
