namespace PlatformForge.Exports.Folders;

/// <summary>What writing a folder came to; paths below the folder, sorted.</summary>
/// <param name="Folder">The folder.</param>
/// <param name="Written">Files that are new or changed.</param>
/// <param name="Unchanged">Files that were there already, byte by byte.</param>
/// <param name="Removed">Files of an earlier run that this one has no use for.</param>
public sealed record FolderReport(string Folder, IReadOnlyList<string> Written, IReadOnlyList<string> Unchanged, IReadOnlyList<string> Removed);
