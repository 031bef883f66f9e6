using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Gaps;

/// <summary>The gap to every vehicle's doors along the platform, a plot for each style of edge, one over another to one scale.</summary>
public static class GapStylesDrawing
{
    private const double Width = 420, Height = 297; // A3
    private const double PlotLeft = 28, PlotWidth = 352, PlotsEnd = 262, Apart = 10, BetweenWords = 8, TallestPlot = 92;

    // mm of paper: first row of the key, from row to row, from the key to the first plot, from a sign to its words and from item to item.
    private const double KeyTop = 31, KeyRow = 4.6, UnderKey = 9, Sign = 9, BetweenItems = 7;

    public static Sheet Draw(Dossier dossier, PlatformDossier platform)
    {
        var plan = platform.Plan;
        // Fewer plots than there are styles leave the sheet shorter, not the plots taller than can be read.
        var groups = Groups(plan);
        double rows = groups.Count * (TallestPlot + Apart), least = KeyTop + (2 * KeyRow) + UnderKey + rows + (Height - PlotsEnd);
        var sheet = new Sheet(Width, Math.Min(Height, least), Invariant($"{platform.FaceName}: gaps by style of edge"))
        {
            Description = Invariant($"Gap from the coping to door sills along {platform.FaceName} with a fitted, a faired and a uniform edge. ")
                + string.Join("; ", plan.Gaps.Rows.Select(r => Invariant($"{Word(r.Style)}, {r.Vehicle}: mean {Figures.Mm(r.Mean)}, ")
                    + Invariant($"largest {Figures.Mm(r.Largest)} mm"))) + ".",
        };
        sheet.Text("Gap to the door sills, by style of edge", new(TitleBlock.Inset, TitleBlock.Margin + 9), HouseStyle.Heading);
        sheet.Text("Level gap from coping edge to door sill along the platform. The chosen style is named in bold.",
            new(TitleBlock.Inset, TitleBlock.Margin + 14.5), HouseStyle.Small);
        var (floor, most) = Range(plan);
        double top = Key(sheet, platform) + UnderKey, height = Math.Min(TallestPlot, ((PlotsEnd - top) / groups.Count) - Apart);
        foreach (var group in groups)
        {
            var frame = new PlotFrame(PlotLeft, top, PlotWidth, height, plan.Spec.Face.From, plan.Spec.Face.To, floor, most);
            new GapPlot(platform, frame, group[0]).DrawOn(sheet, dossier.Scale);
            bool last = group == groups[^1], chosen = group[0] == plan.Spec.Face.Edge;
            frame.Chainages(sheet, words: last);
            string name = Named(group, chosen), nearest = Least(dossier, plan, group[0]);
            var bold = HouseStyle.Subheading with { Bold = chosen };
            sheet.Text(name, new(PlotLeft, top - 1.8), bold);
            sheet.Text(nearest, new(PlotLeft + PlotWidth, top - 1.8),
                TitleBlock.Fitting(nearest, HouseStyle.Small, PlotWidth - TextStyle.Length(name, bold) - BetweenWords), TextAnchor.End);
            top += height + Apart;
        }

        sheet.Text("chainage, mm", new(PlotLeft + PlotWidth, top - Apart + 7.6), HouseStyle.Label, TextAnchor.End);
        TitleBlock.Draw(sheet, dossier, platform.FaceName, "Gaps by style of edge", "Upright scales as drawn, the same for all; chainage level",
            Invariant($"Stepping limit {SteppingLimit.Horizontal} mm level at full size, {Figures.Fine(plan.Site.Scale.ToModel(SteppingLimit.Horizontal))} mm ")
                + "here.",
            "The figures behind it: the tables of gaps by style, as CSV and JSON.");
        return sheet;
    }

    // Least and most of the plots' upright scale, mm: the same for all.
    private static (double Floor, double Most) Range(PlatformPlan plan)
    {
        var styles = Enum.GetValues<EdgeStyle>();
        double most = styles.SelectMany(s => GapPlot.OfStyle(plan, s)).SelectMany(t => t.Farthest).Where(double.IsFinite).DefaultIfEmpty(0).Max();
        return (styles.Min(s => GapPlot.LeastOf(GapPlot.OfStyle(plan, s))),
            Math.Ceiling(Math.Max(most, plan.Site.Scale.ToModel(SteppingLimit.Horizontal)) * GapPlot.Room));
    }

    private static string Named(List<EdgeStyle> group, bool chosen) => (chosen ? Word(group[0]) + ", chosen" : Word(group[0]))
        + (group.Count == 1 ? "" : $"; {string.Join(" and ", group.Skip(1).Select(Word))} {(group.Count == 2 ? "is" : "are")} the same here");

    // mm between two edges that nobody can tell apart on the plot.
    private const double Alike = 0.05;

    // Styles whose edges are the same share a plot; the chosen one's comes first in its own.
    private static List<List<EdgeStyle>> Groups(PlatformPlan plan)
    {
        var groups = new List<List<EdgeStyle>>();
        foreach (var style in Enum.GetValues<EdgeStyle>().OrderBy(e => e != plan.Spec.Face.Edge))
        {
            if (groups.Find(g => plan.Alternatives[(int)style].Reach.Zip(plan.Alternatives[(int)g[0]].Reach).All(p => Math.Abs(p.First - p.Second) < Alike))
                is { } same)
            {
                same.Add(style);
            }
            else
            {
                groups.Add([style]);
            }
        }

        return groups;
    }

    /// <summary>Kinds of line, and every vehicle's mark; gives the height of the last row.</summary>
    private static double Key(Sheet sheet, PlatformDossier platform)
    {
        var need = platform.Plan.Requirement;
        var looks = new VehicleLooks(platform);
        var items = new List<(string Words, Action<Point2> Draw)>
        {
            ("when the nearest door stands there", at => sheet.Line(at, at + new Point2(Sign - 2, 0), new(0.55, HouseStyle.Ink))),
            ("when the farthest does", at => sheet.Line(at, at + new Point2(Sign - 2, 0), new(0.35, HouseStyle.Ink, 2.4, 1))),
        };
        items.AddRange(platform.Plan.Gaps.Traces.Select(t => Math.Max(0, need.IndexOf(t.Vehicle))).Select(i => (need.Vehicles[i], (Action<Point2>)(at =>
        {
            sheet.Line(at, at + new Point2(Sign - 2, 0), new(0.55, looks[i].Colour));
            VehicleMark.Draw(sheet, at + new Point2((Sign - 2) / 2, 0), 1, i, looks[i].Colour);
        }))));
        double x = PlotLeft, y = KeyTop;
        foreach (var (words, draw) in items)
        {
            double length = Sign + TextStyle.Length(words, HouseStyle.Label);
            if (x > PlotLeft && x + length > PlotLeft + PlotWidth)
            {
                (x, y) = (PlotLeft, y + KeyRow);
            }

            draw(new(x, y - 0.9));
            sheet.Text(words, new(x + Sign, y), HouseStyle.Label);
            x += length + BetweenItems;
        }

        return y;
    }

    // However many bodies there are: the one that comes nearest, all others being in the tables.
    private static string Least(Dossier dossier, PlatformPlan plan, EdgeStyle style) =>
        plan.Gaps.Rows.Where(r => r.Style == style).MinBy(r => r.Least) is { } row
        ? Invariant($"least {Figures.Mm(row.Least)} at chainage {Figures.Fixed(row.LeastAt, 0)}, {Figures.FullSize(row.Least, dossier.Scale)} full ")
        + Invariant($"size{(plan.Profile.HasRamps ? ", ramps left out" : "")}: {row.Vehicle}")
        : "";

    private static string Word(EdgeStyle style) => style.ToString().ToLowerInvariant();
}
