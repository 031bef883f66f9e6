using PlatformForge.Geometry;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>An affine map of the plane as SVG writes it: x' = a x + c y + e, y' = b x + d y + f.</summary>
internal readonly record struct SvgTransform(double A, double B, double C, double D, double E, double F)
{
    public static readonly SvgTransform None = new(1, 0, 0, 1, 0, 0);

    public Point2 Apply(Point2 p) => new((A * p.X) + (C * p.Y) + E, (B * p.X) + (D * p.Y) + F);

    /// <summary>Maps a displacement.</summary>
    public Point2 Turn(Point2 p) => new((A * p.X) + (C * p.Y), (B * p.X) + (D * p.Y));

    /// <summary>The map that applies <paramref name="inner"/> first.</summary>
    public SvgTransform Over(SvgTransform inner)
    {
        var (x, y, origin) = (Turn(inner.Turn(new(1, 0))), Turn(inner.Turn(new(0, 1))), Apply(inner.Apply(default)));
        return new(x.X, x.Y, y.X, y.Y, origin.X, origin.Y);
    }

    /// <summary>Reads a transform list: translate, scale, rotate, skewX, skewY, matrix (CSS Transforms 1, section 8).</summary>
    public static SvgTransform Read(string list)
    {
        var result = None;
        var rest = list.AsSpan();
        while (!(rest = rest.TrimStart(" \t\r\n,")).IsEmpty)
        {
            int open = rest.IndexOf('('), close = rest.IndexOf(')');
            if (open < 0 || close < open)
            {
                throw new UnreadableDrawingException("A transform is not written as name(numbers).");
            }

            result = result.Over(One(rest[..open].Trim().ToString(), rest[(open + 1)..close]));
            rest = rest[(close + 1)..];
        }

        return result;
    }

    private static SvgTransform One(string name, ReadOnlySpan<char> arguments)
    {
        var text = new SvgPathText(arguments);
        var n = new List<double>();
        while (n.Count < 6 && text.AtNumber())
        {
            n.Add(text.Number());
        }

        return (name, n.Count) switch
        {
            ("translate", 1) => new(1, 0, 0, 1, n[0], 0),
            ("translate", 2) => new(1, 0, 0, 1, n[0], n[1]),
            ("scale", 1) => new(n[0], 0, 0, n[0], 0, 0),
            ("scale", 2) => new(n[0], 0, 0, n[1], 0, 0),
            ("rotate", 1) => Rotation(n[0]),
            ("rotate", 3) => new SvgTransform(1, 0, 0, 1, n[1], n[2]).Over(Rotation(n[0])).Over(new(1, 0, 0, 1, -n[1], -n[2])),
            ("skewX", 1) => new(1, 0, Math.Tan(n[0] * Math.PI / 180), 1, 0, 0),
            ("skewY", 1) => new(1, Math.Tan(n[0] * Math.PI / 180), 0, 1, 0, 0),
            ("matrix", 6) => new(n[0], n[1], n[2], n[3], n[4], n[5]),
            _ => throw new UnreadableDrawingException("A transform is not one of translate, scale, rotate, skewX, skewY and matrix with the right count of "
                + "numbers."),
        };
    }

    private static SvgTransform Rotation(double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return new(cos, sin, -sin, cos, 0, 0);
    }
}
