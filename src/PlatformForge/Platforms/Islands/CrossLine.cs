using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Platforms.Islands;

/// <summary>A straight line square to a track at a chainage, towards a side: where it meets other lines. Lengths in mm.</summary>
/// <param name="Origin">Where it leaves the track's middle.</param>
/// <param name="Away">Unit direction away from the track.</param>
internal readonly record struct CrossLine(Point2 Origin, Point2 Away)
{
    // Newton's rule ends at steps below this, mm, or after so many.
    private const double Grain = 1e-12;
    private const int Rounds = 60;

    public static CrossLine At(Centreline chart, Side side, double chainage)
    {
        var frame = chart.At(chainage);
        return new(frame.Position, side.Outward(frame.Tangent));
    }

    /// <summary>How far along the line the foot of a point lies, mm.</summary>
    public double Reach(Point2 point) => Point2.Dot(Away, point - Origin);

    /// <summary>How far a point lies off the line, mm, left of its direction positive.</summary>
    public double Beside(Point2 point) => Point2.Cross(Away, point - Origin);

    /// <summary>
    /// Chainage at which the line beside another track meets this one; null where it does not, as where the other track bends away.
    /// </summary>
    /// <param name="chart">The other track.</param>
    /// <param name="side">Side of it that the line is on.</param>
    /// <param name="reach">Reach of the line by chainage, mm.</param>
    /// <param name="guess">Chainage near the place, mm.</param>
    public double? Meet(Centreline chart, Side side, Func<double, double> reach, double guess)
    {
        double s = guess;
        for (int round = 0; round < Rounds; round++)
        {
            var frame = chart.At(s);
            double t = reach(s), off = Beside(frame.Position + (side.Outward(frame.Tangent) * t));
            double pace = Point2.Cross(Away, frame.Tangent) * Math.Max(LeastStretch, 1 - (side.Bend(frame.Curvature) * t));
            if (Math.Abs(pace) < LeastStretch)
            {
                return null;
            }

            double step = -off / pace;
            s += step;
            if (Math.Abs(step) < Grain)
            {
                break;
            }
        }

        return double.IsFinite(s) ? s : null;
    }

    // Lines that run more nearly along the track than this are taken not to cross it.
    private const double LeastStretch = 0.1;
}
