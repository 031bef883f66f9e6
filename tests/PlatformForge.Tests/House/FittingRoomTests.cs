using System.Text.RegularExpressions;
using ArchUnitNET.xUnit;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Platforms.WallFittings;
using Xunit;
using static ArchUnitNET.Fluent.ArchRuleDefinition;

namespace PlatformForge.Tests.House;

/// <summary>What stands in or before walls is known by what it comes to: no room after Platforms knows a kind of it by name.</summary>
public class FittingRoomTests
{
    private static readonly string[] RoomsAfter = ["Solids", "Sections", "Proofs", "Exports", "Verification", "Projects"];

    /// <summary>Files that name one still, with the reason. Nothing may be added; what names none any longer has to be taken out.</summary>
    private static readonly Dictionary<string, string> Named = new(StringComparer.Ordinal)
    {
        ["src/PlatformForge/Exports/Reports/Forms/FacingReport.cs"] = "other programs read lists of the report by these names; kinds that came later share one",
        ["src/PlatformForge/Projects/Catalogue/PlatformEntries.cs"] = "the catalogue says of each code what it is raised for",
        ["src/PlatformForge/Projects/Catalogue/SectionEntries.cs"] = "the same",
    };

    // What is planned of a kind, what is asked for, and what it is made by before its result is told.
    private static readonly System.Type[] Kinds =
    [
        .. typeof(FittingKind).Assembly.GetTypes().Where(t => t.Namespace == typeof(FittingKind).Namespace && !Neutral.Contains(t)),
        typeof(PlannedPier), typeof(PlannedDownpipe), typeof(PlannedOpening), typeof(PierSpec), typeof(DownpipeSpec), typeof(OpeningSpec), typeof(OpeningKind),
    ];

    // A hole in a deck is an opening too.
    private static readonly string[] Words =
    [
        .. typeof(FittingKind).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(FittingKind))).Select(t => t.Name[..^"Fittings".Length])
            .Except(["Opening"]),
        .. Enum.GetNames<OpeningKind>(), "Buttress", "WallOpenings", "Hopper",
    ];

    private static System.Type[] Neutral => [typeof(FittingKinds), typeof(PrintFigures), typeof(FittingFault), typeof(PrintFault)];

    [Fact]
    public void No_room_after_platforms_uses_a_kind_of_fitting() =>
        Types().That().ResideInNamespaceMatching($@"^PlatformForge\.({string.Join('|', RoomsAfter)})(\..*)?$")
            .Should().NotDependOnAny(Kinds.Where(k => !k.Name.Contains('<', StringComparison.Ordinal)))
            .Check(LoadedHouse.Types);

    [Fact]
    public void No_source_after_platforms_names_a_kind_of_fitting_beside_those_listed() =>
        Assert.DoesNotContain(Naming(), n => !Named.ContainsKey(n.Path));

    [Fact]
    public void The_list_holds_none_that_names_none() => Assert.Empty(Named.Keys.Except(Naming().Select(n => n.Path)));

    private static IEnumerable<(string Path, string Line)> Naming()
    {
        Assert.True(Words.Length >= 7, string.Join(", ", Words));
        return from room in RoomsAfter
               from file in Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "src", "PlatformForge", room), "*.cs", SearchOption.AllDirectories)
               let path = Path.GetRelativePath(SourceTree.Root, file).Replace('\\', '/')
               from line in File.ReadLines(file)
               from word in Words
               where Regex.IsMatch(line, $@"(?<![A-Za-z])(?i:{word})(s|es)?(?![a-z])|{word}(s|es)?(?![a-z])")
               select (path, line.Trim());
    }
}
