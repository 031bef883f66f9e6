using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Sections;
using PlatformForge.Exports.Drawings.Trestles;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies.Trestles;
using static System.FormattableString;

namespace PlatformForge.Exports.Paper;

/// <summary>
/// A trestle at full size: its front and back laid flat, section by section, and each bent that differs from the one before it, to build it of strip over the
/// sheet or to hold a
/// print against.
/// </summary>
internal sealed class TrestlePages(string name, PlatformDossier platform, PaperSpec paper, SheetRoom room, SheetOrigin origin)
{
    // mm: kept round what is drawn, for a drawing's words, between two drawings, for figures under the baseboard's line.
    private const double Rim = 4, Words = 7, Apart = 6, Under = 11;

    // Bents whose measures differ by less, mm, are one drawing.
    private const double Alike = 0.05;

    private bool HasTrestle => platform.Sections.Plan.Trestle is { Bents.Count: > 0 };

    /// <summary>What the key says of them, a comma before it; empty where there is no trestle.</summary>
    public string InWords(int sheets)
    {
        int left = HasTrestle ? Drawings().Count(d => !Fits(d)) : 0;
        return (sheets == 0 ? "" : Invariant($", and the trestle on {sheets}"))
            + (left == 0 ? "" : Invariant($"; {left} of its drawings are larger than this paper"));
    }

    /// <summary>The sheets; none where the platform stands on walls.</summary>
    public IReadOnlyList<Sheet> Draw()
    {
        if (!HasTrestle)
        {
            return [];
        }

        var pages = new List<List<(Drawn What, Point2 At)>>();
        double x = 0, y = 0, below = double.PositiveInfinity;
        foreach (var drawn in Drawings().Where(Fits))
        {
            // Beside the last one where it fits, else under all so far, else on a sheet of its own.
            if (pages.Count == 0 || x + drawn.Width > room.Window.Right - Rim || y + drawn.Height > room.Window.Bottom)
            {
                (x, y) = (room.Window.Left + Rim, below);
                if (y + drawn.Height > room.Window.Bottom)
                {
                    pages.Add([]);
                    y = below = room.Window.Top + Rim;
                }
            }

            pages[^1].Add((drawn, new(x, y)));
            x += drawn.Width + Apart;
            below = Math.Max(below, y + drawn.Height + Apart);
        }

        return [.. pages.Select((page, i) => Page(page, i + 1, pages.Count))];
    }

    private bool Fits(Drawn drawn) => drawn.Width + (2 * Rim) <= room.Window.Width && drawn.Height + (2 * Rim) <= room.Window.Height;

    private IEnumerable<Drawn> Drawings() => Sides(isBack: false).Concat(Sides(isBack: true)).Concat(Bents());

    // A drawing a section: what goes together on the layout is laid side by side on the sheet.
    private IEnumerable<Drawn> Sides(bool isBack)
    {
        var elevation = new TrestleElevation(platform, isBack, ElevationPages.Broken);
        string side = TrestleDrawing.NameOf(isBack, platform.Plan.Spec.IsIsland), from = isBack ? "from behind" : "from the track";
        foreach (var section in platform.Sections.Sections)
        {
            double tall = elevation.Tall([section]);
            yield return new(Invariant($"{side}, section {section.Number}, {from}"), elevation.Length(section) + Scaled, Words + tall + Under,
                (sheet, corner) => elevation.DrawRow(sheet, [section], new(corner.X + Scaled, corner.Y + Words + tall)));
        }
    }

    // mm for the height beside a front.
    private const double Scaled = 14;

    private IEnumerable<Drawn> Bents()
    {
        var plan = platform.Sections.Plan;
        double front = 0, back = 0, top = 0;
        foreach (var bent in plan.Trestle!.Bents)
        {
            double s = bent.Middle, f = plan.SquareReach(plan.CopingFront, s), b = plan.SquareReach(plan.Back, s), high = plan.SquareTopAt(s, f);
            if (Math.Abs(b - f - (back - front)) < Alike && Math.Abs(high - top) < Alike)
            {
                continue;
            }

            (front, back, top) = (f, b, high);
            yield return new(Invariant($"Bent {bent.Number} and on, along the platform"), Math.Max(b - f + 4, BentWords), Words + high + Under,
                (sheet, corner) => Bent(sheet, plan, s, p => new(corner.X + 2 + p.X - f, corner.Y + Words + high - p.Y)));
        }
    }

    // Room for a bent's words, mm.
    private const double BentWords = 48;

    private static void Bent(Sheet sheet, PlatformPlan plan, double s, Func<Point2, Point2> of)
    {
        var paint = Palette.Of(TrestleBlocks.PaintOf(plan.Spec.Trestle!));
        foreach (var part in BentView.Of(plan, s))
        {
            sheet.Area(part.Select(of), new(HouseStyle.Paper));
            sheet.Area(part.Select(of), new(paint, 0.6), HouseStyle.Thin);
        }

        sheet.Area(SectionRing.Of(plan, s).Select(of), new(HouseStyle.Coping), HouseStyle.Thin);
        double front = plan.SquareReach(plan.CopingFront, s), back = plan.SquareReach(plan.Back, s);
        sheet.Line(of(new(front - 2, 0)), of(new(back + 2, 0)), HouseStyle.Heavy);
        Dimensions.Between(sheet, of(new(front, 0)), of(new(back, 0)), 5, Figures.Mm(back - front));
    }

    private Sheet Page(List<(Drawn What, Point2 At)> page, int number, int count)
    {
        string title = Invariant($"{name}: trestle, sheet {number} of {count}");
        var sheet = new Sheet(room.Width, room.Height, title)
        {
            Stretch = paper.Stretch,
            HasGround = false,
            Description = "A trestle at full size: " + string.Join("; ", page.Select(d => d.What.Words)) + ".",
        };
        foreach (var (drawn, at) in page)
        {
            sheet.Text(drawn.Words, at + new Point2(0, 4), TitleBlock.Fitting(drawn.Words, HouseStyle.Subheading, drawn.Width));
            drawn.Draw(sheet, at);
        }

        sheet.Box(room.Window.Left, room.Window.Top, room.Window.Width, room.Window.Height, null, PaperLooks.Frame);
        ScaleBars.DrawOn(sheet, room);
        SheetFoot.DrawOn(sheet, room, paper, title, " The lower line is the baseboard.", origin);
        return sheet;
    }

    private sealed record Drawn(string Words, double Width, double Height, Action<Sheet, Point2> Draw);
}
