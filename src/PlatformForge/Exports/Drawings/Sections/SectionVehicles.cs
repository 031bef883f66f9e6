using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using static System.FormattableString;
using Box = (double T0, double T1, double Z0, double Z1);

namespace PlatformForge.Exports.Drawings.Sections;

/// <summary>
/// The vehicles of a cross-section: the governing one filled, as it stands, with the farthest it ever reaches around it; of the others
/// the outlines of those that reach beyond it and one another, in grey with a letter each.
/// </summary>
internal sealed class SectionVehicles
{
    private const double Row = 5.2, Swatch = 9;

    // Letters stand this far apart along the top of outlines, mm of paper.
    private const double LetterStep = 4;

    // How much the governing vehicle covers of the outlines behind it.
    private const double Veil = 0.8;

    private static readonly Pen Other = new(0.2, HouseStyle.Quiet, 2.4, 1);

    private readonly (string Name, Rgb Colour, Pattern Pattern, ReachOutline Reach)? governing;
    private readonly IReadOnlyList<Box> standing;
    private readonly List<(string Name, ReachOutline Reach)> others = [];
    private readonly List<string> within = [];

    /// <param name="reaches">Every vehicle that comes here, by its place in the project, with what its parts reach.</param>
    /// <param name="standing">What the governing vehicle covers, standing where it reaches farthest; empty where that is not known.</param>
    /// <param name="governs">Place of the governing vehicle; below nil for none.</param>
    /// <param name="names">Names of the vehicles.</param>
    /// <param name="looks">Their looks.</param>
    public SectionVehicles(IReadOnlyList<(int Vehicle, IReadOnlyList<Box> Boxes)> reaches, IReadOnlyList<Box> standing, int governs,
        IReadOnlyList<string> names, VehicleLooks looks)
    {
        this.standing = standing;
        var all = reaches.Select(r => (r.Vehicle, Name: names[r.Vehicle], Reach: new ReachOutline(r.Boxes))).ToList();
        foreach (var (vehicle, name, reach) in all.Where(r => r.Vehicle == governs))
        {
            governing = (name, looks[vehicle].Colour, looks[vehicle].Pattern, reach);
        }

        // Of outlines that are the same the first is drawn.
        for (int i = 0; i < all.Count; i++)
        {
            var own = all[i];
            if (own.Vehicle == governs)
            {
                continue;
            }

            bool covered = all.Where((other, k) => k != i && own.Reach.IsInside(other.Reach)
                && (other.Vehicle == governs || k < i || !other.Reach.IsInside(own.Reach))).Any();
            if (covered)
            {
                within.Add(own.Name);
            }
            else
            {
                others.Add((own.Name, own.Reach));
            }
        }
    }

    public void DrawOn(Sheet sheet, Func<double, double, Point2> of)
    {
        IEnumerable<Point2> Paper(IEnumerable<Point2> ring) => ring.Select(p => of(p.X, p.Y));
        foreach (var ring in others.SelectMany(o => o.Reach.Rings()))
        {
            sheet.Area(Paper(ring), null, Other);
        }

        if (governing is var (_, colour, pattern, reach))
        {
            foreach (var ring in reach.Rings())
            {
                sheet.Area(Paper(ring), standing.Count == 0 ? new(colour, 0.3, pattern) : new(colour, 0.06), new(0.3, colour, 2, 0.8));
            }

            foreach (var ring in new ReachOutline(standing).Rings())
            {
                sheet.Area(Paper(ring), new(HouseStyle.Paper, Veil));
                sheet.Area(Paper(ring), new(colour, 0.2));
                sheet.Area(Paper(ring), new(colour, 0.35, pattern), new(0.7, colour));
            }
        }

        var labels = new Labels(sheet);
        for (int i = 0; i < others.Count; i++)
        {
            var top = others[i].Reach.Rings()[^1];
            double high = top.Max(p => p.Y);
            var edge = Paper(top.Where(p => p.Y >= high)).OrderBy(p => p.X).ToArray();
            var places = from up in (double[])[0.9, -0.9 - HouseStyle.Strong.Size]
                         from step in Enumerable.Range(0, 12)
                         let at = edge[0] + new Point2(2 + (step * LetterStep), -up)
                         where at.X < edge[^1].X
                         select (at, TextAnchor.Start, 0.0);
            labels.PutOver(Letter(i), HouseStyle.Strong with { Colour = HouseStyle.Quiet }, new(HouseStyle.Paper, 0.85), places);
        }
    }

    /// <summary>How deep the legend is in a column of a width, mm.</summary>
    public double LegendDepth(double width) => Row * ((governing is null ? 0 : 2) + others.Count + Remainder(width).Count);

    /// <summary>Draws the legend in a column of its own.</summary>
    public void Legend(Sheet sheet, Point2 corner, double width)
    {
        double y = corner.Y + 3;
        void Say(string words, TextStyle style, double indent = Swatch + 2)
        {
            sheet.Text(words, new(corner.X + indent, y), TitleBlock.Fitting(words, style, width - indent));
            y += Row;
        }

        if (governing is var (name, colour, pattern, _))
        {
            sheet.Box(corner.X, y - 2.8, Swatch, 3.6, new(colour, 0.2));
            sheet.Box(corner.X, y - 2.8, Swatch, 3.6, new(colour, 0.35, pattern), new(0.5, colour));
            Say(name + ", governs here", HouseStyle.Strong);
            sheet.Line(new(corner.X, y - 0.9), new(corner.X + Swatch, y - 0.9), new(0.3, colour, 2, 0.8));
            Say("the farthest it ever reaches, play included", HouseStyle.Label);
        }

        for (int i = 0; i < others.Count; i++)
        {
            sheet.Line(new(corner.X, y - 0.9), new(corner.X + Swatch - 3, y - 0.9), Other);
            sheet.Text(Letter(i), new(corner.X + Swatch, y), HouseStyle.Strong with { Colour = HouseStyle.Quiet }, TextAnchor.End);
            Say(others[i].Name + ", its reach", HouseStyle.Label);
        }

        foreach (string line in Remainder(width))
        {
            Say(line, HouseStyle.Small, 0);
        }
    }

    private IReadOnlyList<string> Remainder(double width) =>
        within.Count == 0 ? [] : TextStyle.Wrap(Invariant($"Not drawn, their reach lies inside these: {string.Join("; ", within)}."), HouseStyle.Small, width);

    private static string Letter(int i) => Invariant($"{(char)('a' + (i % 26))}");
}
