using System.Runtime.CompilerServices;

namespace PlatformForge.Geometry.Meshes;

/// <summary>Neighbourhood in a mesh: half-edge 3t + k of triangle t leads from its corner k to the next.</summary>
public static class HalfEdges
{
    // A body is looked at from several sides, on the bed and in place: its triangles stay the same.
    private static readonly ConditionalWeakTable<int[], int[]> Known = [];

    /// <summary>For every half-edge the one that runs along it the other way; an open edge has only itself. To be read only.</summary>
    public static int[] Opposites(Mesh mesh) => Known.GetValue(mesh.Triangles, _ => Found(mesh));

    private static int[] Found(Mesh mesh)
    {
        // Half-edges are filed under the corner they leave: the fellow of a → b is among those that leave b.
        var corners = mesh.Triangles;
        var start = new int[mesh.Vertices.Length + 1];
        foreach (int v in corners)
        {
            start[v + 1]++;
        }

        for (int v = 0; v < mesh.Vertices.Length; v++)
        {
            start[v + 1] += start[v];
        }

        int[] next = [.. start], leaving = new int[corners.Length], across = new int[corners.Length];
        for (int e = 0; e < corners.Length; e++)
        {
            leaving[next[corners[e]]++] = e;
        }

        for (int e = 0; e < corners.Length; e++)
        {
            int from = corners[e], to = corners[Next(e)];
            across[e] = e;
            for (int k = start[to]; k < start[to + 1]; k++)
            {
                across[e] = corners[Next(leaving[k])] == from ? leaving[k] : across[e];
            }
        }

        return across;
    }

    /// <summary>The half-edge after one, in the same triangle.</summary>
    public static int Next(int edge) => edge % 3 == 2 ? edge - 2 : edge + 1;
}
