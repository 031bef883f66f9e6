using ArchUnitNET.xUnit;
using Xunit;
using static ArchUnitNET.Fluent.ArchRuleDefinition;

namespace PlatformForge.Tests.House;

/// <summary>A room uses only the rooms before it: the promise that keeps the pipeline readable.</summary>
public class RoomOrderTests
{
    internal static readonly string[] Rooms =
        ["Units", "Geometry", "Masonry", "Track", "Clearance", "Platforms", "Solids", "Sections", "Proofs", "Exports", "Verification", "Projects"];

    private static readonly System.Reflection.Assembly Library = LoadedHouse.Library;

    public static TheoryData<string, string> WrongArrows()
    {
        var pairs = new TheoryData<string, string>();
        for (int low = 0; low < Rooms.Length; low++)
        {
            for (int high = low + 1; high < Rooms.Length; high++)
            {
                pairs.Add(Rooms[low], Rooms[high]);
            }
        }

        return pairs;
    }

    [Theory]
    [MemberData(nameof(WrongArrows))]
    public void A_room_does_not_use_a_later_room(string low, string high) =>
        Types().That().ResideInNamespaceMatching($@"^PlatformForge\.{low}(\..*)?$")
            .Should().NotDependOnAny(Types().That().ResideInNamespaceMatching($@"^PlatformForge\.{high}(\..*)?$"))
            .WithoutRequiringPositiveResults()
            .Check(LoadedHouse.Types);

    /// <summary>Everything that the library needs beside the framework reads TOML: geometry is its own, and what only tests use stays with them.</summary>
    [Fact]
    public void The_library_needs_one_package() => Assert.Equal(
        ["Tomlyn"], Library.GetReferencedAssemblies().Select(a => a.Name!).Where(n => !n.StartsWith("System", StringComparison.Ordinal)));

    [Fact]
    public void Every_type_lives_in_a_room()
    {
        var homeless = Library.GetTypes()
            .Where(t => t.Namespace is { } n && n.StartsWith("PlatformForge", StringComparison.Ordinal))
            .Where(t => !Rooms.Any(r => t.Namespace == $"PlatformForge.{r}" || t.Namespace!.StartsWith($"PlatformForge.{r}.", StringComparison.Ordinal)))
            .Select(t => t.FullName);
        Assert.Empty(homeless);
    }
}
