using PlatformForge.Exports.Manifests;
using PlatformForge.Geometry;
using PlatformForge.Units;
using PlatformForge.Verification.Distances;
using static System.FormattableString;

namespace PlatformForge.Verification;

/// <summary>
/// Lines and strips of a folder that are prints of their own, read back: sound meshes, each with its underside on the floor of its section's rebate, no higher
/// than it is deep and stands over the deck. Nothing of them comes nearer to a vehicle than their section does: they lie behind its edge.
/// </summary>
public static class LineVerifier
{
    // What a corner may be off its floor, and a piece higher than stated, mm: 32-bit floats, and a crossfall's planes.
    private const double Off = 0.02;

    // An underside looks down: the cosine of some 18 degrees, sloping decks and all.
    private const double Under = -0.95;

    /// <summary>The lines' meshes as they are written, by file, and what is wrong with them.</summary>
    internal static (Dictionary<string, Mesh> Meshes, IReadOnlyList<Finding> Faults) Read(Manifest manifest, WrittenFolder folder) =>
        WrittenMeshes.Read(manifest.Lines.Select(p => (p.Name, p.Stl)), folder);

    /// <summary>Each held against its section.</summary>
    internal static IEnumerable<Finding> Check(Manifest manifest, IReadOnlyDictionary<string, Mesh> meshes, IReadOnlyList<WrittenSection> sections)
    {
        Point2 back = new(1 / manifest.Stretch.X, 1 / manifest.Stretch.Y);
        var placed = sections.ToDictionary(s => s.File, s => new Lazy<Mesh>(() => s.Mesh.Moved(s.ToLayout)), StringComparer.Ordinal);
        foreach (var line in manifest.Lines)
        {
            string? own = manifest.Sections.FirstOrDefault(s => s.Platform == line.Platform && s.Number == line.Section)?.Stl;
            if (own is not null && placed.TryGetValue(own, out var section) && meshes.TryGetValue(line.Stl, out var mesh)
                && Objection(mesh.Stretched(back).Moved(line.ToLayout), section.Value, line) is { } how)
            {
                yield return Finding.Error("PF8050", "", Invariant($"{line.Name} {how}."), "Build the folder again.", FaultKind.Mesh);
            }
        }
    }

    private static string? Objection(Mesh piece, Mesh section, ManifestLine line)
    {
        var (under, up) = Underside(piece, line.Depth);
        if (under.Length == 0 || !MeshGap.LiesOn(under, section, Off))
        {
            return "does not lie on the floor of its rebate";
        }

        var outline = new OutlineDistance(PlanHull.Of(under.Select(p => new Point2(p.X, p.Y))));
        if (piece.Vertices.Any(p => outline.At(new(p.X, p.Y)) > Off))
        {
            return "is wider than its underside";
        }

        double most = piece.Vertices.Max(p => Point3.Dot(up, p)) - under.Min(p => Point3.Dot(up, p));
        return most > line.Depth + line.Rise + Off
            ? Invariant($"is {most:F2} mm high where its rebate is {line.Depth:F2} deep and {line.Rise:F2} is to stand over the deck") : null;
    }

    // The corners of what looks down, and the direction square to it, up. What looks down over the deck is the soffit of a coping.
    private static (Point3[] Corners, Point3 Up) Underside(Mesh piece, double depth)
    {
        var corners = new HashSet<int>();
        Point3 down = default;
        for (int i = 0; i < piece.TriangleCount; i++)
        {
            int a = piece.Triangles[3 * i], b = piece.Triangles[(3 * i) + 1], c = piece.Triangles[(3 * i) + 2];
            var normal = Point3.Cross(piece.Vertices[b] - piece.Vertices[a], piece.Vertices[c] - piece.Vertices[a]);
            if (normal.Z < Under * normal.Length)
            {
                corners.UnionWith([a, b, c]);
                down += normal;
            }
        }

        var up = down * (-1 / down.Length);
        double floor = corners.Count > 0 ? corners.Min(v => Point3.Dot(up, piece.Vertices[v])) : 0;
        return ([.. corners.Select(v => piece.Vertices[v]).Where(p => Point3.Dot(up, p) < floor + depth + Off)], up);
    }
}
