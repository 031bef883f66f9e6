using PlatformForge.Exports.LineArt;
using PlatformForge.Geometry;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings;

/// <summary>A row of sections in lines on a sheet, with their numbers beside them.</summary>
internal sealed class LineArtSheet
{
    private const double Balloon = 3.6;
    private const double Leader = 8;

    // Of half a section's length on the sheet: what lies so near to its middle decides where the line to its number begins.
    private const double Middle = 0.12;

    private static readonly Pen Contour = new(0.3, HouseStyle.Ink);
    private static readonly Pen Crease = new(0.15, HouseStyle.Ink);

    private readonly ExplodedRow row;
    private readonly LinePicture picture;
    private readonly Point2 corner;

    /// <summary>Fits the row into a box.</summary>
    /// <param name="row">What is drawn.</param>
    /// <param name="corner">The box's top left corner, sheet mm.</param>
    /// <param name="room">Its width and height.</param>
    public LineArtSheet(ExplodedRow row, Point2 corner, Point2 room)
    {
        this.row = row;
        picture = new([.. row.Sections, .. row.Dowels.Select(d => d.Body)], row.Toward, room);
        this.corner = corner + ((room - picture.Size) * 0.5);
    }

    /// <summary>The scale along the three axes, in words: isometric views foreshorten them by the root of two thirds (ISO 5456-3).</summary>
    public string ScaleInWords
    {
        get
        {
            double scale = picture.Scale * Math.Sqrt(2.0 / 3);
            string ratio = scale < 1 ? Invariant($"1:{Figures.Fine(1 / scale)}") : Invariant($"{Figures.Fine(scale)}:1");
            return Invariant($"Scale along the axes {ratio} of the model");
        }
    }

    /// <summary>Where a point of the scene falls on the sheet.</summary>
    public Point2 Of(Point3 p) => corner + picture.Of(p);

    /// <summary>Draws all lines that are seen.</summary>
    public void Draw(Sheet sheet, CancellationToken cancel)
    {
        foreach (var (points, contour) in LineChains.Of(picture.Lines(cancel)))
        {
            sheet.Lines(points.Select(p => corner + p), contour ? Contour : Crease);
        }
    }

    /// <summary>Puts each section's number beside it, up and to the left.</summary>
    public void Number(Sheet sheet, IEnumerable<int> numbers)
    {
        foreach (var (number, mesh) in numbers.Zip(row.Sections))
        {
            Point2 from = Edge(mesh, -1), at = from + (Aside(-1) * (Leader + Balloon));
            sheet.Line(from, from + (Aside(-1) * Leader), HouseStyle.Thin);
            sheet.Circle(at, Balloon, new(HouseStyle.White), HouseStyle.Outline);
            sheet.Text(Invariant($"{number}"), at + new Point2(0, 1.3), HouseStyle.Subheading, TextAnchor.Middle);
        }
    }

    /// <summary>Square to the row on the sheet: up and to the left (-1) or down and to the right (1).</summary>
    public static Point2 Aside(int hand) => new Point2(0.5, Math.Sqrt(3) / 2) * hand;

    /// <summary>The place beside the middle of a body that lies farthest out.</summary>
    private Point2 Edge(Mesh mesh, int hand)
    {
        var seen = mesh.Vertices.Select(Of).ToArray();
        var middle = new Point2((seen.Min(p => p.X) + seen.Max(p => p.X)) / 2, (seen.Min(p => p.Y) + seen.Max(p => p.Y)) / 2);
        Point2 aside = Aside(hand), along = aside.Left;
        double near = seen.Max(p => Math.Abs(Point2.Dot(p - middle, along))) * Middle;
        var beside = seen.Where(p => Math.Abs(Point2.Dot(p - middle, along)) <= near).Select(p => Point2.Dot(p - middle, aside));
        return middle + (aside * beside.DefaultIfEmpty(0).Max());
    }
}
