using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// Meshes tops and bottoms: each surface, over however many faces of the plan it runs, is one polygon with the corners that the mesh
/// needs. A surface with a single border that is monotone in the order of nodes, as nearly all are, is cut at once; another one
/// goes through a plane sweep of its own. What neither can do is meshed face by face, as the plan was cut.
/// </summary>
internal sealed class RegionMesher
{
    private readonly PlanFaces faces;
    private readonly FaceColumns columns;
    private readonly NodeLevels levels;
    private readonly LevelCreases creases;
    private readonly SurfaceSeams seams;
    private readonly PolygonStore store;
    private readonly bool[] keeps;
    private bool anyKept;
    private readonly MonotonePolygon polygon = new();
    private readonly GrowingArray<Loop> loops = new(256);
    private readonly GrowingArray<int> border = new(1024);
    private readonly RegionSweep sweep;

    public RegionMesher(PlanFaces faces, FaceColumns columns, NodeLevels levels, LevelCreases creases, SurfaceSeams seams, PolygonStore store)
    {
        (this.faces, this.columns, this.levels, this.creases, this.seams, this.store) = (faces, columns, levels, creases, seams, store);
        keeps = Lent<bool>.Rent(columns.Total);
        keeps.AsSpan(0, columns.Total).Clear();
        sweep = new();
        KeepFolded();
    }

    /// <summary>Meshes all surfaces; false where one has to be kept as the plan was cut, which calls for corners that others have left out.</summary>
    public bool Mesh()
    {
        TraceAll();
        bool whole = true;
        for (int i = 0; i < loops.Count; i++)
        {
            var loop = loops[i];
            if (loop.Next != Loop.Inner && !Cut(loop))
            {
                whole = false;
                keeps[loop.Surface] = true;
            }
        }

        if (!whole)
        {
            NeedKept();
            return false;
        }

        if (anyKept)
        {
            new FaceMesher(faces, columns, levels, store).Mesh(keeps, seams);
        }

        return true;
    }

    /// <summary>Keeps every surface as the plan was cut.</summary>
    public void KeepAll()
    {
        keeps.AsSpan(0, columns.Total).Fill(true);
        NeedKept();
    }

    public void GiveBack()
    {
        Lent<bool>.GiveBack(keeps);
        polygon.GiveBack();
        loops.GiveBack();
        border.GiveBack();
        sweep.GiveBack();
    }

    /// <summary>Two boundaries that meet at three corners of a face may enclose nothing there: such a face is kept.</summary>
    private void KeepFolded()
    {
        bool any = false;
        for (int face = 0; face < faces.FaceCount; face++)
        {
            for (int k = 1; levels.Meet(face) && k < columns.Count[face]; k++)
            {
                if (Folded(face, k))
                {
                    int at = columns.Start[face] + k;
                    keeps[seams.Surface(at)] = keeps[seams.Surface(at - 1)] = any = true;
                }
            }
        }

        if (any)
        {
            NeedKept();
        }
    }

    private bool Folded(int face, int k)
    {
        int meeting = 0, first = faces.FaceStart[face], h = first;
        do
        {
            int corner = levels.CornerStart[h] + k;
            meeting += levels.Corner[corner] == levels.Corner[corner - 1] ? 1 : 0;
            h = faces.Next[h];
        }
        while (h != first);
        return meeting >= 3;
    }

    private void NeedKept()
    {
        anyKept = true;
        for (int h = 0; h < faces.Origin.Length; h++)
        {
            int face = faces.Face[h], corner = levels.CornerStart[h];
            for (int k = 0; k < columns.Count[face]; k++)
            {
                if (keeps[seams.Surface(columns.Start[face] + k)])
                {
                    creases.Need(levels.Corner[corner + k]);
                }
            }
        }
    }

    private void TraceAll()
    {
        loops.Clear();
        border.Clear();
        int corners = levels.Corner.Length;
        bool[] seen = Lent<bool>.Rent(corners);
        int[] loopOf = Lent<int>.Rent(columns.Total);
        seen.AsSpan(0, corners).Clear();
        loopOf.AsSpan(0, columns.Total).Fill(-1);
        for (int h = 0; h < 2 * faces.Plan.EdgeCount; h++)
        {
            int face = faces.Face[h], start = levels.CornerStart[h];
            var column = columns.Of(face);
            for (int k = 0; k < column.Length; k++)
            {
                if (column[k].IsSurface && !seen[start + k] && seams.Across(start + k) < 0)
                {
                    int surface = seams.Surface(columns.Start[face] + k);
                    if (!keeps[surface])
                    {
                        Trace(h, k, surface, seen, loopOf);
                    }
                }
            }
        }

        Lent<bool>.GiveBack(seen);
        Lent<int>.GiveBack(loopOf);
    }

    /// <summary>Walks along a surface's border and notes the corners that the mesh needs.</summary>
    private void Trace(int h, int k, int surface, bool[] seen, int[] loopOf)
    {
        int from = border.Count, corner = levels.CornerStart[h] + k;
        while (!seen[corner])
        {
            seen[corner] = true;
            if (creases.Needs(levels.Corner[corner]))
            {
                border.Add(levels.Corner[corner]);
            }

            h = faces.Next[h];
            corner = levels.CornerStart[h] + k;
            for (int across = Across(h, corner); across >= 0; across = Across(h, corner))
            {
                k = across - levels.CornerStart[h ^ 1];
                h = faces.Next[h ^ 1];
                corner = levels.CornerStart[h] + k;
            }
        }

        ref readonly var boundary = ref columns.At(columns.Start[faces.Face[h]] + k);
        int first = loopOf[surface];
        loops.Add(new(from, border.Count - from, surface, boundary.Below == 0, boundary.Shown, Loop.Last));
        if (first < 0)
        {
            loopOf[surface] = loops.Count - 1;
            return;
        }

        // The first loop leads to the others, which follow one another.
        var lead = loops[first];
        loops[first] = lead with { Next = loops.Count - 1 };
        loops[loops.Count - 1] = loops[loops.Count - 1] with { Next = Loop.Inner, Other = lead.Next };
    }

    private int Across(int h, int corner) =>
        h >= 2 * faces.Plan.EdgeCount ? levels.CornerStart[h ^ 1] + corner - levels.CornerStart[h] : seams.Across(corner);

    private bool Cut(in Loop loop)
    {
        if (loop.Next == Loop.Last)
        {
            var levelsAlong = border.Span.Slice(loop.From, loop.Count);
            polygon.Clear();
            foreach (int level in levelsAlong)
            {
                int node = levels.NodeOf(level);
                polygon.Add(faces.Plan.U[node], faces.Plan.V[node]);
            }

            if (loop.Count >= 3 && polygon.Cut())
            {
                Emit(levelsAlong, loop.IsBottom, loop.Shown);
                return true;
            }
        }

        return Sweep(loop);
    }

    private void Emit(ReadOnlySpan<int> along, bool isBottom, byte shown)
    {
        int start = store.Count, n = along.Length;
        for (int i = 0; i < n; i++)
        {
            store.Add(along[isBottom ? n - 1 - i : i]);
        }

        store.Close(start);
        foreach (var (a, b, c) in polygon.Triangles.Span)
        {
            if (isBottom)
            {
                store.AddTriangle(start + n - 1 - a, start + n - 1 - c, start + n - 1 - b, shown);
            }
            else
            {
                store.AddTriangle(start + a, start + b, start + c, shown);
            }
        }
    }

    private bool Sweep(in Loop loop)
    {
        sweep.Clear();
        Enter(loop);
        for (int i = loop.Next; i >= 0; i = loops[i].Other)
        {
            Enter(loops[i]);
        }

        return sweep.Cut(store, loop.IsBottom, loop.Shown);

        void Enter(in Loop one)
        {
            if (one.Count == 2)
            {
                return; // a slit, closed by merged levels: what ends at its two sides meets there
            }

            foreach (int level in border.Span.Slice(one.From, one.Count))
            {
                int node = levels.NodeOf(level);
                sweep.Add(level, faces.Plan.U[node], faces.Plan.V[node]);
            }

            sweep.Close();
        }
    }

    /// <summary>A border of a surface. Next is the first of the surface's other loops, Last if it has none; Inner in those, which go on with Other.</summary>
    private readonly record struct Loop(int From, int Count, int Surface, bool IsBottom, byte Shown, int Next, int Other = -1)
    {
        public const int Last = -1, Inner = -2;
    }
}
