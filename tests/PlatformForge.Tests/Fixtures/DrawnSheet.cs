using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;

namespace PlatformForge.Tests.Fixtures;

/// <summary>What is seen at a place of a drawing: the colour of what was drawn there last.</summary>
/// <param name="sheet">The drawing.</param>
/// <param name="counts">Lines that count; others, that show edges, are looked through.</param>
internal sealed class DrawnSheet(Sheet sheet, Func<Pen, bool> counts)
{
    private readonly (SheetPath Path, double Left, double Right, double Top, double Foot)[] paths = [.. sheet.Items.OfType<SheetPath>()
        .Where(p => p.Fill is not null || (!p.Closed && counts(p.Pen!))).Select(p => (p,
            p.Points.Min(q => q.X) - Rim(p), p.Points.Max(q => q.X) + Rim(p), p.Points.Min(q => q.Y) - Rim(p), p.Points.Max(q => q.Y) + Rim(p)))];

    /// <summary>The colour there, without what it lets through; null on bare paper.</summary>
    public Rgb? At(Point2 p)
    {
        for (int i = paths.Length - 1; i >= 0; i--)
        {
            var (path, left, right, top, foot) = paths[i];
            if (p.X >= left && p.X <= right && p.Y >= top && p.Y <= foot && (path.Fill is null ? IsOn(path, p) : IsWithin(path.Points, p)))
            {
                return path.Fill?.Colour ?? path.Pen!.Colour;
            }
        }

        return null;
    }

    private static double Rim(SheetPath path) => path.Fill is null ? path.Pen!.Width / 2 : 0;

    private static bool IsOn(SheetPath path, Point2 p) => path.Points.Zip(path.Points.Skip(1)).Any(s =>
    {
        var along = s.Second - s.First;
        double length = along.Length, on = Point2.Dot(along, p - s.First) / length;
        return on >= 0 && on <= length && Math.Abs(Point2.Cross(along, p - s.First)) <= length * path.Pen!.Width / 2;
    });

    private static bool IsWithin(IReadOnlyList<Point2> ring, Point2 p)
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
