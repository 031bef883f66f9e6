using PlatformForge.Exports.Manifests;
using PlatformForge.Geometry;
using PlatformForge.Units;
using PlatformForge.Verification.Distances;
using PlatformForge.Verification.Written;
using static System.FormattableString;

namespace PlatformForge.Verification;

/// <summary>
/// Lines and strips of a folder that are prints of their own, read back: sound meshes, each with its underside on the floor of its section's rebate, no higher
/// than it is deep and stands over the deck; a bank on the baseboard, beside its section. All of them are held against the vehicles as sections are.
/// </summary>
public static class LineVerifier
{
    // What a corner may be off its floor, and a piece higher than stated, mm: 32-bit floats, and a crossfall's planes.
    private const double Off = 0.02;

    // An underside looks down: the cosine of some 18 degrees, sloping decks and all.
    private const double Under = -0.95;

    // What is taken off a ramp's upper end at a joint leaves the rest of its deck lower by so much at most, mm.
    private const double Relieved = 0.1;

    // Air that a bank may be asked to keep from its wall at most, and what on a curve facets add to it, mm.
    private const double MostFit = 2, Apart = MostFit + 0.1;

    // Undersides whose slopes differ by less look down one way: a crossfall's planes round a curve, not a ramp and a level coping.
    private const double Alike = 0.04;

    /// <summary>The lines' meshes as they are written, by file, and what is wrong with them.</summary>
    internal static (Dictionary<string, Mesh> Meshes, IReadOnlyList<Finding> Faults) Read(Manifest manifest, WrittenFolder folder) =>
        WrittenMeshes.Read(manifest.Lines.Select(p => (p.Name, p.Stl)), folder);

    /// <summary>All that could be read, as bodies to be held against vehicles.</summary>
    internal static IEnumerable<WrittenSection> Bodies(Manifest manifest, IReadOnlyDictionary<string, Mesh> meshes)
    {
        var back = Back(manifest);
        return manifest.Lines.Where(l => meshes.ContainsKey(l.Stl))
            .Select(l => new WrittenSection(l.Platform, l.Name, l.Stl, meshes[l.Stl].Stretched(back), l.ToLayout));
    }

    /// <summary>Each held against its section.</summary>
    internal static IEnumerable<Finding> Check(Manifest manifest, IReadOnlyDictionary<string, Mesh> meshes, IReadOnlyList<WrittenSection> sections)
    {
        var back = Back(manifest);
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

    // What takes the correction for the printer out of a file.
    private static Point2 Back(Manifest manifest) => new(1 / manifest.Stretch.X, 1 / manifest.Stretch.Y);

    // Of what stands on the baseboard.
    private static string? Objection(Mesh piece, Mesh section, Point3[] under) =>
        piece.Vertices.Any(p => p.Z < -Off) || under.Length == 0 || under.Any(p => p.Z > Off) ? "does not stand on the baseboard"
            : piece.Vertices.Max(p => p.Z) > section.Vertices.Max(p => p.Z) + Off + Relieved ? "is higher than its section's deck"
            : MeshGap.Between(piece, section, Apart).Gap >= Apart ? Invariant($"stands more than {MostFit} mm from its section") : null;

    private static string? Objection(Mesh piece, Mesh section, ManifestLine line)
    {
        var (under, up) = Underside(piece, line.Depth);
        if (line.IsGrounded)
        {
            return Objection(piece, section, under);
        }

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

    // The corners of what looks down, and the direction square to it, up. What looks down over the deck is the soffit of a coping, which may be level where the
    // floor of its rebate slopes: of several ways to look down the underside's is the one that all of the piece lies above.
    private static (Point3[] Corners, Point3 Up) Underside(Mesh piece, double depth)
    {
        var ways = new Dictionary<(long, long), (HashSet<int> Corners, Point3 Down)>();
        for (int i = 0; i < piece.TriangleCount; i++)
        {
            int a = piece.Triangles[3 * i], b = piece.Triangles[(3 * i) + 1], c = piece.Triangles[(3 * i) + 2];
            var normal = Point3.Cross(piece.Vertices[b] - piece.Vertices[a], piece.Vertices[c] - piece.Vertices[a]);
            if (normal.Z < Under * normal.Length)
            {
                var key = ((long)Math.Round(normal.X / normal.Z / Alike), (long)Math.Round(normal.Y / normal.Z / Alike));
                var way = ways.TryGetValue(key, out var found) ? found : (Corners: [], Down: default);
                way.Corners.UnionWith([a, b, c]);
                ways[key] = (way.Corners, way.Down + normal);
            }
        }

        if (ways.Count == 0)
        {
            return ([], default);
        }

        var (corners, up) = ways.Values.Select(w => (w.Corners, Up: w.Down * (-1 / w.Down.Length))).MinBy(w => Beneath(piece, w.Corners, w.Up));
        double floor = corners.Min(v => Point3.Dot(up, piece.Vertices[v]));
        return ([.. corners.Select(v => piece.Vertices[v]).Where(p => Point3.Dot(up, p) < floor + depth + Off)], up);
    }

    // How far anything of a piece lies under the lowest corner that looks down one way, mm.
    private static double Beneath(Mesh piece, HashSet<int> corners, Point3 up) =>
        corners.Min(v => Point3.Dot(up, piece.Vertices[v])) - piece.Vertices.Min(p => Point3.Dot(up, p));
}
