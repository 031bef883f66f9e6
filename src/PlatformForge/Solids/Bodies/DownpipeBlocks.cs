using PlatformForge.Geometry;
using PlatformForge.Masonry;

namespace PlatformForge.Solids.Bodies;

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
            var frame = new PipeFrame(chart, pipe);
            double within = Math.Min(chart.Plan.Spec.Deck.Thickness, chart.Plan.Spec.Coping.Thickness) / 2;
            Add(frame, top.Along(pipe.Middle).Raised(-within), blocks);
        }
    }

    private static void Add(PipeFrame frame, HeightPlane over, List<ColumnBlock> blocks)
    {
        var (spec, profile, wall) = (frame.Spec, frame.Profile, frame.Wall);
        foreach (var zone in profile.Zones)
        {
            var ring = frame.Ring(PipeOutline.Pipe(spec, wall + zone.Out), zone.Out);
            HeightPlane low = zone.IsDeepest || zone.IsFoot ? Layer.Baseboard : new(zone.Low);
            blocks.Add(Layer.Added(ring, low, zone.IsFoot ? new(zone.High) : over, Paint.Iron));
        }

        foreach (var part in spec.Rings(frame.Pipe.Under))
        {
            var ring = frame.Ring(PipeOutline.Ring(spec, part), profile.At((part.Low + part.High) / 2).Out);
            bool isHead = part.High >= frame.Pipe.Under;
            blocks.Add(Layer.Added(ring, part.Low > 0 ? new(part.Low) : Layer.Baseboard, isHead ? over : new(part.High), Paint.Iron));
        }
    }
}
