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
        foreach (var (_, place) in chart.Plan.Holes.Where(h => h.Place.Hole!.IsThrough && h.Place.Middle > from && h.Place.Middle < to))
        {
            blocks.Add(Pad(chart, top, place, WallNames.BehindHole(place.Number)));
        }
    }

    private static ColumnBlock Pad(FacetedPlan chart, TopSurface top, WallFitting hole, string name)
    {
        var plan = chart.Plan;
        var line = hole.IsFar ? plan.Body.BackWallFace : plan.Body.WallBack;
        double half = hole.Hole!.Pad.Half, reach = half / plan.Spine.Stretch(hole.Middle, line.At(hole.Middle));
        Point2 left = chart.On(line, hole.Middle - reach), right = chart.On(line, hole.Middle + reach);
        if (!chart.RunsLeft)
        {
            (left, right) = (right, left);
        }

        // Counter-clockwise: along the near wall forward on a left-hand platform, the hollow to the left.
        var ahead = (right - left) * (1 / (right - left).Length);
        var inward = ahead.Left * (hole.IsFar ? -1 : 1);
        double bulge = chart.Chainages(hole.Middle - reach, hole.Middle + reach).Max(s => Point2.Dot(chart.On(line, s) - left, inward));
        Point2 outer = inward * -Into, inner = inward * (bulge + hole.Hole.Pad.Depth);
        Point2[] ring = hole.IsFar ? [left + inner, right + inner, right + outer, left + outer] : [left + outer, right + outer, right + inner, left + inner];
        string?[] names = hole.IsFar ? [name, null, null, null] : [null, null, name, null];
        return Layer.Added(ring, Layer.Baseboard, top.Along(hole.Middle).Raised(-plan.Spec.Deck.Thickness / 2), Paint.Wall) with { WallFaces = names };
    }
}
