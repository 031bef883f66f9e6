using PlatformForge.Geometry;

namespace PlatformForge.Track;

/// <summary>The moving frame of a centreline at one chainage.</summary>
/// <param name="Position">Point of the centreline, mm.</param>
/// <param name="Tangent">Unit direction of increasing chainage.</param>
/// <param name="Curvature">Curvature in 1/mm, positive where the track turns to the left.</param>
public readonly record struct TrackFrame(Point2 Position, Point2 Tangent, double Curvature)
{
    /// <summary>Direction of increasing chainage in radians from the x axis, within ±π.</summary>
    public double Heading => Math.Atan2(Tangent.Y, Tangent.X);

    /// <summary>The point at an offset square to the track; positive offsets lie to the left.</summary>
    public Point2 At(double offset) => Position + (Tangent.Left * offset);
}

/// <summary>A place told by the track: chainage s along the centreline and offset d square to it, mm, left positive.</summary>
public readonly record struct TrackPlace(double Chainage, double Offset);
