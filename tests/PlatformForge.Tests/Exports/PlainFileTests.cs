using System.Diagnostics;
using PlatformForge.Exports.Folders;
using PlatformForge.Tests.Cli;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>Only plain files are read, and none before its length has been looked at.</summary>
public class PlainFileTests
{
    [Fact]
    public void A_plain_file_and_a_link_to_one_are_read_whole()
    {
        using var folder = new TempFolder();
        folder.Write("a.txt", "some text");
        Assert.Equal("some text"u8.ToArray(), PlainFile.Read(folder["a.txt"], 9).Bytes);
        File.CreateSymbolicLink(folder["b.txt"], folder["a.txt"]);
        Assert.Equal("some text"u8.ToArray(), PlainFile.Read(folder["b.txt"], 9).Bytes);
    }

    [Fact]
    public void What_is_missing_a_folder_empty_or_too_long_is_told_apart_and_not_read()
    {
        using var folder = new TempFolder();
        folder.Write("a.txt", "some text");
        folder.Write("empty.txt", "");
        Assert.Equal(PlainFileFault.Missing, PlainFile.Read(folder["none"], 9).Fault);
        Assert.Equal(PlainFileFault.Folder, PlainFile.Read(folder.Path, 9).Fault);
        Assert.Equal(PlainFileFault.Empty, PlainFile.Read(folder["empty.txt"], 9).Fault);
        var read = PlainFile.Read(folder["a.txt"], 8);
        Assert.Equal((PlainFileFault.TooLong, 9L, 0), (read.Fault, read.Length, read.Bytes.Length));
    }

    [Fact]
    public void A_file_of_gigabytes_is_refused_by_its_length()
    {
        using var folder = new TempFolder();
        using (var sparse = new FileStream(folder["big.toml"], FileMode.Create))
        {
            sparse.SetLength(3L << 30);
        }

        long before = GC.GetTotalAllocatedBytes();
        var run = CliRun.Of("check", folder["big.toml"]);
        Assert.True(GC.GetTotalAllocatedBytes() - before < 100_000_000);
        Assert.Equal(3, run.Exit);
        Assert.Contains("3221225472 bytes", run.Error, StringComparison.Ordinal);
    }

    /// <summary>Opening a pipe would wait for a writer that never comes; a device never ends.</summary>
    [Fact]
    public void Pipes_and_devices_are_refused_by_every_command_that_reads()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        using var folder = new TempFolder();
        using (var make = Process.Start("mkfifo", [folder["pipe.toml"], folder["pipe.csv"]]))
        {
            make.WaitForExit();
        }

        folder.Write("halt.toml", PlatformForge.Tests.Projects.Samples.Small);
        File.CreateSymbolicLink(folder["zero.toml"], "/dev/zero");
        foreach (string name in new[] { "pipe.toml", "zero.toml" })
        {
            foreach (string command in new[] { "check", "build", "survey" })
            {
                var run = CliRun.Of(command, folder[name]);
                Assert.Equal(3, run.Exit);
                Assert.Contains("PF1040", run.Error, StringComparison.Ordinal);
            }
        }

        Assert.Contains("PF1040", CliRun.Of("check", folder["halt.toml"], "--as-built", folder["pipe.csv"]).Error, StringComparison.Ordinal);
        Assert.Contains("PF1040", CliRun.Of("check", folder["halt.toml"], "--with-vehicle", folder["pipe.toml"]).Error, StringComparison.Ordinal);
    }
}
