using PlatformForge.Geometry;
using PlatformForge.Sections;
using PlatformForge.Units.Memories;

namespace PlatformForge.Exports;

/// <summary>Sections' meshes in file coordinates, each worked out once for all the files it goes into.</summary>
internal sealed class PrintMeshes(SectionSet set, Memory memory)
{
    private readonly Dictionary<int, Lazy<Mesh>> meshes = set.Sections.ToDictionary(s => s.Number, s => new Lazy<Mesh>(() => s.PrintMesh(memory)));

    public Mesh Of(PlatformSection section) => meshes[section.Number].Value;
}
