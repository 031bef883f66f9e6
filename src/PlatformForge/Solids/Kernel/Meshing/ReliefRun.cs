using PlatformForge.Geometry;
using PlatformForge.Solids.Reliefs;
using static System.FormattableString;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// One panel with its fields. Each flat piece's remainder, what no field covers, goes through a plane sweep; a field is a floor with four sides, all of them
/// parted at folds, where its floor is mitred.
/// </summary>
internal sealed class ReliefRun(List<ReliefPiece> pieces, WallPanel panel, PolygonStore store, List<Point3> places)
{
    private readonly List<Entered> fields = [];

    /// <summary>What the fields add, mm³: each stretch of one is a trapezium in plan.</summary>
    public double Volume { get; private set; }

    public void Enter(ReliefField field)
    {
        bool whole = field.From < field.To && field.Low < field.High && field.Out != 0 && field.From > 0 && field.To < panel.Length;
        if (!whole)
        {
            throw new ArgumentException(Invariant($"A relief's field must have a length, a height and a depth and lie within its panel of {panel.Length:0.###} mm: {field}."));
        }

        var stations = new List<Station> { StationAt(field.From, field) };
        for (int i = 0; i + 1 < pieces.Count; i++)
        {
            if (pieces[i].End > field.From && pieces[i].End < field.To)
            {
                stations.Add(At(i, pieces[i].End, Mitre(pieces[i].Outward, pieces[i + 1].Outward), field));
            }
        }

        stations.Add(StationAt(field.To, field));
        fields.Add(new(field, stations));
    }

    public void Mesh()
    {
        var sweep = new RegionSweep();
        for (int i = 0; i < pieces.Count; i++)
        {
            Remainder(i, sweep);
        }

        sweep.GiveBack();
        fields.ForEach(Raise);
    }

    /// <summary>The direction, longer than one, whose end lies at the same distance from both walls.</summary>
    private static Point2 Mitre(Point2 a, Point2 b) => (a + b) * (1 / (1 + Point2.Dot(a, b)));

    private Station StationAt(double along, ReliefField field)
    {
        int piece = pieces.FindIndex(p => along < p.End);
        return At(piece, along, pieces[piece].Outward, field);
    }

    private Station At(int piece, double along, Point2 outward, ReliefField field)
    {
        var on = pieces[piece].Left + (pieces[piece].Ahead * (along - pieces[piece].Start));
        var off = on + (outward * field.Out);
        int first = places.Count;
        places.AddRange([new(on.X, on.Y, field.Low), new(on.X, on.Y, field.High), new(off.X, off.Y, field.Low), new(off.X, off.Y, field.High)]);
        return new(piece, along, off, first);
    }

    /// <summary>Meshes what fields leave of a piece. Borders are told side by side, the remainder on the left: the panel's as it is, the fields' backwards.</summary>
    private void Remainder(int index, RegionSweep sweep)
    {
        var piece = pieces[index];
        var known = new Dictionary<int, int>();
        sweep.Clear();
        for (int i = 0; i < piece.Corners.Length; i++)
        {
            int next = (i + 1) % piece.Corners.Length;
            bool right = index + 1 < pieces.Count && piece.Along(i) == Width(piece) && piece.Along(next) == Width(piece);
            bool left = index > 0 && piece.Along(i) == 0 && piece.Along(next) == 0;
            int from = Corner(piece.Corners[i].Level, piece.Along(i), piece.Up(i)), to = Corner(piece.Corners[next].Level, piece.Along(next), piece.Up(next));
            if (right || left)
            {
                FoldSide(right ? index : index - 1, right, from, to);
            }
            else
            {
                sweep.Follow(from, to);
            }
        }

        foreach (var (field, stations) in fields)
        {
            for (int k = 0; k + 1 < stations.Count; k++)
            {
                Bite(field, stations, k);
            }
        }

        if (!sweep.Cut(store, isBottom: false, piece.Paint))
        {
            throw new ArgumentException(Invariant($"The relief of '{panel.Face}' has fields that touch one another or the panel's border between {piece.Start:0.###} and {piece.End:0.###} mm."));
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

        int Of(Station station, bool high, double height) => Corner(station.First + (high ? 1 : 0), ReliefPiece.Steps(station.Along - piece.Start), ReliefPiece.Steps(height));

        // Up or down a fold, past the fields that run over it.
        void FoldSide(int fold, bool up, int from, int to)
        {
            var crossing = fields.SelectMany(f => f.Stations.Skip(1).SkipLast(1).Where(s => s.Piece == fold).Select(s => (f.Field, Station: s)));
            foreach (var (field, station) in up ? crossing.OrderBy(c => c.Field.Low) : crossing.OrderByDescending(c => c.Field.Low))
            {
                sweep.Follow(from, Of(station, !up, up ? field.Low : field.High));
                from = Of(station, up, up ? field.High : field.Low);
            }

            sweep.Follow(from, to);
        }

        void Bite(ReliefField field, List<Station> stations, int k)
        {
            Station a = stations[k], b = stations[k + 1];
            if (PieceOf(stations, k) != index)
            {
                return;
            }

            int la = Of(a, false, field.Low), ha = Of(a, true, field.High), lb = Of(b, false, field.Low), hb = Of(b, true, field.High);
            sweep.Follow(lb, la);
            sweep.Follow(ha, hb);
            if (k == 0)
            {
                sweep.Follow(la, ha);
            }

            if (k + 2 == stations.Count)
            {
                sweep.Follow(hb, lb);
            }
        }
    }

    private static int Width(ReliefPiece piece) => ReliefPiece.Steps(piece.End - piece.Start);

    /// <summary>The piece that a field crosses from one of its stations to the next.</summary>
    private static int PieceOf(List<Station> stations, int k) => k == 0 ? stations[0].Piece : stations[k].Piece + 1;

    private void Raise(Entered entered)
    {
        var (field, stations) = entered;
        for (int k = 0; k + 1 < stations.Count; k++)
        {
            Station a = stations[k], b = stations[k + 1];
            var piece = pieces[PieceOf(stations, k)];
            store.AddQuad(a.First, b.First, b.First + 2, a.First + 2, piece.Paint); // lower side
            store.AddQuad(b.First + 1, a.First + 1, a.First + 3, b.First + 3, piece.Paint); // upper side
            store.AddQuad(a.First + 2, b.First + 2, b.First + 3, a.First + 3, piece.Paint); // floor
            double width = b.Along - a.Along, floor = Point2.Dot(b.Off - a.Off, piece.Ahead);
            if (floor <= 0)
            {
                throw new ArgumentException(Invariant($"The relief of '{panel.Face}' is too deep for the bend at {b.Along:0.###} mm: {field}."));
            }

            Volume += (field.High - field.Low) * field.Out * (width + floor) / 2;
        }

        Station first = stations[0], last = stations[^1];
        store.AddQuad(first.First + 1, first.First, first.First + 2, first.First + 3, pieces[first.Piece].Paint);
        store.AddQuad(last.First, last.First + 1, last.First + 3, last.First + 2, pieces[last.Piece].Paint);
    }

    private sealed record Entered(ReliefField Field, List<Station> Stations);

    /// <summary>A place along a field: on the wall low and high, and off it low and high, are four vertices from First on.</summary>
    private readonly record struct Station(int Piece, double Along, Point2 Off, int First);
}
