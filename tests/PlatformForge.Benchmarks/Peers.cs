using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace PlatformForge.Benchmarks;

/// <summary>
/// Runs the same solids through a general mesh kernel (its WebAssembly build under Node), on the same machine in the same run.
/// The folder is a copy of the peers with its packages installed: <c>manifold/bench.mjs</c> beside <c>common/section.mjs</c>.
/// </summary>
internal static partial class Peers
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    /// <summary>Median of model and bytes in ms, or null where the peer is not to be had.</summary>
    public static double? ModelAndBytes(string? folder, string solid, int repeats)
    {
        if (folder is null || !File.Exists(Path.Combine(folder, "manifold", "bench.mjs")))
        {
            return null;
        }

        var start = new ProcessStartInfo("node")
        {
            WorkingDirectory = Path.Combine(folder, "manifold"),
            RedirectStandardOutput = true,
            UseShellExecute = false
        };
        foreach (string argument in new[] { "bench.mjs", solid, repeats.ToString(CultureInfo.InvariantCulture) })
        {
            start.ArgumentList.Add(argument);
        }

        using var process = Process.Start(start)!;
        string said = process.StandardOutput.ReadToEnd();
        process.WaitForExit(Patience);
        var match = Median().Match(said);
        return match.Success ? double.Parse(match.Groups["ms"].Value, CultureInfo.InvariantCulture) : null;
    }

    [GeneratedRegex(@"model\+bytes median (?<ms>[0-9.]+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Median();
}
