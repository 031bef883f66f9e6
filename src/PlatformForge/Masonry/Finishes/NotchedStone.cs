using PlatformForge.Geometry;

namespace PlatformForge.Masonry.Finishes;

/// <summary>
/// What an oblong opening leaves of a stone: a notch where it lies on the stone's border, two stones with an upright joint where it lies in its middle. What
/// would be left beside it, under it or over it as a sliver goes with it.
/// </summary>
/// <param name="taken">Lower left and upper right corner of what the opening takes up, mm.</param>
/// <param name="joint">Width of a joint, mm.</param>
/// <param name="isStone">Whether a convex ring is a stone and no sliver.</param>
/// <param name="isArm">Whether one prints as a part of a stone.</param>
internal sealed class NotchedStone((Point2 Low, Point2 High) taken, double joint, Func<Point2[], bool> isStone, Func<Point2[], bool> isArm)
{
    private static readonly Point2 Left = new(-1, 0), Right = new(1, 0), Down = new(0, -1), Up = new(0, 1);

    /// <summary>What is left of a convex stone.</summary>
    /// <param name="stone">Its corners, counter-clockwise, mm.</param>
    public IEnumerable<Point2[]> Of(Point2[] stone)
    {
        var met = ConvexCut.Under(ConvexCut.Under(stone, Left, -taken.Low.X), Right, taken.High.X);
        if (ConvexCut.Under(ConvexCut.Under(met, Down, -taken.Low.Y), Up, taken.High.Y).Length < 3)
        {
            return [stone];
        }

        Point2[] left = ConvexCut.Under(stone, Right, taken.Low.X), right = ConvexCut.Under(stone, Left, -taken.High.X),
            under = ConvexCut.Under(stone, Up, taken.Low.Y), over = ConvexCut.Under(stone, Down, -taken.High.Y);
        var (hasLeft, hasRight, hasUnder, hasOver) = (isArm(left), isArm(right), isArm(under), isArm(over));
        if (hasLeft && hasRight && hasUnder && hasOver)
        {
            var halves = Halves(stone);
            if (Array.TrueForAll(halves, h => isStone(h)))
            {
                return halves.SelectMany(half => Notched(half, taken.Low, taken.High));
            }

            // Too near to one side to be parted: what is left there goes with the opening.
            bool isAtLeft = ConvexRing.Area(left) < ConvexRing.Area(right);
            (hasLeft, hasRight) = (!isAtLeft, isAtLeft);
        }

        // Where nothing is left beside it the opening goes on without end.
        Point2 low = new(hasLeft ? taken.Low.X : double.NegativeInfinity, hasUnder ? taken.Low.Y : double.NegativeInfinity),
            high = new(hasRight ? taken.High.X : double.PositiveInfinity, hasOver ? taken.High.Y : double.PositiveInfinity);
        // Arms alone are no stone.
        Point2[][] beside = [.. new[] { left, right, under, over }.Where(isStone)];
        if (beside.Length == 0)
        {
            return [];
        }

        IEnumerable<Point2[]> rest = (hasLeft, hasRight, hasUnder, hasOver) switch
        {
            (true, true, false, false) => new[] { left, right }.Where(isStone),
            (false, false, true, true) => new[] { under, over }.Where(isStone),
            _ => Notched(stone, low, high),
        };
        return rest.Any() ? rest : beside.OrderByDescending(ConvexRing.Area).Take(1);
    }

    // On either side of an upright joint in the opening's middle.
    private Point2[][] Halves(Point2[] stone)
    {
        double middle = (taken.Low.X + taken.High.X) / 2;
        return [ConvexCut.Under(stone, Right, middle - (joint / 2)), ConvexCut.Under(stone, Left, -middle - (joint / 2))];
    }

    // Without an oblong that reaches over its border at one place; none where it reaches over it at more, or leaves nothing.
    private static IEnumerable<Point2[]> Notched(Point2[] stone, Point2 low, Point2 high)
    {
        low = new(Math.Max(low.X, stone.Min(p => p.X) - Beyond), Math.Max(low.Y, stone.Min(p => p.Y) - Beyond));
        high = new(Math.Min(high.X, stone.Max(p => p.X) + Beyond), Math.Min(high.Y, stone.Max(p => p.Y) + Beyond));
        int first = Array.FindIndex(stone, p => p.X < low.X || p.X > high.X || p.Y < low.Y || p.Y > high.Y);
        List<Point2> before = [], after = [];
        bool isBefore = true;
        for (int i = 0; i < stone.Length && first >= 0; i++)
        {
            Point2 a = stone[(first + i) % stone.Length], b = stone[(first + i + 1) % stone.Length];
            var (enters, leaves) = Within(a, b, low, high);
            if (enters <= 0 && !isBefore && after.Count == 0)
            {
                // It begins within and goes on there, or leaves.
                after.AddRange(leaves < 1 ? [a + ((b - a) * leaves)] : []);
                continue;
            }

            (isBefore ? before : after).Add(a);
            if (enters >= leaves)
            {
                continue;
            }

            if (!isBefore)
            {
                return [];
            }

            isBefore = false;
            before.Add(a + ((b - a) * enters));
            after.AddRange(leaves < 1 ? [a + ((b - a) * leaves)] : []);
        }

        return before.Count == 0 || after.Count == 0 ? [] : [[.. after, .. before, .. Corners(low, high, before[^1], after[0])]];
    }

    // Corners of the oblong that its border passes clockwise from one place of it to another.
    private static IEnumerable<Point2> Corners(Point2 low, Point2 high, Point2 from, Point2 to)
    {
        double wide = high.X - low.X, tall = high.Y - low.Y, round = 2 * (wide + tall);

        // From its upper left corner on.
        double On(Point2 p) => new[]
        {
            (Off: Math.Abs(p.Y - high.Y), At: p.X - low.X), (Off: Math.Abs(p.X - high.X), At: wide + high.Y - p.Y),
            (Off: Math.Abs(p.Y - low.Y), At: wide + tall + high.X - p.X), (Off: Math.Abs(p.X - low.X), At: (2 * wide) + tall + p.Y - low.Y),
        }.MinBy(s => s.Off).At;

        double start = On(from), length = (On(to) - start + round) % round;
        (Point2 At, double On)[] corners = [(new(low.X, high.Y), 0), (high, wide), (new(high.X, low.Y), wide + tall), (low, (2 * wide) + tall)];
        return corners.Select(c => (c.At, On: (c.On - start + round) % round)).Where(c => c.On > 0 && c.On < length).OrderBy(c => c.On).Select(c => c.At);
    }

    // The part of a side within an oblong, as shares of it; its end comes first where none is.
    private static (double Enters, double Leaves) Within(Point2 a, Point2 b, Point2 low, Point2 high)
    {
        double enters = 0, leaves = 1;
        foreach (var (from, by, least, most) in new[] { (a.X, b.X - a.X, low.X, high.X), (a.Y, b.Y - a.Y, low.Y, high.Y) })
        {
            if (by == 0)
            {
                leaves = from <= least || from >= most ? -1 : leaves;
                continue;
            }

            double first = (least - from) / by, last = (most - from) / by;
            (enters, leaves) = (Math.Max(enters, Math.Min(first, last)), Math.Min(leaves, Math.Max(first, last)));
        }

        return leaves - enters > Hair ? (enters, leaves) : (1, 0);
    }

    // An oblong without an end ends so far beyond the stone, mm; what is a less share of a side is a corner that touches.
    private const double Beyond = 1, Hair = 1e-4;
}
