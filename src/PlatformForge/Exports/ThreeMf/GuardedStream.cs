using PlatformForge.Exports.Files;

namespace PlatformForge.Exports.ThreeMf;

/// <summary>
/// An archive entry read no further than a limit, so that a small file cannot swell without end, and held against its checksum
/// when it ends.
/// </summary>
internal sealed class GuardedStream(Stream inner, long limit, uint checksum) : Stream
{
    private long length;
    private uint running;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => length;
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        int got = inner.Read(buffer);
        length += got;
        running = Crc32.Add(running, buffer[..got]);
        if (length > limit)
        {
            throw new GuardedStreamException(FormattableString.Invariant($"a part is larger than {limit} bytes after unpacking, which is the limit"));
        }

        if (got == 0 && !buffer.IsEmpty && running != checksum)
        {
            throw new InvalidDataException("the checksum of a part is wrong");
        }

        return got;
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
        }

        base.Dispose(disposing);
    }
}

/// <summary>A part beyond its limit; never leaves the reader.</summary>
internal sealed class GuardedStreamException : Exception
{
    public GuardedStreamException()
    {
    }

    public GuardedStreamException(string message)
        : base(message)
    {
    }

    public GuardedStreamException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
