using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text.RegularExpressions;
using Xunit.Abstractions;

namespace PlatformForge.Outside.Tests;

/// <summary>
/// Builds that are killed, at random moments and before every step that the system does for the commit, as strace counts them. Whoever looks next, a verify
/// or a build, finds wholly the old folder or wholly the new one. A small number of kills by default; PLATFORMFORGE_KILLS=200 does 200 at random
/// moments and every step there is, and writes what it found to the test's output. PLATFORMFORGE_KILLS="200 3/8" does the third of eight pieces of them.
/// </summary>
public class KillTests(ITestOutputHelper told)
{
    // Of the calls by which a folder is changed; whatever is read between them changes nothing.
    private static readonly string[] Calls = ["mkdir", "flock", "pwrite64", "fsync", "rename", "unlink", "rmdir"];

    private static readonly (int Kills, int Piece, int Pieces) Asked = Environment.GetEnvironmentVariable("PLATFORMFORGE_KILLS")?.Split(' ', '/') switch
    {
        [var kills] => (Number(kills), 1, 1),
        [var kills, var piece, var pieces] => (Number(kills), Number(piece), Number(pieces)),
        _ => (0, 1, 1),
    };

    // Figures of the small run: with the two builds and one look that each takes, some 15 s on two quiet cores.
    private const int FewRandom = 4, FewAimed = 9;
    private const int Lanes = 2;

    // Built once for all tests: each kills in folders of its own.
    private static readonly Lazy<Ground> Grounds = new(() => new());

    private const string Project = """
        [layout]
        name = "Quillhaven"
        scale = "4mm"
        rail_top = 8
        [[track]]
        name = "main"
        alignment = [{ straight = 900 }]
        [[vehicle]]
        name = "coach"
        length = 228
        pivots = 162
        width = 34
        [clearance]
        running = 0.7
        [[platform]]
        name = "halt"
        face = { track = "main", side = "left", from = 350, to = 540 }
        ramps = { end = { length = 97 } }
        board = [{ at = 380, inset = 8 }]
        """;

    // Another platform altogether: its files have other names, so that some are put in place, some replaced, some taken away.
    private static readonly (string, string)[] Changes = [("from = 350", "from = 352"), ("\nboard = [{ at = 380, inset = 8 }]", ""), ("to = 540", "to = 670"),
        ("name = \"Quillhaven\"", "name = \"Marrowby\"")];

    private static readonly string Changed = Changes.Aggregate(Project, (text, change) => text.Replace(change.Item1, change.Item2, StringComparison.Ordinal));

    [Fact]
    public void A_build_killed_at_a_random_moment_leaves_the_old_folder_or_the_new_one()
    {
        var ground = Grounds.Value;
        int count = Asked.Kills > 0 ? Asked.Kills : FewRandom;
        var random = new Random(20_240_229);
        double whole = ground.Seconds;

        // Half of the moments anywhere, half where the folder is written: at the end.
        double[] moments = [.. Enumerable.Range(0, count).Select(i => whole * (i % 2 == 0 ? random.NextDouble() : 0.7 + (0.5 * random.NextDouble())))];
        Kill(ground, "random", Piece(moments), (lane, seconds) =>
        {
            using var build = Process.Start(lane.Build(Changed))!;
            if (!build.WaitForExit(TimeSpan.FromSeconds(seconds)))
            {
                build.Kill();
                build.WaitForExit();
            }
        });
    }

    [Fact]
    public void A_build_killed_before_any_step_of_the_commit_leaves_the_old_folder_or_the_new_one()
    {
        var ground = Grounds.Value;
        (string Call, int Count)[] aims = [.. ground.Steps().SelectMany(s => Enumerable.Range(1, s.Count).Select(i => (s.Call, i)))];
        Assert.True(aims.Length > 100, $"only {aims.Length} steps were seen");
        int killed = 0, stride = Asked.Kills > 0 ? 1 : (aims.Length + FewAimed - 1) / FewAimed;
        (string Call, int Count)[] taken = Piece([.. aims.Where((_, i) => i % stride == 0)]);
        Kill(ground, "aimed", taken, (lane, aim) =>
        {
            using var build = Process.Start(lane.Build(Changed, "-e", "trace=" + aim.Call, "-e", $"inject={aim.Call}:signal=KILL:when={aim.Count}", "-o",
                "/dev/null"))!;
            build.WaitForExit();
            Interlocked.Add(ref killed, build.ExitCode == 0 ? 0 : 1);
        });

        // Where a lock is taken or not may differ from run to run; all else is the same steps.
        told.WriteLine($"{killed} of these came to the step they were to be killed before.");
        Assert.True(killed >= taken.Length * 9 / 10, $"only {killed} were killed");
    }

    /// <summary>A disk that can't write what it was given is told, and nothing in place is touched: at the first flush, at a file among others, at the last
    /// file, and at the record of what is to be put in place. Files are told by name: strace counts calls by threads, and which thread has which file is
    /// chance.</summary>
    [Theory]
    [InlineData(null)]
    [InlineData("files/drawings/all.pdf")]
    [InlineData("files/manifest.json")]
    [InlineData("commit.new")]
    public void A_disk_that_refuses_to_flush_is_told_and_the_old_folder_stays(string? file)
    {
        var ground = Grounds.Value;
        var lane = new Lane(Path.Combine(ground.Folder, "flush"));
        lane.Begin(ground.Old);
        string[] on = file is null ? [] : ["-P", Path.Combine(lane.Out, ".platformforge-new", file)];
        var start = lane.Build(Changed, [.. on, "-e", "trace=fsync", "-e", "inject=fsync:error=EIO", "-o", "/dev/null"]);
        Assert.Equal(6, Tool.Run(start.FileName, start.ArgumentList).Exit);
        Assert.Equal(ground.OldListing, lane.Listing());
        Assert.Equal(0, lane.Verify().Exit);
    }

    private static int Number(string text) => int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);

    private static T[] Piece<T>(T[] all) => [.. all.Where((_, i) => i % Asked.Pieces == Asked.Piece - 1)];

    private void Kill<T>(Ground ground, string how, T[] moments, Action<Lane, T> kill)
    {
        int old = 0, fresh = 0, next = -1;
        var wrong = new List<string>();
        Parallel.For(0, Lanes, new ParallelOptions { MaxDegreeOfParallelism = Lanes }, number =>
        {
            var lane = new Lane(Path.Combine(ground.Folder, $"{how}-{number}"));
            for (int i = Interlocked.Increment(ref next); i < moments.Length; i = Interlocked.Increment(ref next))
            {
                lane.Begin(ground.Old);
                kill(lane, moments[i]);

                // Every third time the next to look is a build of the old project, else a verify.
                bool builds = i % 3 == 2;
                var said = builds ? lane.BuildAgain(Project) : lane.Verify();
                string[] now = lane.Listing();
                bool isOld = now.SequenceEqual(ground.OldListing), isNew = now.SequenceEqual(ground.NewListing);
                lock (wrong)
                {
                    old += isOld ? 1 : 0;
                    fresh += isNew ? 1 : 0;
                    if (said.Exit != 0 || !(isOld || (isNew && !builds)))
                    {
                        wrong.Add($"{how} {moments[i]}: {(builds ? "build" : "verify")} ended with {said.Exit}, "
                            + $"folder {(isOld ? "old" : isNew ? "new" : "mixed")}: {said.All}");
                    }
                }
            }
        });
        told.WriteLine($"{moments.Length} kills, {how}: {old} old, {fresh} new, {moments.Length - old - fresh} mixed.");
        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
        Assert.Equal(moments.Length, old + fresh);
        Assert.True(old > 0);
    }

    private static string[] Listing(string folder) =>
    [
        .. Directory.EnumerateFileSystemEntries(folder, "*", SearchOption.AllDirectories)
            .Select(p => Path.GetRelativePath(folder, p) + (File.Exists(p) ? " " + Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(p))) : "/"))
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>Where one build after another is killed.</summary>
    private sealed class Lane(string folder)
    {
        public string Out => Path.Combine(folder, "out");

        public void Begin(string old)
        {
            if (Directory.Exists(folder))
            {
                Directory.Delete(folder, recursive: true);
            }

            Directory.CreateDirectory(folder);
            foreach (string path in Directory.EnumerateFiles(old, "*", SearchOption.AllDirectories))
            {
                string copy = Path.Combine(Out, Path.GetRelativePath(old, path));
                Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
                File.Copy(path, copy);
            }
        }

        public string[] Listing() => KillTests.Listing(Out);

        /// <summary>A build ready to be started, under strace when it is given options for it.</summary>
        public ProcessStartInfo Build(string project, params string[] strace)
        {
            string file = Path.Combine(folder, "halt.toml");
            File.WriteAllText(file, project);
            // The runtime's own diagnostics have files of theirs, which it takes away at the end.
            string[] command = ["env", "DOTNET_EnableDiagnostics=0", "dotnet", WrittenSamples.Program, "build", file, "--no-pictures", "--quiet", "--output",
                Out];
            string[] all = strace.Length == 0 ? command : ["strace", "-f", "-qq", .. strace, .. command];
            return new(all[0], all[1..]) { UseShellExecute = false };
        }

        public Tool.Said BuildAgain(string project)
        {
            var start = Build(project);
            return Tool.Run(start.FileName, start.ArgumentList);
        }

        public Tool.Said Verify() => WrittenSamples.CommandLine("verify", Out);
    }

    /// <summary>The old folder and the new one, built without hindrance.</summary>
    private sealed class Ground
    {
        public Ground()
        {
            AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(Folder, recursive: true);
            var lane = new Lane(Path.Combine(Folder, "old"));
            Directory.CreateDirectory(Path.Combine(Folder, "old"));
            var said = lane.BuildAgain(Project);
            Assert.True(said.Exit == 0, said.All);
            OldListing = lane.Listing();
            var after = new Lane(Path.Combine(Folder, "new"));
            after.Begin(Old);
            var clock = Stopwatch.StartNew();
            said = after.BuildAgain(Changed);
            Seconds = clock.Elapsed.TotalSeconds;
            Assert.True(said.Exit == 0, said.All);
            NewListing = after.Listing();
        }

        public string Folder { get; } = Directory.CreateTempSubdirectory("platformforge-kills-").FullName;

        public string Old => Path.Combine(Folder, "old", "out");

        public string[] OldListing { get; }

        public string[] NewListing { get; }

        public double Seconds { get; }

        /// <summary>How often the thread that writes makes each of the calls.</summary>
        public IReadOnlyList<(string Call, int Count)> Steps()
        {
            var lane = new Lane(Path.Combine(Folder, "traced"));
            lane.Begin(Old);
            string log = Path.Combine(Folder, "trace");
            var start = lane.Build(Changed, "-e", "trace=" + string.Join(',', Calls), "-o", log);
            var said = Tool.Run(start.FileName, start.ArgumentList);
            Assert.True(said.Exit == 0, said.All);
            var calls = File.ReadLines(log).Select(l => Regex.Match(l, @"^(\d+) +(\w+)\(")).Where(m => m.Success)
                .Select(m => (Thread: m.Groups[1].Value, Call: m.Groups[2].Value)).ToArray();
            string writer = calls.Where(c => c.Call == "rename").GroupBy(c => c.Thread).MaxBy(g => g.Count())!.Key;

            // Locks are taken for every file that is read; of those a few are enough.
            return [.. Calls.Select(c => (c, Math.Min(c == "flock" ? 8 : int.MaxValue, calls.Count(x => x.Thread == writer && x.Call == c))))];
        }
    }
}
