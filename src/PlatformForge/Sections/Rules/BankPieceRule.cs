using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;

namespace PlatformForge.Sections.Rules;

/// <summary>Whether banks that are prints of their own lie on the printer's bed, one a section.</summary>
internal static class BankPieceRule
{
    // Slopes are offered in steps of this, as n of 1 in n; steeper than the last is no bank.
    private const double Step = 0.1, Steepest = 0.2;

    public static IEnumerable<Finding> Check(PlatformPlan plan, FacetedPlan chart, PrinterSpec printer, double[] ends)
    {
        var bed = new BedShape(printer);
        if (plan.Bank is not { IsApart: true } bank || Enumerable.Range(1, ends.Length - 1).All(i => Fits(chart, bank, bed, ends[i - 1], ends[i])))
        {
            return [];
        }

        int worst = Enumerable.Range(1, ends.Length - 1).First(i => !Fits(chart, bank, bed, ends[i - 1], ends[i]));
        return [LineFindings.BankTooLarge(plan.Spec.Key + ".back", worst, bank.Slope, Steeper(plan, chart, bed, ends))];
    }

    // The flattest slope under the one that is asked for with which every piece fits; null where none does.
    private static double? Steeper(PlatformPlan plan, FacetedPlan chart, BedShape bed, double[] ends)
    {
        for (double slope = Math.Ceiling((plan.Spec.Back.Slope / Step) - 1) * Step; slope >= Steepest; slope -= Step)
        {
            double tried = Math.Round(slope, 1);
            var bank = PlanBank.Of(plan with { Spec = plan.Spec with { Back = plan.Spec.Back with { Slope = tried } } })!;
            if (Enumerable.Range(1, ends.Length - 1).All(i => Fits(chart, bank, bed, ends[i - 1], ends[i])))
            {
                return tried;
            }
        }

        return null;
    }

    private static bool Fits(FacetedPlan chart, PlanBank bank, BedShape bed, double from, double to) =>
        bed.Best(ConvexRing.Hull([.. chart.Ring(bank.Edge, bank.Foot, chart.Chainages(from, to)),
            .. bank.ReturnsIn(from, to).SelectMany(r => r.Toe)])).Room >= 0;
}
