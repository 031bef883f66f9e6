using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;

namespace PlatformForge.Platforms.WallFittings;

/// <summary>What lies behind an opening right through a wall: the pad round it, and the hollow that it opens into. In chainage and reach, mm.</summary>
/// <param name="plan">The plan, its features placed.</param>
/// <param name="spec">The opening.</param>
/// <param name="isFar">Whether it is in the far wall.</param>
internal sealed class OpeningPad(PlatformPlan plan, OpeningSpec spec, bool isFar)
{
    // Kept between a pad and what else stands under the deck, mm: a line of the usual nozzle.
    private const double Apart = 0.4;

    // Lower hollows are filled (common practice, no source), mm.
    private const double LowestHollow = 2;

    // By what share of its thickness the deck may bend over a pad, which ends in its middle.
    private const double Bend = 0.3;

    // A pad follows its wall on a curve, mm.
    private const double Bulge = 0.2;

    private readonly PlanLine wall = isFar ? plan.Body.BackWallFace : plan.Body.WallBack;

    /// <summary>Its place, which ribs keep off.</summary>
    public Keepout Place(string key, double at)
    {
        double half = Half(at), deep = OpeningSpec.PadDepth + Bulge + Apart, reach = wall.At(at);
        return new("opening through the wall", key, at - half, at + half, isFar ? reach - deep : reach, isFar ? reach : reach + deep) { By = KeptOff.Ribs };
    }

    /// <summary>What is in its way at a chainage; null for nothing.</summary>
    /// <param name="at">The chainage, mm.</param>
    /// <param name="cuts">Chainages of cuts, mm.</param>
    /// <param name="joint">How far what joins sections reaches from a cut, mm.</param>
    public string? InTheWay(double at, IReadOnlyList<double> cuts, double joint)
    {
        double half = Half(at), end = plan.Spec.EndDepth + Apart;
        var place = Place("", at);
        return cuts.Any(c => Math.Abs(c - at) < half + joint) ? "a joint between sections"
            : at - half < plan.Stations[0] + end || at + half > plan.Stations[^1] - end ? "the end wall"
            : plan.Keepouts.FirstOrDefault(k => k.Overlaps(place))?.Name is { } name ? $"the {name}"
            : plan.WallOpenings.Any(o => o.Spec.IsThrough && o.IsFar == isFar && Math.Abs(o.Chainage - at) < half + HalfOf(o) + Apart) ? "another opening"
            : IsHollow(at, half) ? null : "the solid foot of a ramp, or a bend of the deck,";
    }

    private double HalfOf(PlannedOpening other) => new OpeningPad(plan, other.Spec, isFar).Half(other.Chainage);

    private double Half(double at) => spec.PadHalf / plan.Spine.Stretch(at, wall.At(at));

    // The hollow goes down to the baseboard, and the deck over the pad is one plane, or nearly so.
    private bool IsHollow(double at, double half)
    {
        var over = plan.Surface.At(at);
        double deck = plan.Spec.Deck.Thickness;
        return new[] { at - half, at, at + half }.All(s => Math.Abs(over.At(plan.ToLayout(s, wall.At(s))) - plan.TopAt(s, wall.At(s))) < Bend * deck
            && Math.Min(plan.TopAt(s, plan.Body.WallBack.At(s)), plan.TopAt(s, plan.Body.BackWallFace.At(s))) - deck > LowestHollow + Apart);
    }
}
