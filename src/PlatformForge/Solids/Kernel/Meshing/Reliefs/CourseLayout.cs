using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Solids.Reliefs;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel.Meshing.Reliefs;

/// <summary>
/// Lays the fields of a panel out in level rows, as courses of bricks are, piece by piece. Pieces that fields of other shapes lie on are left to be
/// swept; a panel of which no rows can be
/// made is left as a whole.
/// </summary>
internal sealed class CourseLayout(PanelPieces pieces, GrowingArray<Point3> places)
{
    // Fields nearer than this to one another, to a border or a bend, grid steps, are looked at by the sweep, which refuses those that touch.
    private const int Apart = 4;

    private readonly List<CoursePart>[] parts = [.. Enumerable.Range(0, pieces.Count).Select(_ => new List<CoursePart>())];
    private readonly List<CourseRow>[] rows = [.. Enumerable.Range(0, pieces.Count).Select(_ => new List<CourseRow>())];

    /// <summary>The oblong fields, from the lowest row on.</summary>
    public CourseField[] Fields { get; private set; } = [];

    /// <summary>Which pieces are to be swept.</summary>
    public bool[] Swept { get; } = new bool[pieces.Count];

    /// <summary>A piece's rows, the lowest first, and their parts.</summary>
    public (List<CourseRow> Rows, List<CoursePart> Parts) On(int piece) => (rows[piece], parts[piece]);

    /// <summary>Lays the fields out; those that are swept are entered.</summary>
    /// <returns>Whether the panel is one of rows.</returns>
    public bool Take(IReadOnlyList<ReliefField> fields, ReliefRun run)
    {
        var (oblongs, others) = Parted(fields);
        foreach (var field in others)
        {
            if (!Mark(field))
            {
                return false;
            }

            run.Enter(field);
        }

        Fields = oblongs;
        return Lay(oblongs, run) && Enumerable.Range(0, pieces.Count).All(i => Swept[i] || IsClear(i));
    }

    // The pieces under a field of another shape.
    private bool Mark(ReliefField field)
    {
        if (!field.Outline.All(pieces.Holds))
        {
            return false;
        }

        for (int piece = pieces.At(field.Outline.Min(p => p.X)); piece <= pieces.At(field.Outline.Max(p => p.X)); piece++)
        {
            Swept[piece % pieces.Count] = true;
        }

        return true;
    }

    private static (CourseField[] Oblongs, List<ReliefField> Others) Parted(IReadOnlyList<ReliefField> fields)
    {
        var oblongs = new List<CourseField>(fields.Count);
        var others = new List<ReliefField>();
        foreach (var field in fields)
        {
            var o = field.Outline as Point2[] ?? [.. field.Outline];
            bool isOblong = o.Length == 4 && o[0].Y == o[1].Y && o[2].Y == o[3].Y && o[0].X == o[3].X && o[1].X == o[2].X && o[0].X < o[1].X
                && o[0].Y < o[2].Y && field.Out > 0 && field.Paint is null;
            if (isOblong)
            {
                oblongs.Add(new() { From = o[0].X, To = o[1].X, Low = o[0].Y, High = o[2].Y, Out = field.Out, Field = field });
            }
            else
            {
                others.Add(field);
            }
        }

        CourseField[] sorted = [.. oblongs];
        Array.Sort(sorted, static (a, b) => a.Low != b.Low ? a.Low.CompareTo(b.Low) : a.From.CompareTo(b.From));
        return (sorted, others);
    }

    /// <summary>Puts the fields' corners in place and their parts in the rows of the pieces that they lie on.</summary>
    private bool Lay(CourseField[] fields, ReliefRun run)
    {
        for (int i = 0; i < fields.Length; i++)
        {
            ref var field = ref fields[i];
            if (!pieces.Holds(new(field.From, field.Low)) || !pieces.Holds(new(field.To, field.High)))
            {
                return false;
            }

            (field.FirstPiece, field.LastPiece) = (pieces.At(field.From), pieces.At(field.To));
            if (OnFold(field.FirstPiece, field.From) || OnFold(field.LastPiece, field.To))
            {
                return false;
            }

            bool any = false;
            for (int piece = field.FirstPiece; piece <= field.LastPiece; piece++)
            {
                any |= Swept[piece % pieces.Count];
            }

            if (any)
            {
                Enter(field, run.Enter(field.Field));
                field.Vertex = -1;
            }
            else if (!Enter(ref field))
            {
                return false;
            }
        }

        return true;
    }

    // The parts of a field that lies on a swept piece too: its corners are those of its outline.
    private void Enter(in CourseField field, ReliefOutline outline)
    {
        var corners = outline.Corners;
        int count = field.LastPiece - field.FirstPiece;
        for (int k = 0; k <= count; k++)
        {
            int piece = field.FirstPiece + k;
            if (!Swept[piece % pieces.Count])
            {
                var (left, right) = Ends(field, k);
                Enter(piece % pieces.Count, Steps(field.Low), Steps(field.High),
                    new(left, right, corners[k].Vertex, corners[^(k + 1)].Vertex, corners[k + 1].Vertex, corners[^(k + 2)].Vertex));
            }
        }
    }

    private (int Left, int Right) Ends(in CourseField field, int part)
    {
        int piece = field.FirstPiece + part;
        double start = pieces.StartOf(piece);
        return (part == 0 ? Steps(field.From - start) : 0, Steps((piece == field.LastPiece ? field.To : pieces.FoldAt(piece)) - start));
    }

    /// <summary>Length of a part of a field on the wall and on its floor, mm.</summary>
    public (double Wall, double Floor) Lengths(in CourseField field, int part)
    {
        int piece = field.FirstPiece + part;
        var ahead = pieces[piece].Ahead;
        double wall = (piece == field.LastPiece ? field.To : pieces.FoldAt(piece)) - (part == 0 ? field.From : pieces.StartOf(piece));
        double longer = (piece == field.LastPiece ? 0 : Point2.Dot(pieces.Off(piece, true), ahead)) - (part == 0 ? 0
            : Point2.Dot(pieces.Off(piece - 1, true), ahead));
        return (wall, wall + (field.Out * longer));
    }

    private bool OnFold(int piece, double along) =>
        Steps(along - pieces.StartOf(piece)) < Apart || Steps(pieces.FoldAt(piece) - along) < Apart;

    private bool Enter(ref CourseField field)
    {
        int count = field.LastPiece - field.FirstPiece, half = 2 * (count + 2);
        field.Vertex = places.Count;
        Put(field, field.Low);
        Put(field, field.High);
        for (int k = 0; k <= count; k++)
        {
            int vertex = field.Vertex + (2 * k);
            if (Lengths(field, k).Floor < Apart * Tolerances.GridStep)
            {
                return false;
            }

            var (left, right) = Ends(field, k);
            Enter((field.FirstPiece + k) % pieces.Count, Steps(field.Low), Steps(field.High), new(left, right, vertex, vertex + half, vertex + 2,
                vertex + half + 2));
        }

        return true;
    }

    private void Put(in CourseField field, double up)
    {
        Put(field.FirstPiece, false, field.From, up, field.Out);
        for (int fold = field.FirstPiece; fold < field.LastPiece; fold++)
        {
            Put(fold, true, pieces.FoldAt(fold), up, field.Out);
        }

        Put(field.LastPiece, false, field.To, up, field.Out);
    }

    private void Enter(int piece, int low, int high, CoursePart part)
    {
        var (row, list) = (rows[piece], parts[piece]);
        if (row.Count == 0 || row[^1].Low != low || row[^1].High != high)
        {
            row.Add(new(low, high, list.Count, 0));
        }

        // What runs over the opening of a ring comes last and stands first.
        int at = list.Count;
        while (at > row[^1].First && list[at - 1].Left > part.Left)
        {
            at--;
        }

        list.Insert(at, part);
        row[^1] = row[^1] with { Count = row[^1].Count + 1 };
    }

    private void Put(int piece, bool isFold, double along, double up, double depth)
    {
        Point2 on = pieces.Place(piece, along), off = pieces.Off(piece, isFold) * depth;
        places.Add(new(on.X, on.Y, up));
        places.Add(new(on.X + off.X, on.Y + off.Y, up));
    }

    /// <summary>Whether a piece's rows lie over one another, and their parts beside one another, apart from its border.</summary>
    private bool IsClear(int index)
    {
        var piece = pieces[index];
        var (row, list) = (rows[index], parts[index]);
        int width = ReliefPiece.Steps(piece.End - piece.Start);
        for (int r = 0; r < row.Count; r++)
        {
            var part = System.Runtime.InteropServices.CollectionsMarshal.AsSpan(list).Slice(row[r].First, row[r].Count);
            bool clear = (r == 0 || row[r].Low >= row[r - 1].High + Apart) && (part[0].Left == 0 ? FoldsLeft(index) : part[0].Left >= Apart)
                && (part[^1].Right == width ? pieces.Folds(index) : part[^1].Right <= width - Apart);
            for (int k = 0; clear && k < part.Length; k++)
            {
                clear = part[k].Right >= part[k].Left + Apart && (k == 0 || part[k].Left >= part[k - 1].Right + Apart);
            }

            if (!clear)
            {
                return false;
            }
        }

        return row.Count > 0 && Border(piece, row, width, list.Exists(p => p.Left == 0 || p.Right == width));
    }

    private bool FoldsLeft(int index) => index > 0 || pieces.IsRing;

    // The border passes below all rows and above them: foot and top between its ends, which have corners of their own only where no part runs over them.
    private static bool Border(ReliefPiece piece, List<CourseRow> row, int width, bool runsOver)
    {
        for (int i = 0; i < piece.Corners.Length; i++)
        {
            int along = piece.Along(i), up = piece.Up(i);
            if (along > 0 && along < width && up > row[0].Low - Apart && up < row[^1].High + Apart)
            {
                return false;
            }
        }

        var (left, right) = (Ends(0), Ends(width));
        bool plain = left.Count == 2 && right.Count == 2;
        return (plain || !runsOver) && Math.Max(left.Low, right.Low) <= row[0].Low - Apart && Math.Min(left.High, right.High) >= row[^1].High + Apart;

        (int Low, int High, int Count) Ends(int at)
        {
            var (low, high, count) = (int.MaxValue, int.MinValue, 0);
            for (int i = 0; i < piece.Corners.Length; i++)
            {
                if (piece.Along(i) == at)
                {
                    int up = piece.Up(i);
                    (low, high, count) = (Math.Min(low, up), Math.Max(high, up), count + 1);
                }
            }

            return (low, high, count);
        }
    }

    private static int Steps(double length) => ReliefPiece.Steps(length);
}
