using PlatformForge.Geometry;

namespace PlatformForge.Exports.Stock;

/// <summary>
/// Keeps marks and words inside their part and off every line that is cut: what is drawn within <see cref="Margin"/> of a cut is cut off with it or read on the
/// wrong part.
/// </summary>
internal sealed class MarkRoom
{
    /// <summary>What marks and words keep from every cut line, mm.</summary>
    public const double Margin = 0.5;

    // Shorter than this, mm, a mark says nothing.
    private const double Shortest = 0.5;

    // Room of a letter as shares of the size of type, wide enough for the fonts that readers of DXF put in place of their own.
    private const double Wide = 0.75, High = 0.8, Low = 0.25;

    // Sizes of type, mm, that words are tried at after their own.
    private static readonly double[] Smaller = [2, 1.5];

    private readonly IReadOnlyList<Point2> outline;
    private readonly Point2[][] holes;
    private readonly (Point2 A, Point2 B)[] cuts;
    private (Point2 Low, Point2 High)[] taken = [];

    public MarkRoom(CutPart part)
    {
        outline = part.Lines[0].Points;
        holes = [.. part.Lines.Skip(1).Where(l => l.Layer == CutLayer.Cut).Select(l => l.Points.ToArray()),
            .. part.Rounds.Where(r => r.Layer == CutLayer.Cut).Select(Around)];
        cuts = [.. Sides(outline), .. holes.SelectMany(Sides)];
    }

    /// <summary>A part with its marks cut short of every cut line.</summary>
    public static CutPart Trimmed(CutPart part)
    {
        var room = new MarkRoom(part);
        return part with { Lines = [.. part.Lines.SelectMany(l => l.Layer == CutLayer.Mark ? room.Kept(l) : [l])] };
    }

    /// <summary>A part as it lies on its sheet with words that have room: its name, or else the number that the list gives it, or nothing.</summary>
    public static CutPart Lettered(CutPart part, string number, double gap)
    {
        if (part.IsSeenAllOver)
        {
            return part with { Words = Below(part, gap) };
        }

        if (part.Words.Count == 0)
        {
            return part;
        }

        var room = new MarkRoom(part);
        var words = part.Words[0];
        // What is told of one place stands there or nowhere; the name makes room for it.
        CutWords[] figures = [.. part.Words.Skip(1).Select(room.AtItsPlace).OfType<CutWords>()];
        room.taken = Array.ConvertAll(figures, BoxOf);
        foreach (string text in (string[])[words.Text, number])
        {
            foreach (double size in Sizes(words))
            {
                if (room.PlaceOf(text, size, words.At) is { } at)
                {
                    return part with { Words = [new(text, at, size), .. figures] };
                }
            }
        }

        return part with { Words = figures };
    }

    // In the gap that nesting leaves below a part; none where that is too narrow to read.
    private static CutWords[] Below(CutPart part, double gap)
    {
        const double largest = 2, least = 1;
        double size = Math.Min(largest, (gap - (2 * Margin)) / (High + Low));
        Point2 low = new(part.Lines[0].Points.Min(p => p.X), part.Lines[0].Points.Min(p => p.Y));
        return size < least ? [] : [new(part.Words[0].Text, low - new Point2(-Margin, Margin + (High * size)), size)];
    }

    private static double[] Sizes(CutWords words) => [words.Size, .. Smaller.Where(s => s < words.Size)];

    private CutWords? AtItsPlace(CutWords words) =>
        Sizes(words).Where(size => IsFree(words.Text, size, words.At)).Select(size => words with { Size = size }).FirstOrDefault();

    /// <summary>The box that words take, mm.</summary>
    public static (Point2 Low, Point2 High) BoxOf(CutWords words) =>
        (words.At - new Point2(0, Low * words.Size), words.At + new Point2(Wide * words.Size * words.Text.Length, High * words.Size));

    // Where it was meant to be, or the first free place from the lower left.
    private Point2? PlaceOf(string text, double size, Point2 meant)
    {
        const int across = 30, up = 14;
        Point2 low = new(outline.Min(p => p.X), outline.Min(p => p.Y)), high = new(outline.Max(p => p.X), outline.Max(p => p.Y));
        var (from, to) = BoxOf(new(text, default, size));
        var box = to - from;
        if (IsFree(text, size, meant))
        {
            return meant;
        }

        Point2 span = high - low - box - new Point2(2 * Margin, 2 * Margin);
        if (span.X < 0 || span.Y < 0)
        {
            return null;
        }

        for (int j = 0; j <= up; j++)
        {
            for (int i = 0; i <= across; i++)
            {
                var at = low + new Point2(Margin + (span.X * i / across), Margin + (span.Y * j / up)) - from;
                if (IsFree(text, size, at))
                {
                    return at;
                }
            }
        }

        return null;
    }

    private bool IsFree(string text, double size, Point2 at)
    {
        var (low, high) = BoxOf(new(text, at, size));
        low -= new Point2(Margin, Margin);
        high += new Point2(Margin, Margin);
        return !Array.Exists(taken, t => t.Low.X < high.X && t.High.X > low.X && t.Low.Y < high.Y && t.High.Y > low.Y) && IsInside((low + high) * 0.5)
            && !Array.Exists(cuts, c => Meets(c.A, c.B, low, high));
    }

    private IEnumerable<CutLine> Kept(CutLine line)
    {
        var points = line.IsClosed ? line.Points.Append(line.Points[0]).ToArray() : [.. line.Points];
        var piece = new List<Point2>();
        for (int i = 0; i + 1 < points.Length; i++)
        {
            double reached = 0;
            Point2 a = points[i], along = points[i + 1] - a;
            foreach (var (from, to) in Forbidden(a, points[i + 1]))
            {
                if (from > reached)
                {
                    Add(piece, a + (along * reached), a + (along * from));
                }

                if (Finished(piece) is { } done)
                {
                    yield return done;
                }

                reached = Math.Max(reached, to);
            }

            if (reached < 1)
            {
                Add(piece, a + (along * reached), points[i + 1]);
            }
        }

        if (Finished(piece) is { } last)
        {
            yield return last;
        }
    }

    private void Add(List<Point2> piece, Point2 from, Point2 to)
    {
        if (!IsInside((from + to) * 0.5))
        {
            return;
        }

        if (piece.Count == 0)
        {
            piece.Add(from);
        }

        piece.Add(to);
    }

    // The line along a piece, which begins anew; null where it is too short to be seen.
    private static CutLine? Finished(List<Point2> piece)
    {
        Point2[] whole = [.. piece];
        piece.Clear();
        return whole.Zip(whole.Skip(1)).Sum(s => (s.Second - s.First).Length) >= Shortest ? new(CutLayer.Mark, whole, IsClosed: false) : null;
    }

    // Shares of a segment that are too near a cut, in order. How far a point of it is from a segment is a convex function of its share, so each takes an
    // interval.
    private IEnumerable<(double From, double To)> Forbidden(Point2 a, Point2 b)
    {
        Point2 low = new(Math.Min(a.X, b.X) - Margin, Math.Min(a.Y, b.Y) - Margin), high = new(Math.Max(a.X, b.X) + Margin, Math.Max(a.Y, b.Y) + Margin);
        var intervals = new List<(double From, double To)>();
        foreach (var (c, d) in cuts)
        {
            if (Math.Max(c.X, d.X) < low.X || Math.Min(c.X, d.X) > high.X || Math.Max(c.Y, d.Y) < low.Y || Math.Min(c.Y, d.Y) > high.Y)
            {
                continue;
            }

            double Off(double share) => Distance(a + ((b - a) * share), c, d);
            double nearest = Nearest(Off);
            if (Off(nearest) < Margin)
            {
                intervals.Add((Off(0) < Margin ? 0 : Crossing(Off, nearest, 0), Off(1) < Margin ? 1 : Crossing(Off, nearest, 1)));
            }
        }

        return intervals.OrderBy(i => i.From);
    }

    private static double Nearest(Func<double, double> off)
    {
        double from = 0, to = 1;
        for (int i = 0; i < 60; i++)
        {
            double one = from + ((to - from) / 3), two = to - ((to - from) / 3);
            (from, to) = off(one) <= off(two) ? (from, two) : (one, to);
        }

        return (from + to) / 2;
    }

    // Where the margin is reached on the way to a share that keeps it, on the safe side.
    private static double Crossing(Func<double, double> off, double near, double far)
    {
        for (int i = 0; i < 50; i++)
        {
            double middle = (near + far) / 2;
            (near, far) = off(middle) < Margin ? (middle, far) : (near, middle);
        }

        return far;
    }

    private bool IsInside(Point2 p) => IsWithin(outline, p) && !Array.Exists(holes, h => IsWithin(h, p));

    private static bool IsWithin(IReadOnlyList<Point2> ring, Point2 p)
    {
        bool inside = false;
        foreach (var (a, b) in Sides(ring))
        {
            if (a.Y > p.Y != b.Y > p.Y && p.X < a.X + ((b.X - a.X) * (p.Y - a.Y) / (b.Y - a.Y)))
            {
                inside = !inside;
            }
        }

        return inside;
    }

    private static double Distance(Point2 p, Point2 a, Point2 b)
    {
        var along = b - a;
        double length = Point2.Dot(along, along), share = length > 0 ? Math.Clamp(Point2.Dot(p - a, along) / length, 0, 1) : 0;
        return (p - a - (along * share)).Length;
    }

    // Whether a segment meets a box (Liang and Barsky's clipping).
    private static bool Meets(Point2 a, Point2 b, Point2 low, Point2 high)
    {
        double from = 0, to = 1;
        bool Side(double change, double room)
        {
            if (change == 0)
            {
                return room >= 0;
            }

            double at = room / change;
            (from, to) = change < 0 ? (Math.Max(from, at), to) : (from, Math.Min(to, at));
            return from <= to;
        }

        var along = b - a;
        return Side(-along.X, a.X - low.X) && Side(along.X, high.X - a.X) && Side(-along.Y, a.Y - low.Y) && Side(along.Y, high.Y - a.Y);
    }

    private static IEnumerable<(Point2 A, Point2 B)> Sides(IReadOnlyList<Point2> ring) => ring.Select((p, i) => (p, ring[(i + 1) % ring.Count]));

    private static Point2[] Around(CutRound round)
    {
        const int sides = 32;
        double radius = round.Diameter / 2 / Math.Cos(Math.PI / sides);
        return [.. Enumerable.Range(0, sides).Select(i => round.Middle + (Point2.FromAngle(2 * Math.PI * i / sides) * radius))];
    }
}
