using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Surfaces;

/// <summary>The joint between a coping and a deck of another material: a groove along the coping's inner edge, as wide as the deck's own joints, or the
/// coping's.</summary>
/// <param name="Width">Its width, mm.</param>
/// <param name="Depth">How deep it is engraved, mm: as those joints, a quarter of the deck's thickness at most.</param>
/// <param name="From">Chainage at which it begins, mm.</param>
/// <param name="To">Chainage at which it ends, mm.</param>
public sealed record CopingSeam(double Width, double Depth, double From, double To)
{
    // It ends a printed line before the walls at the ends, as joints of pavings do: common practice, no source.
    private const double Rim = 0.4;

    // Joints deeper than this share of the deck are not as deep here.
    private const double DeepestShare = 0.25;

    /// <summary>Of a plan; null where the deck is of the coping's material, or its joints are left to paint.</summary>
    public static CopingSeam? Of(PlatformPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (coping, deck) = (plan.Spec.Coping, plan.Spec.Deck);
        bool isOne = (coping.Kind, deck.Paving?.Kind) is (CopingKind.Timber, PavingKind.Planks) or (CopingKind.Bricks, PavingKind.Bricks);
        double width = deck.Paving?.Joint ?? coping.JointWidth, depth = Math.Min(deck.Paving?.Depth ?? coping.JointDepth, DeepestShare * deck.Thickness);
        var (from, to) = CopingReturn.Within(plan, plan.Body.WallsFrom + Rim, plan.Body.WallsTo - Rim);
        var seam = new CopingSeam(width, depth, from, to);
        return isOne || coping.JointDepth <= 0 || coping.JointWidth <= 0 || width <= 0 || depth <= 0 || seam.To - seam.From < Tolerances.GridStep ? null : seam;
    }

    /// <summary>Its sides along a coping's inner edge, the nearer one first, of an island two: it is cut into the coping, so that the deck keeps its
    /// edge.</summary>
    public IEnumerable<(PlanLine Near, PlanLine Far)> Along(PlatformPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        yield return (plan.Body.CopingBack.Shifted(-Width), plan.Body.CopingBack);
        if (plan.Body.FarCopingBack is { } far)
        {
            yield return (far, far.Shifted(Width));
        }
    }

    /// <summary>Its part along the inner edge of a return, cut into that from the coping to the back, or to the other coping.</summary>
    public (PlanLine Near, PlanLine Far, double From, double To) Beside(PlatformPlan plan, CopingReturn turn)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(turn);
        double outer = turn.Behind(plan.Spec.Coping, plan.Spec.Coping.Width - Width);
        PlanLine far = plan.Body.FarCopingBack?.Shifted(Width) ?? (turn.Bounds[^1] == plan.Back ? plan.Body.FarWallLine.Shifted(-Rim) : turn.Bounds[^1]);
        return (plan.Body.CopingBack.Shifted(-Width), far, Math.Min(outer, turn.Inner), Math.Max(outer, turn.Inner));
    }
}
