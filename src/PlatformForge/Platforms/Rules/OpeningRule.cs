using PlatformForge.Masonry;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Rules.Findings;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Rules;

/// <summary>What of openings can be told before anything is planned.</summary>
internal static class OpeningRule
{
    // Full-size height of an arch's ring of half a brick, mm (BS EN 771 coordinating size).
    private const double HalfBrick = 112.5;

    /// <summary>Height of an arch's ring, mm; nought under a flat head.</summary>
    public static double Ring(PlatformSpec spec, OpeningSpec opening) => opening.Rise <= 0 ? 0
        : (opening.IsBack ? spec.Facing!.Back : spec.Facing!.Front) switch
        {
            WallFinish.Stone => spec.Facing!.StoneCourse,
            WallFinish.Rubble => spec.Facing!.RubbleSize,
            WallFinish.Plain => 0,
            _ => HalfBrick / opening.Ratio,
        };

    /// <summary>Wall kept over an opening, mm: its ring, a joint, and a course that may be half of one off.</summary>
    public static double Over(PlatformSpec spec, OpeningSpec opening) => Ring(spec, opening) + (2 * spec.Facing!.Joint) + (75 / opening.Ratio);

    public static void Check(PlatformSpec spec, PlatformSite site, List<Finding> findings)
    {
        var openings = spec.Facing?.Openings ?? [];
        double wall = spec.Height + site.RailTop - spec.Deck.Thickness;
        for (int i = 0; i < openings.Count; i++)
        {
            var opening = openings[i];
            string key = FormattableString.Invariant($"{spec.Key}.facing.opening[{i}]");
            double least = opening.Sill + opening.Height + Over(spec, opening);
            if (opening.Rise > opening.Height - Tolerances.Rounding)
            {
                findings.Add(OpeningFindings.TooWide(key, opening));
            }
            else if (least > wall)
            {
                findings.Add(OpeningFindings.TooHigh(key, opening, wall, (wall - Over(spec, opening), wall - Over(spec, opening) + Ring(spec, opening))));
            }
        }
    }
}
