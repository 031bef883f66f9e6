using System.Text;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Manifests;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>All or nothing, and only what is ours.</summary>
public sealed class OutputFolderTests : IDisposable
{
    private static readonly Manifest Empty = new("Quillhaven", "0.1.0", new string('0', 64), [], []);
    private readonly string root = Directory.CreateTempSubdirectory("platformforge-test-").FullName;

    private string Folder => Path.Combine(root, "out");

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public void Files_and_the_manifest_that_lists_them_are_written_and_nothing_else()
    {
        var report = Write(File("stl/a-01.stl", "one"), File("report.md", "two")).Value!;
        Assert.Equal(["manifest.json", "report.md", "stl/a-01.stl"], report.Written);
        Assert.Equal(["manifest.json", "report.md", "stl/a-01.stl"], Present());
        var manifest = ManifestForm.Read(System.IO.File.ReadAllBytes(Path.Combine(Folder, "manifest.json")), "m").Value!;

        // SHA-256 of "one", from the sha256sum tool.
        Assert.Equal(new ManifestFile("stl/a-01.stl", 3, "7692c3ad3540bb803c020b3aee66cd8887123234ea0c6e7143c0add73ff431ed"), manifest.Files[1]);
    }

    [Fact]
    public void A_second_run_writes_only_what_changed_and_removes_what_it_has_no_use_for()
    {
        Write(File("stl/a-01.stl", "one"), File("stl/a-02.stl", "two"), File("old/x.csv", "gone"));
        var before = System.IO.File.GetLastWriteTimeUtc(Path.Combine(Folder, "stl/a-01.stl"));
        var report = Write(File("stl/a-01.stl", "one"), File("stl/a-02.stl", "changed")).Value!;
        Assert.Equal(["manifest.json", "stl/a-02.stl"], report.Written);
        Assert.Equal(["stl/a-01.stl"], report.Unchanged);
        Assert.Equal(["old/x.csv"], report.Removed);
        Assert.False(Directory.Exists(Path.Combine(Folder, "old")));
        Assert.Equal(before, System.IO.File.GetLastWriteTimeUtc(Path.Combine(Folder, "stl/a-01.stl")));

        var again = Write(File("stl/a-01.stl", "one"), File("stl/a-02.stl", "changed")).Value!;
        Assert.Empty(again.Written);
    }

    [Fact]
    public void A_folder_with_files_of_somebody_else_is_refused_by_name_and_left_alone()
    {
        Directory.CreateDirectory(Folder);
        System.IO.File.WriteAllText(Path.Combine(Folder, "holiday.jpg"), "mine");
        var finding = Assert.Single(Write(File("a.stl", "one")).Findings);
        Assert.Equal(("PF7302", FaultKind.Output), (finding.Code, finding.Kind));
        Assert.Contains("holiday.jpg", finding.Message, StringComparison.Ordinal);
        Assert.Equal(["holiday.jpg"], Present());
    }

    [Fact]
    public void A_folder_that_could_not_be_written_is_told_beforehand_and_left_as_it_was()
    {
        Assert.Empty(OutputFolder.Objections(Folder, force: false));
        Assert.False(Directory.Exists(Folder));

        Directory.CreateDirectory(Folder);
        System.IO.File.WriteAllText(Path.Combine(Folder, "holiday.jpg"), "mine");
        Assert.Equal("PF7302", Assert.Single(OutputFolder.Objections(Folder, force: false)).Code);
        Assert.Empty(OutputFolder.Objections(Folder, force: true));
        Assert.Equal("PF7301", Assert.Single(OutputFolder.Objections(Path.Combine(Folder, "holiday.jpg"), force: true)).Code);
        Assert.Equal(["holiday.jpg"], Present());
    }

    [Fact]
    public void A_manifest_of_another_program_does_not_make_files_ours()
    {
        Directory.CreateDirectory(Folder);
        System.IO.File.WriteAllText(Path.Combine(Folder, "manifest.json"), "{\"name\":\"a web page\"}");
        Assert.Equal("PF7302", Assert.Single(Write(File("a.stl", "one")).Findings).Code);
    }

    [Fact]
    public void Forced_it_replaces_what_is_in_the_way_and_leaves_the_rest()
    {
        Directory.CreateDirectory(Folder);
        System.IO.File.WriteAllText(Path.Combine(Folder, "holiday.jpg"), "mine");
        System.IO.File.WriteAllText(Path.Combine(Folder, "a.stl"), "also mine");
        Assert.True(OutputFolder.Write(Folder, Empty, [File("a.stl", "one")], force: true).Succeeded);
        Assert.Equal(["a.stl", "holiday.jpg", "manifest.json"], Present());
        Assert.Equal("one", Text("a.stl"));
        Assert.Equal("mine", Text("holiday.jpg"));
    }

    [Fact]
    public void A_file_of_ours_that_somebody_changed_is_not_replaced()
    {
        Write(File("a.stl", "one"));
        System.IO.File.WriteAllText(Path.Combine(Folder, "a.stl"), "sliced by hand");
        Assert.Equal("PF7304", Assert.Single(Write(File("a.stl", "two")).Findings).Code);
        Assert.Equal("sliced by hand", Text("a.stl"));
    }

    [Fact]
    public void A_write_that_fails_half_way_leaves_the_folder_as_it_was()
    {
        Write(File("a.stl", "one"), File("b.stl", "two"));
        var before = Present().Select(Text).ToArray();

        // A name longer than file systems take fails while staging; a folder where a file should go before anything is renamed.
        var outcome = Write(File("a.stl", "new"), File("b.stl", "new"), File(new string('x', 300), "never"));
        Assert.Equal("PF7303", Assert.Single(outcome.Findings).Code);
        Assert.Equal(before, Present().Select(Text));

        Directory.CreateDirectory(Path.Combine(Folder, "c.stl"));
        outcome = Write(File("a.stl", "new"), File("d/e/f.stl", "new"), File("c.stl", "never"));
        Assert.Equal("PF7314", Assert.Single(outcome.Findings).Code);
        Assert.Equal(before, Present().Select(Text));
        Assert.False(Directory.Exists(Path.Combine(Folder, "d")));
    }

    [Fact]
    public void A_first_run_that_fails_leaves_no_folder_behind()
    {
        Assert.False(Write(File("a.stl", "one"), File(new string('x', 300), "never")).Succeeded);
        Assert.Empty(Directory.EnumerateFileSystemEntries(root));
    }

    [Fact]
    public void A_cancelled_run_leaves_the_folder_as_it_was()
    {
        Write(File("a.stl", "one"));
        Assert.Throws<OperationCanceledException>(() => OutputFolder.Write(Folder, Empty, [File("a.stl", "two")], cancel: new(canceled: true)));
        Assert.Equal("one", Text("a.stl"));
        Assert.Equal(["a.stl", "manifest.json"], Present());
    }

    [Fact]
    public void A_file_where_the_folder_should_be_is_a_clean_fault()
    {
        System.IO.File.WriteAllText(Folder, "a file");
        var finding = Assert.Single(Write(File("a.stl", "one")).Findings);
        Assert.Equal(("PF7301", FaultKind.Output), (finding.Code, finding.Kind));
        Assert.Contains("it is a file", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_runs_at_once_do_not_mix()
    {
        Directory.CreateDirectory(Path.Combine(Folder, OutputFolder.StagingName));
        using var other = new FileStream(Path.Combine(Folder, OutputFolder.StagingName, "lock"), FileMode.CreateNew, FileAccess.Write, FileShare.None);
        Assert.Equal("PF7305", Assert.Single(Write(File("a.stl", "one")).Findings).Code);
    }

    [Fact]
    public void What_a_run_left_that_died_before_its_record_is_cleared_and_never_read_back()
    {
        Write(File("a.stl", "one"));
        string waiting = Path.Combine(Folder, OutputFolder.StagingName, "files");
        Directory.CreateDirectory(waiting);
        System.IO.File.WriteAllText(Path.Combine(waiting, "a.stl"), "of the dead run");
        string seen = "";
        Assert.True(OutputFolder.Write(Folder, Empty, [File("a.stl", "one"), File("b.stl", "two")], approve: files =>
        {
            seen = Encoding.UTF8.GetString(files.Single(f => f.Path == "a.stl").Bytes);
            return [];
        }).Succeeded);
        Assert.Equal("one", seen);
        Assert.Equal(["a.stl", "b.stl", "manifest.json"], Present());
    }

    [Fact]
    public void A_link_that_leads_outside_is_not_followed()
    {
        string outside = Path.Combine(root, "outside");
        Directory.CreateDirectory(outside);
        Directory.CreateDirectory(Folder);
        Directory.CreateSymbolicLink(Path.Combine(Folder, "stl"), outside);
        Assert.Equal("PF7302", Assert.Single(Write(File("stl/a.stl", "one")).Findings).Code);
        Assert.Empty(Directory.EnumerateFileSystemEntries(outside));
    }

    [Theory]
    [InlineData(OutputFolder.StagingName, false)]
    [InlineData(OutputFolder.StagingName, true)]
    [InlineData("stl", true)]
    [InlineData("stl/a.stl", true)]
    [InlineData("manifest.json", true)]
    public void Nothing_outside_the_folder_is_touched_through_a_link_even_when_forced(string link, bool force)
    {
        string outside = Path.Combine(root, "outside"), target = link.EndsWith('l') || link.EndsWith('n') ? Path.Combine(outside, "mine.txt") : outside;
        Directory.CreateDirectory(outside);
        System.IO.File.WriteAllText(Path.Combine(outside, "mine.txt"), "mine");
        Write(File("stl/a.stl", "one"), File("b.md", "two"));
        string path = Path.Combine(Folder, link);
        if (Directory.Exists(path))
        {
            Directory.Delete(path, recursive: true);
        }
        else
        {
            System.IO.File.Delete(path);
        }

        Directory.CreateSymbolicLink(path, link == "stl" || link[0] == '.' ? outside : target);
        var finding = Assert.Single(OutputFolder.Write(Folder, Empty, [File("stl/a.stl", "new"), File("b.md", "new")], force).Findings);
        Assert.Equal(("PF7310", FaultKind.Output), (finding.Code, finding.Kind));
        Assert.Contains(link, finding.Message, StringComparison.Ordinal);
        Assert.Equal("mine.txt", Path.GetFileName(Assert.Single(Directory.EnumerateFileSystemEntries(outside))));
        Assert.Equal("mine", System.IO.File.ReadAllText(Path.Combine(outside, "mine.txt")));
        Assert.Equal("two", Text("b.md"));
        Assert.NotNull(new FileInfo(path).LinkTarget);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_link_to_an_empty_folder_that_is_refused_stays(bool force)
    {
        string outside = Path.Combine(root, "outside"), area = Path.Combine(Folder, OutputFolder.StagingName);
        Directory.CreateDirectory(outside);
        Directory.CreateDirectory(Folder);
        Directory.CreateSymbolicLink(area, outside);
        Assert.Equal("PF7310", Assert.Single(OutputFolder.Write(Folder, Empty, [File("a.stl", "new")], force).Findings).Code);
        Assert.Equal(outside, new FileInfo(area).LinkTarget);
        Assert.Empty(Directory.EnumerateFileSystemEntries(outside));
    }

    [Fact]
    public void A_link_left_in_the_waiting_room_is_taken_away_and_what_it_leads_to_stays()
    {
        string outside = Path.Combine(root, "outside"), area = Path.Combine(Folder, OutputFolder.StagingName);
        Directory.CreateDirectory(outside);
        System.IO.File.WriteAllText(Path.Combine(outside, "mine.txt"), "mine");
        Directory.CreateDirectory(area);
        Directory.CreateSymbolicLink(Path.Combine(area, "files"), outside);
        System.IO.File.CreateSymbolicLink(Path.Combine(area, "commit.new"), Path.Combine(outside, "mine.txt"));
        Assert.True(Write(File("mine.txt", "ours")).Succeeded);
        Assert.Equal("mine", System.IO.File.ReadAllText(Path.Combine(outside, "mine.txt")));
        Assert.Equal(["manifest.json", "mine.txt"], Present());
    }

    [Fact]
    public void A_file_changed_while_the_run_looked_at_its_own_is_not_replaced()
    {
        Write(File("a.stl", "one"));
        var outcome = OutputFolder.Write(Folder, Empty, [File("a.stl", "two")], approve: _ =>
        {
            System.IO.File.WriteAllText(Path.Combine(Folder, "a.stl"), "sliced by hand");
            return [];
        });
        Assert.Equal("PF7304", Assert.Single(outcome.Findings).Code);
        Assert.Equal("sliced by hand", Text("a.stl"));
    }

    [Fact]
    public void A_folder_where_a_file_should_go_and_a_file_where_a_folder_should_be_are_named()
    {
        Write(File("a.stl", "one"));
        Directory.CreateDirectory(Path.Combine(Folder, "b.stl", "within"));
        Assert.Equal("PF7314", Assert.Single(Write(File("a.stl", "two"), File("b.stl", "two")).Findings).Code);
        System.IO.File.WriteAllText(Path.Combine(Folder, "c"), "mine");
        Assert.Equal("PF7314", Assert.Single(OutputFolder.Write(Folder, Empty, [File("a.stl", "two"), File("c/d.stl", "two")], force: true).Findings).Code);
        Assert.Equal("one", Text("a.stl"));
        Assert.Equal("mine", Text("c"));

        // A file of ours that is to go anyway is no obstacle.
        Write(File("d", "one"));
        System.IO.File.Delete(Path.Combine(Folder, "c"));
        Assert.Empty(Write(File("d/e.stl", "two")).Findings);
        Assert.Equal("two", Text("d/e.stl"));
    }

    private static OutputFile File(string path, string text) => new(path, Encoding.UTF8.GetBytes(text));

    private Outcome<FolderReport> Write(params OutputFile[] files) => OutputFolder.Write(Folder, Empty, files);

    private string Text(string path) => System.IO.File.ReadAllText(Path.Combine(Folder, path));

    private string[] Present() =>
        [.. Directory.EnumerateFiles(Folder, "*", SearchOption.AllDirectories).Select(p => Path.GetRelativePath(Folder, p).Replace('\\', '/'))
            .Order(StringComparer.Ordinal)];
}
