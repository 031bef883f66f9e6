namespace PlatformForge.Tests.Meshes;

/// <summary>What <see cref="MeshCheck"/> found.</summary>
/// <param name="OpenEdges">Directed edges that do not have exactly one opposite.</param>
/// <param name="DegenerateTriangles">Triangles with a corner twice or without area.</param>
/// <param name="DegenerateAsFloats">Triangles without area after their corners are rounded to 32-bit floats, as STL files hold them.</param>
/// <param name="PinchedVertices">Vertices where more than one fan of triangles meets; only told when no edge is open.</param>
/// <param name="Components">Connected pieces.</param>
/// <param name="Genus">Sum of the pieces' genus (number of through holes); −1 when edges are open.</param>
/// <param name="Volume">Enclosed volume, mm³; negative when the triangles face inwards.</param>
public sealed record MeshReport(
    int OpenEdges, int DegenerateTriangles, int DegenerateAsFloats, int PinchedVertices, int Components, int Genus, double Volume)
{
    /// <summary>Whether the mesh is a closed, outward-facing 2-manifold of positive volume without degenerate triangles.</summary>
    public bool IsSound => IsClosed && DegenerateTriangles == 0 && DegenerateAsFloats == 0 && Volume > 0;

    /// <summary>Whether the mesh is a closed 2-manifold.</summary>
    public bool IsClosed => OpenEdges == 0 && PinchedVertices == 0;
}
