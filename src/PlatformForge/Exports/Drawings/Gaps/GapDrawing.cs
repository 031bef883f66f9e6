using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Plans;
using PlatformForge.Exports.Files;
using PlatformForge.Platforms.Plans;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Gaps;

/// <summary>
/// The gap plot: along the platform, how far the vehicles reach and which of them governs, what is kept beyond that, where the
/// edge runs, and what gap that leaves to each vehicle's door.
/// </summary>
public static class GapDrawing
{
    private const double Width = 420, Height = 297; // A3
    private const double PlotLeft = 28, PlotWidth = 268;
    private const double ReachTop = 31, ReachHeight = 118;
    private const double GapTop = 166, GapHeight = 68;
    private const double ColumnLeft = 322;

    public static Sheet Draw(Dossier dossier, PlatformDossier platform)
    {
        var plan = platform.Plan;
        var sheet = new Sheet(Width, Height, Invariant($"{platform.FaceName}: gaps"))
        {
            Description = Describe(platform),
        };
        sheet.Text("What the vehicles need, and the gap it leaves", new(TitleBlock.Inset, TitleBlock.Margin + 9), HouseStyle.Heading);
        bool over = plan.Gaps.Traces.Any(t => t.Nearest.Any(g => g < 0));
        sheet.Text("Upper plot: distance from the track's middle on the platform's side. Lower plot: level gap from coping edge to door sill, when "
            + Invariant($"the nearest door stands there (whole line) and when the farthest does (dashed){(over ? "; below 0 it stands over the edge" : "")}."),
            new(TitleBlock.Inset, TitleBlock.Margin + 14.5), HouseStyle.Small);
        var reach = ReachFrame(plan);
        var gaps = GapFrame(plan);
        new ReachPlot(platform, reach).DrawOn(sheet, dossier.Scale.Ratio);
        new GapPlot(platform, gaps, plan.Spec.Face.Edge).DrawOn(sheet, dossier.Scale);
        Along(sheet, platform, reach, gaps);
        new GapKey(dossier, platform, reach.LeastY).DrawOn(sheet, ColumnLeft, ReachTop, Width - TitleBlock.Inset - ColumnLeft);
        TitleBlock.Draw(sheet, dossier, platform.FaceName, "Gap plot along the platform", "Upright scales as drawn, chainage level",
            Invariant($"Swept reach is never below the true one and over it by {Figures.Fine(platform.Envelope.ErrorBound)} mm at most."),
            Invariant($"Edge style {plan.Spec.Face.Edge.ToString().ToLowerInvariant()}; budget {Figures.Fine(platform.Budget.Margin)} mm beyond the reach."));
        return sheet;
    }

    private static PlotFrame ReachFrame(PlatformPlan plan)
    {
        double low = plan.Requirement.Swept.Where(double.IsFinite).DefaultIfEmpty(0).Min();
        double high = plan.Alternatives.SelectMany(a => a.Reach).Concat(plan.CopingFront.Reach).Max();
        double spread = Math.Max(1, high - low);
        return new(PlotLeft, ReachTop, PlotWidth, ReachHeight, plan.Spec.Face.From, plan.Spec.Face.To, Math.Floor((low - (0.35 * spread)) * 2) / 2,
            Math.Ceiling((high + (0.28 * spread)) * 2) / 2);
    }

    private static PlotFrame GapFrame(PlatformPlan plan)
    {
        double most = plan.Gaps.Traces.SelectMany(t => t.Farthest).Where(double.IsFinite).DefaultIfEmpty(0).Max();
        most = Math.Max(most, plan.Site.Scale.ToModel(SteppingLimit.Horizontal));
        return new(PlotLeft, GapTop, PlotWidth, GapHeight, plan.Spec.Face.From, plan.Spec.Face.To, GapPlot.LeastOf(plan.Gaps.Traces),
            Math.Ceiling(most * GapPlot.Room));
    }

    /// <summary>What runs along both plots: ramps, cuts and section numbers, track elements.</summary>
    private static void Along(Sheet sheet, PlatformDossier platform, PlotFrame reach, PlotFrame gaps)
    {
        var plan = platform.Plan;
        foreach (double cut in platform.Sections.Cuts)
        {
            sheet.Line(new(reach.X(cut), reach.Top - 3.2), new(reach.X(cut), reach.Top), HouseStyle.Cut);
            sheet.Line(new(reach.X(cut), reach.Bottom), new(reach.X(cut), gaps.Top), new(0.12, HouseStyle.Accent));
        }

        foreach (var section in platform.Sections.Sections)
        {
            sheet.Text(Invariant($"section {section.Number}"), new(reach.X((section.From + section.To) / 2), reach.Top - 1.4),
                HouseStyle.Small with { Colour = HouseStyle.Accent }, TextAnchor.Middle);
        }

        reach.Chainages(sheet, words: false);
        gaps.Chainages(sheet, words: true);
        sheet.Text("chainage, mm", new(gaps.Right, gaps.Bottom + 7.6), HouseStyle.Label, TextAnchor.End);
        ElementStrip(sheet, plan, gaps, gaps.Bottom + 10.5);
    }

    private static void ElementStrip(Sheet sheet, PlatformPlan plan, PlotFrame frame, double top)
    {
        const double Depth = 5;
        for (int i = 0; i < plan.Chart.Elements.Count; i++)
        {
            double from = Math.Max(frame.LeastX, plan.Chart.StartOf(i)), to = Math.Min(frame.MostX, plan.Chart.StartOf(i) + plan.Chart.Elements[i].Length);
            if (to <= from)
            {
                continue;
            }

            double x = frame.X(from), width = frame.X(to) - x;
            sheet.Box(x, top, width, Depth, new(i % 2 == 0 ? HouseStyle.Deck : HouseStyle.White), HouseStyle.Thin);
            string words = PlanParts.Say(plan.Chart.Elements[i]);
            if (TextStyle.Length(words, HouseStyle.Small) < width - 2)
            {
                sheet.Text(words, new(x + (width / 2), top + 3.3), HouseStyle.Small with { Colour = HouseStyle.Ink }, TextAnchor.Middle);
            }
        }

        sheet.Text("track", new(frame.Left - 2, top + 3.3), HouseStyle.Small, TextAnchor.End);
    }

    private static string Describe(PlatformDossier platform)
    {
        var rows = platform.Plan.Gaps.Rows.Where(r => r.Style == platform.Plan.Spec.Face.Edge)
            .Select(r => Invariant($"{r.Vehicle}: least {Figures.Mm(r.Least)}, mean {Figures.Mm(r.Mean)}, largest {Figures.Mm(r.Largest)} mm"));
        return Invariant($"Gaps along {platform.FaceName}. ") + string.Join("; ", rows) + ".";
    }
}
