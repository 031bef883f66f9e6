using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Pictures.Light;

/// <summary>The unevenness of a colour laid on with a brush: pools and grain, the same at every place for ever.</summary>
internal static class Wash
{
    // mm: size of the pools and of the grain.
    private const double Pool = 17, Speck = 1.3;

    /// <summary>Factor about 1 at a place in space.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double At(Point3 p, double grain) =>
        grain == 0 ? 1 : 1 + (grain * (Smooth(p * (1 / Pool)) + (0.8 * Smooth(p * (1 / Speck)))));

    // Value noise between -1 and 1, smooth from cell to cell. The corners of a cell are taken in step, x first.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double Smooth(Point3 p)
    {
        int x = (int)Math.Floor(p.X), y = (int)Math.Floor(p.Y), z = (int)Math.Floor(p.Z);
        double u = Ease(p.X - x), v = Ease(p.Y - y), w = Ease(p.Z - z);
        var values = Values(x, y, z);
        var (low, high) = Vector256.Widen(values);
        var across = Vector256.Create(1 - u, u, 1 - u, u) * Vector256.Create(1 - v, 1 - v, v, v);
        var near = across * Vector256.Create(1 - w) * ((Vector256.ConvertToDouble(low) / Range) - Vector256<double>.One);
        var far = across * Vector256.Create(w) * ((Vector256.ConvertToDouble(high) / Range) - Vector256<double>.One);

        // One after the other from nil on, so that sums round as they always did.
        return 0 + near.GetElement(0) + near.GetElement(1) + near.GetElement(2) + near.GetElement(3)
            + far.GetElement(0) + far.GetElement(1) + far.GetElement(2) + far.GetElement(3);
    }

    private static double Ease(double t) => t * t * (3 - (2 * t));

    private static Vector256<double> Range => Vector256.Create(32767.5);

    // A number of 16 bits for each corner of a cell, scrambled by odd multipliers.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<uint> Values(int x, int y, int z)
    {
        unchecked
        {
            uint left = (uint)x * 0x9E3779B1u, right = (uint)(x + 1) * 0x9E3779B1u, front = (uint)y * 0x85EBCA77u, back = (uint)(y + 1) * 0x85EBCA77u;
            uint under = (uint)z * 0xC2B2AE3Du, over = (uint)(z + 1) * 0xC2B2AE3Du;
            var h = Vector256.Create(left, right, left, right, left, right, left, right) ^ Vector256.Create(front, front, back, back, front, front, back, back)
                ^ Vector256.Create(under, under, under, under, over, over, over, over);
            h = (h ^ (h >>> 15)) * Vector256.Create(0x2C1B3C6Du);
            h = (h ^ (h >>> 12)) * Vector256.Create(0x297A2D39u);
            return (h ^ (h >>> 15)) & Vector256.Create(0xFFFFu);
        }
    }
}
