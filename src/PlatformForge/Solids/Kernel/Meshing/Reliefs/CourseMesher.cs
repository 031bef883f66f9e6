using PlatformForge.Solids.Kernel.Meshing.Cutting;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel.Meshing.Reliefs;

/// <summary>
/// Meshes a panel of rows without a sweep: what fields leave of a flat piece is strips between rows, gaps within them, and strips along its border,
/// each monotone. In time linear in
/// the number of fields.
/// </summary>
internal sealed class CourseMesher(PanelPieces pieces, CourseLayout layout, PolygonStore store, byte? ground)
{
    private readonly MonotonePolygon polygon = new();
    private readonly List<(int Vertex, int Along, int Up)> ring = [];

    /// <summary>What its fields add, mm³.</summary>
    public double Volume { get; private set; }

    /// <summary>Meshes all fields and pieces that are not swept.</summary>
    public void Mesh()
    {
        foreach (var field in layout.Fields)
        {
            if (field.Vertex >= 0)
            {
                Raise(field);
            }
        }

        for (int i = 0; i < pieces.Count; i++)
        {
            if (!layout.Swept[i])
            {
                Remainder(i);
            }
        }

        polygon.GiveBack();
    }

    /// <summary>Floor and sides of a field, and what it holds.</summary>
    private void Raise(in CourseField field)
    {
        int count = field.LastPiece - field.FirstPiece, low = field.Vertex, high = low + (2 * (count + 2)), end = 2 * (count + 1);
        byte last = pieces[field.LastPiece].Paint;
        store.AddQuad(low + end, high + end, high + end + 1, low + end + 1, last);
        store.AddQuad(high, low, low + 1, high + 1, pieces[field.FirstPiece].Paint);
        for (int k = 0; k <= count; k++)
        {
            int piece = field.FirstPiece + k, a = low + (2 * k), b = high + (2 * k);
            var flat = pieces[piece];
            store.AddQuad(a, a + 2, a + 3, a + 1, flat.Paint);
            store.AddQuad(b + 2, b, b + 1, b + 3, flat.Paint);
            store.AddQuad(a + 1, a + 3, b + 3, b + 1, flat.Paint);
            var (wall, floor) = layout.Lengths(field, k);
            Volume += (field.High - field.Low) * field.Out * (wall + floor) / 2;
        }
    }

    /// <summary>What fields leave of a piece.</summary>
    private void Remainder(int index)
    {
        var piece = pieces[index];
        var (row, list) = layout.On(index);
        byte paint = ground ?? piece.Paint;
        for (int r = 0; r < row.Count; r++)
        {
            for (int k = row[r].First; k + 1 < row[r].First + row[r].Count; k++)
            {
                store.AddQuad(list[k].LowRight, list[k + 1].LowLeft, list[k + 1].HighLeft, list[k].HighRight, paint);
            }

            if (r > 0)
            {
                Begin();
                Upper(list, row[r - 1], false);
                Lower(list, row[r], true);
                Emit(paint, false);
            }
        }

        Edges(index, paint);
    }

    // Strips along the border: under the first row, over the last, and beside the rows between corners of the border that they run into.
    private void Edges(int index, byte paint)
    {
        var piece = pieces[index];
        var (row, list) = layout.On(index);
        int width = ReliefPiece.Steps(piece.End - piece.Start), n = piece.Corners.Length;
        int first = Enumerable.Range(0, n).OrderBy(piece.Along).ThenBy(piece.Up).First();
        var border = Enumerable.Range(0, n).Select(i => (first + i) % n).Select(i => (Vertex: piece.Corners[i].Level, Along: piece.Along(i),
            Up: piece.Up(i))).ToList();
        int right = border.FindIndex(c => c.Along == width), top = border.FindLastIndex(c => c.Along == width);
        int left = border.FindIndex(top, c => c.Along == 0);
        Begin();
        ring.AddRange(border[..(right + 1)]);
        Lower(list, row[0], true);
        Emit(paint, false);
        Begin();
        Upper(list, row[^1], false);
        ring.AddRange(border[top..(left + 1)]);
        Emit(paint, false);
        Side(border[right..(top + 1)], list, row, true, paint);
        Side([.. border[left..], border[0]], list, row, false, paint);
    }

    // Beside rows, up the right end or down the left one: a strip for all rows between two corners of the border, which rows that run over a fold
    // bring their own to.
    private void Side(List<(int Vertex, int Along, int Up)> border, List<CoursePart> list, List<CourseRow> row, bool isRight, byte paint)
    {
        int fold = border[0].Along, next = 0, from = isRight ? 0 : row.Count - 1;
        var open = new List<(int Vertex, int Along, int Up)> { border[next++] };
        var inner = new List<(int Vertex, int Along, int Up)>();
        for (int r = from; r >= 0 && r < row.Count; r += isRight ? 1 : -1)
        {
            var (near, far) = Corners(list, row[r], isRight);
            if (near.Along == fold)
            {
                open.Add(near);
                Close();
                open.Add(far);
            }
            else
            {
                inner.Add(near);
                inner.Add(far);
            }
        }

        open.AddRange(border[next..]);
        Close();

        void Close()
        {
            if (inner.Count > 0)
            {
                Begin();
                ring.AddRange(open);
                inner.Reverse();
                ring.AddRange(inner);
                Emit(paint, true);
            }

            open.Clear();
            inner.Clear();
        }
    }

    // The two corners of a row at an end, the one that is come to first before the other.
    private static ((int Vertex, int Along, int Up) Near, (int Vertex, int Along, int Up) Far) Corners(List<CoursePart> list, CourseRow row, bool isRight)
    {
        var part = list[isRight ? row.First + row.Count - 1 : row.First];
        return isRight ? ((part.LowRight, part.Right, row.Low), (part.HighRight, part.Right, row.High))
            : ((part.HighLeft, part.Left, row.High), (part.LowLeft, part.Left, row.Low));
    }

    private void Begin() => ring.Clear();

    private void Upper(List<CoursePart> list, CourseRow row, bool backwards) => Chain(list, row, backwards, row.High, static p => (p.HighLeft, p.HighRight));

    private void Lower(List<CoursePart> list, CourseRow row, bool backwards) => Chain(list, row, backwards, row.Low, static p => (p.LowLeft, p.LowRight));

    private void Chain(List<CoursePart> list, CourseRow row, bool backwards, int up, Func<CoursePart, (int Left, int Right)> of)
    {
        for (int i = 0; i < row.Count; i++)
        {
            var part = list[backwards ? row.First + row.Count - 1 - i : row.First + i];
            var (left, right) = of(part);
            ring.Add(backwards ? (right, part.Right, up) : (left, part.Left, up));
            ring.Add(backwards ? (left, part.Left, up) : (right, part.Right, up));
        }
    }

    /// <summary>Stores the ring, cut along it or, where it stands upright, up it.</summary>
    private void Emit(byte paint, bool isUpright)
    {
        polygon.Clear();
        int start = store.Count;
        foreach (var (vertex, along, up) in ring)
        {
            store.Add(vertex);
            polygon.Add(isUpright ? up : along, isUpright ? -along : up);
        }

        store.Close(start);
        if (!polygon.Cut())
        {
            throw new BrokenInvariantException("Solids: a strip beside a course is not monotone.");
        }

        foreach (var (a, b, c) in polygon.Triangles.Span)
        {
            store.AddTriangle(start + a, start + b, start + c, paint);
        }
    }
}
