using System.Diagnostics;

namespace PlatformForge.Outside.Tests;

/// <summary>Runs programs of others.</summary>
internal static class Tool
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(4);

    /// <summary>What a program said: exit code, standard output, standard error.</summary>
    public sealed record Said(int Exit, string Out, string Error)
    {
        public string All => Out + Error;

        public string[] Lines => Out.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
    }

    /// <summary>Runs a program to its end; fails when it takes minutes.</summary>
    public static Said Run(string program, params IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo(program)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true
        };
        foreach (string argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        start.Environment["NO_COLOR"] = "1";
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var (output, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        if (!process.WaitForExit(Longest))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"{program} did not end.");
        }

        return new(process.ExitCode, output.Result, error.Result);
    }

    /// <summary>Runs one of the readers in the tools folder and gives its lines, one JSON object each.</summary>
    public static string[] Node(string script, params IEnumerable<string> arguments)
    {
        var said = Run("node", [Path.Combine(Tree.Project, "tools", script), .. arguments]);
        Assert.True(said.Exit == 0, said.All);
        return said.Lines;
    }
}
