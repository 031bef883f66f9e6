using PlatformForge.Exports.Stl;
using PlatformForge.Geometry;
using PlatformForge.Units;
using PlatformForge.Verification.Rules;
using static System.FormattableString;

namespace PlatformForge.Verification;

/// <summary>Solids of a folder beside its sections, gauges and strips, as their STL files hold them.</summary>
internal static class WrittenMeshes
{
    /// <summary>The meshes by file, and what is wrong with them. What is not in the folder is left out: the manifest's files are told elsewhere.</summary>
    /// <param name="listed">Name and STL file of each.</param>
    /// <param name="folder">The folder.</param>
    public static (Dictionary<string, Mesh> Meshes, IReadOnlyList<Finding> Faults) Read(IEnumerable<(string Name, string Stl)> listed, WrittenFolder folder)
    {
        var meshes = new Dictionary<string, Mesh>(StringComparer.Ordinal);
        var faults = new List<Finding>();
        foreach (var (name, file) in listed)
        {
            if (folder[file] is not { } bytes)
            {
                continue;
            }

            var read = StlReader.Read(bytes, file);
            faults.AddRange(read.Findings);
            if (read.Value is { } stl && meshes.TryAdd(file, stl.Mesh))
            {
                faults.AddRange(MeshRule.Check(Invariant($"{name} in '{file}'"), MeshSoundness.Of(stl.Mesh), byIndex: false));
            }
        }

        return (meshes, faults);
    }
}
