using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>Where an edge crosses the square to the chart at a station.</summary>
internal static class StationCut
{
    /// <summary>Offset of the crossing, mm, left positive; null when the edge does not cross.</summary>
    /// <param name="a">One end, from the station's point.</param>
    /// <param name="b">The other end.</param>
    /// <param name="station">Frame of the station.</param>
    public static double? Offset(Point2 a, Point2 b, in TrackFrame station)
    {
        double alongA = Point2.Dot(a, station.Tangent), alongB = Point2.Dot(b, station.Tangent);
        return alongA * alongB > 0 || alongA == alongB
            ? null
            : Point2.Cross(station.Tangent, a + ((b - a) * (alongA / (alongA - alongB))));
    }
}
