using ArchUnitNET.Domain;
using ArchUnitNET.Loader;
using ArchUnitNET.xUnit;
using Xunit;
using static ArchUnitNET.Fluent.ArchRuleDefinition;

namespace PlatformForge.Tests.House;

/// <summary>A room uses only the rooms before it: the promise that keeps the pipeline readable.</summary>
public class RoomOrderTests
{
    private static readonly string[] Rooms =
        ["Units", "Geometry", "Track", "Clearance", "Platforms", "Solids", "Sections", "Exports", "Verification", "Projects"];

    private static readonly System.Reflection.Assembly Library = typeof(PlatformForge.Units.Finding).Assembly;

    private static readonly Architecture House =
        new ArchLoader().LoadAssemblies(Library, typeof(NetTopologySuite.Geometries.Geometry).Assembly).Build();

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
            .Check(House);

    [Fact]
    public void Only_the_overlay_folder_of_Geometry_names_the_plane_geometry_library() =>
        Types().That().ResideInNamespaceMatching(@"^PlatformForge\.(?!Geometry\.Overlays).*$")
            .Should().NotDependOnAny(Types().That().ResideInNamespaceMatching(@"^NetTopologySuite(\..*)?$"))
            .WithoutRequiringPositiveResults()
            .Check(House);

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
