using PlatformForge.Geometry;

namespace PlatformForge.Exports.Paper;

/// <summary>One sheet's part of the layout.</summary>
/// <param name="Number">From 1, in the order in which sheets are joined.</param>
/// <param name="Frame">Where the layout lies on it.</param>
/// <param name="Window">What of the sheet is drawn on.</param>
/// <param name="Joins">Lines at which it meets its neighbours.</param>
internal sealed record SheetTile(int Number, SheetFrame Frame, SheetWindow Window, IReadOnlyList<TileJoin> Joins)
{
    /// <summary>Chainages it shows, mm.</summary>
    public (double From, double To) Range { get; init; }

    /// <summary>Corners of its window on the layout, in order.</summary>
    public IReadOnlyList<Point2> Corners =>
    [
        Frame.ToLayout(new(Window.Left, Window.Top)), Frame.ToLayout(new(Window.Right, Window.Top)),
        Frame.ToLayout(new(Window.Right, Window.Bottom)), Frame.ToLayout(new(Window.Left, Window.Bottom)),
    ];
}

/// <summary>A line on the layout at which two sheets meet: both show it, and the crosses on it.</summary>
/// <param name="Name">One letter or more, the same on both sheets.</param>
/// <param name="From">One end.</param>
/// <param name="To">The other.</param>
/// <param name="Crosses">Registration crosses: the same places on both sheets.</param>
internal sealed record TileJoin(string Name, Point2 From, Point2 To, IReadOnlyList<Point2> Crosses)
{
    /// <summary>Names in order: A, B … Z, AA, AB …</summary>
    public static string NameOf(int index) => index < Letters ? ((char)('A' + index)).ToString() : NameOf((index / Letters) - 1) + NameOf(index % Letters);

    private const int Letters = 26;
}

/// <summary>How the room on a sheet is used, in true mm: strips at the left and at the foot for bars and words, the rest for the plan.</summary>
internal sealed record SheetRoom(double Width, double Height, SheetWindow Window, double Margin)
{
    public const double LeftStrip = 12, FootStrip = 19;

    /// <summary>Shortest side of a window: the bars that are measured stand beside it.</summary>
    public const double LeastWindow = 106;

    public static SheetRoom Of(PaperSpec paper, bool lying, Point2 stretch)
    {
        double width = (lying ? paper.Size.Y : paper.Size.X) / stretch.X, height = (lying ? paper.Size.X : paper.Size.Y) / stretch.Y;
        double x = paper.Margin / stretch.X, y = paper.Margin / stretch.Y;
        return new(width, height, new(x + LeftStrip, y, width - x, height - y - FootStrip), Math.Max(x, y));
    }

    public bool IsLarge => Window.Width >= LeastWindow && Window.Height >= LeastWindow;
}
