using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Admissible;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>The outline of a part as half widths to either side at places along its carrier.</summary>
internal sealed class PartOutline
{
    /// <param name="ring">Corners, mm, in the carrier's frame.</param>
    /// <param name="spacing">Greatest distance between places, mm.</param>
    /// <param name="off">How far play puts a place along the carrier off to either side, mm.</param>
    public PartOutline(IReadOnlyList<Point2> ring, double spacing, Func<double, double> off)
    {
        double first = ring.Min(p => p.X), last = ring.Max(p => p.X), middle = first < 0 && last > 0 ? 0 : (first + last) / 2;
        Ends = [first, middle, last];
        int count = Math.Max(1, (int)Math.Ceiling((last - first) / spacing));
        var places = Enumerable.Range(0, count + 1).Select(k => first + ((last - first) * k / count)).Concat(ring.Select(p => p.X)).Append(middle).Distinct()
            .Order();
        Places = [.. places.Select(x => (x, Width(ring, x, 1) + off(x), Width(ring, x, -1) + off(x)))];
    }

    /// <summary>The places that measures are taken at: both ends, and the middle of the carrier or of the part.</summary>
    public double[] Ends { get; }

    /// <summary>Places along the carrier, with the half width to the left and to the right there.</summary>
    public IReadOnlyList<(double X, double Left, double Right)> Places { get; }

    /// <summary>A range between those at the ends, on the safe side for a measure that is linear along the carrier.</summary>
    public LineRange Between(ReadOnlySpan<LineRange> ends, double x)
    {
        int i = x <= Ends[1] ? 0 : 1;
        double share = Ends[i + 1] > Ends[i] ? Math.Clamp((x - Ends[i]) / (Ends[i + 1] - Ends[i]), 0, 1) : 0;
        return new(ends[i].Least + (share * (ends[i + 1].Least - ends[i].Least)), ends[i].Most + (share * (ends[i + 1].Most - ends[i].Most)));
    }

    private static double Width(IReadOnlyList<Point2> ring, double x, int sign)
    {
        double widest = double.NegativeInfinity;
        for (int i = 0; i < ring.Count; i++)
        {
            Point2 a = ring[i], b = ring[(i + 1) % ring.Count];
            if (x < Math.Min(a.X, b.X) || x > Math.Max(a.X, b.X))
            {
                continue;
            }

            double y = a.X == b.X ? Math.Max(sign * a.Y, sign * b.Y) : sign * (a.Y + ((b.Y - a.Y) * (x - a.X) / (b.X - a.X)));
            widest = Math.Max(widest, y);
        }

        return widest;
    }
}
