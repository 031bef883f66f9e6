using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Pictures.Light;

/// <summary>
/// Many far lights asked at once, four in step: for each it is worked out in the same order of steps where a point falls on its grid, so that the answer
/// has the same bits as one by one.
/// </summary>
internal sealed class SkyLight
{
    private const int Lanes = 4;

    // Rows of the table of figures, a light a column.
    private const int TowardX = 0, TowardY = 1, TowardZ = 2, RightX = 3, RightY = 4, RightZ = 5, UpX = 6, UpY = 7, UpZ = 8, Scale = 9, OriginX = 10,
        OriginY = 11, Bias = 12, Rows = 13;

    private readonly ShadowMap[] lights;
    private readonly int width;
    private readonly double[] figures;
    private readonly bool isSoft;

    /// <param name="lights">The lights.</param>
    /// <param name="isSoft">Whether their shadows have soft edges.</param>
    public SkyLight(ShadowMap[] lights, bool isSoft)
    {
        (this.lights, this.isSoft) = (lights, isSoft);
        width = (lights.Length + Lanes - 1) / Lanes * Lanes;
        figures = new double[Rows * width];
        for (int i = 0; i < lights.Length; i++)
        {
            var (light, view) = (lights[i], lights[i].View);
            double[] column = [light.Toward.X, light.Toward.Y, light.Toward.Z, view.Right.X, view.Right.Y, view.Right.Z,
                view.Up.X, view.Up.Y, view.Up.Z, view.Scale, view.OriginX, view.OriginY, light.Bias];
            for (int row = 0; row < Rows; row++)
            {
                figures[(row * width) + i] = column[row];
            }
        }
    }

    /// <summary>How much of the lights that a surface of unit normal faces reaches a point on it, and how much there is, by the cosine of each.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public (double Seen, double All) Seen(Point3 point, Point3 normal)
    {
        ref double table = ref MemoryMarshal.GetArrayDataReference(figures);
        Vector256<double> nx = Vector256.Create(normal.X), ny = Vector256.Create(normal.Y), nz = Vector256.Create(normal.Z);
        Vector256<double> px = Vector256.Create(point.X), py = Vector256.Create(point.Y), pz = Vector256.Create(point.Z);
        double seen = 0, all = 0;
        for (int first = 0; first < width; first += Lanes)
        {
            var facing = (nx * At(ref table, TowardX, first)) + (ny * At(ref table, TowardY, first)) + (nz * At(ref table, TowardZ, first));
            if (Vector256.LessThanOrEqualAll(facing, Vector256<double>.Zero))
            {
                continue;
            }

            var bias = At(ref table, Bias, first);
            Vector256<double> x = px + (nx * bias), y = py + (ny * bias), z = pz + (nz * bias), scale = At(ref table, Scale, first);
            var right = (At(ref table, RightX, first) * x) + (At(ref table, RightY, first) * y) + (At(ref table, RightZ, first) * z);
            var up = (At(ref table, UpX, first) * x) + (At(ref table, UpY, first) * y) + (At(ref table, UpZ, first) * z);
            var across = (right * scale) + At(ref table, OriginX, first);
            var down = At(ref table, OriginY, first) - (up * scale);
            var depth = (At(ref table, TowardX, first) * x) + (At(ref table, TowardY, first) * y) + (At(ref table, TowardZ, first) * z);
            if (!isSoft)
            {
                (across, down) = (Vector256.Floor(across), Vector256.Floor(down));
            }

            for (int i = 0; i < Lanes; i++)
            {
                double share = facing.GetElement(i);
                if (!(share <= 0))
                {
                    var light = lights[first + i];
                    double x0 = across.GetElement(i), y0 = down.GetElement(i), z0 = depth.GetElement(i);
                    all += share;
                    seen += isSoft ? share * light.Soft(x0, y0, z0) : light.Sees(x0, y0, z0) ? share : 0;
                }
            }
        }

        return (seen, all);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector256<double> At(ref double table, int row, int first) => Vector256.LoadUnsafe(ref table, (nuint)((row * width) + first));
}
