using PlatformForge.Exports.LineArt;
using PlatformForge.Geometry;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>A row of sections in lines on a sheet, with their numbers beside them.</summary>
internal sealed class LineArtSheet
{
    private const double Balloon = 3.6;
    private const double Leader = 8;

    private const double Inside = 2; // mm by which the line to a number ends within the outline, in a dot
    private const double Dot = 0.45;
    private const double TagReach = 13, Tag = 3; // mm from the faces of a joint to its letter, and the letter's half box

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
        picture = new([.. row.Sections, .. row.Laid, .. row.Loose.Select(d => d.Body)], row.Toward, room);
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

    /// <summary>Puts each section's number beside it, up and to the left, with a line that ends in a dot within its outline (ISO 128-2, leader
    /// lines).</summary>
    public void Number(Sheet sheet, IEnumerable<int> numbers)
    {
        foreach (var (number, mesh) in numbers.Zip(row.Sections))
        {
            Point2 rim = Edge(mesh), at = rim + (Aside(-1) * (Leader + Balloon));
            sheet.Line(rim + (Aside(1) * Inside), rim + (Aside(-1) * Leader), HouseStyle.Thin);
            sheet.Circle(rim + (Aside(1) * Inside), Dot, new(HouseStyle.Ink));
            sheet.Circle(at, Balloon, new(HouseStyle.White), HouseStyle.Outline);
            sheet.Text(Invariant($"{number}"), at + new Point2(0, 1.3), HouseStyle.Subheading, TextAnchor.Middle);
        }
    }

    /// <summary>Puts a letter beside a joint, down and to the right, with an arrow to each of the two faces that meet there.</summary>
    public void Letter(Sheet sheet, string letter, Point3 one, Point3 other)
    {
        Point2 a = Of(one), b = Of(other), at = ((a + b) * 0.5) + (Aside(1) * TagReach);
        foreach (var face in (Point2[])[a, b])
        {
            Arrow(sheet, at, face, HouseStyle.Outline with { Colour = HouseStyle.Accent });
        }

        sheet.Box(at.X - Tag, at.Y - Tag, 2 * Tag, 2 * Tag, new(HouseStyle.White), HouseStyle.Outline with { Colour = HouseStyle.Accent });
        sheet.Text(letter, at + new Point2(0, 1.25), HouseStyle.Subheading with { Colour = HouseStyle.Accent }, TextAnchor.Middle);
    }

    /// <summary>A line with a head at its end.</summary>
    public static void Arrow(Sheet sheet, Point2 from, Point2 to, Pen pen)
    {
        const double Head = 2, Half = 0.6;
        var ahead = (to - from) * (1 / (to - from).Length);
        var neck = to - (ahead * Head);
        sheet.Line(from, neck, pen);
        sheet.Area([to, neck + (ahead.Left * Half), neck - (ahead.Left * Half)], new(pen.Colour));
    }

    /// <summary>Square to the row on the sheet: up and to the left (-1) or down and to the right (1).</summary>
    public static Point2 Aside(int hand) => new Point2(0.5, Math.Sqrt(3) / 2) * hand;

    // Where a line through the middle of what is seen of a body, square to the row, leaves its outline on the upper left.
    private Point2 Edge(Mesh mesh)
    {
        var seen = Array.ConvertAll(mesh.Vertices, Of);
        var middle = new Point2((seen.Min(p => p.X) + seen.Max(p => p.X)) / 2, (seen.Min(p => p.Y) + seen.Max(p => p.Y)) / 2);
        Point2 aside = Aside(-1), along = aside.Left;
        double far = 0;
        for (int i = 0; i < mesh.Triangles.Length; i++)
        {
            Point2 a = seen[mesh.Triangles[i]] - middle, b = seen[mesh.Triangles[i % 3 == 2 ? i - 2 : i + 1]] - middle;
            double left = Point2.Dot(a, along), right = Point2.Dot(b, along);
            if ((left > 0) != (right > 0))
            {
                far = Math.Max(far, Point2.Dot(a + ((b - a) * (left / (left - right))), aside));
            }
        }

        return middle + (aside * far);
    }
}
