using System.Diagnostics;

namespace PlatformForge.Benchmarks.Ahead;

/// <summary>
/// Makes the list of methods that the program is to be compiled ahead with: what the runtime compiled while commands ran on projects. A compiler that works
/// ahead finds what is called by name; what is called through an
/// interface of a general type (queries, sets, sorts over values of our own) it has to be told.
/// </summary>
internal static class AheadRuns
{
    private static readonly string[][] Commands = [["check"], ["check", "--json"], ["build"]];

    /// <summary>Runs the commands on the projects and writes the list.</summary>
    /// <param name="program">PlatformForge.Cli.dll of an ordinary build.</param>
    /// <param name="list">The file to write, src/PlatformForge.Cli/Ahead/methods.mibc.</param>
    /// <param name="projects">Project files.</param>
    public static void Write(string program, string list, IReadOnlyList<string> projects)
    {
        var methods = new CompiledMethods();
        string folder = Directory.CreateTempSubdirectory().FullName;
        foreach (string project in projects)
        {
            foreach (string[] command in Commands)
            {
                Run(program, command, project, folder);
            }

            Console.WriteLine(project);
        }

        foreach (string map in Directory.GetFiles(folder, "perf-*.map").Order(StringComparer.Ordinal))
        {
            methods.ReadMap(map);
        }

        methods.ReadSummary(Path.Combine(folder, "summary.txt"));
        MethodList.Write(list, methods.Found);
        Console.WriteLine($"{methods.Found.Count} methods in {list}; {methods.Unknown} entries were not found again");
        Directory.Delete(folder, recursive: true);
    }

    private static void Run(string program, string[] command, string project, string folder)
    {
        string output = Path.Combine(folder, Path.GetRandomFileName());
        string[] more = command[0] == "build" ? ["--output", output] : [];
        var start = new ProcessStartInfo("dotnet", [program, command[0], project, .. command[1..], .. more])
        {
            RedirectStandardError = true,
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        // The map tells types by their names, the summary tells what general methods were made for.
        start.Environment["DOTNET_PerfMapEnabled"] = "3";
        start.Environment["DOTNET_PerfMapJitDumpPath"] = folder;
        start.Environment["DOTNET_JitStdOutFile"] = Path.Combine(folder, "summary.txt");
        start.Environment["DOTNET_JitDisasmSummary"] = "1";
        using var process = Process.Start(start)!;
        var said = process.StandardError.ReadToEndAsync();
        _ = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        _ = said.Result;
        if (Directory.Exists(output))
        {
            Directory.Delete(output, recursive: true);
        }
    }
}
