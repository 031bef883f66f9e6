using PlatformForge.Geometry;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel.Meshing.Polygons;

/// <summary>
/// The flat pieces of a panel, one after another. Fold i is at the right end of piece i. On a ring pieces are counted on beyond the opening: piece n is
/// piece 0 again,
/// a whole length farther along.
/// </summary>
internal sealed class PanelPieces
{
    // Nearer to a fold than this, mm, is on it: corners and folds lie on the grid.
    private const double OnFold = Tolerances.GridStep;

    // A piece shorter than this, mm, as is left between a station and what crosses its wall right beside it, has a direction of its own only by the grid's
    // rounding: a step across it turns it by up to half a right angle. What stands out of it does so as its neighbours have it; beyond this length a step
    // turns it by 0.001 at most, by which fields 20 mm deep do not close up.
    private const double Stump = 1024 * Tolerances.GridStep;

    private readonly List<ReliefPiece> pieces;
    private readonly double[] ends;
    private readonly Point2[] mitres, outward;

    public PanelPieces(List<ReliefPiece> pieces, bool isRing)
    {
        (this.pieces, IsRing) = (pieces, isRing);
        ends = [.. pieces.Select(p => p.End)];
        mitres = new Point2[pieces.Count];
        outward = new Point2[pieces.Count];
        for (int i = 0; i < pieces.Count; i++)
        {
            mitres[i] = Between(Told(i, -1), Told(i + 1, 1), i);
            outward[i] = IsStump(i) ? mitres[i] : pieces[i].Outward;
        }
    }

    public bool IsRing { get; }

    public int Count => pieces.Count;

    public double Length => ends[^1];

    public ReliefPiece this[int piece] => pieces[piece % pieces.Count];

    /// <summary>Whether there is a fold at a piece's right end.</summary>
    public bool Folds(int piece) => IsRing || piece + 1 < pieces.Count;

    /// <summary>Whether a place may be one of a field.</summary>
    public bool Holds(Point2 p) => p.X > 0 && p.X < (IsRing ? 2 : 1) * Length && double.IsFinite(p.Y);

    /// <summary>The piece at a place along; at a fold the one beyond it.</summary>
    public int At(double along)
    {
        int round = IsRing ? (int)(along / Length) : 0;
        int found = Array.BinarySearch(ends, along - (round * Length));
        return Math.Min(found >= 0 ? found + 1 : ~found, pieces.Count - (IsRing ? 0 : 1)) + (round * pieces.Count);
    }

    /// <summary>Place along of the fold at a piece's right end, mm.</summary>
    public double FoldAt(int piece) => ends[piece % pieces.Count] + (piece / pieces.Count * Length);

    /// <summary>The fold that a place along lies on; null where it lies on none.</summary>
    public int? FoldNear(double along)
    {
        int piece = At(along);
        return Folds(piece % pieces.Count) && Math.Abs(FoldAt(piece) - along) < OnFold ? piece
            : piece > 0 && Folds((piece - 1) % pieces.Count) && Math.Abs(FoldAt(piece - 1) - along) < OnFold ? piece - 1
            : null;
    }

    /// <summary>A place along a piece in plan.</summary>
    public Point2 Place(int piece, double along)
    {
        var flat = this[piece];
        return flat.Left + (flat.Ahead * (along - StartOf(piece)));
    }

    /// <summary>Where a piece begins along the panel, mm.</summary>
    public double StartOf(int piece) => this[piece].Start + (piece / pieces.Count * Length);

    /// <summary>Out of the wall by a mm: square to a piece, or at the fold at its right end to where both neighbours' surfaces meet.</summary>
    public Point2 Off(int piece, bool isFold) => isFold ? mitres[piece % pieces.Count] : outward[piece % pieces.Count];

    // Where the surfaces of two pieces meet; that of one where the other, below nought, is none.
    private Point2 Between(int before, int after, int own) =>
        Mitre(pieces[before >= 0 ? before : after >= 0 ? after : own].Outward, pieces[after >= 0 ? after : before >= 0 ? before : own].Outward);

    // The nearest piece, from one on to the left or to the right, whose direction is its wall's; below nought where there is none.
    private int Told(int from, int step)
    {
        for (int k = 0, i = from; k < pieces.Count; k++, i += step)
        {
            if (IsRing || (i >= 0 && i < pieces.Count))
            {
                int at = ((i % pieces.Count) + pieces.Count) % pieces.Count;
                if (!IsStump(at))
                {
                    return at;
                }
            }
        }

        return -1;
    }

    private bool IsStump(int piece) => pieces[piece].End - pieces[piece].Start < Stump;

    // The direction, longer than one, whose end lies at the same distance from both walls.
    private static Point2 Mitre(Point2 a, Point2 b) => (a + b) * (1 / (1 + Point2.Dot(a, b)));
}
