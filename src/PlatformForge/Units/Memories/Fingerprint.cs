using System.Buffers.Binary;
using System.Security.Cryptography;

namespace PlatformForge.Units.Memories;

/// <summary>What a value holds, in 256 bits (SHA-256, FIPS 180-4): two values with one fingerprint are taken to be the same.</summary>
public readonly record struct Fingerprint(ulong A, ulong B, ulong C, ulong D)
{
    internal const int Size = 32;

    internal static Fingerprint Of(ReadOnlySpan<byte> content)
    {
        Span<byte> hash = stackalloc byte[Size];
        SHA256.HashData(content, hash);
        return new(
            BinaryPrimitives.ReadUInt64LittleEndian(hash), BinaryPrimitives.ReadUInt64LittleEndian(hash[8..]),
            BinaryPrimitives.ReadUInt64LittleEndian(hash[16..]), BinaryPrimitives.ReadUInt64LittleEndian(hash[24..]));
    }

    internal void Write(Span<byte> to)
    {
        BinaryPrimitives.WriteUInt64LittleEndian(to, A);
        BinaryPrimitives.WriteUInt64LittleEndian(to[8..], B);
        BinaryPrimitives.WriteUInt64LittleEndian(to[16..], C);
        BinaryPrimitives.WriteUInt64LittleEndian(to[24..], D);
    }
}
