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
        var (spec, profile, wall) = (frame.Spec, frame.Profile, frame.Wall);
        foreach (var zone in profile.Zones)
        {
            var ring = frame.Ring(PipeOutline.Pipe(spec, wall + zone.Out), zone.Out);
            HeightPlane low = zone.IsDeepest || zone.IsFoot ? Layer.Baseboard : new(zone.Low);
            Stand(ring, low, zone.IsFoot ? new(zone.High) : over[0], over, blocks);
        }

        foreach (var part in spec.Rings(frame.Pipe.Under))
        {
            var ring = frame.Ring(PipeOutline.Ring(spec, part), profile.At((part.Low + part.High) / 2).Out);
            bool isHead = part.High >= frame.Pipe.Under;
            Stand(ring, part.Low > 0 ? new(part.Low) : Layer.Baseboard, isHead ? over[0] : new(part.High), over, blocks);
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
