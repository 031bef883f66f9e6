using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Trestles;

namespace PlatformForge.Solids.Bodies;

/// <summary>The prisms of a platform's features as blocks, and the chamfers of those that open in the walking surface.</summary>
internal static class FeatureBlocks
{
    /// <summary>What is put in place, at its turn; cut off at the stretch's ends.</summary>
    public static void Add(FacetedPlan chart, TopSurface top, double from, double to, PrismOrder order, List<ColumnBlock> blocks)
    {
        foreach (var prism in Of(chart.Plan, PrismAct.Add).Where(p => p.Order == order && Between(chart, from, to, p.Ring).Length > 0))
        {
            // One that a cut was forced through ends at the cut.
            foreach (var (ring, surface) in Pieces(chart, top, prism))
            {
                var inside = Between(chart, from, to, ring);
                if (inside.Length > 0)
                {
                    var lower = End(chart.Plan, prism, prism.Lower, surface);
                    var upper = End(chart.Plan, prism, prism.Upper, surface);
                    blocks.Add(Layer.Added(inside, prism.Lower.IsLevel ? new(Math.Max(0, lower.Z)) : lower, upper, Shown(chart.Plan, prism)));
                }
            }
        }
    }

    /// <summary>What is taken out.</summary>
    public static void Remove(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        Prism[] touching = [.. Of(chart.Plan, PrismAct.Remove).Where(p => p.Middle.Chainage + p.Along > from && p.Middle.Chainage - p.Along < to)];
        foreach (var prism in touching)
        {
            foreach (var (ring, surface) in Pieces(chart, top, prism))
            {
                HeightPlane lower = End(chart.Plan, prism, prism.Lower, surface), upper = End(chart.Plan, prism, prism.Upper, surface);
                blocks.Add(Layer.Removed(ring, lower, upper, Shown(chart.Plan, prism)));
            }
        }

        foreach (var prism in touching)
        {
            if (prism.Mouth is { } mouth)
            {
                Chamfer(prism.Ring, mouth, top.Along(prism.Middle.Chainage), blocks);
            }
        }
    }

    /// <summary>How high a prism that is added stands over the walking surface at most, mm; negative where it stays below.</summary>
    public static double Over(PlatformPlan plan, Prism prism)
    {
        if (prism.Act != PrismAct.Add)
        {
            return double.NegativeInfinity;
        }

        var surface = plan.Surface.At(prism.Middle.Chainage);
        var upper = End(plan, prism, prism.Upper, surface);
        return prism.Ring.Max(p => upper.At(p) - surface.At(p));
    }

    /// <summary>Area from above of what features engrave in the walking surface between two chainages, mm², what crosses counted twice.</summary>
    public static double Engraved(PlatformPlan plan, double from, double to) => Of(plan, PrismAct.Remove)
        .Where(p => p.IsEngraved && p.Middle.Chainage > from && p.Middle.Chainage < to).Sum(p => ConvexRing.Area(p.Ring));

    private static IEnumerable<Prism> Of(PlatformPlan plan, PrismAct act) => plan.Features.SelectMany(f => f.Prisms).Where(p => p.Act == act);

    // Under a deck on bents nothing is a wall's.
    private static Paint Shown(PlatformPlan plan, Prism prism) => prism.Shows != PrismFace.Wall ? Paint.Deck
        : plan.Trestle?.Stretch.Holds(prism.Middle.Chainage) == true ? TrestleBlocks.PaintOf(plan.Spec.Trestle!) : Paint.Wall;

    // An end as a plane: level at the height told in the prism's middle, or parallel to a plane of the walking surface, or to the baseboard.
    private static HeightPlane End(PlatformPlan plan, Prism prism, PrismEnd end, HeightPlane surface)
    {
        if (end.Tilt != default)
        {
            var middle = plan.ToLayout(prism.Middle.Chainage, prism.Middle.Reach);
            var plain = End(plan, prism, end with { Tilt = default }, surface);
            return new(plain.Z - Point2.Dot(end.Tilt, middle), plain.X + end.Tilt.X, plain.Y + end.Tilt.Y);
        }

        if (end.From == Datum.Baseboard)
        {
            return Layer.Baseboard.Raised(end.Offset);
        }

        double offset = end.From == Datum.DeckUnderside ? -plan.Spec.Deck.Thickness + end.Offset : end.Offset;
        return end.IsLevel ? new(plan.TopAt(prism.Middle.Chainage, prism.Middle.Reach) + offset) : surface.Raised(offset);
    }

    // The walking surface is one plane over most prisms; one whose lower end follows it is a piece for each plane that it may reach, and lies where its
    // ring is, which need not be where its middle is: a groove of a manhole has the middle of that.
    private static IEnumerable<(Point2[] Ring, HeightPlane Surface)> Pieces(FacetedPlan chart, TopSurface top, Prism prism)
    {
        double middle = prism.Middle.Chainage;
        double[] breaks = prism.Lower.IsLevel ? [] : [.. chart.Plan.Surface.Breaks.Where(b => b > middle - prism.Along && b < middle + prism.Along)];
        if (breaks.Length == 0)
        {
            yield return (prism.Ring, top.Along(middle));
            yield break;
        }

        double[] ends = [double.NegativeInfinity, .. breaks, double.PositiveInfinity];
        for (int i = 0; i + 1 < ends.Length; i++)
        {
            var ring = Between(chart, ends[i], ends[i + 1], prism.Ring);
            if (ring.Length > 0)
            {
                yield return (ring, top.Along(i == 0 ? (middle - prism.Along + breaks[0]) / 2 : ends[i]));
            }
        }
    }

    // The part of a ring between the straight lines across at two chainages.
    private static Point2[] Between(FacetedPlan chart, double from, double to, Point2[] ring)
    {
        foreach (var (s, forward) in new[] { (from, true), (to, false) })
        {
            if (ring.Length == 0 || !double.IsFinite(s))
            {
                continue;
            }

            var origin = chart.CrossLine(s).Origin;
            var left = chart.Forward(s).Left * (forward ? -1 : 1); // material lies to the left of this direction
            ring = ConvexRing.LeftOf(ring, origin, origin + left);
        }

        return ring;
    }

    // The deck is printed face down, and a first layer that is squashed closes a mouth by some tenths of a millimetre: one block a side, whose floor rises
    // outwards at 45 degrees to the deck's top.
    private static void Chamfer(Point2[] ring, PrismMouth mouth, HeightPlane deck, List<ColumnBlock> blocks)
    {
        var (size, wide) = (mouth.Size, mouth.Ring);
        for (int i = 0; i < ring.Length; i++)
        {
            int next = (i + 1) % ring.Length;
            Point3 At(Point2 p, double drop) => new(p.X, p.Y, deck.At(p) - drop);
            var floor = HeightPlane.Through(At(ring[i], size), At(ring[next], size), At(wide[next], 0));
            blocks.Add(Layer.Removed([wide[i], wide[next], ring[next], ring[i]], floor, deck.Raised(Layer.Above), Paint.Deck));
        }
    }
}
