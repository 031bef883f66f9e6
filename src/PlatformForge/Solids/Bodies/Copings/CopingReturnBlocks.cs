using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies.Copings;

/// <summary>A coping's return along an end: its slabs, their joints, over the nosing and down the front too, and its nosing.</summary>
internal static class CopingReturnBlocks
{
    /// <summary>Lays those of a stretch over the deck.</summary>
    /// <param name="chart">The plan.</param>
    /// <param name="top">Its walking surface.</param>
    /// <param name="from">Lower end of the stretch, mm.</param>
    /// <param name="to">Upper end, mm.</param>
    /// <param name="deck">What the deck shows.</param>
    /// <param name="blocks">Takes the blocks.</param>
    public static void Add(FacetedPlan chart, TopSurface top, double from, double to, Paint deck, List<ColumnBlock> blocks)
    {
        var plan = chart.Plan;
        foreach (var turn in CopingReturn.Of(plan))
        {
            // A kerb or a retaining wall along the back runs on to the end, on the deck: the coping ends at it.
            (PlanLine Near, PlanLine Far, Paint Shows)[] strips = turn.EndsFree || plan.Body.FarCopingBack is not null
                ? [(plan.CopingFront, plan.Back, CopingGrooves.PaintOf(plan))]
                : [(plan.CopingFront, turn.Bounds[^1], CopingGrooves.PaintOf(plan)), (turn.Bounds[^1], plan.Back, deck)];
            foreach (var (near, far, shows) in strips)
            {
                foreach (var piece in top.Cover(near, far, Math.Max(from, turn.From), Math.Min(to, turn.To)))
                {
                    blocks.Add(Layer.Added(piece.Ring, piece.Top.Raised(-plan.Spec.Coping.Thickness), piece.Top, shows));
                }
            }
        }
    }

    /// <summary>Takes their grooves and nosings out of a stretch.</summary>
    public static void Remove(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        var (plan, coping) = (chart.Plan, chart.Plan.Spec.Coping);
        foreach (var turn in CopingReturn.Of(plan).Where(r => r.IsAtEnd ? to >= r.End : from <= r.End))
        {
            foreach (var groove in turn.Grooves(coping, plan.Body.FarCopingBack is not null))
            {
                foreach (var piece in top.Cover(groove.Near, groove.Far, groove.From, groove.To))
                {
                    blocks.Add(Layer.Removed(piece.Ring, piece.Top.Raised(-groove.Depth), piece.Top.Raised(Layer.Above), CopingGrooves.PaintOf(plan)));
                }

                if (groove.IsJoint)
                {
                    Front(chart, top, turn, groove, blocks);
                }
            }

            Nosing(chart, top, turn, blocks);
        }
    }

    // A joint on the front, its foot sloping as those along the edge do.
    private static void Front(FacetedPlan chart, TopSurface top, CopingReturn turn, ReturnGroove groove, List<ColumnBlock> blocks)
    {
        var coping = chart.Plan.Spec.Coping;
        double deep = CopingFronts.Depth(coping), inside = turn.Behind(coping, deep);
        if (deep <= 0)
        {
            return;
        }

        Point3 Place(PlanLine line, double s, double z) => chart.On(line, s) is var p ? new(p.X, p.Y, z) : default;
        var foot = HeightPlane.Through(Place(groove.Near, turn.End, -CopingFronts.Low(coping)), Place(groove.Far, turn.End, -CopingFronts.Low(coping)),
            Place(groove.Near, inside, (CopingFronts.Rise * deep) - CopingFronts.Low(coping)));
        foreach (var piece in top.Cover(groove.Near, groove.Far, Math.Min(groove.First, inside), Math.Max(groove.First, inside)))
        {
            blocks.Add(Layer.Removed(piece.Ring, piece.Top.Plus(foot), piece.Top.Raised(Layer.Above), CopingGrooves.PaintOf(chart.Plan)));
        }
    }

    // The worked arris of the end, flat by flat: with those of the edges it is mitred at the corners. A last slab that nothing stands on ends in one too, at
    // the platform's back, up to the joint beside the deck.
    private static void Nosing(FacetedPlan chart, TopSurface top, CopingReturn turn, List<ColumnBlock> blocks)
    {
        var (plan, coping) = (chart.Plan, chart.Plan.Spec.Coping);
        var corners = coping.Arris();
        double middle = (turn.End + turn.Inner) / 2;
        var along = top.Along(middle);
        Point3 Place(PlanLine line, double behind, double drop)
        {
            var p = chart.On(line, turn.Behind(coping, behind));
            return new(p.X, p.Y, along.At(p) - drop);
        }

        // Beyond both edges, so that no two boundaries coincide; but only up to what stands at the back.
        bool isOpen = turn.EndsFree || plan.Body.FarCopingBack is not null;
        PlanLine near = plan.CopingFront.Shifted(-Overshoot), far = isOpen ? plan.Back.Shifted(Overshoot) : turn.Bounds[^1];
        for (int i = 0; i + 1 < corners.Count; i++)
        {
            var (low, high) = (corners[i], corners[i + 1]);
            Point3[] ring = [Place(near, low.Inward, low.Drop), Place(far, low.Inward, low.Drop), Place(far, high.Inward, high.Drop),
                Place(near, high.Inward, high.Drop)];
            Flat(ring, along, CopingGrooves.PaintOf(plan), blocks);
            if (turn.EndsFree)
            {
                PlanLine outer = plan.Back.Shifted(-low.Inward), inner = plan.Back.Shifted(-high.Inward);
                double last = coping.Width - coping.JointWidth;
                Flat([Place(outer, -Overshoot, low.Drop), Place(outer, last, low.Drop), Place(inner, last, high.Drop), Place(inner, -Overshoot, high.Drop)],
                    along, CopingGrooves.PaintOf(plan), blocks);
            }
        }
    }

    private static void Flat(Point3[] ring, HeightPlane along, Paint paint, List<ColumnBlock> blocks)
    {
        var slope = HeightPlane.Through(ring[0], ring[1], ring[3]);
        if (Math.Abs(slope.At(new(ring[2].X, ring[2].Y)) - ring[2].Z) < TopSurface.PlaneAgreement)
        {
            Cut(slope, ring);
        }
        else
        {
            Cut(slope, ring[0], ring[1], ring[3]);
            Cut(HeightPlane.Through(ring[1], ring[2], ring[3]), ring[1], ring[2], ring[3]);
        }

        void Cut(HeightPlane lower, params Point3[] corners)
        {
            var plan = Array.ConvertAll(corners, p => new Point2(p.X, p.Y));
            blocks.Add(Layer.Removed(ConvexRing.Area(plan) > 0 ? plan : ConvexRing.Reversed(plan), lower, along.Raised(Layer.Above), paint));
        }
    }

    // How far in mm a nosing reaches out of the platform's sides, so that no two boundaries coincide.
    private const double Overshoot = 0.5;
}
