using System.Security.Cryptography;
using PlatformForge.Exports.Files;

namespace PlatformForge.Exports.Folders;

/// <summary>Contents that lie on the disk, and are read when somebody asks for them.</summary>
/// <param name="folder">The output folder, to name where it cannot be read.</param>
/// <param name="place">Where they lie.</param>
/// <param name="length">Bytes.</param>
/// <param name="sha256">Their hash.</param>
internal sealed class DiskContents(string folder, string place, long length, string sha256) : FileContents
{
    public override long Length => length;

    public override string Sha256 => sha256;

    public override byte[] Read() => Told(() => File.ReadAllBytes(place));

    public override Stream Open() => Told(() => Opened(place));

    /// <summary>What lies somewhere at this moment.</summary>
    public static DiskContents At(string folder, string place)
    {
        using var stream = Opened(place);
        return new(folder, place, stream.Length, HashOf(stream));
    }

    /// <summary>SHA-256 of a stream from its beginning.</summary>
    public static string HashOf(Stream stream)
    {
        stream.Position = 0;
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }

    private static FileStream Opened(string place) => new(place, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);

    private T Told<T>(Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new FolderFault(FolderFaults.Refusal(folder, fault));
        }
    }
}
