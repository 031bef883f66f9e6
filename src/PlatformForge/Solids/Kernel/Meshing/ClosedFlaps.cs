using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Meshing.Polygons;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// Where merged levels close a wedge, a top and a bottom may have been cut into triangles with the same three corners: a flap that encloses nothing,
/// and whose sides come twice. Both triangles are taken out; what was joined to one is then joined to what was joined to the other.
/// </summary>
internal static class ClosedFlaps
{
    /// <param name="mesh">Mesh made of the store's triangles in their order, perhaps with more.</param>
    /// <param name="store">Polygons and their triangles.</param>
    /// <param name="meeting">Levels that two boundaries of one column share.</param>
    /// <param name="levelCount">How many places there are that corners lie at: those of levels and of reliefs.</param>
    public static Mesh Without(Mesh mesh, PolygonStore store, IReadOnlySet<int> meeting, int levelCount)
    {
        if (meeting.Count < 3)
        {
            return mesh;
        }

        var known = new Dictionary<(int, int, int), int>();
        var dropped = new HashSet<int>();
        ReadOnlySpan<int> triangles = store.Triangles, levels = store.Levels;
        bool[] meets = Lent<bool>.Rent(levelCount);
        meets.AsSpan(0, levelCount).Clear();
        foreach (int level in meeting)
        {
            meets[level] = true;
        }

        for (int t = 0; t < triangles.Length / 3; t++)
        {
            if (meets[levels[triangles[3 * t]]] && meets[levels[triangles[(3 * t) + 1]]] && meets[levels[triangles[(3 * t) + 2]]])
            {
                var (a, b, c) = FromLeast(mesh.Triangles[3 * t], mesh.Triangles[(3 * t) + 1], mesh.Triangles[(3 * t) + 2]);
                known[(a, b, c)] = t;
                if (known.TryGetValue((a, c, b), out int other))
                {
                    dropped.Add(t);
                    dropped.Add(other);
                }
            }
        }

        Lent<bool>.GiveBack(meets);
        return dropped.Count == 0 ? mesh : Without(mesh, dropped);
    }

    private static (int A, int B, int C) FromLeast(int a, int b, int c) => a < b && a < c ? (a, b, c) : b < c ? (b, c, a) : (c, a, b);

    private static Mesh Without(Mesh mesh, HashSet<int> dropped)
    {
        var number = new int[mesh.Vertices.Length];
        var vertices = new List<Point3>();
        var corners = new List<int>();
        var paints = new List<byte>();
        for (int i = 0; i < mesh.Triangles.Length; i++)
        {
            if (!dropped.Contains(i / 3))
            {
                int vertex = mesh.Triangles[i];
                if (number[vertex] == 0)
                {
                    vertices.Add(mesh.Vertices[vertex]);
                    number[vertex] = vertices.Count;
                }

                corners.Add(number[vertex] - 1);
            }
        }

        for (int t = 0; t < mesh.Paints.Length; t++)
        {
            if (!dropped.Contains(t))
            {
                paints.Add(mesh.Paints[t]);
            }
        }

        return new([.. vertices], [.. corners], [.. paints]);
    }
}
