namespace PlatformForge.Tests;

/// <summary>
/// How many made-up cases a simulation runs: a size that still means something in every run of the tests, and a large one in a run of its own,
/// with the environment variable PLATFORMFORGE_SIMULATIONS set to "long".
/// </summary>
internal static class Simulations
{
    public static bool Long { get; } = Environment.GetEnvironmentVariable("PLATFORMFORGE_SIMULATIONS") == "long";

    /// <summary>One of two counts.</summary>
    public static int Of(int usual, int many) => Long ? many : usual;
}
