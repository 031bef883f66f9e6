using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Platforms.AsBuilt;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Chapters;

/// <summary>How readings on the layout were taken, in words, so that who took them otherwise sees it.</summary>
public static class AsBuiltWords
{
    /// <summary>What readings without a vehicle were taken for; null where each names one.</summary>
    /// <param name="edge">The readings.</param>
    /// <param name="gauge">Between the running edges, mm.</param>
    public static string? FromRail(AsBuiltEdge edge, double gauge) => edge.FromRail == 0 ? null
        : (edge.FromRail == edge.Measures.Count ? "The" : Invariant($"{edge.FromRail} of {edge.Measures.Count}"))
            + " readings name no vehicle: their gaps count from the running edge of the nearer rail, so the true edge lies half the "
            + Invariant($"gauge, {Figures.Short(Math.Round(gauge / 2, 3))} mm, plus the gap from the track's middle.");
}
