using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Solids.Reliefs;
using static System.FormattableString;

namespace PlatformForge.Solids.Kernel.Meshing.Reliefs;

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
    private readonly GrowingArray<Point3> places;
    private readonly List<OutlineCorner> corners;
    private readonly ReliefPiece? behind;

    /// <param name="pieces">The panel's flat pieces.</param>
    /// <param name="field">The field.</param>
    /// <param name="places">Takes the places of its vertices.</param>
    /// <param name="behind">The wall that it comes out in; null where it has a floor.</param>
    public ReliefOutline(PanelPieces pieces, ReliefField field, GrowingArray<Point3> places, ReliefPiece? behind = null)
    {
        (this.pieces, this.field, this.places, this.behind) = (pieces, field, places, behind);
        var outline = field.Outline as Point2[] ?? [.. field.Outline];
        bool whole = outline.Length > 2 && field.Out != 0 && Array.TrueForAll(outline, pieces.Holds) && field.Area > 0;
        if (!whole)
        {
            throw new ArgumentException(
                Invariant($"A relief's field must have corners counter-clockwise, a depth, and lie within its panel of {pieces.Length:0.###} ")
                    + Invariant($"mm: {Told(field)}."));
        }

        corners = new(outline.Length + 2);
        int folds = 0;
        for (int i = 0; i < outline.Length; i++)
        {
            Point2 a = outline[i], b = outline[i + 1 < outline.Length ? i + 1 : 0];
            folds += Enter(a) ? 1 : 0;
            folds += Cross(a, b);
        }

        Crossings = folds == 0 ? [] : new int[folds];
        for (int i = 0, met = 0; met < folds; i++)
        {
            if (corners[i].IsFold)
            {
                Crossings[met++] = i;
                Refuse(i);
            }
        }
    }

    /// <summary>Its corners, counter-clockwise.</summary>
    public List<OutlineCorner> Corners => corners;

    /// <summary>Which of them lie on folds.</summary>
    public int[] Crossings { get; }

    public double Out => this.field.Out;

    /// <summary>What it shows on a piece.</summary>
    public byte On(ReliefPiece piece) => this.field.Paint ?? piece.Paint;

    /// <summary>The wall that it comes out in; null where it has a floor.</summary>
    public ReliefPiece? Behind => behind;

    /// <summary>The corner after one.</summary>
    public OutlineCorner After(int corner) => corners[corner + 1 < corners.Count ? corner + 1 : 0];

    /// <summary>The piece that the outline lies on from a corner to the next, told as the corners tell theirs.</summary>
    public int PieceAfter(int corner)
    {
        OutlineCorner a = corners[corner], b = After(corner);
        return !a.IsFold ? a.Piece : !b.IsFold ? b.Piece : Math.Max(a.Piece, b.Piece);
    }

    /// <summary>How it is told in messages.</summary>
    public static string Told(ReliefField field) =>
        Invariant($"[{string.Join(", ", field.Outline.Select(p => Invariant($"({p.X:0.###}, {p.Y:0.###})")))}], {field.Out:0.###} out");

    // Tells whether it lies on a fold.
    private bool Enter(Point2 p)
    {
        if (pieces.FoldNear(p.X) is { } fold)
        {
            Add(fold, true, pieces.FoldAt(fold), p.Y);
            return true;
        }

        Add(pieces.At(p.X), false, p.X, p.Y);
        return false;
    }

    // Where a side crosses folds between its ends, and how many.
    private int Cross(Point2 a, Point2 b)
    {
        int first = pieces.At(Math.Min(a.X, b.X)), last = pieces.At(Math.Max(a.X, b.X)), known = corners.Count;
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

        return corners.Count - known;
    }

    private void Add(int piece, bool isFold, double along, double up)
    {
        var on = pieces.Place(piece, along);
        var off = pieces.Off(piece, isFold) * (behind is null ? field.Out : Through(on, pieces.Off(piece, isFold)));
        corners.Add(new(piece, isFold, along, up, places.Count, off));
        places.Add(new(on.X, on.Y, up));
        places.Add(new(on.X + off.X, on.Y + off.Y, up));
    }

    // How far along a direction out of the wall, below nought, the wall behind lies.
    private double Through(Point2 on, Point2 outward)
    {
        double far = Point2.Dot(behind!.Left - on, behind.Outward) / Point2.Dot(outward, behind.Outward);
        double along = Point2.Dot(on + (outward * far) - behind.Left, behind.Ahead);
        if (far >= 0 || along <= 0 || along >= behind.End - behind.Start)
        {
            throw new ArgumentException(Invariant($"A relief's field comes out beside the wall behind it: {Told(field)}."));
        }

        return far;
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
            throw new ArgumentException(Invariant($"A relief's field has a corner on the bend at {corner.Along:0.###} mm without crossing it ")
                + Invariant($"there: {Told(field)}."));
        }
    }
}
