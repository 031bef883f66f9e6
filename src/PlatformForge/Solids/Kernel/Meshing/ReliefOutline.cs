using PlatformForge.Geometry;
using PlatformForge.Solids.Reliefs;
using static System.FormattableString;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>A corner of a field, or a place where its outline crosses a fold.</summary>
/// <param name="Piece">The piece that it lies on, or that ends at the fold; of a ring counted on beyond its opening.</param>
/// <param name="IsFold">Whether it lies on the fold at that piece's right end.</param>
/// <param name="Along">Place along the panel, mm.</param>
/// <param name="Up">Height over the baseboard, mm.</param>
/// <param name="Vertex">Its vertex on the wall; the one off the wall follows it.</param>
/// <param name="Off">The way from one to the other, in plan, mm.</param>
internal readonly record struct OutlineCorner(int Piece, bool IsFold, double Along, double Up, int Vertex, Point2 Off);

/// <summary>Follows a field's outline over the folds of its panel: every piece of it between two corners lies on one flat piece.</summary>
internal sealed class ReliefOutline
{
    private readonly PanelPieces pieces;
    private readonly ReliefField field;
    private readonly List<Point3> places;
    private readonly List<OutlineCorner> corners = [];

    /// <param name="pieces">The panel's flat pieces.</param>
    /// <param name="field">The field.</param>
    /// <param name="places">Takes the places of its vertices.</param>
    public ReliefOutline(PanelPieces pieces, ReliefField field, List<Point3> places)
    {
        (this.pieces, this.field, this.places) = (pieces, field, places);
        var outline = field.Outline;
        bool whole = outline.Count > 2 && field.Out != 0 && outline.All(pieces.Holds) && field.Area > 0;
        if (!whole)
        {
            throw new ArgumentException(
                Invariant($"A relief's field must have corners counter-clockwise, a depth, and lie within its panel of {pieces.Length:0.###} mm: {Told(field)}."));
        }

        for (int i = 0; i < outline.Count; i++)
        {
            Point2 a = outline[i], b = outline[(i + 1) % outline.Count];
            Enter(a);
            Cross(a, b);
        }

        Crossings = [.. corners.Select((c, i) => (Corner: c, Index: i)).Where(c => c.Corner.IsFold).Select(c => c.Index)];
        foreach (int i in Crossings)
        {
            Refuse(i);
        }
    }

    /// <summary>Its corners, counter-clockwise.</summary>
    public IReadOnlyList<OutlineCorner> Corners => corners;

    /// <summary>Which of them lie on folds.</summary>
    public int[] Crossings { get; }

    public double Out => this.field.Out;

    /// <summary>The corner after one.</summary>
    public OutlineCorner After(int corner) => corners[(corner + 1) % corners.Count];

    /// <summary>The piece that the outline lies on from a corner to the next, told as the corners tell theirs.</summary>
    public int PieceAfter(int corner)
    {
        OutlineCorner a = corners[corner], b = After(corner);
        return !a.IsFold ? a.Piece : !b.IsFold ? b.Piece : Math.Max(a.Piece, b.Piece);
    }

    /// <summary>How it is told in messages.</summary>
    public static string Told(ReliefField field) => Invariant($"[{string.Join(", ", field.Outline.Select(p => Invariant($"({p.X:0.###}, {p.Y:0.###})")))}], {field.Out:0.###} out");

    private void Enter(Point2 p)
    {
        int piece = pieces.At(p.X);
        if (pieces.FoldNear(p.X) is { } fold)
        {
            Add(fold, true, pieces.FoldAt(fold), p.Y);
        }
        else
        {
            Add(piece, false, p.X, p.Y);
        }
    }

    // Where a side crosses folds between its ends.
    private void Cross(Point2 a, Point2 b)
    {
        int first = pieces.At(Math.Min(a.X, b.X)), last = pieces.At(Math.Max(a.X, b.X));
        bool back = b.X < a.X;
        for (int k = 0; k < last - first; k++)
        {
            int fold = back ? last - 1 - k : first + k;
            double x = pieces.FoldAt(fold);
            if (fold != pieces.FoldNear(a.X) && fold != pieces.FoldNear(b.X))
            {
                Add(fold, true, x, a.Y + ((b.Y - a.Y) * (x - a.X) / (b.X - a.X)));
            }
        }
    }

    private void Add(int piece, bool isFold, double along, double up)
    {
        var on = pieces.Place(piece, along);
        var off = pieces.Off(piece, isFold) * field.Out;
        corners.Add(new(piece, isFold, along, up, places.Count, off));
        places.Add(new(on.X, on.Y, up));
        places.Add(new(on.X + off.X, on.Y + off.Y, up));
    }

    // A corner on a fold has one side on either piece.
    private void Refuse(int crossing)
    {
        var corner = corners[crossing];
        int before = PieceAfter((crossing + corners.Count - 1) % corners.Count), after = PieceAfter(crossing);
        var last = corners[(crossing + corners.Count - 1) % corners.Count];
        bool along = (last.IsFold && last.Piece == corner.Piece) || (After(crossing).IsFold && After(crossing).Piece == corner.Piece);
        if (along || before == after)
        {
            throw new ArgumentException(Invariant($"A relief's field has a corner on the bend at {corner.Along:0.###} mm without crossing it there: {Told(field)}."));
        }
    }
}
