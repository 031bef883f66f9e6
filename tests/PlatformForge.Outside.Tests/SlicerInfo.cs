using System.Collections.Concurrent;

namespace PlatformForge.Outside.Tests;

/// <summary>What a slicer tells of files: all of a kind in a folder are told of in one run, each under its name, so they have to be there when the first is
/// asked for.</summary>
internal static class SlicerInfo
{
    private static readonly ConcurrentDictionary<(string Folder, string Ending), Lazy<Dictionary<string, List<string>>>> Known = [];

    /// <summary>Its lines on a file and on each object in it.</summary>
    public static string[] Of(string file)
    {
        var all = Known.GetOrAdd((Path.GetDirectoryName(file)!, Path.GetExtension(file)),
            key => new(() => Read(Directory.GetFiles(key.Folder, "*" + key.Ending))));
        return [.. all.Value[Heading(file)]];
    }

    private static Dictionary<string, List<string>> Read(string[] files)
    {
        var told = files.ToDictionary(Heading, _ => new List<string>(), StringComparer.Ordinal);
        List<string>? under = null;
        foreach (string line in Tool.Run("prusa-slicer", ["--info", .. files]).Lines)
        {
            under = told.GetValueOrDefault(line) ?? under;
            under?.Add(line);
        }

        return told;
    }

    private static string Heading(string file) => $"[{Path.GetFileName(file)}]";
}
