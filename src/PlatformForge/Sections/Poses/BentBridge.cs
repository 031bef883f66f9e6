using PlatformForge.Geometry;

namespace PlatformForge.Sections.Poses;

/// <summary>A side of a patch's border, in plan, and whether a wall stands under it.</summary>
/// <param name="A">One end, mm.</param>
/// <param name="B">Its other end, mm.</param>
/// <param name="Stands">Whether a wall stands under it.</param>
internal readonly record struct BorderSide(Point2 A, Point2 B, bool Stands);

/// <summary>
/// How wide a bridge is that bends, as the floor of a groove round a curve does: its hull is as wide as the curve bulges, but nowhere does a line of it have to
/// reach farther than from wall to wall.
/// </summary>
internal static class BentBridge
{
    // Places of a patch that are looked at lie this far apart, mm.
    private const double Apart = 2;

    // Directions that are tried at a place where those square to its nearest wall and along the nearest open end are too long.
    private const int Ways = 18;

    // A line through a corner meets both of its sides; a share of a side's length.
    private const double AtCorner = 1e-8;

    // Ends of two sides no farther apart than this, mm, are met at once: that of a wall counts.
    private const double AtOnce = 1e-6;

    /// <summary>Over all places of a patch, the longest of the shortest lines through each that end on standing walls, mm; infinite where one is longer than is
    /// allowed, or a place has none.</summary>
    /// <param name="triangles">Corners of its triangles, three by three.</param>
    /// <param name="border">All its sides.</param>
    /// <param name="longest">What is allowed, mm.</param>
    public static double Span(IReadOnlyList<Point2> triangles, IReadOnlyList<BorderSide> border, double longest)
    {
        double span = 0;
        for (int i = 0; i < triangles.Count && span <= longest; i += 3)
        {
            span = Math.Max(span, Within(triangles[i], triangles[i + 1], triangles[i + 2], border, longest));
        }

        return span <= longest ? span : double.PositiveInfinity;
    }

    // A triangle too long is halved at its longest side, so that slivers are not looked at across.
    private static double Within(Point2 a, Point2 b, Point2 c, IReadOnlyList<BorderSide> border, double longest)
    {
        double ab = (b - a).Length, bc = (c - b).Length, ca = (a - c).Length, most = Math.Max(ab, Math.Max(bc, ca));
        if (most <= Apart)
        {
            return Across((a + b + c) * (1.0 / 3), border, longest);
        }

        (a, b, c) = most == ab ? (a, b, c) : most == bc ? (b, c, a) : (c, a, b);
        var middle = (a + b) * 0.5;
        double first = Within(a, middle, c, border, longest);
        return first > longest ? first : Math.Max(first, Within(middle, b, c, border, longest));
    }

    private static double Across(Point2 place, IReadOnlyList<BorderSide> border, double longest)
    {
        double least = double.PositiveInfinity;
        foreach (var way in (Point2[])[Nearest(place, border, true).Left, Nearest(place, border, false)])
        {
            least = way.Length > 0 ? Math.Min(least, Along(place, way * (1 / way.Length), border)) : least;
        }

        for (int k = 0; k < Ways && least > longest; k++)
        {
            least = Math.Min(least, Along(place, Point2.FromAngle(k * Math.PI / Ways), border));
        }

        return least;
    }

    // Along the nearest side that is a wall or, as ends are, none.
    private static Point2 Nearest(Point2 place, IReadOnlyList<BorderSide> border, bool stands)
    {
        Point2 nearest = default;
        double least = double.PositiveInfinity;
        foreach (var side in border)
        {
            if (side.Stands == stands)
            {
                var along = side.B - side.A;
                double square = Point2.Dot(along, along), at = square > 0 ? Math.Clamp(Point2.Dot(place - side.A, along) / square, 0, 1) : 0;
                double off = (side.A + (along * at) - place).Length;
                (nearest, least) = off < least ? (along, off) : (nearest, least);
            }
        }

        return nearest;
    }

    // The line through a place, to where it first meets the border either way; infinite where either is no wall.
    private static double Along(Point2 place, Point2 way, IReadOnlyList<BorderSide> border)
    {
        (double At, bool Stands) ahead = (double.PositiveInfinity, false), behind = ahead;
        foreach (var side in border)
        {
            var (along, from) = (side.B - side.A, side.A - place);
            double turn = Point2.Cross(way, along), share = Point2.Cross(from, way) / turn;
            if (turn == 0 || share < -AtCorner || share > 1 + AtCorner)
            {
                continue;
            }

            double at = Point2.Cross(from, along) / turn;
            (ahead, behind) = at >= 0 ? (Nearer(ahead, at, side.Stands), behind) : (ahead, Nearer(behind, -at, side.Stands));
        }

        return ahead.Stands && behind.Stands ? ahead.At + behind.At : double.PositiveInfinity;
    }

    private static (double At, bool Stands) Nearer((double At, bool Stands) known, double at, bool stands) =>
        Math.Abs(at - known.At) <= AtOnce ? (Math.Min(at, known.At), stands || known.Stands) : at < known.At ? (at, stands) : known;
}
