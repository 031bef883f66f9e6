using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Levels;
using PlatformForge.Solids.Kernel.Meshing.Cutting;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// Meshes surfaces face by face as the plan was cut, every corner of a face a vertex. Two boundaries that meet at all corners of a
/// triangle enclose nothing and are left out there.
/// </summary>
internal sealed class FaceMesher(PlanFaces faces, FaceColumns columns, NodeLevels levels, PolygonStore store)
{
    private int[] open = new int[16];

    /// <summary>Meshes the surfaces that are to be kept.</summary>
    public void Mesh(bool[] keeps, SurfaceSeams seams)
    {
        var triangulator = new MonotoneTriangulator(faces);
        var cut = new GrowingArray<(int A, int B, int C)>(64);
        for (int face = 0; face < faces.FaceCount; face++)
        {
            bool any = false;
            for (int k = 0; k < columns.Count[face] && !any; k++)
            {
                any = keeps[seams.Surface(columns.Start[face] + k)];
            }

            if (any)
            {
                cut.Clear();
                triangulator.Cut(face, cut);
                foreach (var (a, b, c) in cut.Span)
                {
                    Raise(face, a, b, c, keeps, seams);
                }
            }
        }

        cut.GiveBack();
    }

    private void Raise(int face, int a, int b, int c, bool[] keeps, SurfaceSeams seams)
    {
        var column = columns.Of(face);
        ReadOnlySpan<int> atA = levels.Of(a), atB = levels.Of(b), atC = levels.Of(c);
        if (open.Length < column.Length)
        {
            open = new int[2 * column.Length];
        }

        int count = 0;
        for (int k = 0; k < column.Length; k++)
        {
            if (!column[k].IsSurface || !keeps[seams.Surface(columns.Start[face] + k)])
            {
                continue;
            }

            int under = count > 0 ? open[count - 1] : -1;
            bool repeats = under >= 0 && atA[under] == atA[k] && atB[under] == atB[k] && atC[under] == atC[k];
            count = repeats ? count - 1 : count;
            if (!repeats)
            {
                open[count++] = k;
            }
        }

        foreach (int k in open.AsSpan(0, count))
        {
            int start = store.Count;
            bool isBottom = column[k].Below == 0;
            store.Add(atA[k]);
            store.Add(isBottom ? atC[k] : atB[k]);
            store.Add(isBottom ? atB[k] : atC[k]);
            store.Close(start);
            store.AddTriangle(start, start + 1, start + 2, column[k].Shown);
        }
    }
}
