using PlatformForge.Geometry;

namespace PlatformForge.Exports.Stl;

/// <summary>What an STL file holds.</summary>
/// <param name="Mesh">Corners with the same three numbers are one vertex, in order of first appearance; triangles in the file's order,
/// degenerate ones among them.</param>
/// <param name="Title">Text of the header, or the name of the solid in the text form.</param>
/// <param name="IsText">Whether it is the text form.</param>
/// <param name="AttributesInUse">How many attribute words are not 0.</param>
public sealed record StlContents(Mesh Mesh, string Title, bool IsText, int AttributesInUse);
