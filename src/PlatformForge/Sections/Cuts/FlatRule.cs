using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Sections.Cuts;

/// <summary>
/// Whether sections with one plane each keep the coping's height and the fall asked; where they do not, shorter sections and less fall are tried, and
/// what keeps both is offered.
/// </summary>
internal static class FlatRule
{
    /// <summary>Each trial allows this share of the length before it.</summary>
    private const double Shorter = 0.9;

    /// <summary>Each trial falls less by at least this share.</summary>
    private const double Flatter = 1.02;

    private const int MostTrials = 30;

    public static IEnumerable<Finding> Check(PlatformPlan plan, PrinterSpec printer, SectionSpec spec, double[] ends)
    {
        var fit = Fit(plan, ends);
        if (fit.Keeps)
        {
            yield break;
        }

        (string Words, Cure Cure)[] remedies = [.. new[] { LessLong(plan, printer, spec, ends), LessFall(plan, ends, fit) }.OfType<(string, Cure)>()];
        yield return SectionFindings.DeckOffItsHeight(plan.Spec.Key, fit, remedies);
    }

    private static DeckFit Fit(PlatformPlan plan, double[] ends) => DeckFit.Of(plan with { Surface = HingedDeck.Of(plan, ends) });

    private static (string Words, Cure Cure)? LessLong(PlatformPlan plan, PrinterSpec printer, SectionSpec spec, double[] ends)
    {
        var chart = new FacetedPlan(plan);
        double longest = ends.Zip(ends.Skip(1), (a, b) => b - a).Max();
        for (int trial = 0; trial < MostTrials; trial++)
        {
            longest = Math.Floor(longest * Shorter);
            if (new CutChooser(chart, printer, spec with { LongestSection = longest }).Choose().Value is not { } cuts)
            {
                return null;
            }

            if (Fit(plan, cuts) is { Keeps: true } fit)
            {
                return (
                    Invariant($"{spec.Key}.longest = {longest:F0} ({cuts.Length - 1} sections instead of {ends.Length - 1}; coping within {fit.CopingOff:F2} ")
                        + "mm)",
                    Cure.Set(spec.Key + ".longest", longest));
            }
        }

        return null;
    }

    private static (string Words, Cure Cure)? LessFall(PlatformPlan plan, double[] ends, DeckFit first)
    {
        double fall = plan.Spec.Deck.Crossfall * Math.Max(Flatter, first.CopingOff / HingedDeck.CopingAllowance);
        for (int trial = 0; trial < MostTrials; trial++)
        {
            fall = Math.Ceiling(fall);
            if (Fit(plan with { Spec = plan.Spec with { Deck = plan.Spec.Deck with { Crossfall = fall } } }, ends) is { Keeps: true } fit)
            {
                return (Invariant($"deck.crossfall = {fall:F0} (coping within {fit.CopingOff:F2} mm)"), Cure.Set(plan.Spec.Key + ".deck.crossfall", fall));
            }

            fall *= Flatter;
        }

        return null;
    }
}
