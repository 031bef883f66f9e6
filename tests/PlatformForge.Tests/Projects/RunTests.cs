using PlatformForge.Exports;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Manifests;
using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Cli;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

public class RunTests
{
    private static readonly OutputChoice Plain = new() { Pictures = false, Drawings = false };

    [Fact]
    public void A_run_stopped_at_any_stage_leaves_no_folder()
    {
        using var folder = new TempFolder();
        var project = Samples.Sound(Samples.Small);
        var stages = new List<string>();
        Assert.True(BuildRun.Build(project, folder["whole"], false, new(stages.Add, default), Plain).Succeeded);
        Assert.Equal(7, stages.Count);
        foreach (string stage in stages)
        {
            using var stop = new CancellationTokenSource();
            var watch = new RunWatch(s => StopAt(s, stage, stop), stop.Token);
            Assert.Throws<OperationCanceledException>(() => BuildRun.Build(project, folder["stopped"], false, watch, Plain));
            Assert.False(Directory.Exists(folder["stopped"]), stage);
        }

        static void StopAt(string begun, string stage, CancellationTokenSource stop)
        {
            if (begun == stage)
            {
                stop.Cancel();
            }
        }
    }

    [Fact]
    public void What_is_not_approved_is_not_put_in_place()
    {
        using var folder = new TempFolder();
        var manifest = new Manifest("Quillhaven", "0", new string('0', 64), [], []);
        OutputFile[] first = [new("a.txt", [1]), new("b.txt", [2])], second = [new("a.txt", [1]), new("b.txt", [3])];
        Assert.True(OutputFolder.Write(folder["out"], manifest, first).Succeeded);
        var before = folder.Listing("out");
        IReadOnlyList<(string Path, byte[] Bytes)> seen = [];
        var refused = OutputFolder.Write(folder["out"], manifest, second, approve: files =>
        {
            seen = [.. files.Select(f => (f.Path, f.Bytes))];
            return [Finding.Error("PF8010", "", "It fouls.", "", FaultKind.DesignRule)];
        });
        Assert.Equal("PF8010", Assert.Single(refused.Findings).Code);
        Assert.Equal(["a.txt", "b.txt", Manifest.FileName], seen.Select(f => f.Path));
        Assert.Equal([3], seen[1].Bytes);
        Assert.Equal(before, folder.Listing("out"));
    }

    [Fact]
    public void A_fault_of_a_room_gets_the_place_of_its_key_in_the_file()
    {
        var project = Samples.Sound(Samples.Small + "deck = { width = 5 }");
        var finding = DesignRun.Design(project, RunWatch.None).Findings.Single(f => f.Code == "PF4010");
        Assert.Equal(("halt.toml", 18, 18, "platform[0].deck.width"), (finding.File, finding.Line, finding.Column, finding.Key));
    }

    [Fact]
    public void A_word_of_a_room_is_told_as_the_file_has_it()
    {
        Assert.Contains(Faults("board = [{ at = 440, inset = 8, depth = 60 }]"), f => f.Key.StartsWith("platform[0].board[0]", StringComparison.Ordinal)
            && f.Line == 18);
        Assert.Contains(Faults("cuts = [351]"), f => f.Key == "platform[0].cuts[0]" && f.Line == 18);
        static IReadOnlyList<Finding> Faults(string added) => DesignRun.Design(Samples.Sound(Samples.Small + added), RunWatch.None).Findings;
    }

    [Fact]
    public void The_figures_of_a_comparison_are_those_of_the_design()
    {
        var compared = Comparison.Run(o => PlatformForge.Projects.ProjectReader.Read(Samples.Small, "halt.toml", null, o),
            [new Variation("clearance.running", ["0.7", "60"])], RunWatch.None);
        var design = DesignRun.Design(Samples.Sound(Samples.Small), RunWatch.None).Value!;
        Assert.Equal(DesignFigures.Of(design, TrialVerdict.Of(design)), compared.Value![0].Figures);
        Assert.True(compared.Value[0].Passed);
        Assert.Equal((false, null), (compared.Value[1].Passed, compared.Value[1].Figures));
    }
}
