using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;

namespace PlatformForge.Sections.Cuts;

/// <summary>
/// Tells of a platform so wide for its bed that its sections are shorter than wide, with the width and the bed that would halve their number: both found
/// by cutting it anew.
/// </summary>
internal static class WideRule
{
    // Sections so few are nothing to speak of.
    private const int Few = 3;

    // Widths and beds are told in whole millimetres.
    private const double Step = 1;

    // A bed more than so much larger, mm, is no printer's.
    private const double MostBed = 600;

    public static Finding? Check(FacetedPlan chart, PrinterSpec printer, SectionSpec spec, double[] ends)
    {
        double width = chart.Plan.Spec.Deck.Width, longest = ends.Zip(ends.Skip(1), (a, b) => b - a).Max();
        int count = ends.Length - 1, wanted = (count + 1) / 2;
        if (count <= Few || longest >= width || longest >= spec.LongestSection * 0.9)
        {
            return null;
        }

        double? narrow = chart.Plan.Spec.IsIsland ? null : Nearest(width - Step, chart.Plan.Spec.Coping.Width + Step, -Step,
            w => Fewest(Narrowed(chart, w), printer, spec, wanted));
        double? bed = Nearest(Step, MostBed, Step, more => Fewest(chart, Larger(printer, more), spec, wanted));
        double across = printer.Bed.Max(p => p.X) - printer.Bed.Min(p => p.X), deep = printer.Bed.Max(p => p.Y) - printer.Bed.Min(p => p.Y);
        return SectionFindings.WiderThanBed(
            $"{chart.Plan.Spec.Key}.deck.width", width, count, longest, (across, deep), wanted, narrow, bed is { } by ? (across + by, deep + by) : null);
    }

    private static bool Fewest(FacetedPlan chart, PrinterSpec printer, SectionSpec spec, int most) =>
        new CutChooser(chart, printer, spec).Fewest() is > 0 and var found && found <= most;

    // The same platform with its back nearer to the edge.
    private static FacetedPlan Narrowed(FacetedPlan chart, double width)
    {
        var plan = chart.Plan;
        return new(plan with
        {
            Spec = plan.Spec with { Deck = plan.Spec.Deck with { Width = width } },
            Body = plan.Body with
            {
                Back = plan.CopingFront.Shifted(width),
                FarWallFace = plan.CopingFront.Shifted(width),
                BackWallFace = plan.CopingFront.Shifted(width - plan.Spec.BackDepth),
            },
        });
    }

    private static PrinterSpec Larger(PrinterSpec printer, double more)
    {
        double across = printer.Bed.Max(p => p.X) - printer.Bed.Min(p => p.X), deep = printer.Bed.Max(p => p.Y) - printer.Bed.Min(p => p.Y);
        return printer with { Bed = [.. printer.Bed.Select(p => new Geometry.Point2(p.X * (across + more) / across, p.Y * (deep + more) / deep))] };
    }

    // The first of evenly spaced figures that does, by halves: what does stays doing beyond.
    private static double? Nearest(double from, double to, double step, Func<double, bool> does)
    {
        int good = (int)Math.Floor((to - from) / step), bad = -1;
        if (good < 0 || !does(from + (good * step)))
        {
            return null;
        }

        while (good - bad > 1)
        {
            int middle = (good + bad) / 2;
            (good, bad) = does(from + (middle * step)) ? (middle, bad) : (good, middle);
        }

        return from + (good * step);
    }
}
