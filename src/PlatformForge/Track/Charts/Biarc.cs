using PlatformForge.Geometry;

namespace PlatformForge.Track.Charts;

/// <summary>
/// Two arcs that join two frames without a kink, with equal tangent lengths at both ends (the classical biarc: K. M. Bolton,
/// "Biarc curves", Computer-Aided Design 7(2), 1975).
/// </summary>
public static class Biarc
{
    /// <summary>An arc flatter than this curvature times its length, in radians, is drawn as a straight.</summary>
    private const double LeastTurn = 1e-12;

    /// <summary>The two elements from one frame to the next; headings continue from <paramref name="heading"/> unreduced.</summary>
    /// <param name="from">First frame.</param>
    /// <param name="to">Last frame, ahead of the first and turned from it by less than a half turn.</param>
    /// <param name="heading">Heading of the first frame, radians.</param>
    public static (CentrelineElement First, CentrelineElement Second) Between(TrackFrame from, TrackFrame to, double heading)
    {
        var join = to.Position - from.Position;
        double along = Point2.Dot(join, from.Tangent + to.Tangent), square = Point2.Dot(join, join);
        double spread = 2 * (1 - Point2.Dot(from.Tangent, to.Tangent));

        // The root that stays finite when both directions are the same.
        double reach = square / (along + Math.Sqrt((along * along) + (spread * square)));
        var middle = (from.Position + (from.Tangent * reach) + to.Position - (to.Tangent * reach)) * 0.5;
        var first = Arc(from.Position, heading, from.Tangent, middle);
        var second = Arc(middle, first.HeadingAt(first.Length), Point2.FromAngle(first.HeadingAt(first.Length)), to.Position);
        return (first, second);
    }

    private static CentrelineElement Arc(Point2 start, double heading, Point2 tangent, Point2 end)
    {
        var chord = end - start;
        double half = Math.Atan2(Point2.Cross(tangent, chord), Point2.Dot(tangent, chord));
        return Math.Abs(half) < LeastTurn
            ? new(start, heading, chord.Length, 0, 0)
            : Circular(start, heading, chord.Length * half / Math.Sin(half), 2 * half);
    }

    private static CentrelineElement Circular(Point2 start, double heading, double length, double turn) =>
        new(start, heading, length, turn / length, turn / length);
}
