using PlatformForge.Geometry;

namespace PlatformForge.Exports.Pictures;

/// <summary>The unevenness of a colour laid on with a brush: pools and grain, the same at every place for ever.</summary>
internal static class Wash
{
    // mm: size of the pools and of the grain.
    private const double Pool = 17, Speck = 1.3;

    /// <summary>Factor about 1 at a place in space.</summary>
    public static double At(Point3 p, double grain) =>
        grain == 0 ? 1 : 1 + (grain * (Smooth(p * (1 / Pool)) + (0.8 * Smooth(p * (1 / Speck)))));

    // Value noise between -1 and 1, smooth from cell to cell.
    private static double Smooth(Point3 p)
    {
        int x = (int)Math.Floor(p.X), y = (int)Math.Floor(p.Y), z = (int)Math.Floor(p.Z);
        double u = Ease(p.X - x), v = Ease(p.Y - y), w = Ease(p.Z - z), sum = 0;
        for (int corner = 0; corner < 8; corner++)
        {
            int i = corner & 1, j = (corner >> 1) & 1, k = corner >> 2;
            sum += (i == 1 ? u : 1 - u) * (j == 1 ? v : 1 - v) * (k == 1 ? w : 1 - w) * Value(x + i, y + j, z + k);
        }

        return sum;
    }

    private static double Ease(double t) => t * t * (3 - (2 * t));

    // A number for a cell, scrambled by odd multipliers.
    private static double Value(int x, int y, int z)
    {
        unchecked
        {
            uint h = ((uint)x * 0x9E3779B1u) ^ ((uint)y * 0x85EBCA77u) ^ ((uint)z * 0xC2B2AE3Du);
            h = (h ^ (h >> 15)) * 0x2C1B3C6Du;
            h = (h ^ (h >> 12)) * 0x297A2D39u;
            return (((h ^ (h >> 15)) & 0xFFFF) / 32767.5) - 1;
        }
    }
}
