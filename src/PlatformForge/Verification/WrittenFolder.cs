using PlatformForge.Exports;

namespace PlatformForge.Verification;

/// <summary>The bytes of an output folder: its manifest and every file that the manifest names and that is there.</summary>
/// <param name="Files">Files by path, the manifest among them.</param>
public sealed record WrittenFolder(IReadOnlyList<OutputFile> Files)
{
    /// <summary>A file by its path below the folder, or null when it is not there.</summary>
    public byte[]? this[string path] => Files.FirstOrDefault(f => f.Path == path)?.Bytes;
}
