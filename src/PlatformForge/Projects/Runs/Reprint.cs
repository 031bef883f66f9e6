using System.Globalization;
using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Manifests;

namespace PlatformForge.Projects.Runs;

/// <summary>Which sections of a platform differ from those of the run before.</summary>
/// <param name="Platform">Name of the platform.</param>
/// <param name="Changed">Numbers of sections that are new or changed.</param>
/// <param name="Same">Numbers of sections that are as before, byte by byte.</param>
public sealed record Reprint(string Platform, IReadOnlyList<int> Changed, IReadOnlyList<int> Same)
{
    /// <summary>The list in words: print 3 and 4 again; 1, 2 and 5 are as before.</summary>
    public string InWords => (Changed.Count, Same.Count) switch
    {
        (0, _) => "nothing to print again; all sections are as before",
        (1, 0) => "print its one section",
        (_, 0) => string.Create(CultureInfo.InvariantCulture, $"print all {Changed.Count} sections"),
        _ => $"print {Listed(Changed)} again; {Listed(Same)} {(Same.Count == 1 ? "is" : "are")} as before",
    };

    internal static IReadOnlyList<Reprint> Of(Manifest manifest, FolderReport report)
    {
        var written = report.Written.ToHashSet(StringComparer.Ordinal);
        return [.. manifest.Sections.GroupBy(s => s.Platform, StringComparer.Ordinal).Select(g => new Reprint(
            g.Key,
            [.. g.Where(s => written.Contains(s.Stl)).Select(s => s.Number)],
            [.. g.Where(s => !written.Contains(s.Stl)).Select(s => s.Number)]))];
    }

    private static string Listed(IReadOnlyList<int> numbers)
    {
        string[] words = [.. numbers.Select(n => n.ToString(CultureInfo.InvariantCulture))];
        return words.Length == 1 ? words[0] : string.Join(", ", words[..^1]) + " and " + words[^1];
    }
}
