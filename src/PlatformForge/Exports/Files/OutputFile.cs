namespace PlatformForge.Exports.Files;

/// <summary>A file to be written, or that waits to be put in place.</summary>
/// <param name="Path">Path below the output folder, steps parted by '/'.</param>
/// <param name="Contents">What is in it.</param>
public sealed record OutputFile(string Path, FileContents Contents)
{
    /// <param name="path">Path below the output folder, steps parted by '/'.</param>
    /// <param name="bytes">Its contents.</param>
    public OutputFile(string path, byte[] bytes)
        : this(path, FileContents.Of(bytes))
    {
    }

    /// <summary>Its bytes, read anew whenever they are asked for where they wait on the disk.</summary>
    public byte[] Bytes
    {
        get => Contents.Read();
        init => Contents = FileContents.Of(value);
    }
}
