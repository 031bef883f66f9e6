using PlatformForge.Exports.Manifests;
using PlatformForge.Geometry;
using PlatformForge.Units;
using PlatformForge.Verification.Distances;
using static System.FormattableString;

namespace PlatformForge.Verification.Rules;

/// <summary>A section's STL and its object on the plate are one and the same solid, triangle by triangle, in whatever order they stand there.</summary>
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
        bool coarse = stl.TriangleCount != twin.TriangleCount || apart > Rounding || Math.Abs(volume - other) > VolumeRounding * volume;
        string? how = coarse ? Invariant($"'{section.Stl}' ({stl.TriangleCount} triangles, {volume:F1} mm³) and '{plate}' ({twin.TriangleCount} ")
            + Invariant($"triangles, {other:F1} mm³; boxes {apart:F3} mm apart)")
            : Stray(stl, twin) is { } at ? Invariant($"'{section.Stl}' and '{plate}': of the same size, but with another surface at x {at.X:F2}, y {at.Y:F2}, ")
            + Invariant($"z {at.Z:F2} mm of it")
            : null;
        if (how is not null)
        {
            yield return Finding.Error("PF8005", "", Invariant($"{section.Name} differs between {how}."), "Build the folder again.", FaultKind.Mesh);
        }
    }

    // A place of the twin at which the STL has no such triangle; null where all are there, each as often. Size alone does not tell: a corner of an edge
    // a few tenths nearer to the track changes neither the box nor the volume by much.
    private static Point3? Stray(Mesh stl, Mesh twin)
    {
        var corners = new CornerIndex(stl.Vertices, Rounding);
        int[] same = Array.ConvertAll(twin.Vertices, corners.At);
        if (twin.Triangles.FirstOrDefault(v => same[v] < 0, -1) is >= 0 and var lost)
        {
            return twin.Vertices[lost];
        }

        var left = new Dictionary<(int, int, int), int>();
        for (int i = 0; i < stl.Triangles.Length; i += 3)
        {
            var key = Turned(stl.Triangles[i], stl.Triangles[i + 1], stl.Triangles[i + 2]);
            left[key] = left.GetValueOrDefault(key) + 1;
        }

        for (int i = 0; i < twin.Triangles.Length; i += 3)
        {
            var key = Turned(same[twin.Triangles[i]], same[twin.Triangles[i + 1]], same[twin.Triangles[i + 2]]);
            if (left.GetValueOrDefault(key) == 0)
            {
                return twin.Vertices[twin.Triangles[i]];
            }

            left[key]--;
        }

        return null;
    }

    // A triangle begins at any of its corners, and turns one way.
    private static (int A, int B, int C) Turned(int a, int b, int c) => a <= b && a <= c ? (a, b, c) : b <= c ? (b, c, a) : (c, a, b);
}
