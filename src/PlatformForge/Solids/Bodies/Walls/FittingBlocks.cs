using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies.Walls;

/// <summary>
/// Parts that stand before the walls and are not walls: one that reaches into the wall behind it goes from the ground to the coping, so that what is laid
/// on the wall closes on either side of it; others stand round it and keep before the wall. They follow plinths, corbelled courses and walls that lean.
/// </summary>
internal static class FittingBlocks
{
    /// <summary>What surfaces of parts show.</summary>
    public static Paint PaintOf(FittingFace face) => face == FittingFace.Iron ? Paint.Iron : Paint.Wall;

    /// <summary>Adds the parts of fittings between two chainages.</summary>
    public static void Add(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        foreach (var (paint, fitting) in chart.Plan.Fittings.SelectMany(r => r.Places.Select(p => (PaintOf(r.Face), p))))
        {
            if (fitting.Parts.Count == 0 || fitting.From < from || fitting.To > to)
            {
                continue;
            }

            double within = Math.Min(chart.Plan.Spec.Deck.Thickness, chart.Plan.Spec.Coping.Thickness) / 2;
            HeightPlane[] over = [.. new[] { fitting.Middle, fitting.From, fitting.To }.Select(s => top.Along(s).Raised(-within)).Distinct()];
            var frame = new FittingFrame(chart, fitting);
            WallZone[] zones = [.. Zones(frame, over)];
            foreach (var part in fitting.Parts)
            {
                Add(frame, part, zones, over, paint, blocks);
            }
        }
    }

    // The parts of the wall's height that a fitting follows. A step right under the coping is none: what lies under it goes on up.
    private static IEnumerable<WallZone> Zones(FittingFrame frame, HeightPlane[] over)
    {
        double half = frame.Fitting.Parts.Max(p => p.HalfWidth), high = frame.Fitting.Parts.Max(p => p.High);
        double fall = over.Max(o => new[] { -half, half }.Max(x => o.At(frame.Place(0, 0, 0)) - o.At(frame.Place(x, 0, 0))));
        return frame.Profile.Zones.TakeWhile((z, i) => i == 0 || z.Low < high - fall - WallProfile.OffSteps);
    }

    private static void Add(FittingFrame frame, FittingPart part, WallZone[] zones, HeightPlane[] over, Paint paint, List<ColumnBlock> blocks)
    {
        if (part.ReachesIn)
        {
            foreach (var zone in zones)
            {
                double depth = frame.Wall + zone.Out;
                Point2[] outline = [part.Outline[0] with { Y = depth }, .. part.Outline, part.Outline[^1] with { Y = depth }];
                HeightPlane low = zone.IsDeepest || zone.IsFoot ? Layer.Baseboard : new(zone.Low);
                Stand(frame.Ring(outline, zone.Out), low, zone.IsFoot && zone != zones[^1] ? new(zone.High) : over[0], over, paint, blocks);
            }

            return;
        }

        // What stands round another part steps back with it, course by course: a ledge beside that one's own step would hang free.
        foreach (var zone in zones.Where(z => z.Low < part.High && (z.High > part.Low || z == zones[^1])))
        {
            double low = Math.Max(part.Low, zone.Low), high = zone == zones[^1] ? part.High : Math.Min(zone.High, part.High);
            HeightPlane end = part.ToCoping && high == part.High ? over[0] : new(high);
            Stand(frame.Ring(part.Outline, zone.Out), low > 0 ? new(low) : Layer.Baseboard, end, over, paint, blocks);
        }
    }

    // A part ends under every plane of the coping over it: courses of a wall that leans, and a plinth's steps, are level and as high as at the
    // platform's head, where a ramp slopes down before them; and one beside a ramp's head has two planes over it, of which the lower counts.
    private static void Stand(Point2[] ring, HeightPlane low, HeightPlane high, HeightPlane[] over, Paint paint, List<ColumnBlock> blocks)
    {
        blocks.Add(Layer.Added(ring, low, high, paint));
        foreach (var plane in over.Where(o => Array.Exists(ring, p => o.At(p) < high.At(p) - TopSurface.PlaneAgreement)))
        {
            blocks.Add(Layer.Removed(ring, plane, high.Raised(Layer.Above), paint));
        }
    }
}
