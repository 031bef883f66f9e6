namespace PlatformForge.Geometry.Meshes;

/// <summary>The triangles round every vertex of a mesh. Laid out once; the few vertices whose triangles change get a list of their own.</summary>
internal sealed class VertexFans
{
    private readonly int[] first, around;
    private readonly Dictionary<int, List<int>> changed = [];

    public VertexFans(int vertices, int[] corners)
    {
        first = new int[vertices + 2];
        foreach (int v in corners)
        {
            first[v + 2]++;
        }

        for (int v = 2; v < first.Length; v++)
        {
            first[v] += first[v - 1];
        }

        around = new int[corners.Length];
        for (int i = 0; i < corners.Length; i++)
        {
            around[first[corners[i] + 1]++] = i / 3;
        }
    }

    public ReadOnlySpan<int> Of(int vertex) =>
        changed.TryGetValue(vertex, out var list) ? System.Runtime.InteropServices.CollectionsMarshal.AsSpan(list)
            : around.AsSpan(first[vertex], first[vertex + 1] - first[vertex]);

    public void Add(int vertex, int triangle) => Own(vertex).Add(triangle);

    public void Remove(int vertex, int triangle) => Own(vertex).Remove(triangle);

    private List<int> Own(int vertex)
    {
        if (!changed.TryGetValue(vertex, out var list))
        {
            changed[vertex] = list = [.. Of(vertex)];
        }

        return list;
    }
}
