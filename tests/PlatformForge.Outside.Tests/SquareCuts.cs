using PlatformForge.Geometry;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// A printed body cut square across the track at many chainages at once: at each the lines in which its triangles meet that upright plane, as pairs of distance
/// from the track's middle, towards the platform, and height over the baseboard, mm.
/// </summary>
internal sealed class SquareCuts
{
    private readonly double[] stations;
    private readonly List<(Point2 A, Point2 B)>[] lines;

    /// <param name="triangles">On the layout.</param>
    /// <param name="track">The track.</param>
    /// <param name="side">1 where the platform lies to the left of it, -1 to the right.</param>
    /// <param name="at">Chainages.</param>
    public SquareCuts(IEnumerable<Point3[]> triangles, OwnTrack track, int side, IEnumerable<double> at)
    {
        stations = [.. at.Distinct().Order()];
        lines = [.. stations.Select(_ => new List<(Point2, Point2)>())];
        var frames = stations.Select(track.At).ToArray();
        var known = new Dictionary<(double, double), double>();
        double near = double.NaN;
        double Chainage(Point3 p)
        {
            if (!known.TryGetValue((p.X, p.Y), out double s))
            {
                var here = new Point2(p.X, p.Y);
                known[(p.X, p.Y)] = s = (double.IsNaN(near) ? track.Locate(here) : track.Locate(here, near)).Chainage;
            }

            return near = s;
        }

        foreach (var t in triangles)
        {
            double a = Chainage(t[0]), b = Chainage(t[1]), c = Chainage(t[2]), last = Math.Max(a, Math.Max(b, c)) + Slack;
            int first = Array.BinarySearch(stations, Math.Min(a, Math.Min(b, c)) - Slack);
            for (int k = first < 0 ? ~first : first; k < stations.Length && stations[k] <= last; k++)
            {
                Cross(t, frames[k], side, lines[k]);
            }
        }
    }

    // A side of a large triangle is straight where the track bends: its chainage may rise a little above both its ends'.
    private const double Slack = 0.5;

    /// <summary>The lines at one of the chainages; none where the body does not reach it.</summary>
    public IReadOnlyList<(Point2 A, Point2 B)> At(double chainage) => lines[Array.BinarySearch(stations, chainage)];

    private static void Cross(Point3[] t, (Point2 Place, Point2 Along) frame, int side, List<(Point2 A, Point2 B)> to)
    {
        Span<Point2> found = stackalloc Point2[3];
        int count = 0;
        for (int i = 0; i < 3; i++)
        {
            Point3 p = t[i], q = t[(i + 1) % 3];
            double a = Ahead(p, frame), b = Ahead(q, frame);
            if (a > 0 != b > 0)
            {
                var cut = p + ((q - p) * (a / (a - b)));
                found[count++] = new(side * Point2.Cross(frame.Along, new Point2(cut.X, cut.Y) - frame.Place), cut.Z);
            }
        }

        if (count == 2)
        {
            to.Add((found[0], found[1]));
        }
    }

    private static double Ahead(Point3 p, (Point2 Place, Point2 Along) frame) => Point2.Dot(new Point2(p.X, p.Y) - frame.Place, frame.Along);
}
