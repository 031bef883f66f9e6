namespace PlatformForge.Tests;

/// <summary>
/// How many made-up cases a simulation runs: few in every run of the tests, so that each is gone through; with the environment variable
/// PLATFORMFORGE_SIMULATIONS set to "usual" as many as show that a rate is far off, which the gate does; set to "long" many, or the third of ten pieces of them
/// with "long 3/10".
/// </summary>
internal static class Simulations
{
    // What few cases are of the usual ones, and no fewer than so many.
    private const int Share = 4, Least = 2;

    private static readonly string[] Asked = (Environment.GetEnvironmentVariable("PLATFORMFORGE_SIMULATIONS") ?? "").Split(' ', '/');

    public static bool Long { get; } = Asked[0] == "long";

    /// <summary>Whether rates are told by it: not by few cases.</summary>
    public static bool TellsRates { get; } = Asked[0] is "long" or "usual";

    /// <summary>One of two counts, or few.</summary>
    public static int Of(int usual, int many) => Long ? many : TellsRates ? usual : Math.Min(usual, Math.Max(Least, usual / Share));

    /// <summary>Whether so many of the cases were as they shall be; among few, one more may be as it is in a rate of them.</summary>
    public static bool AreAt(double rate, int right, int of) => right >= (rate * of) - (TellsRates ? 0 : 1);

    /// <summary>The numbers of the cases to run, of either count: of a piece, every so many.</summary>
    public static int[] Cases(int usual, int many) => [.. Enumerable.Range(0, Of(usual, many)).Where(k => Asked.Length < 3 || k % Number(2) == Number(1) - 1)];

    private static int Number(int at) => int.Parse(Asked[at], System.Globalization.CultureInfo.InvariantCulture);
}
