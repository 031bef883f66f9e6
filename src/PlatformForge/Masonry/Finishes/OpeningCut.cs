using PlatformForge.Geometry;

namespace PlatformForge.Masonry.Finishes;

/// <summary>An opening set out on a wall: its sides where bricks end, its sill and springing on courses;
/// its recess, its voussoirs, and what they take up.</summary>
internal sealed class OpeningCut
{
    /// <summary>Ledge of the ground between a recess and what is laid beside it, mm: far more than numbers of files, far less than a line of plastic.</summary>
    public const double Ledge = 0.05;

    // How far a chord of an arch may lie within it, mm.
    private const double Chord = 0.02;

    private readonly OpeningShape shape;
    private readonly double joint;

    /// <param name="shape">What is asked for.</param>
    /// <param name="joint">Width of joints, mm.</param>
    /// <param name="sides">Its sides, mm along.</param>
    /// <param name="sill">Height of its sill, mm.</param>
    /// <param name="spring">Height at which its head begins, mm.</param>
    public OpeningCut(OpeningShape shape, double joint, (double Left, double Right) sides, double sill, double spring)
    {
        (this.shape, this.joint, (Left, Right), Sill, Spring) = (shape, joint, sides, sill, spring);
        if (shape.Rise > 0)
        {
            double half = (Right - Left) / 2, rise = Math.Min(half, shape.Rise * (Right - Left) / shape.Width);
            Radius = ((half * half) + (rise * rise)) / (2 * rise);
            Centre = new((Left + Right) / 2, spring + rise - Radius);
            Spread = Math.Asin(Math.Min(1, half / Radius));
            Crown = spring + rise;
        }
        else
        {
            Crown = spring;
        }
    }

    public double Left { get; }

    public double Right { get; }

    public double Sill { get; }

    public double Spring { get; }

    public double Crown { get; }

    public bool IsArch => Radius > 0;

    /// <summary>How far its lintel lies on the wall on either side, mm.</summary>
    public double Bearing => shape.Bearing;

    /// <summary>What one with a level head takes up of the wall beside it: its two corners, mm.</summary>
    public (Point2 Low, Point2 High) Taken => (new(Left - Ledge, Sill - Ledge), new(Right + Ledge, Crown + Ledge));

    /// <summary>Half of what the arch takes up along the wall, mm, its joint included.</summary>
    public double Reach => IsArch ? (Outer * Math.Sin(Spread)) + joint : ((Right - Left) / 2) + Ledge;

    /// <summary>The highest that it takes up, mm.</summary>
    public double Highest => IsArch ? Centre.Y + Over : Crown + Ledge;

    /// <summary>Half of what the back of its arch takes up along the wall at a height, mm.</summary>
    public double HalfAt(double height)
    {
        double up = Math.Max(height, Spring) - Centre.Y;
        return Math.Min(Reach, Math.Sqrt(Math.Max(0, (Over * Over) - (up * up))));
    }

    public double Middle => (Left + Right) / 2;

    private double Radius { get; }

    private Point2 Centre { get; }

    private double Spread { get; }

    private double Outer => Radius + Ledge + shape.Ring;

    // Where what is laid over an arch begins.
    private double Over => shape.Ring > 0 ? Outer + joint : Radius + Ledge;

    /// <summary>Whether less than a joint lies between it and another one, with what both take up.</summary>
    public bool Meets(OpeningCut other) => Math.Abs(other.Middle - Middle) < Reach + other.Reach + joint
        && Sill - Ledge < other.Highest + joint && other.Sill - Ledge < Highest + joint;

    /// <summary>The same farther along the wall.</summary>
    /// <param name="by">How much farther, mm.</param>
    public OpeningCut Moved(double by) => new(shape, joint, (Left + by, Right + by), Sill, Spring);

    /// <summary>The recess and the voussoirs round its head.</summary>
    /// <param name="depth">How far these stand out, mm.</param>
    /// <param name="clear">Moves a place off bends.</param>
    public IEnumerable<WallRegion> Regions(double depth, Func<double, double> clear)
    {
        Point2[] Off(IEnumerable<Point2> outline) => [.. outline.Select(p => p with { X = clear(p.X) })];
        Point2[] foot = [new(Left, Sill), new(Right, Sill)];
        var head = IsArch ? Arc(Radius, (Math.PI / 2) - Spread, (Math.PI / 2) + Spread) : [new(Right, Spring), new(Left, Spring)];
        yield return new(Off(foot.Concat(head)), depth - shape.Depth) { Behind = shape.Behind, Opening = shape.Number };
        if (!IsArch || shape.Ring <= 0)
        {
            yield break;
        }

        // An odd number, so that one is the keystone.
        double inner = Radius + Ledge, from = (Math.PI / 2) - Spread;
        int count = Math.Max(3, (((int)(2 * Spread * inner / shape.Voussoir) - 1) | 1));
        double step = 2 * Spread / count;
        for (int i = 0; i < count; i++)
        {
            yield return new(Off(Voussoir(from + (i * step), from + ((i + 1) * step), i == 0, i + 1 == count, inner)), depth);
        }
    }

    /// <summary>Whether a place lies in what an arched one takes up, joint included.</summary>
    public bool Holds(Point2 p) => Math.Abs(p.X - Middle) <= Reach && p.Y >= Sill - Ledge
        && (p.Y <= Spring ? Math.Abs(p.X - Middle) <= (Right - Left) / 2 : (p - Centre).Length <= Over);

    /// <summary>The half plane that keeps a stone off an arched one: outward, and how far it goes at most.</summary>
    /// <param name="stone">The stone's place.</param>
    /// <param name="size">Its size, mm.</param>
    public (Point2 Outward, double Distance) Limit(Point2 stone, double size)
    {
        double half = (Right - Left) / 2, aside = Math.Abs(stone.X - Middle) - half, under = Sill - Ledge - stone.Y;
        if (under > 0 && under > aside)
        {
            return (new(0, 1), Sill - Ledge);
        }

        if (stone.Y > Spring)
        {
            Point2 away = (stone - Centre) * (1 / (stone - Centre).Length);
            return (away * -1, -Point2.Dot(away, Centre) - Over);
        }

        // The arch is wider than the opening under it.
        int side = Math.Sign(stone.X - Middle);
        double reach = stone.Y > Spring - size ? Reach : half + Ledge;
        return (new(-side, 0), -(side * Middle) - reach);
    }

    /// <summary>Height of what lies over a place, mm: bricks stay over it; under the wall where the arch does not reach.</summary>
    public IEnumerable<Point2> Extrados()
    {
        double reach = Reach, from = Math.Acos(Math.Clamp(reach / Over, -1, 1));
        return Arc(Over, from, Math.PI - from).Reverse();
    }

    private IEnumerable<Point2> Voussoir(double from, double to, bool first, bool last, double inner)
    {
        double Gap(double radius, bool end) => (end && shape.Rise >= (Right - Left) / 2 * 0.99 ? joint : joint / 2) / radius;
        double innerFrom = from + Gap(inner, first), innerTo = to - Gap(inner, last), outerFrom = from + Gap(Outer, first), outerTo = to - Gap(Outer, last);
        var soffit = Arc(inner, innerFrom, innerTo).Reverse().ToList();
        var back = Arc(Outer, outerFrom, outerTo).ToList();

        // Those at the springing of a low arch are cut level where they lie on the wall.
        double bed = Spring + joint;
        if (first && back[0].Y - bed > joint)
        {
            back.InsertRange(0, [new(Math.Max(soffit[^1].X, Right + Ledge), bed), new(back[0].X, bed)]);
        }

        if (last && back[^1].Y - bed > joint)
        {
            back.AddRange([new(back[^1].X, bed), new(Math.Min(soffit[0].X, Left - Ledge), bed)]);
        }

        return back.Concat(soffit);
    }

    // Points on an arc from the right to the left.
    private IEnumerable<Point2> Arc(double radius, double from, double to)
    {
        int steps = Math.Max(1, (int)Math.Ceiling((to - from) / (2 * Math.Acos(1 - (Chord / radius)))));
        return Enumerable.Range(0, steps + 1).Select(i => Centre + (Point2.FromAngle(from + ((to - from) * i / steps)) * radius));
    }
}
