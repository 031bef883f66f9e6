using PlatformForge.Geometry;
using PlatformForge.Units;

namespace PlatformForge.Exports.Drawings.Elevations.Walls;

/// <summary>
/// The joints of a wall's facing as lines along their middles. Each piece is gone round half a joint off; what two neighbours share is one line.
/// </summary>
internal static class FacingJoints
{
    // Shorter than this, mm, a line says nothing; nearer than this to an edge it is the edge.
    private const double Shortest = 0.3, Edge = 0.15;

    // mm: lines no farther apart are one. Less than any joint is wide.
    private const double Same = 0.03;

    // mm²: sides that go on straight span no area.
    private const double NoArea = 1e-9;

    /// <summary>Lines from the slice's beginning, heights from the wall's; at its ends and edges they may reach beyond.</summary>
    public static IEnumerable<(Point2 A, Point2 B)> Of(WallSlice slice)
    {
        double half = slice.Wall.Joint / 2;
        var sides = slice.Pieces().SelectMany(p => Round(p.Outline, half)).ToArray();
        static bool AreSame(double a, double b) => Math.Abs(a - b) < Tolerances.SameLength;
        var level = sides.Where(s => AreSame(s.A.Y, s.B.Y)).Select(s => (At: s.A.Y, From: Math.Min(s.A.X, s.B.X), To: Math.Max(s.A.X, s.B.X)));
        var upright = sides.Where(s => AreSame(s.A.X, s.B.X)).Select(s => (At: s.A.X, From: Math.Min(s.A.Y, s.B.Y), To: Math.Max(s.A.Y, s.B.Y)));
        var oblique = sides.Where(s => !AreSame(s.A.Y, s.B.Y) && !AreSame(s.A.X, s.B.X));
        return Merged(level).Select(l => (new Point2(l.From, l.At), new Point2(l.To, l.At)))
            .Concat(Merged(upright).Select(l => (new Point2(l.At, l.From), new Point2(l.At, l.To))))
            .Concat(Once(oblique, slice.Wall.Joint));
    }

    // The sides of a convex piece, each moved outwards, to where they meet.
    private static IEnumerable<(Point2 A, Point2 B)> Round(Point2[] outline, double off)
    {
        // A clipped ring may have a corner twice.
        var ring = outline.Where((p, i) => (p - outline[(i + 1) % outline.Length]).Length > Tolerances.SameLength).ToArray();
        double area = ring.Select((p, i) => Point2.Cross(p, ring[(i + 1) % ring.Length])).Sum();
        var sides = ring.Select((p, i) =>
        {
            var along = ring[(i + 1) % ring.Length] - p;
            return (From: p - (along.Left * (off * Math.Sign(area) / along.Length)), Along: along);
        }).ToArray();
        Point2 Meet(int i)
        {
            var (a, b) = (sides[i], sides[(i + 1) % sides.Length]);
            double cross = Point2.Cross(a.Along, b.Along);
            return Math.Abs(cross) < NoArea ? b.From : a.From + (a.Along * (Point2.Cross(b.From - a.From, b.Along) / cross));
        }

        for (int i = 0; i < sides.Length; i++)
        {
            yield return (Meet((i + sides.Length - 1) % sides.Length), Meet(i));
        }
    }

    // Lines on the same level that touch are one.
    private static IEnumerable<(double At, double From, double To)> Merged(IEnumerable<(double At, double From, double To)> lines)
    {
        var group = new List<(double At, double From, double To)>();
        foreach (var line in lines.OrderBy(l => l.At))
        {
            if (group.Count > 0 && line.At > group[0].At + Same)
            {
                foreach (var joined in Joined(group))
                {
                    yield return joined;
                }

                group.Clear();
            }

            group.Add(line);
        }

        foreach (var joined in group.Count > 0 ? Joined(group) : [])
        {
            yield return joined;
        }
    }

    private static List<(double At, double From, double To)> Joined(List<(double At, double From, double To)> group)
    {
        double at = group.Average(l => l.At);
        var joined = new List<(double At, double From, double To)>();
        foreach (var line in group.OrderBy(l => l.From))
        {
            if (joined.Count > 0 && line.From <= joined[^1].To + Same)
            {
                joined[^1] = joined[^1] with { To = Math.Max(joined[^1].To, line.To) };
            }
            else
            {
                joined.Add((at, line.From, line.To));
            }
        }

        return joined;
    }

    // Two neighbours both have the middle of the joint between them: the longer line is kept, also where one of them was cut to another angle.
    private static List<(Point2 A, Point2 B)> Once(IEnumerable<(Point2 A, Point2 B)> lines, double joint)
    {
        var kept = new List<(Point2 A, Point2 B)>();
        foreach (var line in lines.OrderByDescending(l => (l.B - l.A).Length))
        {
            if (!kept.Exists(k => Covers(k, line, joint)))
            {
                kept.Add(line);
            }
        }

        return kept;
    }

    private static bool Covers((Point2 A, Point2 B) longer, (Point2 A, Point2 B) line, double joint)
    {
        var d = longer.B - longer.A;
        double length = d.Length, along = Point2.Dot(((line.A + line.B) * 0.5) - longer.A, d) / length;
        return along >= 0 && along <= length
            && Math.Abs(Point2.Cross(d, line.A - longer.A)) <= joint * length && Math.Abs(Point2.Cross(d, line.B - longer.A)) <= joint * length;
    }

    /// <summary>What of a line lies inside an outline and not along it.</summary>
    public static IEnumerable<(Point2 A, Point2 B)> Within(IReadOnlyList<Point2> ring, Point2 a, Point2 b)
    {
        var d = b - a;
        var shares = new List<double> { 0, 1 };
        for (int i = 0; i < ring.Count; i++)
        {
            Point2 c = ring[i], e = ring[(i + 1) % ring.Count] - c;
            double cross = Point2.Cross(d, e);
            if (cross != 0 && Point2.Cross(c - a, d) / cross is >= 0 and <= 1 && Point2.Cross(c - a, e) / cross is > 0 and < 1 and var share)
            {
                shares.Add(share);
            }
        }

        shares.Sort();
        var beside = d.Left * (Edge / Math.Max(d.Length, Tolerances.Rounding));
        for (int i = 0; i + 1 < shares.Count; i++)
        {
            Point2 from = a + (d * shares[i]), to = a + (d * shares[i + 1]), middle = (from + to) * 0.5;
            if ((to - from).Length >= Shortest && IsWithin(ring, middle + beside) && IsWithin(ring, middle - beside))
            {
                yield return (from, to);
            }
        }
    }

    /// <summary>Whether a ring goes round a place.</summary>
    public static bool IsWithin(IReadOnlyList<Point2> ring, Point2 p)
    {
        bool inside = false;
        for (int i = 0; i < ring.Count; i++)
        {
            Point2 a = ring[i], b = ring[(i + 1) % ring.Count];
            inside ^= (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X + ((b.X - a.X) * (p.Y - a.Y) / (b.Y - a.Y));
        }

        return inside;
    }
}
