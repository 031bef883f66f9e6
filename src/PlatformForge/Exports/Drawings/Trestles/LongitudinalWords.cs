using PlatformForge.Platforms.Specs;

namespace PlatformForge.Exports.Drawings.Trestles;

/// <summary>Braces along a platform, in words.</summary>
internal static class LongitudinalWords
{
    /// <summary>What they are.</summary>
    public static string Of(TrestleSpec spec) => spec.Longitudinal switch
    {
        LongitudinalForm.Cross => "crossed braces",
        LongitudinalForm.Raking => "raking braces",
        LongitudinalForm.Knee => "knee braces",
        _ => "no braces",
    };

    /// <summary>The rows of posts that have them.</summary>
    public static string Where(TrestleSpec spec, bool isIsland) => spec.Braced switch
    {
        BracedRows.All => "in every row of posts",
        BracedRows.Front => isIsland ? "under the first face" : "in the front row",
        BracedRows.Back => isIsland ? "under the second face" : "in the back row",
        _ => isIsland ? "under both faces" : "in the front and back rows",
    };
}
