using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// Tops and bottoms: the triangles of each face, once for every boundary between material and air in its column. Two boundaries
/// that meet at all corners of a triangle enclose nothing and are left out there.
/// </summary>
internal sealed class SurfaceMesher(PlanFaces faces, FaceColumns columns, NodeLevels levels, GrowingArray<LevelTriangle> mesh)
{
    private readonly GrowingArray<(int A, int B, int C)> plan = new(256);
    private LevelTriangle[] open = new LevelTriangle[16];
    private double volume, lost;

    /// <summary>Meshes all faces and returns the columns' volume in grid steps squared times mm.</summary>
    public double Mesh()
    {
        var triangulator = new MonotoneTriangulator(faces);
        for (int face = 0; face < faces.FaceCount; face++)
        {
            if (columns.Count[face] > 0)
            {
                plan.Clear();
                triangulator.Cut(face, plan);
                foreach (var (a, b, c) in plan.Span)
                {
                    Raise(columns.Of(face), a, b, c);
                }
            }
        }

        return volume;
    }

    private void Raise(ReadOnlySpan<ColumnBoundary> column, int a, int b, int c)
    {
        ReadOnlySpan<int> atA = levels.Of(a), atB = levels.Of(b), atC = levels.Of(c);
        if (open.Length < column.Length)
        {
            open = new LevelTriangle[2 * column.Length];
        }

        int count = 0;
        for (int k = 0; k < column.Length; k++)
        {
            ref readonly var boundary = ref column[k];
            if ((boundary.Below == 0) == (boundary.Above == 0))
            {
                continue; // paint changes inside the material
            }

            bool repeats = count > 0 && open[count - 1].A == atA[k] && open[count - 1].B == atB[k] && open[count - 1].C == atC[k];
            if (repeats)
            {
                count--;
            }
            else
            {
                open[count++] = new(atA[k], atB[k], atC[k], boundary.Shown);
            }
        }

        // Bottoms and tops take turns; what was left out was one of each.
        double height = 0;
        for (int k = 0; k < count; k++)
        {
            ref readonly var t = ref open[k];
            double sum = levels.Height(t.A) + levels.Height(t.B) + levels.Height(t.C);
            height += k % 2 == 0 ? -sum : sum;
            mesh.Add(k % 2 == 0 ? new(t.A, t.C, t.B, t.Paint) : t);
        }

        if (count > 0)
        {
            long area = faces.Plan.Turn(faces.Origin[a], faces.Origin[b], faces.Origin[c]);
            double term = (area * height / 6) - lost, next = volume + term;
            (lost, volume) = (next - volume - term, next);
        }
    }
}
