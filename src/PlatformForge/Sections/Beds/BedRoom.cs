using PlatformForge.Geometry;

namespace PlatformForge.Sections.Beds;

/// <summary>
/// What fits on a convex bed with its margin kept free. How much room is left at a turn of the piece is the greatest distance that all
/// sides of the bed could still move inward; by the duality of linear programming it is the least of a few sums over two or three sides,
/// which are found once for the bed.
/// </summary>
public sealed class BedRoom
{
    /// <summary>Directions nearer to one another than this are parallel.</summary>
    private const double Parallel = 1e-9;

    /// <summary>Search over turns ends where the piece's outermost point moves by less than this, mm.</summary>
    private const double TurnResolution = 1e-4;

    /// <summary>Room a hair below nil is taken as nil, mm: it is rounding.</summary>
    private const double Rounding = 1e-7;

    /// <summary>First steps of the search over a full turn.</summary>
    private const int FirstTurns = 24;

    private readonly (Point2 Inward, double Start)[] sides;
    private readonly (int[] Sides, double[] Weights)[] bases;

    /// <param name="bed">Convex ring, counter-clockwise, mm.</param>
    /// <param name="margin">Strip to keep free, mm.</param>
    public BedRoom(IReadOnlyList<Point2> bed, double margin)
    {
        sides = new (Point2, double)[bed.Count];
        for (int i = 0; i < bed.Count; i++)
        {
            var along = bed[(i + 1) % bed.Count] - bed[i];
            var inward = along.Left * (1 / along.Length);
            sides[i] = (inward, Point2.Dot(inward, bed[i]) + margin);
        }

        bases = [.. Bases()];
    }

    /// <summary>Room in mm at a turn in radians: negative when the piece does not fit, by half of what is missing across the tightest pair of sides.</summary>
    public double At(IReadOnlyList<Point2> hull, double turn)
    {
        var gaps = Gaps(hull, turn);
        double least = double.PositiveInfinity;
        foreach (var (which, weights) in bases)
        {
            double sum = 0;
            for (int k = 0; k < which.Length; k++)
            {
                sum += weights[k] * gaps[which[k]];
            }

            least = Math.Min(least, sum);
        }

        return least + Rounding;
    }

    /// <summary>
    /// Most room over all turns and the turn that gives it. A turn by an angle moves no point farther than the angle times the hull's radius, so
    /// stretches of turns that cannot win are left out: the answer is exact to <see cref="TurnResolution"/>. Turns that lay the piece
    /// square to the bed's sides are tried first and win if they fit.
    /// </summary>
    /// <param name="hull">Convex outline of the piece, mm.</param>
    /// <param name="enough">Search ends at the first turn with this much room.</param>
    /// <param name="goal">Less room than this is of no interest: what is then told is only the best that was seen.</param>
    public (double Room, double Turn) Best(IReadOnlyList<Point2> hull, double enough, double goal = double.NegativeInfinity)
    {
        double bestTurn = 0, best = double.NegativeInfinity;
        foreach (double turn in SquareTurns(hull))
        {
            if (Take(turn) >= enough)
            {
                return (best, bestTurn);
            }
        }

        double radius = Radius(hull);
        var open = new Stack<(double Middle, double Half)>();
        for (int i = FirstTurns - 1; i >= 0; i--)
        {
            open.Push(((i + 0.5) * 2 * Math.PI / FirstTurns, Math.PI / FirstTurns));
        }

        while (best < enough && open.TryPop(out var range))
        {
            double here = Take(range.Middle), reach = radius * range.Half;
            if (reach > TurnResolution && here + reach > Math.Max(best + TurnResolution, goal))
            {
                double half = range.Half / 2;
                open.Push((range.Middle + half, half));
                open.Push((range.Middle - half, half));
            }
        }

        return (best, bestTurn);

        double Take(double turn)
        {
            double room = At(hull, turn);
            if (room > best)
            {
                (best, bestTurn) = (room, turn);
            }

            return room;
        }
    }

    /// <summary>All shifts at which the turned piece lies on the bed: a convex ring, empty when it does not fit.</summary>
    public Point2[] Shifts(IReadOnlyList<Point2> hull, double turn)
    {
        var gaps = Gaps(hull, turn);
        double far = 1 + sides.Max(s => Math.Abs(s.Start)) + (2 * hull.Max(p => p.Length)) + gaps.Max(Math.Abs);
        Point2[] ring = [new(-far, -far), new(far, -far), new(far, far), new(-far, far)];
        for (int i = 0; i < sides.Length && ring.Length > 0; i++)
        {
            // Inward·shift + gap ≥ 0 lies to the left of the side's own direction.
            var inward = sides[i].Inward;
            var origin = inward * (-gaps[i] - Rounding);
            ring = ConvexRing.LeftOf(ring, origin, origin - inward.Left);
        }

        return ring;
    }

    private double[] Gaps(IReadOnlyList<Point2> hull, double turn)
    {
        var (s, c) = Math.SinCos(turn);
        var gaps = new double[sides.Length];
        for (int i = 0; i < sides.Length; i++)
        {
            // The side's direction seen from the piece, so that the hull itself need not be turned.
            var n = sides[i].Inward;
            Point2 seen = new((n.X * c) + (n.Y * s), (n.Y * c) - (n.X * s));
            double least = double.PositiveInfinity;
            for (int k = 0; k < hull.Count; k++)
            {
                least = Math.Min(least, Point2.Dot(seen, hull[k]));
            }

            gaps[i] = least - sides[i].Start;
        }

        return gaps;
    }

    private IEnumerable<(int[] Sides, double[] Weights)> Bases()
    {
        for (int a = 0; a < sides.Length; a++)
        {
            for (int b = a + 1; b < sides.Length; b++)
            {
                double ab = Point2.Cross(sides[a].Inward, sides[b].Inward);
                if (Math.Abs(ab) < Parallel)
                {
                    if (Point2.Dot(sides[a].Inward, sides[b].Inward) < 0)
                    {
                        yield return ([a, b], [0.5, 0.5]);
                    }

                    continue;
                }

                for (int c = b + 1; c < sides.Length; c++)
                {
                    double bc = Point2.Cross(sides[b].Inward, sides[c].Inward), ca = Point2.Cross(sides[c].Inward, sides[a].Inward);
                    double sum = ab + bc + ca;
                    if (bc / sum > 0 && ca / sum > 0 && ab / sum > 0 && Math.Abs(bc) > Parallel && Math.Abs(ca) > Parallel)
                    {
                        yield return ([a, b, c], [bc / sum, ca / sum, ab / sum]);
                    }
                }
            }
        }
    }

    // Turns that lay the piece's longest stretch along each side of the bed.
    private IEnumerable<double> SquareTurns(IReadOnlyList<Point2> hull)
    {
        double best = 0;
        Point2 along = new(1, 0);
        for (int i = 0; i < hull.Count; i++)
        {
            for (int k = i + 1; k < hull.Count; k++)
            {
                var join = hull[k] - hull[i];
                if (join.Length > best)
                {
                    (best, along) = (join.Length, join);
                }
            }
        }

        // The longest join is a diagonal; the hull edge nearest to its direction is what should lie square.
        double edgeBest = 0;
        var edge = along;
        for (int i = 0; i < hull.Count; i++)
        {
            var side = hull[(i + 1) % hull.Count] - hull[i];
            double share = Math.Abs(Point2.Dot(side, along));
            if (share > edgeBest)
            {
                (edgeBest, edge) = (share, side);
            }
        }

        double heading = Math.Atan2(edge.Y, edge.X);
        foreach (var (inward, _) in sides)
        {
            yield return Math.Atan2(-inward.X, inward.Y) - heading;
        }
    }

    private static double Radius(IReadOnlyList<Point2> hull)
    {
        var middle = new Point2((hull.Min(p => p.X) + hull.Max(p => p.X)) / 2, (hull.Min(p => p.Y) + hull.Max(p => p.Y)) / 2);
        return hull.Max(p => (p - middle).Length);
    }
}
