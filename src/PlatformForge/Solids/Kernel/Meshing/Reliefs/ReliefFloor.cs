using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Solids.Reliefs;
using static System.FormattableString;

namespace PlatformForge.Solids.Kernel.Meshing.Reliefs;

/// <summary>Floors of fields, piece by piece, and what lies under them.</summary>
internal sealed class ReliefFloor(PanelPieces pieces, WallPanel panel, PolygonStore store)
{
    // The corner that follows each along the border of a part, below nought for those of other parts; which have one, in order; those at an end.
    private readonly GrowingArray<int> next = new(16), order = new(16), end = new(16), ring = new(16);

    // Places of corners along a piece, on the wall and off it, mm.
    private readonly GrowingArray<(double Wall, double Off)> place = new(16);

    /// <summary>Place of a corner along a piece from its left end, mm.</summary>
    public static double On(PanelPieces pieces, int piece, in OutlineCorner corner) =>
        !corner.IsFold ? corner.Along - pieces.StartOf(corner.Piece) : corner.Piece % pieces.Count == piece ? pieces[piece].End - pieces[piece].Start : 0;

    /// <summary>Meshes the floor of a field.</summary>
    /// <returns>A volume with what the field adds to it, mm³.</returns>
    public double Of(ReliefOutline field, RegionSweep sweep, double volume)
    {
        for (int i = 0; i < field.Corners.Count; i++)
        {
            int piece = field.PieceAfter(i), first = 0;
            while (field.PieceAfter(first) != piece)
            {
                first++;
            }

            volume = first == i ? Part(field, piece, sweep, volume) : volume;
        }

        return volume;
    }

    /// <summary>The pieces that a field lies on, each with its area there on the wall, mm².</summary>
    public IEnumerable<(ReliefPiece Piece, double Area)> Mouths(ReliefOutline field)
    {
        foreach (int on in Enumerable.Range(0, field.Corners.Count).Select(field.PieceAfter).Distinct())
        {
            int index = on % pieces.Count;
            Border(field, on);
            place.Clear();
            foreach (var corner in field.Corners)
            {
                double wall = On(pieces, index, corner);
                place.Add((wall, wall));
            }

            yield return (pieces[index], Area(field, false));
        }
    }

    public void GiveBack()
    {
        next.GiveBack();
        order.GiveBack();
        end.GiveBack();
        ring.GiveBack();
        place.GiveBack();
    }

    /// <summary>The floor of what lies of a field on a piece, and the volume under it: between parallel planes, every level's area lies between the
    /// two.</summary>
    private double Part(ReliefOutline field, int on, RegionSweep sweep, double volume)
    {
        int index = on % pieces.Count;
        var piece = pieces[index];
        Border(field, on);
        place.Clear();
        foreach (ref readonly var corner in System.Runtime.InteropServices.CollectionsMarshal.AsSpan(field.Corners))
        {
            double wall = On(pieces, index, corner);
            place.Add((wall, wall + Point2.Dot(corner.Off, piece.Ahead)));
        }

        volume += field.Out * (Area(field, false) + Area(field, true)) / 2;
        if (IsRing() && IsConvex(field))
        {
            foreach (ref int corner in ring.Span)
            {
                corner = field.Corners[corner].Vertex + 1;
            }

            store.AddFan(ring.Span, field.On(piece));
        }
        else if (!Swept(field, sweep, field.On(piece)))
        {
            throw new ArgumentException(Invariant($"The relief of '{panel.Face}' has a field that crosses itself, or is too deep for a bend, ")
                + Invariant($"between {piece.Start:0.###} and {piece.End:0.###} mm."));
        }

        return volume;
    }

    // Where it ends at a fold its border goes on along that: up on the right, down on the left.
    private void Border(ReliefOutline field, int on)
    {
        int count = field.Corners.Count, index = on % pieces.Count;
        next.Clear();
        next.Extend(count).Fill(-1);
        order.Clear();
        for (int i = 0; i < count; i++)
        {
            if (field.PieceAfter(i) == on)
            {
                next[i] = i + 1 < count ? i + 1 : 0;
                order.Add(i);
            }
        }

        if (field.Crossings.Length > 0)
        {
            Fold(field, index, true);
            Fold(field, (index + pieces.Count - 1) % pieces.Count, false);
        }
    }

    private void Fold(ReliefOutline field, int fold, bool right)
    {
        end.Clear();
        foreach (int i in field.Crossings)
        {
            // The outline really leaves or enters the piece there.
            if (field.Corners[i].Piece % pieces.Count == fold && (next[i] >= 0 || next.Span.Contains(i)))
            {
                end.Add(i);
                for (int k = end.Count - 1; k > 0 && field.Corners[end[k - 1]].Up > field.Corners[i].Up; k--)
                {
                    (end[k], end[k - 1]) = (end[k - 1], i);
                }
            }
        }

        for (int k = 0; k + 1 < end.Count; k += 2)
        {
            var (from, to) = right ? (end[k], end[k + 1]) : (end[k + 1], end[k]);
            if (next[from] < 0)
            {
                order.Add(from);
            }

            next[from] = to;
        }
    }

    private double Area(ReliefOutline field, bool off)
    {
        double twice = 0;
        foreach (int a in order.Span)
        {
            int b = next[a];
            double from = off ? place[a].Off : place[a].Wall, to = off ? place[b].Off : place[b].Wall;
            twice += (from * field.Corners[b].Up) - (to * field.Corners[a].Up);
        }

        return twice / 2;
    }

    // Whether the corners are one border, which is told in order.
    private bool IsRing()
    {
        ring.Clear();
        int first = order[0], at = first;
        do
        {
            ring.Add(at);
            at = next[at];
        }
        while (at != first && ring.Count <= order.Count);
        return ring.Count == order.Count;
    }

    // Whether every corner turns to the left.
    private bool IsConvex(ReliefOutline field)
    {
        int count = ring.Count;
        for (int i = 0; i < count; i++)
        {
            var (a, b, c) = (At(ring[i]), At(ring[(i + 1) % count]), At(ring[(i + 2) % count]));
            if (((long)(b.Along - a.Along) * (c.Up - b.Up)) - ((long)(b.Up - a.Up) * (c.Along - b.Along)) <= 0)
            {
                return false;
            }
        }

        return true;

        (int Along, int Up) At(int corner) => (ReliefPiece.Steps(place[corner].Off), ReliefPiece.Steps(field.Corners[corner].Up));
    }

    private bool Swept(ReliefOutline field, RegionSweep sweep, byte paint)
    {
        sweep.Clear();
        var known = new Dictionary<int, int>();
        foreach (int i in order.Span)
        {
            known[i] = sweep.Count;
            sweep.Add(field.Corners[i].Vertex + 1, ReliefPiece.Steps(place[i].Off), ReliefPiece.Steps(field.Corners[i].Up));
        }

        foreach (int i in order.Span)
        {
            sweep.Follow(known[i], known[next[i]]);
        }

        return sweep.Cut(store, isBottom: false, paint);
    }
}
