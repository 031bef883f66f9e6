using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Levels;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// Meshes tops and bottoms: each surface, over however many faces of the plan it runs, is one polygon with the corners that the mesh
/// needs. Their borders are traced, and then cut. What cannot be cut is meshed face by face, as the plan was cut.
/// </summary>
internal sealed class RegionMesher
{
    private readonly PlanFaces faces;
    private readonly FaceColumns columns;
    private readonly NodeLevels levels;
    private readonly LevelCreases creases;
    private readonly SurfaceSeams seams;
    private readonly bool[] keeps;
    private readonly GrowingArray<RegionLoop> loops = new(256);
    private readonly GrowingArray<int> border = new(1024);
    private bool anyKept;

    public RegionMesher(PlanFaces faces, FaceColumns columns, NodeLevels levels, LevelCreases creases, SurfaceSeams seams)
    {
        (this.faces, this.columns, this.levels, this.creases, this.seams) = (faces, columns, levels, creases, seams);
        keeps = Lent<bool>.Rent(columns.Total);
        keeps.AsSpan(0, columns.Total).Clear();
        KeepFolded();
    }

    /// <summary>Corners of all borders, that of each loop in one piece.</summary>
    public ReadOnlySpan<int> Border => border.Span;

    public ReadOnlySpan<RegionLoop> Loops => loops.Span;

    /// <summary>Traces the borders of all surfaces.</summary>
    public void Trace()
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
                if (seams.Across(start + k) < 0 && !seen[start + k] && column[k].IsSurface)
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

    /// <summary>Keeps surfaces as the plan was cut, which calls for corners that others have left out: all is to be traced and cut anew.</summary>
    public void Keep(IEnumerable<int> surfaces)
    {
        foreach (int surface in surfaces)
        {
            keeps[surface] = true;
        }

        NeedKept();
    }

    /// <summary>Meshes what is kept.</summary>
    public void MeshKept(PolygonStore store)
    {
        if (anyKept)
        {
            new FaceMesher(faces, columns, levels, store).Mesh(keeps, seams);
        }
    }

    public void GiveBack()
    {
        Lent<bool>.GiveBack(keeps);
        loops.GiveBack();
        border.GiveBack();
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
        loops.Add(new(from, border.Count - from, surface, boundary.Below == 0, boundary.Shown, RegionLoop.Last));
        if (first < 0)
        {
            loopOf[surface] = loops.Count - 1;
            return;
        }

        // The first loop leads to the others, which follow one another.
        var lead = loops[first];
        loops[first] = lead with { Next = loops.Count - 1 };
        loops[loops.Count - 1] = loops[loops.Count - 1] with { Next = RegionLoop.Inner, Other = lead.Next };
    }

    private int Across(int h, int corner) =>
        h >= 2 * faces.Plan.EdgeCount ? levels.CornerStart[h ^ 1] + corner - levels.CornerStart[h] : seams.Across(corner);
}
