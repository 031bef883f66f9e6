using PlatformForge.Geometry;

namespace PlatformForge.Verification.Written;

/// <summary>A section as its file holds it.</summary>
/// <param name="Platform">Name of the platform it belongs to.</param>
/// <param name="Name">The section's own name.</param>
/// <param name="File">File it was read from, as the manifest names it.</param>
/// <param name="Mesh">Mesh in the file's coordinates, which are those of the print.</param>
/// <param name="ToLayout">The manifest's motion from the file's coordinates to the layout frame.</param>
public sealed record WrittenSection(string Platform, string Name, string File, Mesh Mesh, RigidTransform ToLayout);
