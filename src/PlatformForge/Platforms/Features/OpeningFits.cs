using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Features;

/// <summary>Openings that share a fit which a coupon tells: the key of the measured fit, and the features that have such openings.</summary>
public static class OpeningFits
{
    /// <summary>Key of a measured fit, and the words of the features whose <c>fit</c> it stands in for.</summary>
    public static IReadOnlyList<(string Key, IReadOnlyList<string> Features)> Shared { get; } = [("hole", ["fence", "hole", "lamp"]), ("socket", ["board"])];

    /// <summary>Puts the measured fits of openings into keys.</summary>
    public static SpecKeys<T> On<T>(SpecKeys<T> keys) => keys
        .Length("hole", FigureRanges.Fit, "For every round hole that states no fit of its own: fence, lamps, holes.", _ => PlacedSpec.UsualFit, (f, _) => f)
        .Length("socket", FigureRanges.Fit, "For every socket that states no fit of its own.", _ => PlacedSpec.UsualFit, (f, _) => f);
}
