using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies.Walls;

/// <summary>
/// What of the walls steps out of them: each front reaches into the wall behind it, stands as high, and has a cap as high as the deck's edge, so that its
/// faces and the wall's are one panel round its corners. What stands out of the walls along a part of their height goes round it too.
/// </summary>
internal static class FrontBlocks
{
    /// <summary>Adds what lies deepest of each front, or what stands out of that.</summary>
    public static void Add(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks, bool standing = false)
    {
        foreach (var (row, front) in chart.Plan.Fittings.Where(r => r.StepsOut).SelectMany(r => r.Places.Select(p => (r, p))))
        {
            // One with a sloping head ends in that: what is over it is wall alone.
            double? head = row.Head is null ? null : chart.Profile.FrontHead;
            foreach (var zone in chart.Profile.Zones.Where(z => z.IsDeepest != standing && (head is not { } h || z.High <= h)))
            {
                Add(chart, top, (row, front), zone, (from, to), blocks);
            }
        }
    }

    private static void Add(
        FacetedPlan chart, TopSurface top, (FittingRow Row, WallFitting Front) of, WallZone zone, (double From, double To) section, List<ColumnBlock> blocks)
    {
        var (plan, (row, front)) = (chart.Plan, of);
        var (near, far) = Faces(plan, zone.Out);
        var (a, b) = front.IsFar ? (plan.Body.FarWallLine.Shifted(-ZoneBlocks.FarThickness(plan) / 2), far)
            : (near, plan.Body.WallLine.Shifted(plan.Spec.Walls.FrontThickness / 2));
        var whole = Wider(plan, front, zone.Out - LeastOut(chart.Profile));
        foreach (var piece in top.Cover(a, b, Math.Max(section.From, whole.From), Math.Min(section.To, whole.To)))
        {
            ZoneBlocks.Stand(plan, zone, piece, WallNames.OfFront(chart, of, piece, zone, whole), blocks);
        }

        // Nothing is taken off the wall behind, which may lean over the head.
        var (c, d) = front.IsFar ? (Before(chart, front), far) : (near, Before(chart, front));
        var (from, to) = (Math.Max(section.From, whole.From), Math.Min(section.To, whole.To));
        foreach (var piece in row.Head is null || chart.Profile.FrontHead is null ? [] : top.Cover(c, d, from, to))
        {
            double head = chart.Profile.FrontHead!.Value;
            blocks.Add(Layer.Removed(piece.Ring, Weathering(chart, front, (head, row.Head!.Value.Degrees)), new(head + Layer.Above), Paint.Wall));
        }
    }

    // How far over a weathered head its slope meets the wall, mm: what is level at the wall, however that bends, is of the height of what is beside it.
    private const double Lip = 0.1;

    // The slope of a head, from the wall outward and down.
    private static HeightPlane Weathering(FacetedPlan chart, WallFitting front, (double At, double Degrees) head)
    {
        Point2 at = chart.On(Before(chart, front), front.Middle), across = chart.CrossLine(front.Middle).Across;
        Point2 outward = across * ((front.IsFar ? 1 : -1) / across.Length), along = outward.Left;
        double fall = Math.Tan(head.Degrees * Math.PI / 180);
        Point3 Place(Point2 p, double height) => new(p.X, p.Y, height);
        return HeightPlane.Through(Place(at, head.At + Lip), Place(at + along, head.At + Lip), Place(at + outward, head.At + Lip - fall));
    }

    // The lines that fronts stand on: behind the faces held against vehicles by the profile's depth and that of their facing.
    private static (PlanLine Near, PlanLine Far) Faces(PlatformPlan plan, double before)
    {
        var facing = plan.Spec.Facing!;
        double back = facing.ProfileDepth - before;
        return (plan.Spine.Aside(plan.Body.WallFace, facing.FaceDepth(false) + back),
            plan.Spine.Aside(plan.Body.FarWallFace, -facing.FaceDepth(!plan.Spec.IsIsland) - back));
    }

    // The line of the wall beside a head.
    private static PlanLine Before(FacetedPlan chart, WallFitting front)
    {
        double before = LeastOut(chart.Profile);
        var (spine, body) = (chart.Plan.Spine, chart.Plan.Body);
        return front.IsFar ? spine.Aside(body.FarWallLine, before) : spine.Aside(body.WallLine, -before);
    }

    // A front is as wide as stated where what lies deepest of it is: one with a sloping head under that.
    private static double LeastOut(WallProfile profile) => profile.FrontHead is { } head ? profile.Zones.Last(z => z.High <= head).Out : 0;

    // What stands out goes round a front's sides.
    private static (double From, double To) Wider(PlatformPlan plan, WallFitting front, double before)
    {
        double along = before / plan.Spine.Stretch(front.Middle, (front.IsFar ? plan.Body.FarWallFace : plan.Body.WallFace).At(front.Middle));
        return (front.From - along, front.To + along);
    }
}
