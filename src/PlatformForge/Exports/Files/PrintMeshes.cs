using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Units.Memories;

namespace PlatformForge.Exports.Files;

/// <summary>
/// Sections' meshes as they are written, each worked out once for the files it goes into: its own, its plate's, and that of all plates. Whoever asks last
/// takes it away, so that of many platforms only those are held that are being written; who asks later has it worked out anew.
/// </summary>
internal sealed class PrintMeshes(SectionSet set, Memory memory)
{
    private const int Files = 3;

    private readonly Dictionary<int, Shared> meshes = set.Sections.ToDictionary(s => s.Number, _ => new Shared());

    public Mesh Of(PlatformSection section) => meshes[section.Number].Taken(() => section.WrittenMesh(memory));

    private sealed class Shared
    {
        private readonly Lock turn = new();
        private Lazy<Mesh>? mesh;
        private int asked;

        public Mesh Taken(Func<Mesh> make)
        {
            Lazy<Mesh> taken;
            lock (turn)
            {
                taken = mesh ??= new(make);
                mesh = ++asked % Files == 0 ? null : mesh;
            }

            return taken.Value;
        }
    }
}
