using PlatformForge.Solids.Kernel.Noding;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel.Levels;

/// <summary>
/// What stands over a plan, by arithmetic alone: a plane's mean over a face is its height at the face's centroid, so a face's column holds
/// its area times the sum of its tops' heights there less that of its bottoms'.
/// </summary>
internal static class ColumnVolume
{
    /// <summary>Volume in mm³.</summary>
    public static double Of(BlockTable blocks, PlanFaces faces, FaceColumns columns)
    {
        double volume = 0, lost = 0;
        for (int face = 0; face < faces.FaceCount; face++)
        {
            var column = columns.Of(face);
            if (column.IsEmpty)
            {
                continue;
            }

            var (area, u, v) = Centroid(faces, face);
            double height = 0;
            foreach (ref readonly var boundary in column)
            {
                double z = boundary.IsSurface ? blocks.Planes[boundary.Plane].At(u, v) : 0;
                height += boundary.Below == 0 ? -z : z;
            }

            double term = (area * height) - lost, sum = volume + term;
            (lost, volume) = (sum - volume - term, sum);
        }

        return volume * Tolerances.GridStep * Tolerances.GridStep;
    }

    /// <summary>Area in steps squared, its double exact, and centroid.</summary>
    private static (double Area, double U, double V) Centroid(PlanFaces faces, int face)
    {
        var plan = faces.Plan;
        int first = faces.FaceStart[face], origin = faces.Origin[first];
        long twice = 0; // what a sum on the way has too much or too little of 2^64 is gone at its end, which is below 2^61
        double u = 0, v = 0;
        for (int h = faces.Next[first]; h != first; h = faces.Next[h])
        {
            int a = faces.Origin[h], b = faces.Target(h);
            long turn = plan.Turn(origin, a, b);
            twice += turn;
            u += (double)turn * ((long)plan.U[a] + plan.U[b] - (2L * plan.U[origin]));
            v += (double)turn * ((long)plan.V[a] + plan.V[b] - (2L * plan.V[origin]));
        }

        double area = (double)twice;
        return area == 0 ? default : (area / 2, plan.U[origin] + (u / (3 * area)), plan.V[origin] + (v / (3 * area)));
    }
}
