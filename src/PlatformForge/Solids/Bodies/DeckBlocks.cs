using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies.Copings;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies;

/// <summary>Deck slab, coping, white line, and what is cut into them.</summary>
internal static class DeckBlocks
{
    /// <summary>Depth in mm of the skin that shows a painted line.</summary>
    public const double LineSkin = 0.2;

    /// <summary>How far in mm a cut reaches out of the material, so that no two boundaries coincide.</summary>
    private const double Overshoot = 0.5;

    public static void Add(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks, out double engraved)
    {
        var plan = chart.Plan;
        double deck = plan.Spec.Deck.Thickness, coping = plan.Spec.Coping.Thickness;
        foreach (var strip in plan.Body.Top)
        {
            var (thick, paint) = strip.Role == StripRole.Coping ? (coping, CopingGrooves.PaintOf(plan)) : (deck, PavingBlocks.PaintOf(plan));
            // The deck ends over the walls where a coping stands out over them.
            var (a, b) = strip.Role == StripRole.Coping ? (from, to) : Decked(plan, from, to);
            foreach (var piece in top.Cover(strip.Near, strip.Far, a, b))
            {
                blocks.Add(Layer.Added(piece.Ring, piece.Top.Raised(-thick), piece.Top, paint));
            }
        }

        CopingReturnBlocks.Add(chart, top, from, to, PavingBlocks.PaintOf(plan), blocks);
        engraved = PavingBlocks.Cut(chart, top, from, to, blocks) + ExpansionBlocks.Cut(chart, top, from, to, blocks) + LineBlocks.Area(plan, from, to)
            + CopingSeamBlocks.Cut(chart, top, from, to, blocks);
        foreach (var line in plan.Body.Lines.Where(l => l.GrooveDepth <= 0))
        {
            foreach (var piece in top.Cover(line.Near, line.Far, Math.Max(from, line.From), Math.Min(to, line.To)))
            {
                blocks.Add(Layer.Added(piece.Ring, piece.Top.Raised(-LineSkin), piece.Top, Paint.Line));
            }
        }
    }

    public static void Remove(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        var plan = chart.Plan;
        foreach (var line in plan.Body.Lines.Where(l => l.GrooveDepth > 0))
        {
            foreach (var piece in top.Cover(line.Near, line.Far, Math.Max(from, line.From), Math.Min(to, line.To)))
            {
                var shown = LineBlocks.PaintOf(line.Made, plan.Spec);
                blocks.Add(Layer.Removed(piece.Ring, piece.Top.Raised(-line.GrooveDepth), piece.Top.Raised(Layer.Above), shown));
            }
        }

        Joints(chart, top, from, to, blocks);
        CopingGrooves.Remove(chart, top, from, to, blocks);
        CopingReturnBlocks.Remove(chart, top, from, to, blocks);
        FarJointBlocks.Remove(chart, from, to, Overshoot, blocks);
        foreach (var (edge, inward) in plan.Body.Arrises)
        {
            Arris(chart, top, edge, inward, from, to, blocks);
        }
    }

    private static (double From, double To) Decked(PlatformPlan plan, double from, double to) =>
        (plan.Spec.Coping.IsReturned(false) ? Math.Max(from, plan.Body.WallsFrom) : from, plan.Spec.Coping.IsReturned(true) ? Math.Min(to, plan.Body.WallsTo)
            : to);

    // Grooves between coping slabs along lines across. A groove at a cut is halved by it.
    private static void Joints(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        var plan = chart.Plan;
        var (half, depth) = (plan.Spec.Coping.JointWidth / 2, plan.Spec.Coping.JointDepth);
        if (depth <= 0 || half <= 0)
        {
            return;
        }

        var beyond = plan.CopingFront.Shifted(-Overshoot);
        foreach (double joint in plan.CopingJoints.Where(j => FarJointBlocks.AlongCut(plan, j, from, to)))
        {
            double a = Math.Max(from, joint - half), b = Math.Min(to, joint + half);
            foreach (var piece in top.Cover(beyond, plan.CopingBack, a, b))
            {
                blocks.Add(Layer.Removed(piece.Ring, piece.Top.Raised(-depth), piece.Top.Raised(Layer.Above), CopingGrooves.PaintOf(plan)));
            }

            CopingFronts.Cut(chart, top, (joint - half, joint + half), (from, to), blocks);
        }
    }

    // The worked arris of a coping's upper edge, from the front to the top: of each of its flats, facet by facet, one plane through its two edges, or two where
    // those are not parallel.
    private static void Arris(FacetedPlan chart, TopSurface top, PlanLine edge, int inward, double from, double to, List<ColumnBlock> blocks)
    {
        var corners = chart.Plan.Spec.Coping.Arris();
        for (int i = 0; i + 1 < corners.Count; i++)
        {
            Flat(chart, top, edge, inward, (corners[i], corners[i + 1]), (from, to), blocks);
        }
    }

    private static void Flat(
        FacetedPlan chart, TopSurface top, PlanLine edge, int inward, ((double Inward, double Drop) Low, (double Inward, double Drop) High) flat,
        (double From, double To) stretch, List<ColumnBlock> blocks)
    {
        PlanLine outer = flat.Low.Inward > 0 ? edge.Shifted(inward * flat.Low.Inward) : edge, inner = edge.Shifted(inward * flat.High.Inward);
        var paint = CopingGrooves.PaintOf(chart.Plan);
        var chainages = chart.Chainages(stretch.From, stretch.To);
        for (int i = 0; i + 1 < chainages.Length; i++)
        {
            double a = chainages[i], b = chainages[i + 1];
            var along = top.Along((a + b) / 2);
            Point3 Place(PlanLine line, double s, double drop)
            {
                var p = chart.On(line, s);
                return new(p.X, p.Y, along.At(p) - drop);
            }

            Point3 front0 = Place(outer, a, flat.Low.Drop), front1 = Place(outer, b, flat.Low.Drop);
            Point3 inner0 = Place(inner, a, flat.High.Drop), inner1 = Place(inner, b, flat.High.Drop);
            var slope = HeightPlane.Through(front0, front1, inner1);
            if (Math.Abs(slope.At(new(inner0.X, inner0.Y)) - inner0.Z) < TopSurface.PlaneAgreement)
            {
                Cut(slope, front0, front1, inner1, inner0);
            }
            else
            {
                Cut(slope, front0, front1, inner1);
                Cut(HeightPlane.Through(front0, inner1, inner0), front0, inner1, inner0);
            }

            void Cut(HeightPlane lower, params Point3[] corners)
            {
                var ring = Array.ConvertAll(corners, p => new Point2(p.X, p.Y));
                blocks.Add(Layer.Removed(chart.RunsLeft == inward > 0 ? ring : ConvexRing.Reversed(ring), lower, along.Raised(Layer.Above), paint));
            }
        }
    }
}
