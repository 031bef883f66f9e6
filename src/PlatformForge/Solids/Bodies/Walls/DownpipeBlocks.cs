using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies.Walls;

/// <summary>
/// Downpipes before the walls: each pipe reaches into the wall behind it from the ground to the coping, so that what is laid on the wall closes on either
/// side of it; hopper head, clips and shoe stand round it and keep before the wall. Pipes follow plinths, corbelled courses and walls that lean.
/// </summary>
internal static class DownpipeBlocks
{
    /// <summary>Adds the downpipes between two chainages.</summary>
    public static void Add(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        foreach (var pipe in chart.Plan.Downpipes.Where(p => p.From >= from && p.To <= to))
        {
            double within = Math.Min(chart.Plan.Spec.Deck.Thickness, chart.Plan.Spec.Coping.Thickness) / 2;
            HeightPlane[] over = [.. new[] { pipe.Middle, pipe.From, pipe.To }.Select(s => top.Along(s).Raised(-within)).Distinct()];
            Add(new(chart, pipe), over, blocks);
        }
    }

    private static void Add(PipeFrame frame, HeightPlane[] over, List<ColumnBlock> blocks)
    {
        // A step right under the coping is none: what lies under it goes on up.
        var (spec, wall, half) = (frame.Spec, frame.Wall, frame.Spec.HalfWidth);
        double fall = over.Max(o => new[] { -half, half }.Max(x => o.At(frame.Place(0, 0, 0)) - o.At(frame.Place(x, 0, 0))));
        WallZone[] zones = [.. frame.Profile.Zones.TakeWhile((z, i) => i == 0 || z.Low < frame.Pipe.Under - fall - DownpipeSpec.OffSteps)];
        foreach (var zone in zones)
        {
            var ring = frame.Ring(PipeOutline.Pipe(spec, wall + zone.Out), zone.Out);
            HeightPlane low = zone.IsDeepest || zone.IsFoot ? Layer.Baseboard : new(zone.Low);
            Stand(ring, low, zone.IsFoot && zone != zones[^1] ? new(zone.High) : over[0], over, blocks);
        }

        // What stands round a pipe steps back with it, course by course: a ledge beside the pipe's own step would hang free.
        foreach (var part in frame.Rings)
        {
            bool isHead = part.High >= frame.Pipe.Under;
            foreach (var zone in zones.Where(z => z.Low < part.High && (z.High > part.Low || z == zones[^1])))
            {
                var ring = frame.Ring(PipeOutline.Ring(spec, part), zone.Out);
                double low = Math.Max(part.Low, zone.Low), high = zone == zones[^1] ? part.High : Math.Min(zone.High, part.High);
                Stand(ring, low > 0 ? new(low) : Layer.Baseboard, isHead && high == part.High ? over[0] : new(high), over, blocks);
            }
        }
    }

    // A part of a pipe ends under every plane of the coping over it: courses of a wall that leans, and a plinth's steps, are level and as high as at the
    // platform's head, where a ramp slopes down before them; and one beside a ramp's head has two planes over it, of which the lower counts.
    private static void Stand(Point2[] ring, HeightPlane low, HeightPlane high, HeightPlane[] over, List<ColumnBlock> blocks)
    {
        blocks.Add(Layer.Added(ring, low, high, Paint.Iron));
        foreach (var plane in over.Where(o => Array.Exists(ring, p => o.At(p) < high.At(p) - TopSurface.PlaneAgreement)))
        {
            blocks.Add(Layer.Removed(ring, plane, high.Raised(Layer.Above), Paint.Iron));
        }
    }
}
