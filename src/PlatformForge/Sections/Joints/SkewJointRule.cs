using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;

namespace PlatformForge.Sections.Joints;

/// <summary>
/// Whether what a joint on the skew brings stays within the walls: bores are square to the cut, so in one of its two sections they run towards the back, by
/// their depth's sine of the angle, and in the other towards the front.
/// </summary>
internal static class SkewJointRule
{
    // Lengths of dowels and plates are offered in steps of this, mm.
    private const double Step = 0.1;

    public static IEnumerable<Finding> Check(FacetedPlan chart, JointPlace place, JointSpec spec, double leastWall)
    {
        if (chart.Plan.Body.Across is null || chart.Plan.Spec.IsIsland || spec.Kind == JointKind.None || Room(chart, place, spec, leastWall) >= 0)
        {
            yield break;
        }

        double length = Math.Floor(spec.DowelLength / Step) * Step;
        while (length >= SectionFindings.LeastPiece && Room(chart, place, spec with { DowelLength = length }, leastWall) < 0)
        {
            length -= Step;
        }

        yield return SkewJointFindings.RunsOut(spec.Key, place.Chainage, spec.Kind == JointKind.Plate, spec.DowelLength,
            -Room(chart, place, spec, leastWall), length >= SectionFindings.LeastPiece ? Math.Round(length, 1) : null);
    }

    // What is left between the corners of all bosses and the outer sides of the walls, mm along the line across; negative where one stands out.
    private static double Room(FacetedPlan chart, JointPlace place, JointSpec spec, double leastWall)
    {
        var (plan, body) = (chart.Plan, chart.Plan.Body);
        double half = leastWall + (spec.Kind == JointKind.Plate ? spec.PocketWidth / 2 : spec.BoreDiameter / 2);
        double deep = spec.EndTrim + spec.BoreDepth + leastWall;
        double room = double.PositiveInfinity;
        foreach (var (middle, slot) in new[] { (place.Round, 0), (place.Slotted, spec.Kind == JointKind.Plate ? 0 : spec.SlotPlay) })
        {
            foreach (var (into, beside) in new[] { (1, 1), (1, -1), (-1, 1), (-1, -1) })
            {
                var corner = middle + (place.Forward * (into * deep)) + (place.Away * (beside * (half + (slot / 2))));
                double at = Math.Clamp(plan.Spine.Locate(corner, place.Chainage).Chainage, chart.Stations[0], chart.Stations[^1]);
                var away = plan.Spine.Away(at);
                room = Math.Min(room, Point2.Dot(corner - chart.On(body.WallLine, at), away));
                room = Math.Min(room, Point2.Dot(chart.On(body.FarWallLine, at) - corner, away));
            }
        }

        return room;
    }
}
