using PlatformForge.Exports.Files;

namespace PlatformForge.Verification;

/// <summary>The bytes of an output folder: its manifest and every file that the manifest names and that could be read.</summary>
/// <param name="Files">Files by path, the manifest among them.</param>
public sealed record WrittenFolder(IReadOnlyList<OutputFile> Files)
{
    private readonly Dictionary<string, OutputFile> byPath = Files.GroupBy(f => f.Path, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);

    /// <summary>Files that the manifest names and that are there, but were not read, each with what it is.</summary>
    public IReadOnlyDictionary<string, string> Refused { get; init; } = new Dictionary<string, string>();

    /// <summary>STL and 3MF files in the folder that the manifest does not name, sorted.</summary>
    public IReadOnlyList<string> Unlisted { get; init; } = [];

    /// <summary>A file's bytes by its path below the folder, or null when it is not there; read anew each time where files lie on the disk.</summary>
    public byte[]? this[string path] => byPath.GetValueOrDefault(path)?.Bytes;
}
