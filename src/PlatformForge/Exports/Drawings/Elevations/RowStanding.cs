using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>
/// What stands on the deck over a row of an elevation: outlines behind the walls, and over them the name of each. Measures are the sheet's, mm, from the row's
/// left end on the line of the baseboard, upwards.
/// </summary>
internal sealed class RowStanding
{
    // From an outline to a name over it, from name to name, and from where on a line leads down to what is named.
    private const double Over = 0.8, Apart = 0.8, Leads = 2.5;

    // Share of an outline's colour in what fills it, and of a name's length from one place that is tried for it to the next.
    private const double Tint = 0.45, Pace = 0.5;

    private static readonly TextStyle Style = HouseStyle.Small;

    private readonly List<(string Name, Rgb Colour, Point2[] Ring)> shapes = [];
    private readonly List<(string Name, Point2 At, double Own)> names = [];
    private readonly double length;

    /// <param name="marks">What stands on the platform, the farthest first.</param>
    /// <param name="at">Place of a foot from the row's left end, and whether the row has its section.</param>
    /// <param name="length">Length of the row.</param>
    /// <param name="scale">Sheet mm to a mm of the model.</param>
    public RowStanding(IReadOnlyList<StandingMark> marks, Func<StandingFoot, (double X, bool IsIn)> at, double length, double scale)
    {
        this.length = length;
        foreach (var mark in marks)
        {
            var feet = mark.Corners.Select(c => c.Foot).Distinct().ToDictionary(f => f, at);
            if (feet.Values.Any(f => f.IsIn) && Ring(mark, f => feet[f].X, scale) is { Length: > 2 } ring)
            {
                shapes.Add((mark.Name, Tinted(mark.Colour), ring));
            }
        }

        foreach (var group in shapes.GroupBy(s => s.Name))
        {
            names.AddRange(Together([.. group.Select(s => s.Ring)]).Select(rings => Named(group.Key, rings)).OfType<(string, Point2, double)>());
        }
    }

    /// <summary>Height over the baseboard of the highest of it and its names; nothing where nothing stands there.</summary>
    public double Top => shapes.SelectMany(s => s.Ring).Select(p => p.Y).Concat(names.Select(n => n.At.Y + Style.Size)).DefaultIfEmpty(0).Max();

    /// <summary>Draws it on a row whose left end lies on the baseboard's line at a place.</summary>
    public void Draw(Sheet sheet, Point2 zero)
    {
        Point2 Of(Point2 p) => new(zero.X + p.X, zero.Y - p.Y);
        foreach (var (_, colour, ring) in shapes)
        {
            sheet.Area(ring.Select(Of), new(colour), HouseStyle.Fine);
        }

        foreach (var (name, at, own) in names)
        {
            if (at.Y - own > Leads)
            {
                sheet.Line(Of(at - new Point2(0, Over / 2)), Of(new(at.X, own)), HouseStyle.Hairline);
            }

            sheet.Text(name, Of(at), Style, TextAnchor.Middle);
        }
    }

    private Point2[] Ring(StandingMark mark, Func<StandingFoot, double> at, double scale)
    {
        var ring = ConvexRing.Hull(mark.Corners.Select(c => new Point2(at(c.Foot) + (scale * c.Right), scale * c.Height)));
        foreach (var (from, to) in new[] { (new Point2(0, 1), new Point2(0, 0)), (new(length, 0), new(length, 1)) })
        {
            ring = ring.Length == 0 ? ring : ConvexRing.LeftOf(ring, from, to);
        }

        double broken = scale * mark.BrokenAt;
        return ring.Length == 0 || double.IsInfinity(broken) ? ring : ConvexRing.LeftOf(ring, new(1, broken), new(0, broken));
    }

    private static Rgb Tinted(Rgb colour)
    {
        static byte Mix(byte own, byte paper) => (byte)Math.Round((Tint * own) + ((1 - Tint) * paper));
        return new(Mix(colour.R, HouseStyle.Paper.R), Mix(colour.G, HouseStyle.Paper.G), Mix(colour.B, HouseStyle.Paper.B));
    }

    // Those of one name that stand beside or behind one another.
    private static IEnumerable<Point2[][]> Together(Point2[][] rings)
    {
        var group = new List<Point2[]>();
        double right = 0;
        foreach (var ring in rings.OrderBy(r => r.Min(p => p.X)))
        {
            if (group.Count > 0 && ring.Min(p => p.X) > right + Neighbours)
            {
                yield return [.. group];
                group.Clear();
            }

            right = group.Count == 0 ? ring.Max(p => p.X) : Math.Max(right, ring.Max(p => p.X));
            group.Add(ring);
        }

        if (group.Count > 0)
        {
            yield return [.. group];
        }
    }

    // mm on the sheet between two of one name that are told as one.
    private const double Neighbours = 6;

    // The lowest place of those tried along it at which its name meets nothing; as near to its middle as may be.
    private (string Name, Point2 At, double Own)? Named(string name, Point2[][] rings)
    {
        double half = TextStyle.Length(name, Style) / 2, left = rings.Min(r => r.Min(p => p.X)), right = rings.Max(r => r.Max(p => p.X));
        if (2 * half > length)
        {
            return null;
        }

        double middle = (left + right) / 2;
        double Room(double x) => Math.Clamp(x, half, length - half);
        int tries = (int)((right - left) / (4 * half * Pace));
        var places = Enumerable.Range(-tries, (2 * tries) + 1).OrderBy(Math.Abs).Select(i => Room(middle + (2 * half * Pace * i)));
        return places.Select(x => (name, new Point2(x, Free(x, half)), Own(rings, x))).MinBy(p => p.Item2.Y);
    }

    // Height of the lowest line over all that stands within a half of a place, and over the names there.
    private double Free(double x, double half)
    {
        double y = Over + shapes
            .Where(s => s.Ring.Min(p => p.X) < x + half && s.Ring.Max(p => p.X) > x - half).Select(s => s.Ring.Max(p => p.Y)).DefaultIfEmpty(0).Max();
        foreach (var (name, at, _) in names.Where(n => Math.Abs(n.At.X - x) < half + Apart + (TextStyle.Length(n.Name, Style) / 2)).OrderBy(n => n.At.Y))
        {
            y = at.Y < y + Style.Size + Apart && y < at.Y + Style.Size + Apart ? at.Y + Style.Size + Apart : y;
        }

        return y;
    }

    private static double Own(Point2[][] rings, double x) => rings.MinBy(r => Math.Max(0, Math.Max(r.Min(p => p.X) - x, x - r.Max(p => p.X))))!.Max(p => p.Y);
}
