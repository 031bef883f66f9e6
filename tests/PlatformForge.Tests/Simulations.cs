namespace PlatformForge.Tests;

/// <summary>
/// How many made-up cases a simulation runs: a size that still means something in every run of the tests, and a large one in a run of its own,
/// with the environment variable PLATFORMFORGE_SIMULATIONS set to "long", or to "long 3/10" for the third of ten pieces of it.
/// </summary>
internal static class Simulations
{
    private static readonly string[] Asked = (Environment.GetEnvironmentVariable("PLATFORMFORGE_SIMULATIONS") ?? "").Split(' ', '/');

    public static bool Long { get; } = Asked[0] == "long";

    /// <summary>One of two counts.</summary>
    public static int Of(int usual, int many) => Long ? many : usual;

    /// <summary>The numbers of the cases to run, of either count: of a piece, every so many.</summary>
    public static int[] Cases(int usual, int many) => [.. Enumerable.Range(0, Of(usual, many)).Where(k => Asked.Length < 3 || k % Number(2) == Number(1) - 1)];

    private static int Number(int at) => int.Parse(Asked[at], System.Globalization.CultureInfo.InvariantCulture);
}
