using System.Text;
using PlatformForge.Cli;
using PlatformForge.Cli.Commands;
using PlatformForge.Cli.Terminals;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Cli;

/// <summary>Streams that nobody takes, and runs that are stopped. The same with real processes: tests/PlatformForge.Outside.Tests/ProcessTests.cs.</summary>
public class StreamTests
{
    [Theory]
    [InlineData("build", true)]
    [InlineData("init", true)]
    [InlineData("check", false)]
    [InlineData("presets", false)]
    [InlineData("schema", false)]
    [InlineData("--help", false)]
    public void Results_that_cannot_be_written_end_with_6_and_files_in_place_are_said_to_be(string command, bool inPlace)
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.Small), fresh = folder["fresh.toml"];
        foreach (string[] form in new string[][] { [], ["--json"] })
        {
            string[] args = command switch
            {
                "build" => ["build", file, "--no-pictures", .. form],
                "init" => ["init", fresh, "--force", .. form],
                "check" => ["check", file, .. form],
                "presets" => ["presets", "scales", .. form],
                _ => [command, .. form],
            };
            using StringWriter messages = new() { NewLine = "\n" };
            Assert.Equal(6, CommandLine.Run(args, new Terminal(new FullWriter(), messages)));
            Assert.Contains("cannot be written to stdout: no room", messages.ToString(), StringComparison.Ordinal);
            Assert.DoesNotContain("fault of the program", messages.ToString(), StringComparison.Ordinal);
            Assert.Equal(inPlace, messages.ToString().Contains("all the same", StringComparison.Ordinal));
        }

        Assert.Equal(command == "build", File.Exists(folder["halt/manifest.json"]));
        Assert.Equal(command == "init", File.Exists(fresh));
    }

    [Fact]
    public void Messages_that_nobody_takes_do_not_stop_a_run()
    {
        using var closed = new ClosedStream();
        Assert.Throws<UnauthorizedAccessException>(() => closed.Write("message"u8));
        using var stream = new DeafStream(closed);
        Assert.Null(Record.Exception(() => stream.Write("message"u8)));
        Assert.Null(Record.Exception(() => stream.Write(Encoding.UTF8.GetBytes("message"), 0, 4)));
        Assert.Null(Record.Exception(stream.Flush));
    }

    [Theory]
    [InlineData("check")]
    [InlineData("compare")]
    [InlineData("survey")]
    [InlineData("verify")]
    [InlineData("build")]
    public void Every_long_command_ends_with_130_when_it_is_stopped(string command)
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.Small);
        string[] args = command switch
        {
            "compare" => ["compare", file, "--vary", "clearance.running=0.5,1"],
            "verify" => ["verify", folder.Path],
            _ => [command, file],
        };
        var run = CliRun.With(new CancellationToken(true), args);
        Assert.Equal((130, ""), (run.Exit, run.Out));
        Assert.Contains("Interrupted; nothing was put in place.", run.Error, StringComparison.Ordinal);
        Assert.Equal(["halt.toml"], Directory.GetFileSystemEntries(folder.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void Work_that_does_not_look_up_is_left_and_work_that_writes_is_waited_for()
    {
        using var cancel = new CancellationTokenSource();
        using var begun = new ManualResetEventSlim();
        using var release = new ManualResetEventSlim();
        bool wrote = false;
        Assert.Throws<OperationCanceledException>(() => LeavableWork.Run<string>(
            () =>
            {
                cancel.Cancel();
                release.Wait();
                return "too late";
            },
            new(),
            cancel.Token));

        using var second = new CancellationTokenSource();
        var gate = new WritingGate();
        string result = LeavableWork.Run(
            () => gate.Through(() =>
            {
                second.Cancel();
                Thread.Sleep(50);
                wrote = true;
                return "in place";
            }),
            gate,
            second.Token);
        Assert.Equal(("in place", true), (result, wrote));
        release.Set();
    }

    [Fact]
    public void Nothing_is_written_any_more_by_work_that_was_left()
    {
        var gate = new WritingGate();
        Assert.True(gate.TryClose());
        Assert.Throws<OperationCanceledException>(() => gate.Through(() => "written"));
    }

    [Fact]
    public void A_fault_of_the_work_comes_through_as_it_is()
    {
        using var cancel = new CancellationTokenSource();
        Assert.Equal("of the work",
            Assert.Throws<InvalidOperationException>(() => LeavableWork.Run<string>(() => throw new InvalidOperationException("of the work"), new(),
                cancel.Token)).Message);
    }

    /// <summary>A place with no room left.</summary>
    private sealed class FullWriter : TextWriter
    {
        public override Encoding Encoding => Encoding.UTF8;

        public override void Write(char value) => throw new IOException("no room");
    }

    private sealed class ClosedStream : MemoryStream
    {
        public override void Write(ReadOnlySpan<byte> buffer) => throw new UnauthorizedAccessException("closed");
    }
}
