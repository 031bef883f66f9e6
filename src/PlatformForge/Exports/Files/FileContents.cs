using System.Security.Cryptography;

namespace PlatformForge.Exports.Files;

/// <summary>
/// What is in a file: how long it is and its hash, known at once, and its bytes, held in memory or read where they lie. A run of hundreds of files keeps the
/// first two and
/// not the third.
/// </summary>
public abstract class FileContents
{
    /// <summary>Bytes.</summary>
    public abstract long Length { get; }

    /// <summary>SHA-256, in small hexadecimal digits.</summary>
    public abstract string Sha256 { get; }

    /// <summary>The bytes.</summary>
    public abstract byte[] Read();

    /// <summary>The bytes to be read from their beginning, as far as is wanted.</summary>
    public abstract Stream Open();

    /// <summary>Bytes held in memory.</summary>
    public static FileContents Of(byte[] bytes) => new Held(bytes);

    private sealed class Held(byte[] bytes) : FileContents
    {
        private readonly Lazy<string> hash = new(() => Convert.ToHexStringLower(SHA256.HashData(bytes)));

        public override long Length => bytes.Length;

        public override string Sha256 => hash.Value;

        public override byte[] Read() => bytes;

        public override Stream Open() => new MemoryStream(bytes, writable: false);
    }
}
