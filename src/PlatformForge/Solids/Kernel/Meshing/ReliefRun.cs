using PlatformForge.Geometry;
using PlatformForge.Solids.Reliefs;
using static System.FormattableString;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// One panel with its fields. Each flat piece's remainder, what no field covers, goes through a plane sweep; a field is a floor with its sides, parted at
/// folds, where its
/// floor is mitred.
/// </summary>
internal sealed class ReliefRun(PanelPieces pieces, WallPanel panel, PolygonStore store, List<Point3> places, byte? ground)
{
    private readonly List<ReliefOutline> fields = [];
    private readonly List<(ReliefOutline Field, int Corner)>[] sides = Lists<(ReliefOutline, int)>(pieces.Count);
    private readonly List<(ReliefOutline Field, int Corner)>[] crossings = Lists<(ReliefOutline, int)>(pieces.Count);

    /// <summary>What the fields add, mm³.</summary>
    public double Volume { get; private set; }

    /// <summary>Takes a field, and gives its outline.</summary>
    public ReliefOutline Enter(ReliefField field)
    {
        var outline = new ReliefOutline(pieces, field, places);
        fields.Add(outline);
        for (int i = 0; i < outline.Corners.Count; i++)
        {
            sides[outline.PieceAfter(i) % pieces.Count].Add((outline, i));
        }

        foreach (int i in outline.Crossings)
        {
            crossings[outline.Corners[i].Piece % pieces.Count].Add((outline, i));
        }

        return outline;
    }

    /// <summary>Meshes all fields taken, and what they leave of the pieces that are to be swept: all where nothing is said.</summary>
    public void Mesh(bool[]? swept = null)
    {
        foreach (var fold in crossings)
        {
            fold.Sort((a, b) => a.Field.Corners[a.Corner].Up.CompareTo(b.Field.Corners[b.Corner].Up));
        }

        var sweep = new RegionSweep();
        for (int i = 0; i < pieces.Count; i++)
        {
            if (swept?[i] ?? true)
            {
                Remainder(i, sweep);
            }
        }

        fields.ForEach(f => Raise(f, sweep));
        sweep.GiveBack();
    }

    private static List<T>[] Lists<T>(int count) => [.. Enumerable.Range(0, count).Select(_ => new List<T>())];

    /// <summary>Meshes what fields leave of a piece. Borders are told side by side, the remainder on the left: the panel's as it is, the fields'
    /// backwards.</summary>
    private void Remainder(int index, RegionSweep sweep)
    {
        var piece = pieces[index];
        var known = new Dictionary<int, int>();
        sweep.Clear();
        for (int i = 0; i < piece.Corners.Length; i++)
        {
            int next = (i + 1) % piece.Corners.Length, width = ReliefPiece.Steps(piece.End - piece.Start);
            bool right = pieces.Folds(index) && piece.Along(i) == width && piece.Along(next) == width;
            bool left = (index > 0 || pieces.IsRing) && piece.Along(i) == 0 && piece.Along(next) == 0;
            int from = Corner(piece.Corners[i].Level, piece.Along(i), piece.Up(i)), to = Corner(piece.Corners[next].Level, piece.Along(next), piece.Up(next));
            if (right || left)
            {
                FoldSide(right ? index : (index + pieces.Count - 1) % pieces.Count, right, from, to);
            }
            else
            {
                sweep.Follow(from, to);
            }
        }

        foreach (var (field, corner) in sides[index])
        {
            sweep.Follow(Of(field.After(corner)), Of(field.Corners[corner]));
        }

        if (!sweep.Cut(store, isBottom: false, ground ?? piece.Paint))
        {
            throw new ArgumentException(Invariant(
                $"The relief of '{panel.Face}' has fields that touch one another, themselves or the panel's border between {piece.Start:0.###} and {piece.End:0.###} mm."));
        }

        int Corner(int vertex, int along, int up)
        {
            if (!known.TryGetValue(vertex, out int corner))
            {
                known[vertex] = corner = sweep.Count;
                sweep.Add(vertex, along, up);
            }

            return corner;
        }

        int Of(OutlineCorner corner) => Corner(corner.Vertex, ReliefPiece.Steps(On(index, corner)), ReliefPiece.Steps(corner.Up));

        // Up or down a fold, past the fields that run over it: each comes and goes in pairs of crossings.
        void FoldSide(int fold, bool up, int from, int to)
        {
            var met = crossings[fold];
            for (int k = 0; k + 1 < met.Count; k += 2)
            {
                var (near, far) = up ? (met[k], met[k + 1]) : (met[^(k + 1)], met[^(k + 2)]);
                sweep.Follow(from, Of(near.Field.Corners[near.Corner]));
                from = Of(far.Field.Corners[far.Corner]);
            }

            sweep.Follow(from, to);
        }
    }

    /// <summary>Place of a corner along a piece from its left end, mm.</summary>
    private double On(int piece, OutlineCorner corner) =>
        !corner.IsFold ? corner.Along - pieces.StartOf(corner.Piece) : corner.Piece % pieces.Count == piece ? pieces[piece].End - pieces[piece].Start : 0;

    private void Raise(ReliefOutline field, RegionSweep sweep)
    {
        for (int i = 0; i < field.Corners.Count; i++)
        {
            OutlineCorner a = field.Corners[i], b = field.After(i);
            var piece = pieces[field.PieceAfter(i)];
            store.AddQuad(a.Vertex, b.Vertex, b.Vertex + 1, a.Vertex + 1, piece.Paint);
            Volume += Skew(a, b, piece, field.Out);
        }

        foreach (var part in Enumerable.Range(0, field.Corners.Count).GroupBy(field.PieceAfter))
        {
            Floor(field, part.Key % pieces.Count, [.. part], sweep);
        }
    }

    // A side of a field that slopes towards a fold is no plane but two triangles: what they hold more than the surface between them, mm³.
    private static double Skew(OutlineCorner a, OutlineCorner b, ReliefPiece piece, double depth) =>
        (b.Up - a.Up) * depth * (Point2.Dot(b.Off, piece.Ahead) - Point2.Dot(a.Off, piece.Ahead)) / 12;

    /// <summary>The floor of what lies of a field on a piece, and the volume under it: between parallel planes, every level's area lies between the
    /// two.</summary>
    private void Floor(ReliefOutline field, int index, int[] corners, RegionSweep sweep)
    {
        var piece = pieces[index];
        var next = new Dictionary<int, int>();
        foreach (int i in corners)
        {
            next[i] = (i + 1) % field.Corners.Count;
        }

        // Where it ends at a fold its border goes on along that: up on the right, down on the left.
        foreach (bool right in (bool[])[true, false])
        {
            int[] on = [.. field.Crossings.Where(i => IsAt(i, right)).OrderBy(i => field.Corners[i].Up)];
            for (int k = 0; k + 1 < on.Length; k += 2)
            {
                next[on[right ? k : k + 1]] = on[right ? k + 1 : k];
            }
        }

        double Wall(int i) => On(index, field.Corners[i]);
        double Off(int i) => Wall(i) + Point2.Dot(field.Corners[i].Off, piece.Ahead);
        Volume += field.Out * (Area(next, Wall, i => field.Corners[i].Up) + Area(next, Off, i => field.Corners[i].Up)) / 2;
        var ring = Ring(next);
        if (ring is not null && IsConvex(ring, i => (ReliefPiece.Steps(Off(i)), ReliefPiece.Steps(field.Corners[i].Up))))
        {
            store.AddFan([.. ring.Select(i => field.Corners[i].Vertex + 1)], piece.Paint);
            return;
        }

        sweep.Clear();
        var known = new Dictionary<int, int>();
        foreach (int i in next.Keys)
        {
            known[i] = sweep.Count;
            sweep.Add(field.Corners[i].Vertex + 1, ReliefPiece.Steps(Off(i)), ReliefPiece.Steps(field.Corners[i].Up));
        }

        foreach (var (from, to) in next)
        {
            sweep.Follow(known[from], known[to]);
        }

        if (!sweep.Cut(store, isBottom: false, piece.Paint))
        {
            throw new ArgumentException(Invariant($"The relief of '{panel.Face}' has a field that crosses itself, or is too deep for a bend, between {piece.Start:0.###} and {piece.End:0.###} mm."));
        }

        // A corner lies on the piece's right or left end, and the outline really leaves or enters the piece there.
        bool IsAt(int corner, bool right)
        {
            int at = field.Corners[corner].Piece % pieces.Count;
            return at == (right ? index : (index + pieces.Count - 1) % pieces.Count) && (next.ContainsKey(corner) || next.ContainsValue(corner));
        }
    }

    private static double Area(Dictionary<int, int> next, Func<int, double> along, Func<int, double> up) =>
        next.Sum(side => (along(side.Key) * up(side.Value)) - (along(side.Value) * up(side.Key))) / 2;

    // The corners in order; null for several borders.
    private static List<int>? Ring(Dictionary<int, int> next)
    {
        int first = next.Keys.First();
        var ring = new List<int> { first };
        for (int i = next[first]; i != first; i = next[i])
        {
            ring.Add(i);
        }

        return ring.Count == next.Count ? ring : null;
    }

    // Whether every corner turns to the left.
    private static bool IsConvex(List<int> ring, Func<int, (int Along, int Up)> place)
    {
        for (int i = 0; i < ring.Count; i++)
        {
            var (a, b, c) = (place(ring[i]), place(ring[(i + 1) % ring.Count]), place(ring[(i + 2) % ring.Count]));
            if (((long)(b.Along - a.Along) * (c.Up - b.Up)) - ((long)(b.Up - a.Up) * (c.Along - b.Along)) <= 0)
            {
                return false;
            }
        }

        return true;
    }
}
