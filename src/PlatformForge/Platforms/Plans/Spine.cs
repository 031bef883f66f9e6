using PlatformForge.Geometry;
using PlatformForge.Platforms.Requests;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Plans;

/// <summary>
/// What carries the coordinates of a body: chainage along the edge of its first face, and reach. On a platform with a back, reach is square to the track,
/// and both are the
/// track's own. Between two faces it is told along lines across that leave both tracks at one angle: square to the middle between them. A place on the first
/// edge has that face's own chainage and reach in either case.
/// </summary>
/// <param name="Chart">The first face's centreline.</param>
/// <param name="Side">Side of it on which the platform stands.</param>
/// <param name="Across">The lines across between two faces; null where the platform has a back.</param>
public sealed record Spine(Centreline Chart, Side Side, LinesAcross? Across = null)
{
    // Newton's rule ends at steps below this, mm, or after so many.
    private const double Grain = Tolerances.LastStep;
    private const int Rounds = 60;

    /// <summary>The place in the layout frame of a chainage and a reach, mm.</summary>
    public Point2 ToLayout(double chainage, double reach)
    {
        if (Across is null)
        {
            return Chart.PointAt(chainage, Side.Outward(reach));
        }

        var (origin, away) = Across.At(chainage);
        return origin + (away * reach);
    }

    /// <summary>The line across at a chainage: where its reach is nil, and its direction away from the first track, about a unit long between
    /// stations.</summary>
    public (Point2 Origin, Point2 Away) LineAt(double chainage)
    {
        if (Across is not null)
        {
            return Across.At(chainage);
        }

        var frame = Chart.At(chainage);
        return (frame.Position, Side.Outward(frame.Tangent));
    }

    /// <summary>Unit direction away from the first track at a chainage.</summary>
    public Point2 Away(double chainage)
    {
        var away = LineAt(chainage).Away;
        return Across is null ? away : away * (1 / away.Length);
    }

    /// <summary>Unit direction of increasing chainage, square to the line across.</summary>
    public Point2 Tangent(double chainage) => Across is null ? Chart.At(chainage).Tangent : Away(chainage).Left * Side.Outward(-1);

    /// <summary>Direction of increasing chainage as an angle, radians.</summary>
    public double Heading(double chainage) => Across is null ? Chart.At(chainage).Heading : Tangent(chainage) is var t ? Math.Atan2(t.Y, t.X) : 0;

    /// <summary>How fast the lines across turn, 1/mm: positive where they draw together away from the track.</summary>
    public double Bend(double chainage) =>
        Across is null ? Side.Bend(Chart.CurvatureAt(chainage)) : Stretch(chainage, 0) - Stretch(chainage, 1);

    /// <summary>Length in the layout, square to the line across, at a reach for a millimetre of chainage.</summary>
    public double Stretch(double chainage, double reach)
    {
        if (Across is null)
        {
            return 1 - (Side.Bend(Chart.CurvatureAt(chainage)) * reach);
        }

        var (origin, away) = Across.Paces(chainage);
        return Point2.Dot(origin + (away * reach), Tangent(chainage));
    }

    /// <summary>
    /// A line beside another, as far from that, square to it, as is asked: where lines across are not square to it, its reach is more by the share that they
    /// slant. At a bend it is nowhere nearer.
    /// </summary>
    /// <param name="line">The line.</param>
    /// <param name="by">How far, mm: away from the first track where positive.</param>
    public PlanLine Aside(PlanLine line, double by)
    {
        if (Across is null || line.Stations.Length < 2)
        {
            return line.Shifted(by);
        }

        Point2[] places = [.. line.Stations.Zip(line.Reach, ToLayout)];
        double Square(int i, int next) => next < 0 || next == places.Length ? 1
            : Math.Abs(Point2.Cross(places[next] - places[i], Away(line.Stations[i]))) / (places[next] - places[i]).Length;
        return new(line.Stations, [.. line.Reach.Select((t, i) => t + (by / Math.Min(Square(i, i - 1), Square(i, i + 1))))]);
    }

    /// <summary>Chainage and reach of a place in the layout.</summary>
    /// <param name="place">A place on the platform or near it.</param>
    /// <param name="guess">A chainage near it, mm; none lets it be looked for.</param>
    public PlanPlace Locate(Point2 place, double? guess = null)
    {
        var on = guess is { } s ? Chart.Locate(place, s) : Chart.Locate(place);
        if (Across is null)
        {
            return new(on.Chainage, Side.Reach(on.Offset));
        }

        double chainage = guess ?? Across.Nearest(place);
        for (int round = 0; round < Rounds; round++)
        {
            var (origin, away) = Across.At(chainage);
            var (pace, turn) = Across.Paces(chainage);
            double reach = Point2.Dot(place - origin, away) / Point2.Dot(away, away);
            double off = Point2.Cross(away, place - origin), rate = Point2.Cross(away, pace + (turn * reach));
            double step = Math.Clamp(off / rate, -LongestStep, LongestStep);
            chainage += step;
            if (Math.Abs(step) < Grain)
            {
                break;
            }
        }

        var (from, along) = Across.At(chainage);
        return new(chainage, Point2.Dot(place - from, along) / Point2.Dot(along, along));
    }

    // The lines across turn from facet to facet: a step goes no farther than a few of them, mm.
    private const double LongestStep = 25;
}

/// <summary>
/// The straight lines across a body between two faces, one a station of the body; between two stations they turn evenly from one to the other.
/// </summary>
/// <param name="Stations">Chainages along the first face's edge, mm, rising.</param>
/// <param name="Origins">Where the reach of each is nil, in the layout.</param>
/// <param name="Aways">Unit direction of each, away from the first track.</param>
/// <param name="Second">Chainage along the second face's edge at which each meets that edge, mm.</param>
public sealed record LinesAcross(double[] Stations, Point2[] Origins, Point2[] Aways, double[] Second)
{
    /// <summary>The line at a chainage; beyond the ends they go on turning as in the last facet.</summary>
    public (Point2 Origin, Point2 Away) At(double chainage)
    {
        var (i, share) = Facet(chainage);
        return (Between(Origins, i, share), Between(Aways, i, share));
    }

    /// <summary>Chainage along the second face's edge of the line at a chainage.</summary>
    public double SecondAt(double chainage)
    {
        var (i, share) = Facet(chainage);
        return Second[i] + ((Second[i + 1] - Second[i]) * share);
    }

    /// <summary>How origin and direction change for a millimetre of chainage.</summary>
    internal (Point2 Origin, Point2 Away) Paces(double chainage)
    {
        int i = Facet(chainage).Index;
        double pace = 1 / (Stations[i + 1] - Stations[i]);
        return ((Origins[i + 1] - Origins[i]) * pace, (Aways[i + 1] - Aways[i]) * pace);
    }

    /// <summary>The station whose line passes nearest to a place.</summary>
    internal double Nearest(Point2 place) => Stations[Enumerable.Range(0, Stations.Length).MinBy(i => Math.Abs(Point2.Cross(Aways[i], place - Origins[i])))];

    private static Point2 Between(Point2[] of, int i, double share) => share == 0 ? of[i] : share == 1 ? of[i + 1] : of[i] + ((of[i + 1] - of[i]) * share);

    private (int Index, double Share) Facet(double chainage)
    {
        int found = Array.BinarySearch(Stations, chainage), i = Math.Clamp(found >= 0 ? found : ~found - 1, 0, Stations.Length - 2);
        return (i, (chainage - Stations[i]) / (Stations[i + 1] - Stations[i]));
    }
}
