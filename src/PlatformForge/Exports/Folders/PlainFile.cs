namespace PlatformForge.Exports.Folders;

/// <summary>Why a file was not read.</summary>
public enum PlainFileFault
{
    /// <summary>It was read.</summary>
    None,

    /// <summary>There is nothing of that name.</summary>
    Missing,

    /// <summary>It is a folder.</summary>
    Folder,

    /// <summary>Its length is 0: an empty file, or a pipe, a socket or a device, which have no length.</summary>
    Empty,

    /// <summary>It is longer than what is taken.</summary>
    TooLong,
}

/// <summary>What reading a file came to.</summary>
/// <param name="Bytes">Its bytes; empty when it was not read.</param>
/// <param name="Fault">Why it was not read.</param>
/// <param name="Length">Its length in bytes, as the system told it before anything was read.</param>
public readonly record struct PlainFileRead(byte[] Bytes, PlainFileFault Fault, long Length);

/// <summary>
/// The one way in for files: its length is looked at before it is opened, and no more than that is read. What has no length is not
/// opened at all, since opening a pipe waits for its writer and a device never ends.
/// </summary>
public static class PlainFile
{
    /// <summary>Reads a file that is at most so long; the system's own refusals are thrown as they come.</summary>
    /// <param name="path">Where it is; a link is followed.</param>
    /// <param name="largest">Most bytes taken.</param>
    public static PlainFileRead Read(string path, long largest)
    {
        if (Directory.Exists(path))
        {
            return new([], PlainFileFault.Folder, 0);
        }

        var named = new FileInfo(path);
        if (!named.Exists)
        {
            return new([], PlainFileFault.Missing, 0);
        }

        // The length of a link is that of its text; a link to a pipe of this process leads to nothing that can be named.
        var file = named.ResolveLinkTarget(returnFinalTarget: true) as FileInfo ?? named;
        long length = file.Exists ? file.Length : 0;
        return length == 0 ? new([], PlainFileFault.Empty, 0)
            : length > largest ? new([], PlainFileFault.TooLong, length)
            : new(Whole(file.FullName, (int)length), PlainFileFault.None, length);
    }

    private static byte[] Whole(string path, int length)
    {
        using var handle = File.OpenHandle(path);
        var bytes = new byte[length];
        int got = 0;
        for (int step = -1; got < length && step != 0; got += step)
        {
            step = RandomAccess.Read(handle, bytes.AsSpan(got), got);
        }

        return got == length ? bytes : bytes[..got];
    }
}
