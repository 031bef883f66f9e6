namespace PlatformForge.Exports.Files;

/// <summary>A file that is still to be made.</summary>
public sealed class FileWork
{
    private readonly Func<byte[]>? make;

    /// <param name="path">Its path in the folder.</param>
    /// <param name="make">Makes it.</param>
    public FileWork(string path, Func<byte[]> make) => (Path, this.make) = (path, make);

    /// <param name="path">Its path in the folder.</param>
    /// <param name="write">Writes it, into a stream that can be read and sought too; for files that grow with the platform.</param>
    public FileWork(string path, Action<Stream> write) => (Path, Write) = (path, write);

    /// <summary>Its path in the folder.</summary>
    public string Path { get; }

    /// <summary>Writes it piece by piece; null for what is made in one.</summary>
    public Action<Stream>? Write { get; }

    /// <summary>The whole of it.</summary>
    public byte[] Make()
    {
        if (make is not null)
        {
            return make();
        }

        using var memory = new MemoryStream();
        Write!(memory);
        return memory.ToArray();
    }
}
