using PlatformForge.Exports.Files;
using PlatformForge.Exports.Manifests;

namespace PlatformForge.Exports.Folders;

/// <summary>What a folder is to hold.</summary>
/// <param name="Manifest">What it is; its list of files is filled in when they are put in place.</param>
/// <param name="Files">Its files but the manifest, as they were put on the shelf.</param>
public sealed record Filling(Manifest Manifest, IReadOnlyList<OutputFile> Files);
