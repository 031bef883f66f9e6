using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Islands;

/// <summary>Where an island is narrowest, and whether that is enough.</summary>
internal static class WidthRule
{
    /// <summary>Least width of an island, full-size mm: 12 ft, which leaves 6 ft from either edge to what stands in the middle (quoted for the
    /// requirements of 1950; common practice).</summary>
    public const double LeastWidth = 12 * FullSize.Foot;

    // Between the walls of both faces something has to be left to print and to join, mm.
    private const double LeastHollow = 2;

    /// <summary>The spec with the least width found as its deck's width; what is wrong with it among the findings.</summary>
    public static PlatformSpec Check(PlatformSpec spec, PlatformSite site, Waist waist, List<Finding> findings)
    {
        double copings = 2 * spec.Coping.Width, walls = (2 * (spec.Coping.Overhang + spec.FrontDepth)) + LeastHollow;
        double needed = Math.Max(copings, walls), published = site.Scale.ToModel(LeastWidth);
        if (waist.Width < needed)
        {
            double coping = Math.Floor(waist.Width / 2 * 100) / 100;
            bool narrower = waist.Width >= walls && coping > spec.Coping.Overhang + spec.FrontDepth;
            findings.Add(IslandFindings.TooNarrow(spec, waist, needed,
                copings >= walls ? "two copings" : "both walls with their overhangs", narrower ? coping : null));
        }
        else if (waist.Width < published)
        {
            findings.Add(IslandFindings.Narrow(spec, waist, published));
        }
        else
        {
            findings.Add(IslandFindings.Told(spec, waist));
        }

        return spec with { Deck = spec.Deck with { Width = Math.Max(1, waist.Width) } };
    }
}
