using PlatformForge.Exports.Folders;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>Files left to the queue are read as they were written while they wait, are let go of in the end, and a refusal of the system is told.</summary>
public sealed class DiskQueueTests : IDisposable
{
    private const int Files = 60;

    private readonly string root = Directory.CreateTempSubdirectory().FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public void Files_are_there_while_they_wait_and_afterwards()
    {
        using var queue = new DiskQueue();
        Parallel.For(0, Files, i =>
        {
            FolderDisk.Real.Write(Name(i), stream => Wrote(stream, i), queue);
            Assert.Equal(Bytes(i), File.ReadAllBytes(Name(i)));
        });
        queue.Await();
        for (int i = 0; i < Files; i++)
        {
            // Nobody else holds it open any more.
            using var alone = new FileStream(Name(i), FileMode.Open, FileAccess.ReadWrite, FileShare.None);
            Assert.Equal(Bytes(i).Length, alone.Length);
        }
    }

    [Fact]
    public void What_is_not_wanted_is_left_to_its_writer()
    {
        using var queue = new DiskQueue();
        FolderDisk.Real.Write(Name(0), stream => !Wrote(stream, 0), queue);
        using var alone = new FileStream(Name(0), FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        Assert.Equal(Bytes(0).Length, alone.Length);
    }

    [Fact]
    public void A_refusal_is_told_to_who_waits_for_all()
    {
        var queue = new DiskQueue();
        var gone = new FileStream(Name(0), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.Read);

        // Closed under it, so that nobody can ask the system about it.
        gone.SafeFileHandle.Dispose();
        Assert.True(queue.Takes(gone));
        Assert.Throws<IOException>(queue.Await);
    }

    private string Name(int i) => Path.Combine(root, $"{i}");

    private static byte[] Bytes(int i) => [.. Enumerable.Range(0, 1000 + (i * 37)).Select(k => (byte)(k * (i + 3)))];

    private static bool Wrote(Stream stream, int i)
    {
        stream.Write(Bytes(i));
        return true;
    }
}
