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
        "Clearance - Clearance.Sets",
        "Clearance - Clearance.Sweeping",
        "Exports - Exports.Drawings",
        "Exports - Exports.Drawings.Painting",
        "Exports - Exports.Manifests",
        "Exports - Exports.Pdf",
        "Exports - Exports.Pictures",
        "Exports - Exports.Reports",
        "Exports - Exports.Tables",
        "Exports - Exports.ThreeMf",
        "Exports.Drawings - Exports.Pdf",
        "Exports.Manifests - Exports.Reports",
        "Platforms - Platforms.Accounts",
        "Platforms - Platforms.Edges",
        "Platforms - Platforms.Features",
        "Platforms - Platforms.Features.Kinds",
        "Platforms - Platforms.Furniture",
        "Platforms - Platforms.Gaps",
        "Platforms - Platforms.Islands",
        "Platforms - Platforms.Rules",
        "Platforms - Platforms.Surfaces",
        "Projects - Projects.Remedies",
        "Sections - Sections.Beds",
        "Sections - Sections.Cuts",
        "Sections - Sections.Forecasts",
        "Sections - Sections.Joints",
        "Sections - Sections.Marks",
        "Sections - Sections.Plates",
        "Sections - Sections.Poses",
        "Solids - Solids.Kernel",
        "Solids - Solids.Kernel.Noding",
        "Solids.Kernel - Solids.Kernel.Meshing",
        "Solids.Kernel - Solids.Kernel.Noding",
        "Track.Surveys - Track.Surveys.Admissible",
        "Track.Surveys - Track.Surveys.Drawings",
        "Track.Surveys - Track.Surveys.Fitting",
        "Track.Surveys - Track.Surveys.Tables",
        "Verification - Verification.Distances",
        "Verification - Verification.Rules",
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

    private static string? Room(string space) => space.StartsWith("PlatformForge.", StringComparison.Ordinal) ? space.Split('.')[1] : null;

    private static string Short(string space) => space["PlatformForge.".Length..];
}
