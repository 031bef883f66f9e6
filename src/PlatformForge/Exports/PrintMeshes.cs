using PlatformForge.Geometry;
using PlatformForge.Sections;

namespace PlatformForge.Exports;

/// <summary>Sections' meshes in file coordinates, each worked out once for all the files it goes into.</summary>
internal sealed class PrintMeshes(SectionSet set)
{
    private readonly Dictionary<int, Lazy<Mesh>> meshes = set.Sections.ToDictionary(s => s.Number, s => new Lazy<Mesh>(s.PrintMesh));

    public Mesh Of(PlatformSection section) => meshes[section.Number].Value;
}
