using PlatformForge.Geometry;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>One drawn line, flattened, in drawing units with y up.</summary>
/// <param name="Names">Names it goes by: its own id or layer, and those of the groups around it.</param>
/// <param name="Points">Its points, at least two.</param>
/// <param name="Line">Line of the file that it begins at.</param>
/// <param name="Straights">Whether it was drawn with straight lines only, so that its points are what somebody placed.</param>
internal sealed record DrawnPiece(string[] Names, Point2[] Points, bool Straights, int Line)
{
    public double Length
    {
        get
        {
            double length = 0;
            for (int i = 1; i < Points.Length; i++)
            {
                length += (Points[i] - Points[i - 1]).Length;
            }

            return length;
        }
    }

    public DrawnPiece Reversed() => this with { Points = [.. Points.Reverse()] };
}

/// <summary>A drawing read into pieces.</summary>
/// <param name="Pieces">Its lines, in file order.</param>
/// <param name="MillimetresPerUnit">What the file states, or null where it states nothing to rely on.</param>
/// <param name="Skipped">Kinds of content that were passed over and how many of each, in order of kind.</param>
/// <param name="UnitLine">Line at which it does, or could.</param>
/// <param name="UnitTold">How the file tells its unit, or why what it says is not enough.</param>
internal sealed record Drawing(IReadOnlyList<DrawnPiece> Pieces, double? MillimetresPerUnit, IReadOnlyList<KeyValuePair<string, int>> Skipped, string UnitTold,
    int UnitLine)
{
    /// <summary>What was read otherwise than the drawing program shows it, in sentences.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];
}

/// <summary>A drawing that cannot be read; the message says why and the line where, 0 for none.</summary>
internal sealed class UnreadableDrawingException : Exception
{
    public UnreadableDrawingException()
    {
    }

    public UnreadableDrawingException(string message)
        : base(message)
    {
    }

    public UnreadableDrawingException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    public UnreadableDrawingException(string message, int line)
        : base(message)
    {
        Line = line;
    }

    public int Line { get; }
}
