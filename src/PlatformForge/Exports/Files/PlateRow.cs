using PlatformForge.Geometry;

namespace PlatformForge.Exports.Files;

/// <summary>How beds stand in the file of all plates: in a row along x, in the order of plates, the first where it is in its own file.</summary>
public static class PlateRow
{
    private const double Apart = 20; // mm between two beds

    /// <summary>From one bed to the next, mm.</summary>
    /// <param name="bed">The bed's ring, mm.</param>
    public static double Pitch(IReadOnlyList<Point2> bed) => bed.Max(p => p.X) - bed.Min(p => p.X) + Apart;
}
