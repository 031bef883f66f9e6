using PlatformForge.Exports.Folders;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Cli;

/// <summary>The last line of a verify, where something was not seen.</summary>
public class UnseenTests
{
    private const string Halt = Samples.Small + "ramps = { end = { length = 97 } }\n";

    [Fact]
    public void A_section_that_cannot_be_read_is_named_in_the_last_line_and_ends_with_5()
    {
        using var folder = Built(out string stl);
        byte[] sound = File.ReadAllBytes(stl);
        foreach (byte[] spoilt in new byte[][] { sound[..^70], [], [.. sound[..100], 0, 0, 0xC0, 0x7F, .. sound[104..]] })
        {
            File.WriteAllBytes(stl, spoilt);
            var run = CliRun.Of("verify", folder["halt"]);
            Assert.Equal(5, run.Exit);
            Assert.Matches(@"\nNot passed\. Least clearance .* NOT HELD against any vehicle: halt 1 of 2, which could not be read\.\n$", run.Out);
            Assert.DoesNotContain("Clear", run.Out, StringComparison.Ordinal);
            Assert.DoesNotContain("PF8022", run.Error, StringComparison.Ordinal);
        }

        File.Delete(stl);
        Assert.Equal(5, CliRun.Of("verify", folder["halt"]).Exit);
    }

    [Fact]
    public void A_print_that_is_not_listed_is_named_and_the_word_is_withheld()
    {
        using var folder = Built(out string stl);
        File.Copy(stl, folder["halt/stl/extra.stl"]);
        var run = CliRun.Of("verify", folder["halt"]);
        Assert.Equal(0, run.Exit);
        Assert.Contains("warning PF8047", run.Error, StringComparison.Ordinal);
        Assert.Contains("What was looked at touches nothing.", run.Out, StringComparison.Ordinal);
        Assert.Contains("NOT HELD against any vehicle: 'stl/extra.stl', not of this build.", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Clear", run.Out, StringComparison.Ordinal);
        var verdict = CliRun.Of("verify", folder["halt"], "--json").Json().GetProperty("verdict");
        Assert.Equal((true, false, 1), (verdict.GetProperty("passed").GetBoolean(), verdict.GetProperty("clear").GetBoolean(),
            verdict.GetProperty("not_held").GetArrayLength()));
    }

    [Fact]
    public void What_a_dead_run_left_is_neither_read_back_nor_reported()
    {
        using var folder = Built(out string stl);
        var before = folder.Listing("halt");
        string waiting = folder["halt/" + OutputFolder.StagingName + "/files/stl"];
        Directory.CreateDirectory(waiting);
        File.Copy(stl, Path.Combine(waiting, "halt-02.stl"));
        Assert.Equal(0, CliRun.Of("verify", folder["halt"]).Exit);
        Assert.Equal(before, folder.Listing("halt"));

        Directory.CreateDirectory(waiting);
        File.Copy(stl, Path.Combine(waiting, "halt-02.stl"));
        Assert.Equal(0, CliRun.Of("build", folder["halt.toml"], "--no-pictures", "-q").Exit);
        Assert.Equal(before, folder.Listing("halt"));
    }

    private static TempFolder Built(out string stl)
    {
        var folder = new TempFolder();
        Assert.Equal(0, CliRun.Of("build", folder.Write("halt.toml", Halt), "--no-pictures", "-q").Exit);
        stl = Directory.GetFiles(folder["halt/stl"]).Order(StringComparer.Ordinal).First();
        return folder;
    }
}
