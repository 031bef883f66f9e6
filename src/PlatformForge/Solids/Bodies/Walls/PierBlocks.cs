using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies.Walls;

/// <summary>
/// Piers before the walls: each reaches into the wall behind it, stands as high, and has a cap as high as the deck's edge, so that its faces and the wall's
/// are one panel round its corners. What stands out of the walls along a part of their height goes round the piers too.
/// </summary>
internal static class PierBlocks
{
    /// <summary>Adds what lies deepest of each pier, or what stands out of that.</summary>
    public static void Add(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks, bool standing = false)
    {
        foreach (var pier in chart.Plan.Piers)
        {
            // A buttress ends in its head: what is over it is wall alone.
            var head = chart.Profile.PierHead;
            foreach (var zone in chart.Profile.Zones.Where(z => z.IsDeepest != standing && (head is not { } h || z.High <= h)))
            {
                Add(chart, top, pier, zone, (from, to), blocks);
            }
        }
    }

    private static void Add(FacetedPlan chart, TopSurface top, PlannedPier pier, WallZone zone, (double From, double To) section, List<ColumnBlock> blocks)
    {
        var plan = chart.Plan;
        var (near, far) = Faces(plan, zone.Out);
        var (a, b) = pier.IsFar ? (plan.Body.FarWallLine.Shifted(-ZoneBlocks.FarThickness(plan) / 2), far)
            : (near, plan.Body.WallLine.Shifted(plan.Spec.Walls.FrontThickness / 2));
        var whole = Wider(plan, pier, zone.Out - LeastOut(chart.Profile));
        foreach (var piece in top.Cover(a, b, Math.Max(section.From, whole.From), Math.Min(section.To, whole.To)))
        {
            ZoneBlocks.Stand(plan, zone, piece, WallNames.OfPier(chart, pier, piece, zone, whole), blocks);
        }

        // Nothing is taken off the wall behind, which may lean over the head.
        var (c, d) = pier.IsFar ? (Before(chart, pier), far) : (near, Before(chart, pier));
        foreach (var piece in chart.Profile.PierHead is null ? [] : top.Cover(c, d, Math.Max(section.From, whole.From), Math.Min(section.To, whole.To)))
        {
            double head = chart.Profile.PierHead!.Value;
            blocks.Add(Layer.Removed(piece.Ring, Weathering(chart, pier, head), new(head + Layer.Above), Paint.Wall));
        }
    }

    // How far over a weathered head its slope meets the wall, mm: what is level at the wall, however that bends, is of the height of what is beside it.
    private const double Lip = 0.1;

    // The slope of a buttress's head, from the wall outward and down.
    private static HeightPlane Weathering(FacetedPlan chart, PlannedPier pier, double head)
    {
        var plan = chart.Plan;
        Point2 at = chart.On(Before(chart, pier), pier.Middle), across = chart.CrossLine(pier.Middle).Across;
        Point2 outward = across * ((pier.IsFar ? 1 : -1) / across.Length), along = outward.Left;
        double fall = Math.Tan(plan.Spec.Facing!.Piers!.Weathering * Math.PI / 180);
        Point3 Place(Point2 p, double height) => new(p.X, p.Y, height);
        return HeightPlane.Through(Place(at, head + Lip), Place(at + along, head + Lip), Place(at + outward, head + Lip - fall));
    }

    // The lines that piers' fronts stand on: behind the faces held against vehicles by the profile's depth and that of their facing.
    private static (PlanLine Near, PlanLine Far) Faces(PlatformPlan plan, double before)
    {
        var facing = plan.Spec.Facing!;
        double back = facing.ProfileDepth - before;
        return (plan.Spine.Aside(plan.Body.WallFace, facing.FaceDepth(false) + back),
            plan.Spine.Aside(plan.Body.FarWallFace, -facing.FaceDepth(!plan.Spec.IsIsland) - back));
    }

    // The line of the wall beside a buttress's head.
    private static PlanLine Before(FacetedPlan chart, PlannedPier pier)
    {
        double before = LeastOut(chart.Profile);
        var (spine, body) = (chart.Plan.Spine, chart.Plan.Body);
        return pier.IsFar ? spine.Aside(body.FarWallLine, before) : spine.Aside(body.WallLine, -before);
    }

    // A pier is as wide as stated where what lies deepest of it is: a buttress under its head.
    private static double LeastOut(WallProfile profile) => profile.PierHead is { } head ? profile.Zones.Last(z => z.High <= head).Out : 0;

    // What stands out goes round a pier's sides.
    private static (double From, double To) Wider(PlatformPlan plan, PlannedPier pier, double before)
    {
        double along = before / plan.Spine.Stretch(pier.Middle, (pier.IsFar ? plan.Body.FarWallFace : plan.Body.WallFace).At(pier.Middle));
        return (pier.From - along, pier.To + along);
    }
}
