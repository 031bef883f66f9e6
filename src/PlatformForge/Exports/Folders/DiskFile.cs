namespace PlatformForge.Exports.Folders;

/// <summary>A new file being written. The framework tells a limit on the length of files as an argument out of range; here it is what it is, the system's
/// refusal.</summary>
/// <param name="path">Where.</param>
/// <param name="buffer">Length of its buffer, bytes.</param>
internal sealed class DiskFile(string path, int buffer) : FileStream(path, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.Read, buffer)
{
    // Every way of writing comes through here.
    public override void Write(byte[] buffer, int offset, int count) => Told(() => base.Write(buffer, offset, count));

    public override void Flush(bool flushToDisk) => Told(() => base.Flush(flushToDisk));

    // What the buffer still holds is written at the end.
    protected override void Dispose(bool disposing) => Told(() => base.Dispose(disposing));

    private static void Told(Action step)
    {
        try
        {
            step();
        }
        catch (ArgumentOutOfRangeException fault)
        {
            throw new IOException("a file would be longer than it allows", fault);
        }
    }
}
