using PlatformForge.Geometry;
using PlatformForge.Sections;
using PlatformForge.Units.Memories;

namespace PlatformForge.Exports;

/// <summary>Sections' meshes as they are written, each worked out once for all the files it goes into.</summary>
internal sealed class PrintMeshes(SectionSet set, Memory memory)
{
    private readonly Dictionary<int, Lazy<Mesh>> meshes = set.Sections.ToDictionary(s => s.Number, s => new Lazy<Mesh>(() => s.WrittenMesh(memory)));

    public Mesh Of(PlatformSection section) => meshes[section.Number].Value;
}
