using PlatformForge.Platforms;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings;

/// <summary>The gap to every vehicle's doors along the platform, a plot for each style of edge, one over another to one scale.</summary>
public static class GapStylesDrawing
{
    private const double Width = 420, Height = 297; // A3
    private const double PlotLeft = 28, PlotWidth = 352, PlotTop = 34, PlotHeight = 64, Apart = 10, BetweenWords = 8;

    public static Sheet Draw(Dossier dossier, PlatformDossier platform)
    {
        var plan = platform.Plan;
        var sheet = new Sheet(Width, Height, Invariant($"{platform.Name}: gaps by style of edge"))
        {
            Description = Invariant($"Gap from the coping to door sills along {platform.Name} with a fitted, a faired and a uniform edge. ")
                + string.Join("; ", plan.Gaps.Rows.Select(r => Invariant($"{Word(r.Style)}, {r.Vehicle}: mean {Figures.Mm(r.Mean)}, largest {Figures.Mm(r.Largest)} mm"))) + ".",
        };
        sheet.Text("Gap to the door sills, by style of edge", new(TitleBlock.Inset, TitleBlock.Margin + 9), HouseStyle.Heading);
        sheet.Text("Level gap from coping edge to door sill, at its nearest and farthest door. The chosen style is named in bold.", new(TitleBlock.Inset, TitleBlock.Margin + 14.5), HouseStyle.Small);
        double most = Enum.GetValues<EdgeStyle>().SelectMany(s => GapPlot.OfStyle(plan, s)).SelectMany(t => t.Farthest).Where(double.IsFinite).DefaultIfEmpty(0).Max();
        most = Math.Ceiling(Math.Max(most, plan.Site.Scale.ToModel(SteppingLimit.Horizontal)) * 1.15);
        double top = PlotTop;
        foreach (var style in Enum.GetValues<EdgeStyle>())
        {
            var frame = new PlotFrame(PlotLeft, top, PlotWidth, PlotHeight, plan.Spec.Face.From, plan.Spec.Face.To, 0, most);
            new GapPlot(platform, frame, style).DrawOn(sheet, dossier.Scale);
            bool last = style == Enum.GetValues<EdgeStyle>()[^1], chosen = style == plan.Spec.Face.Edge;
            frame.Chainages(sheet, words: last);
            string name = chosen ? Word(style) + ", chosen" : Word(style), least = Least(dossier, plan, style);
            var bold = HouseStyle.Subheading with { Bold = chosen };
            sheet.Text(name, new(PlotLeft, top - 1.8), bold);
            sheet.Text(least, new(PlotLeft + PlotWidth, top - 1.8), TitleBlock.Fitting(least, HouseStyle.Small, PlotWidth - TextStyle.Length(name, bold) - BetweenWords), TextAnchor.End);
            top += PlotHeight + Apart;
        }

        sheet.Text("chainage, mm", new(PlotLeft + PlotWidth, top - Apart + 7.6), HouseStyle.Label, TextAnchor.End);
        TitleBlock.Draw(sheet, dossier, platform.Name, "Gaps by style of edge", "Upright scales as drawn, the same for all three; chainage level",
            Invariant($"Published stepping limit {SteppingLimit.Horizontal} mm level at full size, {Figures.Fine(plan.Site.Scale.ToModel(SteppingLimit.Horizontal))} mm here."),
            "The figures behind it: the tables of gaps by style, as CSV and JSON.");
        return sheet;
    }

    // However many bodies there are: the one that comes nearest, all others being in the tables.
    private static string Least(Dossier dossier, PlatformPlan plan, EdgeStyle style) => plan.Gaps.Rows.Where(r => r.Style == style).MinBy(r => r.Least) is { } row
        ? Invariant($"least {Figures.Mm(row.Least)} at chainage {Figures.Fixed(row.LeastAt, 0)}, {Figures.FullSize(row.Least, dossier.Scale)} full size: {row.Vehicle}")
        : "";

    private static string Word(EdgeStyle style) => style.ToString().ToLowerInvariant();
}
