using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Sections;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids.Bodies.Trestles;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Trestles;

/// <summary>A trestle as seen from its track and from behind, developed to its length at full size, and one of its bents enlarged.</summary>
public static class TrestleDrawing
{
    private const double Width = 420; // the long side of A3
    private const double Scaled = 24; // mm for dimensions to the left of each row
    private const double Apart = 16, Between = 10, BentDepth = 92, MostBent = 6, Titled = 5;

    public static Sheet Draw(Dossier dossier, PlatformDossier platform)
    {
        double room = Width - (2 * TitleBlock.Inset) - Scaled;
        var sides = Enumerable.Range(0, 2)
            .Select(k => (IsBack: k > 0, Elevation: new TrestleElevation(platform, k > 0))).ToArray();
        double height = TitleBlock.Margin + 24 + sides.Sum(s => Titled + s.Elevation.Rows(room).Sum(r => s.Elevation.Tall(r) + Apart)) + Between + BentDepth
            + TitleBlock.Depth + TitleBlock.Margin;
        var sheet = new Sheet(Width, Math.Max(148, height), Invariant($"{platform.Name}: trestle"))
        {
            Description = Invariant($"The trestle of {platform.Name} as seen from its track and from behind, laid flat: ")
                + Invariant($"{platform.Plan.Trestle!.Bents.Count} bents; and one of them."),
        };
        sheet.Text("Trestle", new(TitleBlock.Inset, TitleBlock.Margin + 9), HouseStyle.Heading);
        string words = "As seen from the track and from behind, developed to the length of its posts' faces. Heights are over the baseboard. "
            + "Figures under the posts: middles of bents, from the left end. Upright lines in red: joints between sections, whose numbers stand below."
            + (platform.Plan.Features.Any(f => f.Shown.Count > 0) ? " What stands on the deck is shown by its place; its shape is an example." : "");
        sheet.Text(words, new(TitleBlock.Inset, TitleBlock.Margin + 14.5), TitleBlock.Fitting(words, HouseStyle.Small, Width - (2 * TitleBlock.Inset)));
        double y = TitleBlock.Margin + 24;
        foreach (var (isBack, elevation) in sides)
        {
            sheet.Text(NameOf(isBack, platform.Plan.Spec.IsIsland), new(TitleBlock.Inset, y), HouseStyle.Subheading);
            y += Titled;
            foreach (var row in elevation.Rows(room))
            {
                y += elevation.Tall(row);
                elevation.DrawRow(sheet, row, new(TitleBlock.Inset + Scaled, y));
                y += Apart;
            }
        }

        Bent(sheet, platform.Plan, y + Between);
        string caption = platform.Plan.Spec.IsIsland ? "Trestle, both fronts and a bent" : "Trestle, front and back and a bent";
        TitleBlock.Draw(sheet, dossier, platform.Name, caption, "Scale 1:1, full size of the model; the bent enlarged", "All figures in mm of the model.");
        return sheet;
    }

    /// <summary>What a side is called.</summary>
    internal static string NameOf(bool isBack, bool isIsland) => !isBack ? "Front" : isIsland ? "Front of the second face" : "Back";

    // The bent nearest to the middle of the trestle, with its measures.
    private static void Bent(Sheet sheet, PlatformPlan plan, double y)
    {
        var (trestle, spec) = (plan.Trestle!, plan.Spec.Trestle!);
        double middle = (trestle.Stretch.From + trestle.Stretch.To) / 2;
        if (trestle.Bents.MinBy(b => Math.Abs(b.Middle - middle)) is not { } bent)
        {
            return;
        }

        double s = bent.Middle, top = plan.TopAt(s, plan.CopingFront.At(s));
        double front = plan.SquareReach(plan.CopingFront, s), back = plan.SquareReach(plan.Back, s);
        double scale = Math.Min(MostBent, Math.Min((BentDepth - 30) / top, (Width - 200) / (back - front))), foot = y + 8 + (scale * top);
        Point2 Of(Point2 p) => new(TitleBlock.Inset + 40 + ((p.X - front) * scale), foot - (p.Y * scale));
        var paint = Palette.Of(TrestleBlocks.PaintOf(spec));
        sheet.Text(Invariant($"Bent {bent.Number} at chainage {Figures.Mm(s)}, {Figures.Short(Math.Round(scale, 2))}:1"), new(TitleBlock.Inset, y),
            HouseStyle.Subheading);
        foreach (var part in BentView.Of(plan, s))
        {
            sheet.Area(part.Select(Of), new(HouseStyle.Paper));
            sheet.Area(part.Select(Of), new(paint, 0.6), HouseStyle.Thin);
        }

        sheet.Area(SectionRing.Of(plan, s).Select(Of), new(HouseStyle.Coping), HouseStyle.Thin);
        sheet.Line(Of(new(front - 2, 0)), Of(new(back + 2, 0)), HouseStyle.Heavy);
        Measures(sheet, plan, s, Of);
    }

    private static void Measures(Sheet sheet, PlatformPlan plan, double s, Func<Point2, Point2> of)
    {
        var spec = plan.Spec.Trestle!;
        double front = plan.SquareReach(plan.CopingFront, s), back = plan.SquareReach(plan.Back, s), far = plan.SquareReach(plan.Trestle!.Rows[^1].Far, s);
        double top = plan.SquareTopAt(s, back), under = plan.SquareTopAt(s, far) - plan.Spec.Deck.Thickness;
        Dimensions.Between(sheet, of(new(back, 0)), of(new(back, top)), 16, Figures.Mm(top));
        Dimensions.Between(sheet, of(new(back, 0)), of(new(back, under - spec.Cap)), 8, Figures.Mm(under - spec.Cap));
        double x = of(new(back, 0)).X + 28, y = of(new(back, top)).Y + 4;
        string[] lines =
        [
            Invariant($"posts {Figures.Fine(spec.Post)} square, {plan.Trestle.Rows.Count} rows"),
            Invariant($"cap {Figures.Fine(spec.Cap)} deep, bearers {Figures.Fine(spec.Bearer)}, under a deck of {Figures.Fine(plan.Spec.Deck.Thickness)}"),
            spec.Braces switch
            {
                BraceForm.None => "no braces",
                BraceForm.Web => Invariant($"web {Figures.Fine(spec.Brace)} thick"),
                _ => Invariant($"braces {Figures.Fine(spec.Brace)} by {Figures.Fine(spec.Brace)}, at 45 degrees or steeper"),
            },
            .. spec.Longitudinal == LongitudinalForm.None ? [] : new[]
            {
                Invariant($"{LongitudinalWords.Of(spec)} {Figures.Fine(spec.Brace)} by {Figures.Fine(spec.Brace)} along the platform, ")
                    + LongitudinalWords.Where(spec, plan.Spec.IsIsland),
            },
            Invariant($"bents {Figures.Fine(plan.Trestle.Pitch.Least)} to {Figures.Fine(plan.Trestle.Pitch.Greatest)} apart, ")
                + Invariant($"{Figures.Fine(spec.Pitch)} at most asked"),
        ];
        for (int i = 0; i < lines.Length; i++)
        {
            sheet.Text(lines[i], new(x, y + (i * 5)), HouseStyle.Small);
        }

        double left = plan.SquareReach(plan.Trestle.Rows[0].Near, s);
        Dimensions.Between(sheet, of(new(left, 0)), of(new(far, 0)), 8, Figures.Mm(far - left));
        Dimensions.Between(sheet, of(new(front, 0)), of(new(back, 0)), 16, Figures.Mm(back - front));
    }
}
