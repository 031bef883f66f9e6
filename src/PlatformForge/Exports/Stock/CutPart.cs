using PlatformForge.Geometry;

namespace PlatformForge.Exports.Stock;

/// <summary>What is done along a line.</summary>
public enum CutLayer
{
    /// <summary>Right through.</summary>
    Cut,

    /// <summary>Part of the way, so that it bends or shows.</summary>
    Score,

    /// <summary>Drawn only.</summary>
    Mark,
}

/// <summary>Which material a part is cut from.</summary>
public enum StockKind
{
    /// <summary>Deck, ribs, end walls.</summary>
    Frame,

    /// <summary>Strips that are bent.</summary>
    Strip,

    /// <summary>Card of any thickness, to try the edge with.</summary>
    Card,
}

/// <summary>A line of a part, mm, y up.</summary>
/// <param name="Layer">What is done along it.</param>
/// <param name="Points">Its points.</param>
/// <param name="IsClosed">Whether it ends where it begins.</param>
public sealed record CutLine(CutLayer Layer, IReadOnlyList<Point2> Points, bool IsClosed = true);

/// <summary>A round hole.</summary>
/// <param name="Layer">What is done along its rim.</param>
/// <param name="Middle">Its middle, mm.</param>
/// <param name="Diameter">mm.</param>
public sealed record CutRound(CutLayer Layer, Point2 Middle, double Diameter);

/// <summary>Words on a part, on the layer for marks.</summary>
/// <param name="Text">The words.</param>
/// <param name="At">Where their base line begins, mm.</param>
/// <param name="Size">Size of type, mm.</param>
public sealed record CutWords(string Text, Point2 At, double Size);

/// <summary>A flat part, its outline the first of its lines; its box begins at the origin.</summary>
/// <param name="Name">What it is called on the sheet and in the list.</param>
/// <param name="Kind">What it is cut from.</param>
/// <param name="Lines">Outline first.</param>
public sealed record CutPart(string Name, StockKind Kind, IReadOnlyList<CutLine> Lines)
{
    /// <summary>Round holes.</summary>
    public IReadOnlyList<CutRound> Rounds { get; init; } = [];

    /// <summary>Words.</summary>
    public IReadOnlyList<CutWords> Words { get; init; } = [];

    /// <summary>Lines on its other face, told through it: a sheet of their own has them mirrored.</summary>
    public IReadOnlyList<CutLine> Outside { get; init; } = [];

    /// <summary>Whether its face is left as it was cut and scored, so that a name drawn on it would show: the sheet then has it below the part.</summary>
    public bool IsSeenAllOver { get; init; }

    /// <summary>What the list says beside its name.</summary>
    public string Note { get; init; } = "";

    /// <summary>Width and height of its box, mm.</summary>
    public Point2 Size => new(Lines[0].Points.Max(p => p.X), Lines[0].Points.Max(p => p.Y));

    /// <summary>Area within its outline, mm².</summary>
    public double Area => Math.Abs(PlaneArea(Lines[0].Points));

    /// <summary>The part with its box at the origin, however it was drawn.</summary>
    public static CutPart AtOrigin(CutPart part)
    {
        var low = new Point2(part.Lines[0].Points.Min(p => p.X), part.Lines[0].Points.Min(p => p.Y));
        return part.Moved(p => p - low);
    }

    /// <summary>The part after a motion of the plane.</summary>
    public CutPart Moved(Func<Point2, Point2> motion) => this with
    {
        Lines = [.. Lines.Select(l => l with { Points = [.. l.Points.Select(motion)] })],
        Outside = [.. Outside.Select(l => l with { Points = [.. l.Points.Select(motion)] })],
        Rounds = [.. Rounds.Select(r => r with { Middle = motion(r.Middle) })],
        Words = [.. Words.Select(w => w with { At = motion(w.At) })],
    };

    private static double PlaneArea(IReadOnlyList<Point2> ring)
    {
        double sum = 0;
        for (int i = 0; i < ring.Count; i++)
        {
            Point2 a = ring[i], b = ring[(i + 1) % ring.Count];
            sum += (a.X * b.Y) - (a.Y * b.X);
        }

        return sum / 2;
    }
}
