using System.Text;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Manifests;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>
/// A run is ended before each of its steps in turn, as a kill would: nothing more is done, not even cleaning up. Whoever looks next finds the old folder or
/// the new one. The same by real kills: tests/PlatformForge.Outside.Tests/KillTests.cs.
/// </summary>
public sealed class FolderKillTests : IDisposable
{
    private static readonly Manifest Empty = new("Quillhaven", "0.1.0", new string('0', 64), [], []);
    private static readonly OutputFile[] Old = [File("a.stl", "one"), File("same.md", "same"), File("deep/down/b.stl", "two"), File("gone/c.csv", "three")];
    private static readonly OutputFile[] New = [File("a.stl", "one, newer"), File("same.md", "same"), File("deep/down/b.stl", "two, newer"),
        File("fresh/d.stl", "four")];
    private readonly string root = Directory.CreateTempSubdirectory("platformforge-test-").FullName;

    private string Folder => Path.Combine(root, "out");

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_kill_before_any_step_leaves_wholly_the_old_or_wholly_the_new(bool fresh)
    {
        string[] before = State(fresh ? [] : Old), after = State(New);
        bool[] seen = [false, false];
        int steps = Steps(() => Prepare(fresh), disk => Write(New, disk));
        Assert.InRange(steps, 30, 100);
        for (int i = 0; i < steps; i++)
        {
            Prepare(fresh);
            Assert.Throws<KilledException>(() => Write(New, new KillingDisk(i)));
            Assert.Empty(OutputFolder.Settle(Folder));
            string[] now = Present();
            Assert.True(now.SequenceEqual(before) || now.SequenceEqual(after), $"after step {i}: {string.Join(", ", now)}");
            seen[now.SequenceEqual(after) ? 1 : 0] = true;

            // And the next build goes either way.
            Assert.Empty(Write(i % 2 == 0 ? Old : New).Findings);
            Assert.Equal(i % 2 == 0 ? State(Old) : after, Present());
        }

        Assert.Equal([true, true], seen);
    }

    [Fact]
    public void A_kill_of_the_one_who_finishes_after_a_kill_is_no_worse()
    {
        string[] before = State(Old), after = State(New);
        int steps = Steps(() => Prepare(fresh: false), disk => Write(New, disk));
        for (int i = 0; i < steps; i += 2)
        {
            for (int k = i % 3; k < steps; k += 3)
            {
                Prepare(fresh: false);
                Assert.Throws<KilledException>(() => Write(New, new KillingDisk(i)));
                try
                {
                    Assert.Empty(OutputFolder.Settle(Folder, new KillingDisk(k)));
                    break;
                }
                catch (KilledException)
                {
                    Assert.Empty(OutputFolder.Settle(Folder));
                    string[] now = Present();
                    Assert.True(now.SequenceEqual(before) || now.SequenceEqual(after), $"after steps {i} and {k}: {string.Join(", ", now)}");
                }
            }
        }
    }

    [Fact]
    public void A_step_that_the_system_refuses_leaves_the_old_folder_and_a_kill_meanwhile_too()
    {
        string[] before = State(Old), after = State(New);
        Prepare(fresh: false);
        int steps = Steps(() => Prepare(fresh: false), disk => Write(New, disk));
        for (int i = 0; i < steps; i++)
        {
            Prepare(fresh: false);
            var outcome = Write(New, new RefusingDisk(i));
            Assert.Empty(OutputFolder.Settle(Folder));
            Assert.Equal(outcome.Succeeded ? after : before, Present());

            // Refused once, and killed while it undoes.
            for (int k = i + 1 + (i % 3); k < i + 12; k += 3)
            {
                Prepare(fresh: false);
                try
                {
                    Write(New, new RefusingDisk(i) { KilledAt = k });
                    break;
                }
                catch (KilledException)
                {
                    Assert.Empty(OutputFolder.Settle(Folder));
                    string[] now = Present();
                    Assert.True(now.SequenceEqual(before) || now.SequenceEqual(after), $"after steps {i} and {k}: {string.Join(", ", now)}");
                }
            }
        }
    }

    [Fact]
    public void What_somebody_changed_after_the_kill_is_not_replaced_unless_forced()
    {
        int steps = Steps(() => Prepare(fresh: false), disk => Write(New, disk)), refused = 0;
        for (int i = 0; i < steps; i++)
        {
            Prepare(fresh: false);
            Assert.Throws<KilledException>(() => Write(New, new KillingDisk(i)));
            System.IO.File.WriteAllText(Path.Combine(Folder, "a.stl"), "sliced by hand");
            var findings = OutputFolder.Settle(Folder);
            Assert.Equal("sliced by hand", System.IO.File.ReadAllText(Path.Combine(Folder, "a.stl")));
            refused += findings.Count;
            Assert.AllOrNone(findings, f => Assert.Equal(("PF7311", FaultKind.Output), (f.Code, f.Kind)));
            Assert.NotEmpty(OutputFolder.Write(Folder, Empty, New).Findings);
            Assert.Equal("sliced by hand", System.IO.File.ReadAllText(Path.Combine(Folder, "a.stl")));
            Assert.Empty(OutputFolder.Write(Folder, Empty, New, force: true).Findings);
            Assert.Equal(State(New), Present());
        }

        Assert.InRange(refused, 1, steps - 1);
    }

    [Fact]
    public void What_cannot_be_brought_to_an_end_says_so_and_is_once_the_disk_lets_it()
    {
        int steps = Steps(() => Prepare(fresh: false), disk => Write(New, disk)), stuck = 0;
        for (int i = 0; i < steps; i++)
        {
            Prepare(fresh: false);
            Assert.Throws<KilledException>(() => Write(New, new KillingDisk(i)));
            var told = OutputFolder.Settle(Folder, new RefusingDisk(1));
            Assert.AllOrNone(told, f => Assert.Contains(f.Code, new[] { "PF7313", "PF7302", "PF7303" }));
            stuck += told.Count(f => f.Code == "PF7313");
            Assert.Empty(OutputFolder.Settle(Folder));
            string[] now = Present();
            Assert.True(now.SequenceEqual(State(Old)) || now.SequenceEqual(State(New)), $"after step {i}");
        }

        Assert.InRange(stuck, 1, steps);
    }

    [Theory]
    [InlineData("{")]
    [InlineData("")]
    [InlineData("{\"tool\":\"PlatformForge\",\"format\":2,\"remove\":[],\"replace\":[],\"folders\":[]}")]
    [InlineData("{\"tool\":\"PlatformForge\",\"format\":1,\"remove\":[{\"path\":\"../mine\",\"old\":\"\"}],\"replace\":[],\"folders\":[]}")]
    [InlineData("{\"tool\":\"PlatformForge\",\"format\":1,\"remove\":[null],\"replace\":[],\"folders\":[]}")]
    public void A_record_that_cannot_be_read_is_told_and_forced_it_is_cleared(string record)
    {
        Prepare(fresh: false);
        Directory.CreateDirectory(Path.Combine(Folder, OutputFolder.StagingName));
        System.IO.File.WriteAllText(Path.Combine(Folder, OutputFolder.StagingName, "commit.json"), record);
        Assert.Equal("PF7312", Assert.Single(OutputFolder.Settle(Folder)).Code);
        Assert.Equal("PF7312", Assert.Single(Write(New).Findings).Code);
        Assert.Empty(OutputFolder.Write(Folder, Empty, New, force: true).Findings);
        Assert.Equal(State(New), Present());
    }

    [Fact]
    public void Waiting_files_that_a_power_cut_spoilt_bring_the_old_folder_back()
    {
        int steps = Steps(() => Prepare(fresh: false), disk => Write(New, disk));
        for (int i = 0; i < steps; i++)
        {
            Prepare(fresh: false);
            Assert.Throws<KilledException>(() => Write(New, new KillingDisk(i)));
            string spoilt = Path.Combine(Folder, OutputFolder.StagingName, "files", "fresh", "d.stl");
            if (System.IO.File.Exists(spoilt) && OutputFolder.IsChanging(Folder))
            {
                System.IO.File.WriteAllText(spoilt, "");
                Assert.Empty(OutputFolder.Settle(Folder));
                Assert.Equal(State(Old), Present());
            }
        }
    }

    // Who comes second is refused by the lock and by nothing else, at whatever moment the area is taken or let go of.
    [Fact]
    public void Of_many_runs_at_once_each_is_whole_or_refused()
    {
        for (int round = 0; round < Simulations.Of(24, 200); round++)
        {
            Prepare(fresh: false);
            int written = 0;
            Parallel.For(0, 40, new ParallelOptions { MaxDegreeOfParallelism = 8 }, i =>
            {
                var outcome = Write(i % 2 == 0 ? Old : New);
                Assert.True(outcome.Succeeded || outcome.Findings is [{ Code: "PF7305" }], string.Join(", ", outcome.Findings.Select(f => f.Message)));
                Interlocked.Add(ref written, outcome.Succeeded ? 1 : 0);
            });
            string[] now = Present();
            Assert.True(now.SequenceEqual(State(Old)) || now.SequenceEqual(State(New)), string.Join(", ", now));
            Assert.InRange(written, 1, 40);
        }
    }

    private static OutputFile File(string path, string text) => new(path, Encoding.UTF8.GetBytes(text));

    private Outcome<FolderReport> Write(OutputFile[] files, FolderDisk? disk = null) =>
        OutputFolder.Write(Folder, Empty, files, disk ?? new KillingDisk(int.MaxValue));

    private void Prepare(bool fresh)
    {
        if (Directory.Exists(Folder))
        {
            Directory.Delete(Folder, recursive: true);
        }

        if (!fresh)
        {
            Assert.True(Write(Old).Succeeded);
        }
    }

    private static int Steps(Action prepare, Action<FolderDisk> run)
    {
        prepare();
        var disk = new KillingDisk(int.MaxValue);
        run(disk);
        return disk.Done;
    }

    private readonly Dictionary<OutputFile[], string[]> states = [];

    // What a folder holds once these files are in it; nothing at all stands for a first run that did not come to be.
    private string[] State(OutputFile[] files) => files.Length == 0 ? [] : states.TryGetValue(files, out var state) ? state : states[files] = Written(files);

    private string[] Written(OutputFile[] files)
    {
        string beside = Path.Combine(root, "as it should be");
        Assert.True(OutputFolder.Write(beside, Empty, files).Succeeded);
        string[] state = Listing(beside);
        Directory.Delete(beside, recursive: true);
        return state;
    }

    [Theory]
    [InlineData(false, "the system refuses: no quota")]
    [InlineData(true, "a file would be longer than this system allows")]
    public void A_lock_that_the_system_refuses_is_no_other_run(bool tooLong, string said)
    {
        Prepare(fresh: false);
        var finding = Assert.Single(Write(New, new LocklessDisk(tooLong)).Findings);
        Assert.Equal("PF7303", finding.Code);
        Assert.Contains(said, finding.Message, StringComparison.Ordinal);
        Assert.Equal(State(Old), Present());
    }

    [Fact]
    public void A_file_longer_than_the_system_takes_is_its_refusal_and_no_fault_of_the_program()
    {
        Directory.CreateDirectory(root);

        // Beyond what common file systems take; those that take it have nothing to refuse.
        var fault = Record.Exception(() => FolderDisk.Real.Write(Path.Combine(root, "long"), stream =>
        {
            stream.Position = 1L << 60;
            stream.WriteByte(1);
            return true;
        }));
        Assert.True(fault is null or IOException, fault?.ToString());
    }

    private string[] Present() => Directory.Exists(Folder) ? Listing(Folder) : [];

    // Files with what is in them, and folders, so that an empty one left behind is seen as well.
    private static string[] Listing(string folder) =>
    [
        .. Directory.EnumerateFileSystemEntries(folder, "*", SearchOption.AllDirectories)
            .Select(p => Path.GetRelativePath(folder, p).Replace('\\', '/') + (System.IO.File.Exists(p) ? ": " + System.IO.File.ReadAllText(p) : "/"))
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>Ends everything before a step; from then on nothing is done at all.</summary>
    private sealed class KillingDisk(int at) : FolderDisk
    {
        public int Done { get; private set; }

        // A simulated kill loses nothing that was written, so nothing is waited for.
        protected override bool Flushes => false;

        protected override void Before(string step)
        {
            if (Done >= at)
            {
                throw new KilledException(step);
            }

            Done++;
        }
    }

    /// <summary>Refuses one step, as a system does that is out of room.</summary>
    private sealed class RefusingDisk(int at) : FolderDisk
    {
        private int done;

        public int KilledAt { get; init; } = int.MaxValue;

        protected override bool Flushes => false;

        protected override void Before(string step)
        {
            int now = done++;
            if (now >= KilledAt)
            {
                throw new KilledException(step);
            }

            if (now == at)
            {
                throw new IOException("refused: " + step);
            }
        }
    }

    /// <summary>Refuses the lock a length, as a system does that has a limit on files, or a disk that fails.</summary>
    private sealed class LocklessDisk(bool tooLong) : FolderDisk
    {
        public override void SetLength(FileStream file, long length) =>
            throw (tooLong ? new ArgumentOutOfRangeException(nameof(length)) : new IOException("no quota"));
    }

    private sealed class KilledException(string step) : Exception(step);
}
