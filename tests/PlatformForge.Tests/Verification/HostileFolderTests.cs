using PlatformForge.Projects.Presets;
using PlatformForge.Tests.Cli;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>
/// Folders spoilt by somebody who sets the manifest right again, at a small size; <c>benchmarks hostile</c> runs them at their full size and tells time and
/// memory.
/// </summary>
public class HostileFolderTests
{
    private const int Less = 300, MostLetters = 20_000;

    [Fact]
    public void Every_spoilt_folder_is_answered_shortly_and_none_is_a_fault_of_the_program()
    {
        using var folder = new TempFolder();
        string project = folder.Write("halt.toml", PresetShelf.Sample("straight-halt")!), built = Path.Combine(folder.Path, "built");
        Assert.Equal(0, CliRun.Of("build", project, "--no-pictures", "--output", built).Exit);
        Assert.All(HostileFolders.Cases(Less).Select((c, i) => (c.Name, c.Spoil, Copy: Path.Combine(folder.Path, $"copy{i}"))), c =>
        {
            foreach (string file in Directory.EnumerateFiles(built, "*", SearchOption.AllDirectories))
            {
                string to = Path.Combine(c.Copy, Path.GetRelativePath(built, file));
                Directory.CreateDirectory(Path.GetDirectoryName(to)!);
                File.Copy(file, to);
            }

            c.Spoil(c.Copy);
            var run = CliRun.Of("verify", c.Copy);
            bool sound = c.Name.StartsWith("track of 900 m", StringComparison.Ordinal);
            Assert.True(sound ? run.Exit == 0 : run.Exit is 4 or 5, $"{c.Name}: exit {run.Exit}\n{run.Error}");
            Assert.True(run.Out.Length + run.Error.Length < MostLetters, c.Name);
            Assert.True(sound || !run.Out.Contains("Clear: ", StringComparison.Ordinal), run.Out);
        });
    }
}
