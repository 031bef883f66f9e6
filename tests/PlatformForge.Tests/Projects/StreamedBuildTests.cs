using System.Runtime.CompilerServices;
using PlatformForge.Exports;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Manifests;
using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Cli;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>A build puts each file on the disk as it is made: what is refused half-way leaves the old folder, and memory does not hold what is made.</summary>
public class StreamedBuildTests
{
    private static readonly Manifest Empty = new("Quillhaven", "0.1.0", new string('0', 64), [], []);
    private static readonly OutputChoice Plain = new() { Pictures = false };

    [Fact]
    public void A_write_that_is_refused_half_way_leaves_the_old_folder_and_no_staging_area()
    {
        using var folder = new TempFolder();
        ProjectSpec first = Samples.Sound(Samples.Small), second = Samples.Sound(Samples.Small + "deck = { thickness = 2 }");
        Assert.True(BuildRun.Build(first, folder["out"], false, RunWatch.None, Plain).Succeeded);
        var before = Bytes(folder["out"]);
        var room = new ShortDisk(long.MaxValue);
        Assert.True(BuildRun.Build(first, folder["beside"], false, RunWatch.None, Plain).Succeeded);
        Assert.True(BuildRun.Build(second, folder["beside"], room, false, RunWatch.None, Plain).Succeeded);
        Assert.InRange(room.Taken, 100_000, 100_000_000);
        for (int i = 0; i < 8; i++)
        {
            // Room for the first bytes, for half of them, for all but the last; the manifest comes last of all.
            var refused = BuildRun.Build(second, folder["out"], new ShortDisk(i == 7 ? room.Taken - 1 : room.Taken * i / 7), false, RunWatch.None, Plain);
            var finding = Assert.Single(refused.Findings, f => f.Severity == Severity.Error);
            Assert.Equal(("PF7303", FaultKind.Output), (finding.Code, finding.Kind));
            Assert.Contains("no room", finding.Message, StringComparison.Ordinal);
            Assert.Equal(before, Bytes(folder["out"]));
            Assert.False(Directory.Exists(Path.Combine(folder["out"], OutputFolder.StagingName)));
        }
    }

    [Fact]
    public void What_a_run_writes_is_what_it_would_hold_in_memory()
    {
        using var folder = new TempFolder();
        var project = Samples.Sound(Samples.Small);
        var built = BuildRun.Build(project, folder["out"], false, RunWatch.None, new() { PictureWidth = 120 }).Value!;
        var held = OutputFiles.Of(built.Dossier, new() { PictureWidth = 120 });
        var written = Bytes(folder["out"]);
        Assert.Equal([.. held.Files.Select(f => f.Path).Append(Manifest.FileName).Order(StringComparer.Ordinal)], written.Keys.Order(StringComparer.Ordinal));
        Assert.All(held.Files, f => Assert.True(Convert.ToHexString(f.Bytes) == written[f.Path], f.Path));

        // And once more, over what is there: nothing is written again.
        Assert.Empty(BuildRun.Build(project, folder["out"], false, RunWatch.None, new() { PictureWidth = 120 }).Value!.Folder.Written);
    }

    [Fact]
    public void A_file_that_waits_on_the_disk_is_not_held_in_memory()
    {
        using var folder = new TempFolder();
        var made = new List<WeakReference>();
        int most = 0, looks = 0;
        FileWork Piece(int i) => new($"stl/{i:D3}.stl", () =>
        {
            lock (made)
            {
                // A collection goes over all that the tests beside this one hold: one in six files says enough.
                if (i % 6 == 5)
                {
                    GC.Collect();
                    most = Math.Max(most, made.Count(w => w.IsAlive));
                    looks++;
                }

                return Kept(made, i);
            }
        });
        IReadOnlyList<OutputFile> files = [];
        Assert.True(OutputFolder.Fill(folder["out"], false, shelf =>
        {
            files = OutputWork.Make([.. Enumerable.Range(0, 60).Select(Piece)], shelf, default);
            return Outcome.Of(new Filling(Empty, files));
        }).Succeeded);
        Assert.Equal((60, 10), (made.Count, looks));
        Assert.Equal(Enumerable.Repeat(100_000L, 60), files.Select(f => f.Contents.Length));

        // One a thread under way, and one that a thread may not have let go of yet.
        Assert.InRange(most, 0, 2 * Environment.ProcessorCount);
        Assert.Equal(100_000, new FileInfo(folder["out/stl/059.stl"]).Length);
    }

    [Fact]
    public void What_goes_wrong_while_files_are_made_is_told_as_it_is_and_not_as_a_fault_of_the_folder()
    {
        using var folder = new TempFolder();
        foreach (Exception fault in new Exception[] { new ArgumentException("ours"), new NotSupportedException("ours"), new InvalidOperationException("ours") })
        {
            Assert.Same(fault, Assert.ThrowsAny<Exception>(() => OutputFolder.Fill(folder["out"], false, shelf =>
            {
                shelf.Put(new("a.stl", () => [1]));
                throw fault;
            })));
            Assert.False(Directory.Exists(folder["out"]));
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static byte[] Kept(List<WeakReference> made, int i)
    {
        var bytes = new byte[100_000];
        bytes[0] = (byte)i;
        made.Add(new(bytes));
        return bytes;
    }

    private static Dictionary<string, string> Bytes(string folder) => Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
        .ToDictionary(f => Path.GetRelativePath(folder, f).Replace('\\', '/'), f => Convert.ToHexString(File.ReadAllBytes(f)), StringComparer.Ordinal);

    /// <summary>A disk with room for so many bytes.</summary>
    private sealed class ShortDisk(long room) : FolderDisk
    {
        private long taken;

        public long Taken => taken;

        protected override bool Flushes => false;

        protected override Stream Open(string path) => new ShortStream(base.Open(path), this);

        private void Take(int bytes)
        {
            if (Interlocked.Add(ref taken, bytes) > room)
            {
                throw new IOException("no room is left.");
            }
        }

        private sealed class ShortStream(Stream inner, ShortDisk disk) : Stream
        {
            public override bool CanRead => true;

            public override bool CanSeek => true;

            public override bool CanWrite => true;

            public override long Length => inner.Length;

            public override long Position
            {
                get => inner.Position;
                set => inner.Position = value;
            }

            public override void Flush() => inner.Flush();

            public override int Read(byte[] buffer, int offset, int count) => inner.Read(buffer, offset, count);

            public override long Seek(long offset, SeekOrigin origin) => inner.Seek(offset, origin);

            public override void SetLength(long value) => inner.SetLength(value);

            public override void Write(byte[] buffer, int offset, int count)
            {
                disk.Take(count);
                inner.Write(buffer, offset, count);
            }

            protected override void Dispose(bool disposing)
            {
                inner.Dispose();
                base.Dispose(disposing);
            }
        }
    }
}
