using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Specs;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Sections;

/// <summary>The coping's edge and the vehicle beside it, enlarged in a frame of its own.</summary>
/// <param name="ring">The platform's cut outline: reach and height, mm.</param>
/// <param name="reaches">Boxes the governing vehicle sweeps: from and to reach, from and to height.</param>
/// <param name="look">Its colour and pattern.</param>
internal sealed class EdgeDetail(Point2[] ring, (double T0, double T1, double Z0, double Z1)[] reaches, (Rgb Colour, Pattern Pattern) look)
{
    private static readonly double[] Enlargements = [20, 15, 12, 10, 8, 6, 5, 4, 3, 2.5, 2, 1.5, 1];

    /// <summary>What lies in or on the deck there, by the scale at which it is drawn.</summary>
    public Func<double, IEnumerable<(Point2[] Ring, Rgb Colour)>> Lines { get; init; } = _ => [];

    /// <summary>How far behind the face that is held against vehicles the wall lies there, mm: behind what stands before it or out of it.</summary>
    public double WallBehind { get; init; }

    /// <summary>What stands before the wall, in a word; null for what is of its own profile.</summary>
    public string? Before { get; init; }

    public void DrawOn(Sheet sheet, Point2 corner, Point2 size, double front, double top, double spare, PlatformSpec spec)
    {
        double shown = spare + 3 + spec.Coping.Width + 2, deep = Math.Max(spec.Coping.Thickness, spec.Deck.Thickness) + 5;
        double scale = Array.Find(Enlargements, e => shown * e <= size.X && (deep + 2) * e <= size.Y - 6);
        scale = scale > 0 ? scale : 1;
        double t0 = front - spare - 3, z1 = top + 3.2;
        double t1 = t0 + (size.X / scale), z0 = z1 - (size.Y / scale);
        Point2 Of(double t, double z) => corner + new Point2((t - t0) * scale, (z1 - z) * scale);
        sheet.Box(corner.X, corner.Y, size.X, size.Y, new(HouseStyle.White));
        foreach (var r in reaches)
        {
            var clipped = Clip([new(r.T0, r.Z0), new(r.T1, r.Z0), new(r.T1, r.Z1), new(r.T0, r.Z1)], t0, t1, z0, z1).Select(p => Of(p.X, p.Y)).ToArray();
            if (clipped.Length > 2)
            {
                sheet.Area(clipped, new(look.Colour, 0.12));
                sheet.Area(clipped, new(look.Colour, 0.4, look.Pattern), new(0.5, look.Colour));
            }
        }

        var cut = Clip(ring, t0, t1, z0, z1).Select(p => Of(p.X, p.Y)).ToArray();
        sheet.Area(cut, new(HouseStyle.Coping));
        sheet.Area(cut, new(HouseStyle.Quiet, 0.5, Pattern.Rising), HouseStyle.Heavy);
        foreach (var (line, colour) in Lines(scale))
        {
            var shape = Clip(line, t0, t1, z0, z1).Select(p => Of(p.X, p.Y)).ToArray();
            if (shape.Length > 2)
            {
                sheet.Area(shape, new(colour), HouseStyle.Outline);
            }
        }

        sheet.Box(corner.X, corner.Y, size.X, size.Y, null, HouseStyle.Outline);
        Measures(sheet, Of, scale, (front, top, spare), spec);
        double right = front + spec.Coping.Width;
        if (right + (8 / scale) < t1)
        {
            Dimensions.Between(sheet, Of(front, top), Of(right, top), -5, Invariant($"{Figures.Short(Math.Round(spec.Coping.Width, 2))} coping"));
        }

        Heading(sheet, corner, size, scale, spec);
    }

    // What is spared before the edge, over it, and how far it reaches over the wall, under it.
    private void Measures(Sheet sheet, Func<double, double, Point2> of, double scale, (double Front, double Top, double Spare) edge, PlatformSpec spec)
    {
        double level = edge.Top + 1.6, under = edge.Top - spec.Coping.Thickness;
        sheet.Line(of(edge.Front, edge.Top - spec.Coping.ArrisChamfer), of(edge.Front, level + (3 / scale)), HouseStyle.Dimension);
        Dimensions.Between(sheet, of(edge.Front - edge.Spare, level), of(edge.Front, level), 0, Figures.Fine(edge.Spare));
        double low = under - (7 / scale);
        sheet.Line(of(edge.Front, under - (1 / scale)), of(edge.Front, low - (2 / scale)), HouseStyle.Dimension);
        double overWall = spec.Coping.Overhang + WallBehind;
        Dimensions.Between(sheet, of(edge.Front, low), of(edge.Front + overWall, low), 0, Figures.Short(Math.Round(overWall, 2)));
    }

    private void Heading(Sheet sheet, Point2 corner, Point2 size, double scale, PlatformSpec spec)
    {
        sheet.Text(Invariant($"The edge, {Figures.Short(scale)}:1"), corner + new Point2(0, -2), HouseStyle.Subheading);
        string arris = Invariant($"arris {(spec.Coping.Nosing == Nosing.Rounded ? "rounded" : "chamfered")} {Short(spec.Coping.ArrisChamfer)}");
        sheet.Text(Invariant($"coping {Short(spec.Coping.Thickness)} thick and {Over(spec)}, {arris}, deck {Short(spec.Deck.Thickness)} thick"),
            corner + new Point2(size.X, -2), HouseStyle.Small, TextAnchor.End);
    }

    // Over the wall that is seen there and, where something stands out before it, over that.
    private string Over(PlatformSpec spec)
    {
        string wall = Invariant($"{Short(spec.Coping.Overhang + WallBehind)} over the wall");
        string before = Before is { } what ? $"its {what}" : "what stands out of it";
        return WallBehind < Least ? wall : wall + Invariant($" ({Short(spec.Coping.Overhang)} over {before})");
    }

    private static string Short(double mm) => Figures.Short(Math.Round(mm, 2));

    // Less is not told, mm.
    private const double Least = 0.005;

    /// <summary>What of a ring lies in a box, by the rule of Sutherland and Hodgman (Communications of the ACM 17, 1974).</summary>
    internal static IReadOnlyList<Point2> Clip(IReadOnlyList<Point2> ring, double x0, double x1, double y0, double y1)
    {
        foreach (var (a, b, c) in new[] { (1.0, 0.0, -x0), (-1.0, 0.0, x1), (0.0, 1.0, -y0), (0.0, -1.0, y1) })
        {
            double Inside(Point2 p) => (a * p.X) + (b * p.Y) + c;
            var kept = new List<Point2>();
            for (int i = 0; i < ring.Count; i++)
            {
                Point2 p = ring[i], q = ring[(i + 1) % ring.Count];
                double u = Inside(p), v = Inside(q);
                if (u >= 0)
                {
                    kept.Add(p);
                }

                if (u * v < 0)
                {
                    kept.Add(p + ((q - p) * (u / (u - v))));
                }
            }

            ring = kept;
        }

        return ring;
    }
}
