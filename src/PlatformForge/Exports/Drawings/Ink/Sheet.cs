using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>
/// A sheet of paper in mm, origin at its top left corner, y running down: lines, areas and words in the order they are drawn.
/// Knows nothing of any file format.
/// </summary>
public sealed class Sheet(double width, double height, string title)
{
    private readonly List<SheetItem> items = [];

    /// <summary>Width of the paper, mm.</summary>
    public double Width { get; } = width;

    /// <summary>Height of the paper, mm.</summary>
    public double Height { get; } = height;

    /// <summary>
    /// By how much the sheet is drawn larger than it is meant, across and down, to make up for a printer that draws smaller or larger than it should; 1 and
    /// 1 as a rule.
    /// </summary>
    public Point2 Stretch { get; init; } = new(1, 1);

    /// <summary>Width of the page it is drawn on, mm.</summary>
    public double PaperWidth => Width * Stretch.X;

    /// <summary>Height of the page it is drawn on, mm.</summary>
    public double PaperHeight => Height * Stretch.Y;

    /// <summary>Whether it has a ground of its own colour on a screen; what is printed to be laid on something has none.</summary>
    public bool HasGround { get; init; } = true;

    /// <summary>What the drawing shows, for lists and screen readers.</summary>
    public string Title { get; } = title;

    /// <summary>A sentence or two in place of the picture for those who cannot see it.</summary>
    public string Description { get; set; } = "";

    public IReadOnlyList<SheetItem> Items => items;

    public void Line(Point2 from, Point2 to, Pen pen) => items.Add(new SheetPath([from, to], false, pen, null));

    public void Lines(IEnumerable<Point2> points, Pen pen) => items.Add(new SheetPath([.. points], false, pen, null));

    public void Area(IEnumerable<Point2> ring, Fill? fill, Pen? pen = null) => items.Add(new SheetPath([.. ring], true, pen, fill));

    public void Box(double x, double y, double width, double height, Fill? fill, Pen? pen = null) =>
        Area([new(x, y), new(x + width, y), new(x + width, y + height), new(x, y + height)], fill, pen);

    public void Circle(Point2 middle, double radius, Fill? fill, Pen? pen = null) => items.Add(new SheetCircle(middle, radius, pen, fill));

    public void Text(string text, Point2 at, TextStyle style, TextAnchor anchor = TextAnchor.Start, double angle = 0) =>
        items.Add(new SheetText(text, at, style, anchor, angle));
}

/// <summary>Something drawn on a sheet.</summary>
public abstract record SheetItem;

/// <summary>Straight lines from point to point, or the area they enclose.</summary>
public sealed record SheetPath(IReadOnlyList<Point2> Points, bool Closed, Pen? Pen, Fill? Fill) : SheetItem;

/// <summary>A circle, mm.</summary>
public sealed record SheetCircle(Point2 Middle, double Radius, Pen? Pen, Fill? Fill) : SheetItem;

/// <summary>A line of words.</summary>
/// <param name="Text">The words.</param>
/// <param name="At">Where the base line begins, is halved or ends, by the anchor.</param>
/// <param name="Style">Size, weight and colour.</param>
/// <param name="Anchor">Which point of the base line <paramref name="At"/> is.</param>
/// <param name="Angle">Turn in degrees, clockwise on the sheet.</param>
public sealed record SheetText(string Text, Point2 At, TextStyle Style, TextAnchor Anchor, double Angle) : SheetItem
{
    // Of the size: how far letters rise above the base line and hang below it.
    private const double Rise = 0.74;
    private const double Hang = 0.22;

    /// <summary>The four corners of the box around the words, with a rim in mm.</summary>
    public IReadOnlyList<Point2> Box(double rim = 0)
    {
        double length = TextStyle.Length(Text, Style) + (2 * rim), from = -rim
            + Anchor switch { TextAnchor.Start => 0, TextAnchor.Middle => rim - (length / 2), _ => (2 * rim) - length };
        var along = Point2.FromAngle(Angle * Math.PI / 180);
        Point2 Place(double x, double y) => At + (along * x) + (along.Left * y);
        return
        [
            Place(from, (-Rise * Style.Size) - rim), Place(from + length, (-Rise * Style.Size) - rim),
            Place(from + length, (Hang * Style.Size) + rim), Place(from, (Hang * Style.Size) + rim),
        ];
    }
}

/// <summary>Which point of a line of words is given.</summary>
public enum TextAnchor
{
    Start,
    Middle,
    End,
}
