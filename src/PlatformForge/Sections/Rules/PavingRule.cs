using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Units;

namespace PlatformForge.Sections.Rules;

/// <summary>What of a paving a printer can make, and what would help where it can't.</summary>
internal static class PavingRule
{
    private const double Rounding = Tolerances.Rounding;

    public static IEnumerable<Finding> Check(PlatformPlan plan, PrinterSpec printer)
    {
        if (plan.Spec.Deck.ExpansionJoints > 0 && plan.Spec.Deck.Thickness - DeckSpec.JointDepth < printer.LeastWall - Rounding)
        {
            yield return FacingFindings.DeckTooThin(plan.Spec.Key + ".deck", plan.Spec.Deck.Thickness, DeckSpec.JointDepth, printer.LeastWall);
        }

        if (plan.Spec.Deck.Paving is not { } paving)
        {
            yield break;
        }

        string key = plan.Spec.Key + ".deck.paving";
        double least = paving.Joint + printer.LeastWall, room = PavingLayout.Room(plan), left = plan.Spec.Deck.Thickness - paving.Depth;
        var layout = PavingLayout.Of(plan)!;
        foreach (var (name, figure, made) in new[] { ("length", paving.Length, layout.Length), ("width", paving.Width, layout.Width) })
        {
            if (made < least - Rounding)
            {
                yield return FacingFindings.PavingTooSmall($"{key}.{name}", figure, least / PavingSpec.Drawn, paving.Joint, printer.Nozzle);
            }
        }

        bool isAcross = paving.Courses == PavingCourses.Across;
        double over = isAcross ? paving.Length : paving.Width;
        if (over > room + Rounding && !(isAcross && paving.Kind == PavingKind.Planks))
        {
            yield return FacingFindings.PavingTooWide($"{key}.{(isAcross ? "length" : "width")}", over, room);
        }

        if (left < printer.LeastWall - Rounding)
        {
            yield return FacingFindings.PavingTooDeep(plan.Spec.Key + ".deck", (plan.Spec.Deck.Thickness, printer.LeastWall), paving.Depth, paving.StatesDepth);
        }
    }
}
