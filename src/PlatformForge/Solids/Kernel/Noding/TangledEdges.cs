using PlatformForge.Geometry;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>
/// Where a solid touches itself along an edge and is one piece at both of its ends, two sheets of the surface share both end
/// vertices. The second sheet then gets a vertex of its own in the middle of the edge, so that no directed edge comes twice.
/// </summary>
internal sealed class TangledEdges
{
    private readonly List<Point3> vertices;
    private readonly List<int> corners;
    private readonly List<byte> paints;
    private readonly (int Forward, int Backward)[] pairs;

    private TangledEdges(Mesh mesh, List<(int Forward, int Backward)> pairs)
    {
        vertices = [.. mesh.Vertices];
        corners = [.. mesh.Triangles];
        paints = [.. mesh.Paints];
        this.pairs = [.. pairs];
    }

    /// <param name="mesh">Mesh whose surface closes by pairs of half-edges.</param>
    /// <param name="pairs">Pairs of opposite half-edges along edges where more than two triangles meet.</param>
    public static Mesh Part(Mesh mesh, List<(int Forward, int Backward)> pairs)
    {
        var tangle = new TangledEdges(mesh, pairs);
        var taken = new HashSet<(int, int)>();
        for (int i = 0; i < tangle.pairs.Length; i++)
        {
            int forward = tangle.pairs[i].Forward;
            if (!taken.Add((tangle.corners[forward], tangle.corners[Onward(forward)])))
            {
                tangle.Halve(i);
            }
        }

        return new([.. tangle.vertices], [.. tangle.corners], [.. tangle.paints]);
    }

    private static int Onward(int h) => h % 3 == 2 ? h - 2 : h + 1;

    private void Halve(int pair)
    {
        var (forward, backward) = pairs[pair];
        int middle = vertices.Count;
        vertices.Add((vertices[corners[forward]] + vertices[corners[backward]]) * 0.5);
        Cut(forward, middle);
        Cut(pairs[pair].Backward, middle);
    }

    /// <summary>Cuts the triangle of a half-edge in two; the half-edge keeps its first half.</summary>
    private void Cut(int h, int middle)
    {
        int next = Onward(h), last = Onward(next), added = corners.Count;
        corners.AddRange([middle, corners[next], corners[last]]);
        paints.Add(paints[h / 3]);
        corners[next] = middle;
        for (int i = 0; i < pairs.Length; i++)
        {
            // The half-edge after the cut one is now a side of the new triangle.
            var (forward, backward) = pairs[i];
            pairs[i] = (forward == next ? added + 1 : forward, backward == next ? added + 1 : backward);
        }
    }
}
