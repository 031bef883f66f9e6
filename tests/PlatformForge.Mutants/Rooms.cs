namespace PlatformForge.Mutants;

/// <summary>Which tests answer for a room.</summary>
internal static class Rooms
{
    private static readonly (string Room, string[] Tests)[] All =
    [
        ("Clearance", ["Clearance", "Standards"]),
        ("Platforms", ["Platforms"]),
        ("Solids", ["Solids", "Meshes"]),
        ("Sections", ["Sections"]),
        ("Verification", ["Verification"]),
    ];

    public static IEnumerable<string> Names => All.Select(r => r.Room);

    /// <summary>Whether a class of tests stands in the folder of a room's tests.</summary>
    public static bool Answers(string room, string type) =>
        All.First(r => r.Room == room).Tests.Any(folder => type.StartsWith($"PlatformForge.Tests.{folder}.", StringComparison.Ordinal));

    /// <summary>Tests of the house rules look at the source and not at what it does.</summary>
    public static bool IsHouse(string type) => type.StartsWith("PlatformForge.Tests.House.", StringComparison.Ordinal);
}
