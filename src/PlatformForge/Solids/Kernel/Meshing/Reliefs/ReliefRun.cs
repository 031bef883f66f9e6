using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Solids.Reliefs;
using static System.FormattableString;

namespace PlatformForge.Solids.Kernel.Meshing.Reliefs;

/// <summary>
/// One panel with its fields. Each flat piece's remainder, what no field covers, goes through a plane sweep; a field is a floor with its sides, parted at
/// folds, where its
/// floor is mitred.
/// </summary>
internal sealed class ReliefRun(PanelPieces pieces, WallPanel panel, PolygonStore store, GrowingArray<Point3> places, byte? ground)
{
    private readonly List<ReliefOutline> fields = [];
    private readonly List<(ReliefOutline Field, int Corner)>[] sides = Lists<(ReliefOutline, int)>(pieces.Count);
    private readonly List<(ReliefOutline Field, int Corner)>[] crossings = Lists<(ReliefOutline, int)>(pieces.Count);
    private readonly ReliefFloor floor = new(pieces, panel, store);

    // The corner of the sweep that a vertex is, plus one; nought for none. Those of a piece are forgotten after it.
    private int[] cornerOf = [];

    private readonly List<ReliefOutline> opened = [];

    /// <summary>What the fields add, mm³.</summary>
    public double Volume { get; private set; }

    /// <summary>Finds the wall that a field comes out in.</summary>
    public Func<ReliefField, ReliefPiece?> Behind { get; init; } = _ => null;

    /// <summary>The fields taken that come out in a wall behind.</summary>
    public IEnumerable<ReliefOutline> Through => fields.Where(f => f.Behind is not null);

    /// <summary>Takes fields of another wall that come out in this one, which is flat.</summary>
    public void Open(IReadOnlyList<ReliefOutline> outlines) => opened.AddRange(outlines);

    /// <summary>Takes a field, and gives its outline.</summary>
    public ReliefOutline Enter(ReliefField field)
    {
        var outline = new ReliefOutline(pieces, field, places, Behind(field));
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
        cornerOf = swept is null || Array.Exists(swept, s => s) ? new int[places.Count] : [];
        for (int i = 0; i < pieces.Count; i++)
        {
            if (swept?[i] ?? true)
            {
                Remainder(i, sweep);
            }
        }

        fields.ForEach(f => Raise(f, sweep));
        sweep.GiveBack();
        floor.GiveBack();
    }

    private static List<T>[] Lists<T>(int count) => [.. Enumerable.Range(0, count).Select(_ => new List<T>())];

    /// <summary>Meshes what fields leave of a piece. Borders are told side by side, the remainder on the left: the panel's as it is, the fields'
    /// backwards.</summary>
    private void Remainder(int index, RegionSweep sweep)
    {
        var piece = pieces[index];
        sweep.Clear();
        Border(index, sweep);
        foreach (var (field, corner) in sides[index])
        {
            sweep.Follow(Of(index, field.After(corner), sweep), Of(index, field.Corners[corner], sweep));
        }

        // Seen from behind an outline runs the other way round.
        foreach (var field in opened)
        {
            for (int i = 0; i < field.Corners.Count; i++)
            {
                sweep.Follow(Out(piece, field.Corners[i], sweep), Out(piece, field.After(i), sweep));
            }
        }

        if (!sweep.Cut(store, isBottom: false, ground ?? piece.Paint))
        {
            throw new ArgumentException(Invariant($"The relief of '{panel.Face}' has fields that touch one another, themselves or the panel's border ")
                + Invariant($"between {piece.Start:0.###} and {piece.End:0.###} mm."));
        }

        foreach (int vertex in sweep.Levels)
        {
            cornerOf[vertex] = 0;
        }
    }

    // The panel's border, as far as it is a piece's: its folds are passed with the fields that run over them.
    private void Border(int index, RegionSweep sweep)
    {
        var piece = pieces[index];
        for (int i = 0; i < piece.Corners.Length; i++)
        {
            int next = (i + 1) % piece.Corners.Length, width = ReliefPiece.Steps(piece.End - piece.Start);
            bool right = pieces.Folds(index) && piece.Along(i) == width && piece.Along(next) == width;
            bool left = (index > 0 || pieces.IsRing) && piece.Along(i) == 0 && piece.Along(next) == 0;
            int from = Corner(piece.Corners[i].Level, piece.Along(i), piece.Up(i), sweep);
            int to = Corner(piece.Corners[next].Level, piece.Along(next), piece.Up(next), sweep);
            if (right || left)
            {
                FoldSide(index, right, (from, to), sweep);
            }
            else
            {
                sweep.Follow(from, to);
            }
        }
    }

    private int Corner(int vertex, int along, int up, RegionSweep sweep)
    {
        if (cornerOf[vertex] == 0)
        {
            sweep.Add(vertex, along, up);
            cornerOf[vertex] = sweep.Count;
        }

        return cornerOf[vertex] - 1;
    }

    private int Of(int index, OutlineCorner corner, RegionSweep sweep) =>
        Corner(corner.Vertex, ReliefPiece.Steps(On(index, corner)), ReliefPiece.Steps(corner.Up), sweep);

    private int Out(ReliefPiece piece, OutlineCorner corner, RegionSweep sweep) =>
        Corner(corner.Vertex + 1, ReliefPiece.Steps(BehindAlong(piece, corner)), ReliefPiece.Steps(corner.Up), sweep);

    // Up the right fold of a piece or down its left one, past the fields that run over it: each comes and goes in pairs of crossings.
    private void FoldSide(int index, bool right, (int From, int To) side, RegionSweep sweep)
    {
        var met = crossings[right ? index : (index + pieces.Count - 1) % pieces.Count];
        int from = side.From;
        for (int k = 0; k + 1 < met.Count; k += 2)
        {
            var (near, far) = right ? (met[k], met[k + 1]) : (met[^(k + 1)], met[^(k + 2)]);
            sweep.Follow(from, Of(index, near.Field.Corners[near.Corner], sweep));
            from = Of(index, far.Field.Corners[far.Corner], sweep);
        }

        sweep.Follow(from, side.To);
    }

    private double On(int piece, OutlineCorner corner) => ReliefFloor.On(pieces, piece, corner);

    private void Raise(ReliefOutline field, RegionSweep sweep)
    {
        for (int i = 0; i < field.Corners.Count; i++)
        {
            OutlineCorner a = field.Corners[i], b = field.After(i);
            var piece = pieces[field.PieceAfter(i)];
            store.AddQuad(a.Vertex, b.Vertex, b.Vertex + 1, a.Vertex + 1, field.On(piece));
            Volume += field.Behind is null ? Skew(a, b, piece, field.Out) : 0;
        }

        Volume = field.Behind is null ? floor.Of(field, sweep, Volume) : Volume - new ThroughVolume(places, field).Of(floor.Mouths(field));
    }

    /// <summary>Place along a wall behind of where a corner comes out in it, mm from its left end.</summary>
    private double BehindAlong(ReliefPiece behind, OutlineCorner corner) =>
        Point2.Dot(new Point2(places[corner.Vertex + 1].X, places[corner.Vertex + 1].Y) - behind.Left, behind.Ahead);

    // A side of a field that slopes towards a fold is no plane but two triangles: what they hold more than the surface between them, mm³.
    private static double Skew(OutlineCorner a, OutlineCorner b, ReliefPiece piece, double depth) =>
        (b.Up - a.Up) * depth * (Point2.Dot(b.Off, piece.Ahead) - Point2.Dot(a.Off, piece.Ahead)) / 12;
}
