using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace PlatformForge.Exports.Folders;

/// <summary>
/// Waits until the disk has a file. On Unix the system is asked itself: the framework's own flush tells no refusal there (seen with .NET 10.0: fsync answers
/// EIO,
/// FileStream.Flush(true) and RandomAccess.FlushToDisk end as if all were well), and a promise to have flushed needs one.
/// </summary>
internal static class DiskFlush
{
    // POSIX fsync: EINVAL where a kind of file knows no such thing.
    private const int Invalid = 22, Interrupted = 4;

    /// <summary>The file's written bytes, on the disk.</summary>
    /// <exception cref="IOException">The system could not write them.</exception>
    public static void Of(FileStream file)
    {
        if (OperatingSystem.IsWindows())
        {
            file.Flush(flushToDisk: true);
            return;
        }

        while (Fsync(file.SafeFileHandle) != 0)
        {
            int error = Marshal.GetLastPInvokeError();
            if (error == Invalid)
            {
                return;
            }

            if (error != Interrupted)
            {
                throw new IOException(Marshal.GetPInvokeErrorMessage(error));
            }
        }
    }

    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
    private static extern int Fsync(SafeFileHandle file);
}
