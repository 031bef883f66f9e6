using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies.Trestles;

/// <summary>
/// Pads behind openings right through walls, from the baseboard to the deck: each gives its opening one flat face to come out in, whatever bends the wall
/// has there, and makes good what it takes off the wall.
/// </summary>
internal static class PadBlocks
{
    // How far a pad reaches into its wall, mm: more than a chord of a curve lies off it.
    private const double Into = 0.3;

    public static void Add(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        var openings = chart.Plan.WallOpenings;
        for (int i = 0; i < openings.Count; i++)
        {
            if (openings[i].Spec.IsThrough && openings[i].Chainage > from && openings[i].Chainage < to)
            {
                blocks.Add(Pad(chart, top, openings[i], WallNames.BehindOpening(i + 1)));
            }
        }
    }

    private static ColumnBlock Pad(FacetedPlan chart, TopSurface top, PlannedOpening opening, string name)
    {
        var plan = chart.Plan;
        var line = opening.IsFar ? plan.Body.BackWallFace : plan.Body.WallBack;
        double half = opening.Spec.PadHalf, reach = half / plan.Spine.Stretch(opening.Chainage, line.At(opening.Chainage));
        Point2 left = chart.On(line, opening.Chainage - reach), right = chart.On(line, opening.Chainage + reach);
        if (!chart.RunsLeft)
        {
            (left, right) = (right, left);
        }

        // Counter-clockwise: along the near wall forward on a left-hand platform, the hollow to the left.
        var ahead = (right - left) * (1 / (right - left).Length);
        var inward = ahead.Left * (opening.IsFar ? -1 : 1);
        double bulge = chart.Chainages(opening.Chainage - reach, opening.Chainage + reach).Max(s => Point2.Dot(chart.On(line, s) - left, inward));
        Point2 outer = inward * -Into, inner = inward * (bulge + Masonry.OpeningSpec.PadDepth);
        Point2[] ring = opening.IsFar ? [left + inner, right + inner, right + outer, left + outer] : [left + outer, right + outer, right + inner, left + inner];
        string?[] names = opening.IsFar ? [name, null, null, null] : [null, null, name, null];
        return Layer.Added(ring, Layer.Baseboard, top.Along(opening.Chainage).Raised(-plan.Spec.Deck.Thickness / 2), Paint.Wall) with { WallFaces = names };
    }
}
