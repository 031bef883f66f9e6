using System.Text.RegularExpressions;
using ArchUnitNET.xUnit;
using Xunit;
using static ArchUnitNET.Fluent.ArchRuleDefinition;

namespace PlatformForge.Tests.House;

/// <summary>A feature is known by what it comes to, and its keys by what it says of them: no room after Platforms knows a kind of it by name.</summary>
public class FeatureRoomTests
{
    private const string KindsAre = @"^PlatformForge\.Platforms\.Features\.Kinds(\..*)?$";

    private static readonly string[] RoomsAfter = ["Solids", "Sections", "Proofs", "Exports", "Verification", "Projects"];

    // The words of kinds, as the project file has them and as their records are called.
    private static readonly string[] Words =
    [
        .. Kinds()
        .SelectMany(k => new[] { k.Name[..^"Spec".Length], ((FeatureSpec)System.Runtime.CompilerServices.RuntimeHelpers.GetUninitializedObject(k)).Word })
        .Select(w => w.ToLowerInvariant()).Distinct(),
    ];

    // Words that the trade uses of other things too: a bore is a hole.
    private static readonly string[] OfOtherThings = ["hole", "board"];

    [Fact]
    public void No_room_after_platforms_uses_a_kind_of_feature() =>
        Types().That().ResideInNamespaceMatching($@"^PlatformForge\.({string.Join('|', RoomsAfter)})(\..*)?$")
            .Should().NotDependOnAny(Types().That().ResideInNamespaceMatching(KindsAre))
            .Check(LoadedHouse.Types);

    [Fact]
    public void No_source_after_platforms_names_a_kind_of_feature()
    {
        Assert.True(Words.Length >= 4, string.Join(", ", Words));
        var named = from room in RoomsAfter
                    from file in Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "src", "PlatformForge", room), "*.cs", SearchOption.AllDirectories)
                    let path = Path.GetRelativePath(SourceTree.Root, file).Replace('\\', '/')
                    where !path.Contains("/Projects/Catalogue/", StringComparison.Ordinal)
                    from line in File.ReadLines(file)
                    where !line.TrimStart().StartsWith("//", StringComparison.Ordinal) && !line.TrimStart().StartsWith("(\"platform.", StringComparison.Ordinal)
                    from word in Words.Except(OfOtherThings)
                    where Regex.IsMatch(line, $@"(?<![A-Za-z])(?i:{word})(?![a-z])|{char.ToUpperInvariant(word[0])}{word[1..]}")
                    select $"{path} names a {word}: {line.Trim()}";
        Assert.Empty(named.Distinct());
    }

    [Fact]
    public void Every_kind_of_feature_has_its_word_in_the_project_file()
    {
        string[] keys = [.. PlatformForge.Projects.Keys.PlatformKeys.Table.Rules.Select(r => r.Name)];
        Assert.All(Kinds(), k => Assert.Contains(((FeatureSpec)System.Runtime.CompilerServices.RuntimeHelpers.GetUninitializedObject(k)).Word, keys));
    }

    private static IEnumerable<System.Type> Kinds() => typeof(FeatureSpec).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(FeatureSpec)) && !t.IsAbstract);
}
