using PlatformForge.Geometry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Islands;

/// <summary>
/// Carries the boundaries of a second face over to the spine, the chart of the first. Every vertex of the second coping front becomes a station of the spine and
/// every boundary is straight in the layout between stations, so that carrying moves nothing: both coping fronts are the very polylines that were proved clear of
/// their own tracks. A station put on a straight chord changes no shape.
/// </summary>
/// <remarks>The other boundaries of the second face meet the lines across at those stations on their own polylines; what their corners lose is the versine of a
/// facet over the little that two lines across are apart there, below 0.001 mm.</remarks>
internal static class BodyCarrier
{
    /// <summary>
    /// Two stations nearer than this along the chart, mm, are one: the corner so left out is off the chord by no more than this, stretched to the edge, times the turn there:
    /// some ten-thousandths of a mm.
    /// </summary>
    public const double OnePlace = 0.01;

    /// <summary>The body between two faces on the chart of the first.</summary>
    public static BodyPlan Carry(FacePlan near, FacePlan far)
    {
        var corners = Corners(far, far.CopingFront);
        double[] stations = Stations(near, corners);
        CrossLine[] across = Array.ConvertAll(stations, s => CrossLine.At(near.Chart, near.Side, s));
        bool reversed = Reversed(near, far);
        PlanLine Own(PlanLine line) => new(stations, Met(stations, across, near.Stations, Corners(near, line), line.Reach));
        PlanLine Other(PlanLine line) => new(stations, Met(stations, across, null, Ordered(Corners(far, line), reversed), null));
        return new()
        {
            Stations = stations,
            CopingFront = Own(near.CopingFront),
            CopingBack = Own(near.CopingBack),
            WallFace = Own(near.WallFace),
            WallBack = Own(near.WallBack),
            BackWallFace = Other(far.WallBack),
            FarWallFace = Other(far.WallFace),
            FarCopingBack = Other(far.CopingBack),
            Back = Other(far.CopingFront),
            Lines =
            [
                .. near.WhiteLine is { } line ? [line with { Near = Own(line.Near), Far = Own(line.Far) }] : (WhiteLineBand[])[],
                .. far.WhiteLine is { } other ? [other with { From = near.Profile.StartHead, To = near.Profile.EndHead, Near = Other(other.Far), Far = Other(other.Near) }] : (WhiteLineBand[])[],
            ],
        };
    }

    /// <summary>Chainage on the spine at which the second edge bends back; null where it goes on alongside throughout.</summary>
    public static double? Overtaken(FacePlan near, FacePlan far)
    {
        var corners = Ordered(Corners(far, far.CopingFront), Reversed(near, far));
        double before = double.NegativeInfinity, guess = near.Chart.Locate(corners[0]).Chainage;
        foreach (var corner in corners)
        {
            guess = near.Chart.Locate(corner, guess).Chainage;
            if (guess <= before)
            {
                return before;
            }

            before = guess;
        }

        return null;
    }

    /// <summary>Whether the second face's chainage falls while the first one's rises.</summary>
    public static bool Reversed(FacePlan near, FacePlan far)
    {
        var along = near.ToLayout(near.Stations[^1], 0) - near.ToLayout(near.Stations[0], 0);
        return Point2.Dot(along, far.ToLayout(far.Stations[^1], 0) - far.ToLayout(far.Stations[0], 0)) < 0;
    }

    private static Point2[] Corners(FacePlan face, PlanLine line) => [.. line.Stations.Select((s, i) => face.ToLayout(s, line.Reach[i]))];

    private static Point2[] Ordered(Point2[] corners, bool reversed) => reversed ? ConvexRing.Reversed(corners) : corners;

    private static double[] Stations(FacePlan near, Point2[] corners)
    {
        var all = new List<double>(near.Stations);
        double first = near.Stations[0], last = near.Stations[^1], guess = near.Chart.Locate(corners[0]).Chainage;
        foreach (var corner in corners)
        {
            guess = near.Chart.Locate(corner, guess).Chainage;
            int next = Array.BinarySearch(near.Stations, guess) is var found && found >= 0 ? found : ~found;
            bool apart = guess > first + OnePlace && guess < last - OnePlace && guess - near.Stations[Math.Max(
                0,
                next - 1)] > OnePlace && near.Stations[Math.Min(next, near.Stations.Length - 1)] - guess > OnePlace;
            if (apart)
            {
                all.Add(guess);
            }
        }

        all.Sort();
        return [.. all];
    }

    // Reach at which each line across meets a polyline; beyond its ends, its first or last chord drawn on. At the polyline's own stations, its own reach.
    private static double[] Met(double[] stations, CrossLine[] across, double[]? own, Point2[] corners, double[]? reach)
    {
        var met = new double[stations.Length];
        for (int i = 0, chord = 0; i < met.Length; i++)
        {
            int at = own is null ? -1 : Array.BinarySearch(own, stations[i]);
            if (at >= 0)
            {
                met[i] = reach![at];
                continue;
            }

            // The next corner lies beyond the line across as soon as it is to the side to which the chainage rises.
            double Ahead(Point2 p) => across[i].Beside(p) * Turn(across, i, corners);
            while (chord + 2 < corners.Length && Ahead(corners[chord + 1]) < 0)
            {
                chord++;
            }

            double a = across[i].Beside(corners[chord]), b = across[i].Beside(corners[chord + 1]);
            if (a == b)
            {
                throw new BrokenInvariantException(Invariant($"Platforms: a boundary runs along the line across at chainage {stations[i]}."));
            }

            met[i] = across[i].Reach(corners[chord] + ((corners[chord + 1] - corners[chord]) * (a / (a - b))));
        }

        return met;
    }

    // The sign of places ahead of a line across: that of the polyline's own direction.
    private static double Turn(CrossLine[] across, int i, Point2[] corners) => Math.Sign(Point2.Cross(across[i].Away, corners[^1] - corners[0]));
}
