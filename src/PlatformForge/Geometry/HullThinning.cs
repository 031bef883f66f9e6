namespace PlatformForge.Geometry;

/// <summary>
/// Leaves out most points that are no corners of a hull, at a few steps a point. In each of many upright strips the lowest and the highest point are looked
/// for; what lies clearly within the hull of those lies within the whole one.
/// </summary>
internal static class HullThinning
{
    /// <summary>Fewer points than this are sorted as quickly as thinned.</summary>
    public const int Worth = 1000;

    private const int Strips = 300;

    // What lies farther inside than this, as a share of the points' extent, is far from any rounding of theirs.
    private const double Clear = 1e-8;

    /// <summary>All corners of the points' hull, and whatever lies near its sides.</summary>
    public static Point2[] Of(Point2[] points) => points.Length < Worth ? points : Array.ConvertAll(Places(points), i => points[i]);

    /// <summary>Which points those are, ascending: of the points turned and shifted they are the same.</summary>
    public static int[] Places(Point2[] points)
    {
        double left = double.PositiveInfinity, right = double.NegativeInfinity;
        foreach (var p in points)
        {
            (left, right) = (Math.Min(left, p.X), Math.Max(right, p.X));
        }

        double perStrip = Strips / (right - left);
        if (points.Length < Worth || !double.IsFinite(perStrip))
        {
            return [.. Enumerable.Range(0, points.Length)];
        }

        var (low, high) = Within(Outermost(points, left, perStrip), left, right);
        var outer = new List<int>();
        for (int i = 0; i < points.Length; i++)
        {
            int strip = Strip(points[i].X, left, perStrip);
            if (!(points[i].Y > low[strip] && points[i].Y < high[strip]))
            {
                outer.Add(i);
            }
        }

        return [.. outer];
    }

    private static int Strip(double x, double left, double perStrip) => Math.Min((int)((x - left) * perStrip), Strips - 1);

    /// <summary>The hull of each strip's lowest and highest point and of the whole's two ends.</summary>
    private static Point2[] Outermost(Point2[] points, double left, double perStrip)
    {
        Point2[] lowest = new Point2[Strips], highest = new Point2[Strips];
        Array.Fill(lowest, new(0, double.PositiveInfinity));
        Array.Fill(highest, new(0, double.NegativeInfinity));
        Point2 first = points[0], last = points[0];
        foreach (var p in points)
        {
            int strip = Strip(p.X, left, perStrip);
            lowest[strip] = p.Y < lowest[strip].Y ? p : lowest[strip];
            highest[strip] = p.Y > highest[strip].Y ? p : highest[strip];
            (first, last) = (p.X < first.X ? p : first, p.X > last.X ? p : last);
        }

        var outermost = new List<Point2> { first, last };
        for (int strip = 0; strip < Strips; strip++)
        {
            if (double.IsFinite(lowest[strip].Y))
            {
                outermost.Add(lowest[strip]);
                outermost.Add(highest[strip]);
            }
        }

        return ConvexRing.Hull(outermost.ToArray());
    }

    /// <summary>Heights between which a strip lies in a hull; none in the outermost two.</summary>
    private static (double[] Low, double[] High) Within(Point2[] hull, double left, double right)
    {
        double[] low = new double[Strips], high = new double[Strips];
        double width = (right - left) / Strips, extent = right - left + hull.Max(p => p.Y) - hull.Min(p => p.Y);
        Array.Fill(low, double.NegativeInfinity);
        Array.Fill(high, double.PositiveInfinity);
        (low[0], low[^1]) = (double.PositiveInfinity, double.PositiveInfinity);
        for (int i = 0; i < hull.Length; i++)
        {
            // A side from left to right is one of the lower ones. Over a strip the lower sides are highest, and the upper ones lowest, where they
            // enter or leave it; a little beyond its ends a side only lies outside the hull.
            Point2 a = hull[i], b = hull[(i + 1) % hull.Length];
            var (from, to) = a.X < b.X ? (a, b) : (b, a);
            double rise = (to.Y - from.Y) / (to.X - from.X);
            for (int edge = (int)((from.X - left) / width); edge < Strips && left + ((edge - 1) * width) <= to.X; edge++)
            {
                double y = from.Y + (rise * (left + (edge * width) - from.X));
                foreach (int strip in edge > 0 ? (ReadOnlySpan<int>)[edge - 1, edge] : [edge])
                {
                    low[strip] = a.X < b.X ? Math.Max(low[strip], y + (Clear * extent)) : low[strip];
                    high[strip] = a.X > b.X ? Math.Min(high[strip], y - (Clear * extent)) : high[strip];
                }
            }
        }

        return (low, high);
    }
}
