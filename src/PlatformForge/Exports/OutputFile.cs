namespace PlatformForge.Exports;

/// <summary>A file to be written.</summary>
/// <param name="Path">Path below the output folder, steps parted by '/'.</param>
/// <param name="Bytes">Its contents.</param>
public sealed record OutputFile(string Path, byte[] Bytes);
