namespace PlatformForge.Mutants;

/// <summary>The rooms whose source is changed, those that keep trains off the edge first.</summary>
internal static class Rooms
{
    public static IReadOnlyList<string> Names { get; } = ["Clearance", "Track", "Platforms", "Solids", "Sections", "Verification", "Projects", "Exports"];

    /// <summary>Tests of the house rules look at the source and not at what it does.</summary>
    public static bool IsHouse(string test) => test.StartsWith("PlatformForge.Tests.House.", StringComparison.Ordinal);
}
