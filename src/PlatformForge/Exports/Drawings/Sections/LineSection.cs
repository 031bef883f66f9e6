using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Exports.Drawings.Sections;

/// <summary>Lines and strips of a deck cut square to the track: reach and height, mm.</summary>
internal static class LineSection
{
    /// <summary>What is drawn of them at a chainage, what lies under first.</summary>
    /// <param name="plan">The platform.</param>
    /// <param name="s">Chainage, mm.</param>
    /// <param name="paint">How thick paint is drawn, mm: thicker than it is, or it would not be seen.</param>
    public static IEnumerable<(Point2[] Ring, Rgb Colour)> At(PlatformPlan plan, double s, double paint)
    {
        foreach (var line in plan.Body.Lines.Where(l => s >= l.From && s <= l.To))
        {
            double near = plan.SquareReach(line.Near, s), far = plan.SquareReach(line.Far, s);
            double a = plan.SquareTopAt(s, near), b = plan.SquareTopAt(s, far), deep = line.GrooveDepth, up = line.RiseOver(a);
            if (deep <= 0)
            {
                yield return ([new(near, a), new(far, b), new(far, b + paint), new(near, a + paint)], LineLooks.Of(line.Made, plan.Spec));
                continue;
            }

            yield return ([new(near, a - deep), new(far, b - deep), new(far, b), new(near, a)], line.Made.IsPainted ? HouseStyle.White : HouseStyle.Deck);
            if (line.Made.IsPrinted)
            {
                double fit = line.Made.Fit;
                double front = near + fit, behind = far - fit;
                Point2[] face = line.Made.Wall is not { } wall ? []
                    : [.. new[] { (0, up - wall.Coping), (wall.Oversail, up - wall.Coping), (wall.Oversail, wall.Plinth), (0, wall.Plinth) }
                        .Select(p => new Point2(front + p.Item1, a + p.Item2))];
                Point2[] ring = [new(front, a - deep), new(behind, b - deep), new(behind, b + up), new(front, a + up), .. face];
                yield return (ring, LineLooks.Of(line.Made, plan.Spec));
            }
        }
    }
}
