using PlatformForge.Geometry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Verification.Rules;

/// <summary>A mesh as it was read is closed, oriented, of positive volume and without degenerate triangles.</summary>
/// <param name="OpenEdges">Directed edges without as many the other way.</param>
/// <param name="CrowdedEdges">Directed edges that more than one triangle has, matched or not.</param>
/// <param name="Degenerate">Triangles with a corner twice.</param>
/// <param name="Volume">Enclosed volume, mm³.</param>
internal sealed record MeshSoundness(int OpenEdges, int CrowdedEdges, int Degenerate, double Volume)
{
    public static MeshSoundness Of(Mesh mesh)
    {
        var t = mesh.Triangles;
        var edges = new ulong[t.Length];
        var turned = new ulong[t.Length];
        int count = 0, degenerate = 0;
        for (int i = 0; i < t.Length; i += 3)
        {
            if (t[i] == t[i + 1] || t[i + 1] == t[i + 2] || t[i + 2] == t[i])
            {
                degenerate++;
                continue;
            }

            for (int k = 0; k < 3; k++)
            {
                uint from = (uint)t[i + k], to = (uint)t[i + ((k + 1) % 3)];
                edges[count] = ((ulong)from << 32) | to;
                turned[count++] = ((ulong)to << 32) | from;
            }
        }

        Array.Sort(edges, 0, count);
        Array.Sort(turned, 0, count);
        return new(Unmatched(edges.AsSpan(0, count), turned.AsSpan(0, count)), Repeated(edges.AsSpan(0, count)), degenerate, mesh.Volume());
    }

    // Both lists sorted: walks them together and counts what only one of them has.
    private static int Unmatched(ReadOnlySpan<ulong> edges, ReadOnlySpan<ulong> turned)
    {
        int i = 0, j = 0, alone = 0;
        while (i < edges.Length && j < turned.Length)
        {
            int order = edges[i].CompareTo(turned[j]);
            i += order <= 0 ? 1 : 0;
            j += order >= 0 ? 1 : 0;
            alone += order < 0 ? 1 : 0;
        }

        return alone + edges.Length - i;
    }

    private static int Repeated(ReadOnlySpan<ulong> edges)
    {
        int repeated = 0;
        for (int i = 1; i < edges.Length; i++)
        {
            repeated += edges[i] == edges[i - 1] ? 1 : 0;
        }

        return repeated;
    }
}

/// <summary>Turns a mesh's soundness into findings.</summary>
internal static class MeshRule
{
    /// <summary>
    /// Faults of a mesh. A solid that touches itself along an edge has that edge twice each way once equal corners are one, as in
    /// STL: that is no fault there, but is one where corners are told apart by index, as in 3MF.
    /// </summary>
    public static IEnumerable<Finding> Check(string what, MeshSoundness mesh, bool byIndex)
    {
        if (mesh.OpenEdges > 0 || (byIndex && mesh.CrowdedEdges > 0))
        {
            int edges = Math.Max(mesh.OpenEdges, byIndex ? mesh.CrowdedEdges : 0);
            yield return Fault("PF8010", Invariant($"{what} is not watertight: {edges} edges do not join exactly two triangles that run opposite ways."));
        }

        if (mesh.Degenerate > 0)
        {
            yield return Fault("PF8011", Invariant($"{what} has {mesh.Degenerate} triangles with the same corner twice."));
        }

        if (!(mesh.Volume > 0))
        {
            yield return Fault("PF8012", Invariant($"{what} is inside out or empty: its volume is {mesh.Volume:F1} mm³."));
        }
    }

    private static Finding Fault(string code, string what) =>
        Finding.Error(code, "", what, "The file is damaged or was edited: build the folder again. If it comes back, report it with the project file.",
            FaultKind.Mesh);
}
