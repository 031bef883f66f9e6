using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>What a drawing may still hold: counts down while it is read and ends the reading where a limit is passed.</summary>
internal sealed class DrawingBudget
{
    // A line goes by its own name and those of the groups around it.
    private const int NamesOfAnElement = 10;

    private int points = InputLimits.DrawingPoints, elements = InputLimits.DrawingElements, names = NamesOfAnElement * InputLimits.DrawingElements;

    public void Point()
    {
        if (--points < 0)
        {
            throw new UnreadableDrawingException(Invariant($"The drawing has more than {InputLimits.DrawingPoints} points, curves counted as points on them; ")
                + "a track plan has some thousands.");
        }
    }

    public void Element(int depth)
    {
        if (--elements < 0)
        {
            throw new UnreadableDrawingException(Invariant($"The drawing has more than {InputLimits.DrawingElements} elements; ")
                + "keep the track's own lines and leave the scenery out.");
        }

        if (depth > InputLimits.DrawingDepth)
        {
            throw new UnreadableDrawingException(Invariant($"More than {InputLimits.DrawingDepth} elements stand inside one another; ")
                + "ungroup the track's line in the drawing program.");
        }
    }

    public void Names(int count)
    {
        if ((names -= count) < 0)
        {
            throw new UnreadableDrawingException("The groups of the drawing have more names than can be kept for every line; "
                + "ungroup the track's line in the drawing program.");
        }
    }

    /// <summary>A number that a drawing may hold.</summary>
    public static bool Holds(double value) => Math.Abs(value) <= InputLimits.DrawingCoordinate;
}
