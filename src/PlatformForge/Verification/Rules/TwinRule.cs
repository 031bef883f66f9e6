using PlatformForge.Exports.Manifests;
using PlatformForge.Geometry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Verification.Rules;

/// <summary>A section's STL and its object on the plate are one and the same solid.</summary>
internal static class TwinRule
{
    // Both files round coordinates in their own way, mm and mm³ for mm³.
    private const double Rounding = 0.001;
    private const double VolumeRounding = 1e-4;

    public static IEnumerable<Finding> Check(ManifestSection section, string plate, Mesh stl, Mesh twin)
    {
        var ((low, high), (otherLow, otherHigh)) = (stl.Box(), twin.Box());
        double apart = Math.Max((low - otherLow).Length, (high - otherHigh).Length);
        double volume = stl.Volume(), other = twin.Volume();
        if (stl.TriangleCount != twin.TriangleCount || apart > Rounding || Math.Abs(volume - other) > VolumeRounding * volume)
        {
            yield return Finding.Error(
                "PF8005",
                "",
                Invariant($"{section.Name} differs between '{section.Stl}' ({stl.TriangleCount} triangles, {volume:F1} mm³) and '{plate}' ({twin.TriangleCount} triangles, {other:F1} mm³; boxes {apart:F3} mm apart)."),
                "Build the folder again.",
                FaultKind.Mesh);
        }
    }
}
