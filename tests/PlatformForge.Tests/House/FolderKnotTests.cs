using ArchUnitNET.Domain;
using Xunit;

namespace PlatformForge.Tests.House;

/// <summary>Inside a room as between rooms: of two folders one uses the other, and not both each other. What is still tied is listed, and the list only gets
/// shorter.</summary>
public class FolderKnotTests
{
    /// <summary>Folders of one room that use each other still, by name in the alphabet's order. Nothing may be added; what is untied has to be taken
    /// out.</summary>
    private static readonly string[] Tied =
    [
        "Exports - Exports.Drawings",
        "Exports - Exports.Reports",
        "Exports - Exports.Reports.Forms",
        "Platforms.Features - Platforms.Specs",
        "Sections - Sections.Rules",
    ];

    private static readonly Lazy<string[]> Knots = new(() =>
    {
        // The reader of assemblies takes parameters of one name, in functions that were generated, for one type.
        var uses = LoadedHouse.Types.Types.Where(t => t.Namespace is not null)
            .SelectMany(t => t.Dependencies.Where(d => d.Target is not GenericParameter)
                .Select(d => (From: t.Namespace!.FullName, To: d.Target.Namespace?.FullName ?? "")))
            .Where(u => u.From != u.To && Room(u.From) is { } room && room == Room(u.To))
            .ToHashSet();
        return [.. uses.Where(u => uses.Contains((u.To, u.From)) && string.CompareOrdinal(u.From, u.To) < 0).Select(u => $"{Short(u.From)} - {Short(u.To)}")
            .Order(StringComparer.Ordinal)];
    });

    [Fact]
    public void No_two_folders_of_a_room_use_each_other_beside_those_listed() => Assert.Empty(Knots.Value.Except(Tied));

    [Fact]
    public void The_list_holds_none_that_are_untied() => Assert.Empty(Tied.Except(Knots.Value));

    /// <summary>A folder that holds more falls into parts.</summary>
    [Fact]
    public void No_folder_holds_more_than_twenty_files() => Assert.DoesNotContain(
        Directory.EnumerateDirectories(Path.Combine(SourceTree.Root, "src"), "*", SearchOption.AllDirectories)
            .Where(d => !d.Split(Path.DirectorySeparatorChar).Intersect(["obj", "bin"]).Any())
            .Select(d => (Folder: Path.GetRelativePath(SourceTree.Root, d), Files: Directory.GetFiles(d, "*.cs").Length)),
        f => f.Files > MostFiles);

    private const int MostFiles = 20;

    private static string? Room(string space) => space.StartsWith("PlatformForge.", StringComparison.Ordinal) ? space.Split('.')[1] : null;

    private static string Short(string space) => space["PlatformForge.".Length..];
}
