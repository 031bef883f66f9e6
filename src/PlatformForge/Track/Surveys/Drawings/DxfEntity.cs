using PlatformForge.Geometry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>The pairs of one entity, from its kind up to the next entity.</summary>
internal readonly struct DxfEntity(List<DxfPair> pairs, int from, int to)
{
    public string Kind => pairs[from].Code == 0 ? pairs[from].Value : "";

    public int Line => pairs[from].Line;

    public string Layer => Text(8, "0");

    public int Flags => (int)Number(70, 0);

    public bool Mirrored => Number(230, 1) < 0;

    public string Text(int code, string usual)
    {
        int at = Find(code);
        return at < 0 ? usual : pairs[at].Value;
    }

    public double Number(int code, double usual)
    {
        int at = Find(code);
        return at < 0 ? usual : pairs[at].Number;
    }

    public double Number(int code)
    {
        int at = Find(code);
        return at < 0 ? throw new UnreadableDrawingException(Invariant($"The {Kind} has no group {code}."), Line) : pairs[at].Number;
    }

    /// <summary>An angle in radians that the file gives in degrees.</summary>
    public double Angle(int code)
    {
        double degrees = Number(code);
        return Math.Abs(degrees) <= InputLimits.DrawingAngle
            ? degrees * Math.PI / 180
            : throw new UnreadableDrawingException(Invariant($"The {Kind} has an angle of {degrees:G6} degrees; ")
            + Invariant($"the largest taken is {InputLimits.DrawingAngle:0}."),
                Line);
    }

    /// <summary>The point whose x has this code and whose y has one ten higher.</summary>
    public Point2 Point(int code) => new(Number(code), Number(code + 10));

    public double[] Numbers(int code)
    {
        var found = new List<double>();
        for (int i = from; i < to; i++)
        {
            if (pairs[i].Code == code)
            {
                found.Add(pairs[i].Number);
            }
        }

        return [.. found];
    }

    /// <summary>Repeated points, each with the bulge that follows it.</summary>
    public IReadOnlyList<(Point2 Point, double Bulge)> Vertices(int xCode, int bulgeCode)
    {
        var found = new List<(Point2 Point, double Bulge)>();
        int across = 0;
        for (int i = from; i < to; i++)
        {
            if (pairs[i].Code == xCode)
            {
                found.Add((new(pairs[i].Number, 0), 0));
            }
            else if (found.Count > 0 && pairs[i].Code == xCode + 10)
            {
                across++;
                found[^1] = (found[^1].Point with { Y = pairs[i].Number }, found[^1].Bulge);
            }
            else if (found.Count > 0 && pairs[i].Code == bulgeCode)
            {
                found[^1] = (found[^1].Point, pairs[i].Number);
            }
        }

        return across == found.Count
            ? found
            : throw new UnreadableDrawingException(Invariant($"The {Kind} has {found.Count} points and {across} groups {xCode + 10} for their y: ")
            + "some of it is missing.",
                Line);
    }

    /// <summary>The VERTEX entities that follow an old-style POLYLINE.</summary>
    public IReadOnlyList<(Point2 Point, double Bulge)> PolylineVertices()
    {
        var found = new List<(Point2 Point, double Bulge)>();
        for (int i = from + 1; i < to;)
        {
            int next = i + 1;
            while (next < to && pairs[next].Code != 0)
            {
                next++;
            }

            if (pairs[i].Code == 0 && pairs[i].Value == "VERTEX")
            {
                var vertex = new DxfEntity(pairs, i, next);
                found.Add((vertex.Point(10), vertex.Number(42, 0)));
            }

            i = next;
        }

        return found;
    }

    // The entity's own pairs end at the first further entity, so that a vertex's figures are not taken for its polyline's.
    private int Find(int code)
    {
        for (int i = from + 1; i < to && pairs[i].Code != 0; i++)
        {
            if (pairs[i].Code == code)
            {
                return i;
            }
        }

        return -1;
    }
}
