using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms;

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
            var frame = new Frame(chart, pipe);
            double within = Math.Min(chart.Plan.Spec.Deck.Thickness, chart.Plan.Spec.Coping.Thickness) / 2;
            Add(frame, top.Along(pipe.Middle).Raised(-within), blocks);
        }
    }

    private static void Add(in Frame frame, HeightPlane over, List<ColumnBlock> blocks)
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

    /// <summary>Where a pipe is drawn: along the chord of its wall, and square to it.</summary>
    private readonly struct Frame
    {
        private readonly FacetedPlan chart;
        private readonly PlanLine line;
        private readonly Point2 inward;
        private readonly double stretch;

        public Frame(FacetedPlan chart, PlannedDownpipe pipe)
        {
            (this.chart, Pipe) = (chart, pipe);
            var plan = chart.Plan;
            line = pipe.IsFar ? plan.Body.FarWallFace : plan.Body.WallFace;
            stretch = plan.Spine.Stretch(pipe.Middle, line.At(pipe.Middle));
            Point2 along = chart.On(line, pipe.To) - chart.On(line, pipe.From), across = chart.CrossLine(pipe.Middle).Across * (pipe.IsFar ? -1 : 1);
            Point2 square = along.Left * (1 / along.Length);
            inward = Point2.Dot(square, across) < 0 ? square * -1 : square;
            Facing = plan.Spec.Facing!;
        }

        public PlannedDownpipe Pipe { get; }

        public FacingSpec Facing { get; }

        public DownpipeSpec Spec => Facing.Downpipes!;

        public WallProfile Profile => chart.Profile;

        // Behind what stands out most, to the middle of the wall behind its ground.
        public double Wall => Spec.Projection + Facing.FaceDepth(Pipe.IsFar && !chart.Plan.Spec.IsIsland)
            + ((Pipe.IsFar ? ZoneBlocks.FarThickness(chart.Plan) : chart.Plan.Spec.Walls.FrontThickness) / 2);

        /// <summary>An outline in the layout, counter-clockwise, of a part that stands so far before the deepest part of the wall.</summary>
        public Point2[] Ring(Point2[] outline, double before)
        {
            double back = Facing.ProfileDepth - before;
            var ring = new List<Point2>();
            for (int i = 0; i < outline.Length; i++)
            {
                ring.Add(Place(outline[i], back));
                if (i + 1 < outline.Length && outline[i].Y == outline[i + 1].Y)
                {
                    // A front runs along its wall, however that bends.
                    double a = At(outline[i]), b = At(outline[i + 1]), depth = outline[i].Y + back;
                    foreach (double s in chart.Stations.Where(s => s > a && s < b))
                    {
                        ring.Add(chart.On(line, s) + (inward * depth));
                    }
                }
            }

            return Turned([.. ring]);
        }

        private double At(Point2 p) => Pipe.Middle + (p.X / stretch);

        private Point2 Place(Point2 p, double back) => chart.On(line, At(p)) + (inward * (p.Y + back));

        private static Point2[] Turned(Point2[] ring)
        {
            double area = Enumerable.Range(0, ring.Length).Sum(i => Point2.Cross(ring[i], ring[(i + 1) % ring.Length]));
            if (area < 0)
            {
                Array.Reverse(ring);
            }

            return ring;
        }
    }
}
