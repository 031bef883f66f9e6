using System.Text.Json;
using PlatformForge.Geometry;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// A track's middle line as the design copy writes it down, element by element, its curvature linear along each: integrated here by Gauss and Legendre's rule
/// of five places, mm by mm, so that tables are held against nothing of the program's own geometry. Of that only pairs and triples of numbers are borrowed.
/// </summary>
internal sealed class OwnTrack
{
    private const double Step = 1; // mm: a turn of a hundredth at most in a step, so that the rule is good to 1e-12 mm

    private static readonly (double At, double Weight)[] Rule =
    [
        (0.046910077030668, 0.118463442528095), (0.230765344947158, 0.239314335249683), (0.5, 0.284444444444444), (0.769234655052842, 0.239314335249683),
        (0.953089922969332, 0.118463442528095),
    ];

    private readonly Element[] elements;

    public OwnTrack(JsonElement rows)
    {
        var found = new List<Element>();
        double at = 0;
        foreach (var row in rows.EnumerateArray())
        {
            found.Add(new(at, new(row.Number("x"), row.Number("y")), row.Number("heading"), row.Number("length"), row.Number("start_curvature"),
                row.Number("end_curvature")));
            at += row.Number("length");
        }

        elements = [.. found];
        Length = at;
    }

    public double Length { get; }

    /// <summary>Place and direction at a chainage; straight on beyond the ends.</summary>
    public (Point2 Place, Point2 Along) At(double chainage)
    {
        var element = elements[^1];
        for (int i = 0; i + 1 < elements.Length; i++)
        {
            if (chainage < elements[i + 1].From)
            {
                element = elements[i];
                break;
            }
        }

        return element.At(chainage - element.From);
    }

    /// <summary>Chainage and offset to the left of a place whose square foot is sought from a chainage.</summary>
    public (double Chainage, double Left) Locate(Point2 p, double near)
    {
        for (int i = 0; ; i++)
        {
            var (place, along) = At(near);
            var off = p - place;
            double ahead = Point2.Dot(off, along), left = Point2.Cross(along, off);
            if (Math.Abs(ahead) < 1e-9 || i == 50)
            {
                return (near, left);
            }

            // On the inside of a curve a foot moves on faster than the place.
            near += ahead / Math.Max(0.2, 1 - (Curvature(near) * left));
        }
    }

    /// <summary>The same where nothing is known: sought from places 20 mm apart.</summary>
    public (double Chainage, double Left) Locate(Point2 p) =>
        Locate(p, Enumerable.Range(0, (int)(Length / 20) + 1).Select(i => 20.0 * i).MinBy(s => (At(s).Place - p).Length));

    private double Curvature(double chainage)
    {
        var element = elements.LastOrDefault(e => e.From <= chainage) ?? elements[0];
        double u = chainage - element.From;
        return u < 0 || u > element.Length ? 0 : element.K0 + ((element.K1 - element.K0) * u / element.Length);
    }

    private sealed class Element(double from, Point2 start, double heading, double length, double k0, double k1)
    {
        private readonly Point2[] marks = Marks(start, heading, length, k0, k1);

        public double From => from;

        public double Length => length;

        public double K0 => k0;

        public double K1 => k1;

        public (Point2 Place, Point2 Along) At(double u)
        {
            if (u < 0 || u > length)
            {
                double end = Math.Clamp(u, 0, length);
                var (place, along) = At(end);
                return (place + (along * (u - end)), along);
            }

            int mark = Math.Min((int)(u / Step), marks.Length - 1);
            return (marks[mark] + Run(heading, length, k0, k1, mark * Step, u), Point2.FromAngle(Heading(heading, length, k0, k1, u)));
        }

        private static Point2[] Marks(Point2 start, double heading, double length, double k0, double k1)
        {
            var laid = new Point2[(int)(length / Step) + 1];
            laid[0] = start;
            for (int i = 1; i < laid.Length; i++)
            {
                laid[i] = laid[i - 1] + Run(heading, length, k0, k1, (i - 1) * Step, i * Step);
            }

            return laid;
        }

        private static double Heading(double heading, double length, double k0, double k1, double u) => heading + (k0 * u) + ((k1 - k0) * u * u / (2 * length));

        private static Point2 Run(double heading, double length, double k0, double k1, double from, double to)
        {
            double x = 0, y = 0;
            foreach (var (at, weight) in Rule)
            {
                var (sin, cos) = Math.SinCos(Heading(heading, length, k0, k1, from + ((to - from) * at)));
                (x, y) = (x + (weight * cos), y + (weight * sin));
            }

            return new(x * (to - from), y * (to - from));
        }
    }
}
