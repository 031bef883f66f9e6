using PlatformForge.Geometry;
using Xunit;

namespace PlatformForge.Tests.Meshes;

public class MeshCheckTests
{
    private static readonly int[] Faces = [0, 2, 1, 0, 1, 3, 1, 2, 3, 0, 3, 2];

    private static Mesh Tetrahedron() => new([new(0, 0, 0), new(1, 0, 0), new(0, 1, 0), new(0, 0, 1)], Faces, []);

    [Fact]
    public void A_tetrahedron_is_sound_and_has_a_sixth_of_its_box()
    {
        var report = MeshCheck.Inspect(Tetrahedron());
        Assert.True(report.IsSound);
        Assert.Equal(1 / 6.0, report.Volume, 1e-15);
        Assert.Equal((1, 0), (report.Components, report.Genus));
    }

    [Fact]
    public void A_missing_triangle_opens_three_edges() =>
        Assert.Equal(3, MeshCheck.Inspect(Tetrahedron() with { Triangles = Faces[..9] }).OpenEdges);

    [Fact]
    public void A_triangle_that_comes_twice_opens_its_edges_and_their_opposites() =>
        Assert.Equal(9, MeshCheck.Inspect(Tetrahedron() with { Triangles = [.. Faces, .. Faces[..3]] }).OpenEdges);

    [Fact]
    public void A_triangle_that_faces_inwards_is_told() =>
        Assert.NotEqual(0, MeshCheck.Inspect(Tetrahedron() with { Triangles = [0, 1, 2, .. Faces[3..]] }).OpenEdges);

    [Fact]
    public void A_mesh_turned_inside_out_is_closed_but_not_sound()
    {
        var report = MeshCheck.Inspect(Tetrahedron() with { Triangles = [.. Faces.Reverse()] });
        Assert.True(report.IsClosed);
        Assert.False(report.IsSound);
    }

    [Fact]
    public void Two_tetrahedra_that_share_one_vertex_are_pinched_there()
    {
        Point3[] vertices = [.. Tetrahedron().Vertices, new(-1, 0, 0), new(0, -1, 0), new(0, 0, -1)];
        int[] second = [0, 4, 5, 0, 6, 4, 4, 6, 5, 0, 5, 6];
        var report = MeshCheck.Inspect(new(vertices, [.. Faces, .. second], []));
        Assert.Equal((0, 1), (report.OpenEdges, report.PinchedVertices));
    }

    [Fact]
    public void A_sliver_that_floats_cannot_hold_is_told()
    {
        var mesh = Tetrahedron() with { Vertices = [new(1000, 0, 0), new(1000.00001, 0, 0), new(1000, 1, 0), new(1000, 0, 1)] };
        var report = MeshCheck.Inspect(mesh);
        Assert.Equal(0, report.DegenerateTriangles);
        Assert.NotEqual(0, report.DegenerateAsFloats);
    }
}
