using PlatformForge.Geometry;
using PlatformForge.Track.Charts;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Fitting.Lines;

/// <summary>A first line near the readings, and the double integral of a line's curvature that offsets from it are added to.</summary>
internal static class ReferenceLine
{
    // Points of the line are this many standard deviations apart at least, so that scatter turns it by a degree or so only.
    private const double ApartInSigmas = 60;

    private const int MostPoints = 200;

    /// <summary>A chain of arcs through some of the places of a run, shifted from the measured line to the centre.</summary>
    public static Centreline Through(IReadOnlyList<PlaceReading> run, double sigma)
    {
        double length = 0;
        for (int i = 1; i < run.Count; i++)
        {
            length += (run[i].Place - run[i - 1].Place).Length;
        }

        double ends = (run[^1].Place - run[0].Place).Length,
            apart = Math.Min(Math.Max(ApartInSigmas * sigma, Math.Min(length, 4 * ends) / MostPoints), ends / 4);
        var points = new List<Point2> { run[0].Place };
        foreach (var reading in run)
        {
            if ((reading.Place - points[^1]).Length >= apart)
            {
                points.Add(reading.Place);
            }
        }

        if ((run[^1].Place - points[^1]).Length < apart / 2 && points.Count > 3)
        {
            points.RemoveAt(points.Count - 1);
        }

        if (points[^1] != run[^1].Place)
        {
            points.Add(run[^1].Place);
        }

        var tangents = Tangents(points);
        double offset = run[0].FromCentre;
        return Through([.. points.Select((p, i) => p - (tangents[i].Left * offset))], tangents);
    }

    /// <summary>A chain of arcs through places of the centre, in order; at least three.</summary>
    public static Centreline Through(IReadOnlyList<Point2> centre) => Through(centre, Tangents(centre));

    private static Centreline Through(IReadOnlyList<Point2> centre, Point2[] tangents)
    {
        double heading = Math.Atan2(tangents[0].Y, tangents[0].X);
        var elements = new List<CentrelineElement>();
        for (int i = 1; i < centre.Count; i++)
        {
            var (first, second) = Biarc.Between(new(centre[i - 1], tangents[i - 1], 0), new(centre[i], tangents[i], 0), heading);
            elements.AddRange([first, second]);
            heading = second.HeadingAt(second.Length);
        }

        return new("reference", elements);
    }

    /// <summary>Curvature of a line integrated twice from its start, kinks and straight runs before and behind it with it.</summary>
    public static Func<double, double> TwiceIntegrated(Centreline line)
    {
        int n = line.Elements.Count;
        double first = line.Elements[0].Heading;
        double[] values = new double[n + 1];
        for (int i = 0; i < n; i++)
        {
            values[i + 1] = Inside(line.Elements[i], values[i], first, line.Elements[i].Length);
        }

        return s =>
        {
            if (s <= 0)
            {
                return 0;
            }

            if (s >= line.Length)
            {
                return values[n] + ((line.Elements[^1].HeadingAt(line.Elements[^1].Length) - first) * (s - line.Length));
            }

            int i = line.ElementAt(s);
            return Inside(line.Elements[i], values[i], first, s - line.StartOf(i));
        };
    }

    private static double Inside(CentrelineElement e, double value, double heading, double x) =>
        value + ((e.Heading - heading) * x) + (e.StartCurvature * x * x / 2) + ((e.EndCurvature - e.StartCurvature) * x * x * x / (6 * e.Length));

    /// <summary>Directions at points: inside, that of the circle through a point and its neighbours; at the ends, mirrored.</summary>
    private static Point2[] Tangents(IReadOnlyList<Point2> points)
    {
        var tangents = new Point2[points.Count];
        for (int i = 1; i < points.Count - 1; i++)
        {
            Point2 before = points[i] - points[i - 1], after = points[i + 1] - points[i];
            double a = before.Length, b = after.Length;
            tangents[i] = Unit((before * (b / a)) + (after * (a / b)));
        }

        tangents[0] = Mirror(tangents[1], points[1] - points[0]);
        tangents[^1] = Mirror(tangents[^2], points[^1] - points[^2]);
        return tangents;
    }

    private static Point2 Mirror(Point2 tangent, Point2 chord)
    {
        var along = Unit(chord);
        return (along * (2 * Point2.Dot(along, tangent))) - tangent;
    }

    private static Point2 Unit(Point2 p) => p * (1 / p.Length);
}
