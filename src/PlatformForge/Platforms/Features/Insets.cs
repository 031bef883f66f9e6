using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Features;

/// <summary>Whether something finds its place between the coping and the back, and between the platform's ends.</summary>
internal static class Insets
{
    /// <summary>Least clear width between edge and anything standing on the platform, full-size mm: 6 ft, quoted for structures and columns.</summary>
    public const double LeastClear = 6 * FullSize.Foot;

    /// <summary>Faults of where something of a size is asked for; the place is null where there is none to go on with.</summary>
    /// <param name="site">Where it is planned.</param>
    /// <param name="name">What it is.</param>
    /// <param name="at">Chainage of its middle, and its inset.</param>
    /// <param name="size">Half its size along, half its size across, and the material it needs round it.</param>
    /// <param name="leastDeck">Least width of the deck on which it has a place.</param>
    /// <param name="smaller">What makes it small enough for the platform's length.</param>
    public static (PlanPlace? Place, IReadOnlyList<Finding> Findings) Placed(
        FeatureSite site, string name, (double Chainage, double Inset, InsetFrom From) at, (double Along, double Across, double Land) size, double leastDeck,
        Cure? smaller = null)
    {
        var (s, key, face) = (at.Chainage, site.Key, site.Face);
        double first = face.From + size.Land + size.Along, last = face.To - size.Land - size.Along;
        if (s < first || s > last)
        {
            return (null, [PlatformFindings.OffTheEnds($"{key}.at", name, s, first, last, smaller)]);
        }

        double reach = site.Reach(s, at.Inset, at.From), farthest = site.Lines.Farthest(s, size.Land) - size.Across;
        double nearest = Math.Max(site.Lines.CopingBack.At(s), site.Lines.WallFace.At(s) + size.Land) + size.Across;
        bool fromBack = at.From == InsetFrom.Back;
        if (nearest > farthest + FeatureSite.Grain)
        {
            return (null, [PlatformFindings.DeckTooNarrowFor(key, name, site.Spec.Deck.Width, leastDeck, $"{site.Spec.Key}.deck.width")]);
        }

        return (new(s, reach), reach < nearest - FeatureSite.Grain ? [PlatformFindings.ThroughCoping(
            $"{key}.inset",
            name,
            nearest - reach,
            site.Inset(s, nearest, at.From),
            !fromBack)]
            : reach > farthest + FeatureSite.Grain ? [PlatformFindings.OffTheDeck(
                $"{key}.inset",
                name,
                reach - farthest,
                site.Inset(s, farthest, at.From),
                fromBack)]
            : []);
    }

    /// <summary>Least width in mm of a deck on which something of a size has a place at its inset.</summary>
    public static double LeastDeck(PlatformSpec spec, (double Inset, InsetFrom From) at, double half, double land)
    {
        double nearest = Math.Max(spec.Coping.Width, spec.Coping.Overhang + land) + half, behind = half + land;
        return at.From == InsetFrom.Back ? nearest + Math.Max(at.Inset, behind) : Math.Max(nearest, at.Inset) + behind;
    }

    /// <summary>Warns where something leaves less than 6 ft to the edge.</summary>
    public static IEnumerable<Finding> ClearWidth(PlatformSpec spec, PlatformSite site, string key, string name, (double Inset, InsetFrom From) at, double half)
    {
        double least = site.Scale.ToModel(LeastClear), width = spec.Deck.Width;
        if (spec.IsIsland)
        {
            yield break; // told where both edges are known
        }

        double free = (at.From == InsetFrom.Back ? width - at.Inset : at.Inset) - half;
        if (free < least - FeatureSite.Grain)
        {
            yield return PlatformFindings.ClearWidth(
                $"{key}.inset",
                name,
                free,
                least,
                at.From == InsetFrom.Back ? (width - least - half, false) : (least + half, true));
        }
    }
}
