using System.Text.RegularExpressions;
using Xunit;

namespace PlatformForge.Tests.House;

/// <summary>House rules that only the source text can show.</summary>
public class SourceTreeTests
{
    private const int LongestFile = 400;

    private static readonly string Root = SourceTree.Root;

    private static readonly (string Name, string Text)[] Sources =
        Directory.EnumerateFiles(Path.Combine(Root, "src"), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Split(Path.DirectorySeparatorChar).Intersect(["obj", "bin"]).Any())
            .Select(f => (Path.GetRelativePath(Root, f), File.ReadAllText(f)))
            .OrderBy(f => f.Item1, StringComparer.Ordinal)
            .ToArray();

    [Fact]
    public void No_file_grows_into_an_engine_of_its_own()
    {
        Assert.NotEmpty(Sources);
        Assert.Empty(Sources.Where(f => f.Text.AsSpan().Count('\n') > LongestFile).Select(f => f.Name));
    }

    [Fact]
    public void No_file_is_a_lumber_room() =>
        Assert.DoesNotContain(Sources.Select(f => f.Name),
            n => Regex.IsMatch(n, @"(Helpers?|Utils?|Utilit(y|ies)|Common|Misc|Manager|Old[A-Z]\w*|Temp|Experiment)\.cs$"));

    [Fact]
    public void No_work_is_left_as_a_mark_in_the_code() =>
        Assert.Empty(Sources.Where(f => Regex.IsMatch(f.Text, @"\b(TODO|FIXME|HACK|XXX)\b|NotImplementedException")).Select(f => f.Name));

    [Fact]
    public void A_fault_code_is_raised_in_the_room_of_its_block()
    {
        string[] rooms = ["Projects", "Track", "Clearance", "Platforms", "Solids", "Sections", "Exports", "Verification"];
        var strays =
            from file in Sources
            from Match code in Regex.Matches(file.Text, @"""PF(\d)\d{3}""")
                // gauges and proofs have a block of their own in that of files
            let room = Regex.IsMatch(code.Value, "PF75[0-2]") ? file.Name.Contains("Verification", StringComparison.Ordinal) ? "Verification" : "Proofs"
                : rooms[code.Groups[1].Value[0] - '1']
            where !file.Name.Contains(Path.DirectorySeparatorChar + room + Path.DirectorySeparatorChar, StringComparison.Ordinal)
                && !file.Name.Contains("PlatformForge.Cli", StringComparison.Ordinal)
                && !file.Name.Contains("Projects", StringComparison.Ordinal)
            select $"{file.Name}: {code.Value}";
        Assert.Empty(strays);
    }
}
