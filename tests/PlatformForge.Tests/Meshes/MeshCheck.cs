using PlatformForge.Geometry;

namespace PlatformForge.Tests.Meshes;

/// <summary>
/// Inspects an indexed mesh from its indices and coordinates alone, knowing nothing of how it was made: linear in its size.
/// </summary>
public static class MeshCheck
{
    public static MeshReport Inspect(Mesh mesh)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        var twin = Twins(mesh, out int open);
        var piece = Pieces(mesh, out int components);
        int used = piece.Count(p => p >= 0);
        int pinched = 0, genus = -1;
        if (open == 0)
        {
            pinched = Fans(mesh.Triangles, twin) - used;

            // Euler: V − E + F = 2 (pieces − genus), with V counted by fans and 2 E = 3 F.
            int euler = used + pinched - (mesh.TriangleCount / 2);
            genus = components - (euler / 2);
        }

        var (flat, flatAsFloats) = Degenerate(mesh);
        return new(open, flat, flatAsFloats, pinched, components, genus, mesh.Volume());
    }

    private static int Onward(int h) => h % 3 == 2 ? h - 2 : h + 1;

    private static int Backward(int h) => h % 3 == 0 ? h + 2 : h - 1;

    private static int[] Twins(Mesh mesh, out int open)
    {
        var corner = mesh.Triangles;
        int[] start = new int[mesh.Vertices.Length + 2], member = new int[corner.Length], twin = new int[corner.Length];
        foreach (int v in corner)
        {
            start[v + 2]++;
        }

        for (int i = 2; i < start.Length; i++)
        {
            start[i] += start[i - 1];
        }

        for (int h = 0; h < corner.Length; h++)
        {
            member[start[corner[h] + 1]++] = h;
        }

        open = 0;
        for (int h = 0; h < corner.Length; h++)
        {
            int from = corner[h], to = corner[Onward(h)];
            int same = Leaving(from, to, start, member, corner, out _), opposite = Leaving(to, from, start, member, corner, out twin[h]);
            open += same == 1 && opposite == 1 && from != to ? 0 : 1;
        }

        return twin;
    }

    private static int Leaving(int from, int to, int[] start, int[] member, int[] corner, out int last)
    {
        int count = 0;
        last = -1;
        for (int i = start[from]; i < start[from + 1]; i++)
        {
            if (corner[Onward(member[i])] == to)
            {
                last = member[i];
                count++;
            }
        }

        return count;
    }

    private static int Fans(int[] corner, int[] twin)
    {
        var seen = new bool[corner.Length];
        int fans = 0;
        for (int h = 0; h < corner.Length; h++)
        {
            if (!seen[h])
            {
                fans++;
                for (int turn = h; !seen[turn]; turn = twin[Backward(turn)])
                {
                    seen[turn] = true;
                }
            }
        }

        return fans;
    }

    /// <summary>The piece of every vertex, −1 for those that no triangle uses.</summary>
    private static int[] Pieces(Mesh mesh, out int count)
    {
        var parent = new int[mesh.Vertices.Length];
        Array.Fill(parent, -1);
        count = 0;
        foreach (int v in mesh.Triangles)
        {
            if (parent[v] < 0)
            {
                parent[v] = v;
                count++;
            }
        }

        for (int h = 0; h < mesh.Triangles.Length; h++)
        {
            int a = Root(parent, mesh.Triangles[h]), b = Root(parent, mesh.Triangles[Onward(h)]);
            if (a != b)
            {
                parent[Math.Max(a, b)] = Math.Min(a, b);
                count--;
            }
        }

        return parent;
    }

    private static int Root(int[] parent, int v)
    {
        while (parent[v] != v)
        {
            v = parent[v] = parent[parent[v]];
        }

        return v;
    }

    private static (int Flat, int FlatAsFloats) Degenerate(Mesh mesh)
    {
        int flat = 0, flatAsFloats = 0;
        var corner = mesh.Triangles;
        for (int i = 0; i < corner.Length; i += 3)
        {
            Point3 a = mesh.Vertices[corner[i]], b = mesh.Vertices[corner[i + 1]], c = mesh.Vertices[corner[i + 2]];
            flat += HasArea(a, b, c) ? 0 : 1;
            flatAsFloats += HasArea(Rounded(a), Rounded(b), Rounded(c)) ? 0 : 1;
        }

        return (flat, flatAsFloats);
    }

    private static Point3 Rounded(Point3 p) => new((float)p.X, (float)p.Y, (float)p.Z);

    private static bool HasArea(Point3 a, Point3 b, Point3 c) => Point3.Cross(b - a, c - a) is not { X: 0, Y: 0, Z: 0 };
}
