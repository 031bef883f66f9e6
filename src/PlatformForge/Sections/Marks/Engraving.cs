using System.Text;
using PlatformForge.Geometry;
using PlatformForge.Geometry.Lettering;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Trestles;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Sections.Marks;

/// <summary>
/// Lettering cut into the deck's underside, to be read from below: in plan it is mirrored. One patch bears the section's number and an
/// arrow of increasing chainage, another the platform's name.
/// </summary>
internal sealed class Engraving
{
    /// <summary>Lifts the cut's lower side clear of the underside, mm.</summary>
    private const double Overshoot = 0.3;

    private readonly FacetedPlan chart;
    private readonly TopSurface top;
    private readonly double depth;

    private Engraving(FacetedPlan chart, double depth)
    {
        (this.chart, this.depth) = (chart, depth);
        top = new(chart);
    }

    /// <summary>Cap height that was reached for the smaller of the two texts, mm; 0 when nothing was engraved.</summary>
    public double Height { get; private set; }

    /// <summary>What is taken out of the deck.</summary>
    public IReadOnlyList<ColumnBlock> Removed { get; private set; } = [];

    /// <summary>Least cap height that prints: strokes one nozzle wide.</summary>
    public static double LeastHeight(PrinterSpec printer) => printer.Nozzle * EngravedLetters.CapHeight / EngravedLetters.StrokeWidth;

    /// <summary>Depth that leaves two lines of the nozzle over the lettering; 0 when the deck is too thin for any.</summary>
    public static double DepthIn(double deck, SectionSpec spec, PrinterSpec printer)
    {
        double possible = Math.Min(spec.EngravingDepth, deck - printer.LeastWall);
        return possible >= printer.Layer ? possible : 0;
    }

    /// <summary>Engraves a section between two chainages that its joints leave free.</summary>
    public static Engraving Of(FacetedPlan chart, double from, double to, int number, int count, string name, SectionSpec spec, PrinterSpec printer)
    {
        var engraving = new Engraving(chart, DepthIn(chart.Plan.Spec.Deck.Thickness, spec, printer));
        if (!spec.Engrave || engraving.depth == 0)
        {
            return engraving;
        }

        double least = LeastHeight(printer);
        var patches = Patch.Clear(chart.Plan, from, to).Take(8).ToList();
        string figure = Invariant($"{number}/{count}");
        var mark = engraving.Fit(patches, along => Marked(figure, along ? EngravedLetters.ArrowForward : EngravedLetters.ArrowUp), spec.EngravingHeight);
        if (mark is not { } first || first.Height < least)
        {
            engraving.Height = mark?.Height ?? 0;
            return engraving;
        }

        var blocks = new List<ColumnBlock>(engraving.Cut(first));
        engraving.Height = first.Height;
        patches.Remove(first.Patch);
        if (engraving.Fit(patches, _ => Wrappings(Drawable(name)), spec.EngravingHeight) is { } second && second.Height >= least)
        {
            blocks.AddRange(engraving.Cut(second));
            engraving.Height = Math.Min(engraving.Height, second.Height);
        }

        engraving.Removed = blocks;
        return engraving;
    }

    /// <summary>A name as it is engraved: letters that have no drawing in plain ones, and without what can't be written in those either.</summary>
    public static string Drawable(string name) => string.Concat(name.EnumerateRunes().Select(Written)).Trim();

    /// <summary>What of a name is not engraved, each sign once.</summary>
    public static IReadOnlyList<string> LeftOut(string name) =>
        [.. name.EnumerateRunes().Where(r => !Rune.IsWhiteSpace(r) && Written(r) is null).Select(r => r.ToString()).Distinct()];

    // A letter's own drawing as a capital, or that of what is written for it where there are plain letters alone; null for neither.
    private static string? Written(Rune letter)
    {
        if (letter.IsBmp && LetterShapes.Has(char.ToUpperInvariant((char)letter.Value)))
        {
            return letter.ToString();
        }

        string? plain = Rune.IsWhiteSpace(letter) ? " " : PlainLetters.Of(letter);
        return plain is null || !plain.All(c => c == ' ' || LetterShapes.Has(c)) ? null : plain;
    }

    private static IEnumerable<string[]> Marked(string figure, char arrow) => [[figure + arrow], [figure, arrow.ToString()]];

    // The name on one line, or broken at its words in every way that keeps their order.
    private static IEnumerable<string[]> Wrappings(string name)
    {
        string[] words = name.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        const int mostWords = 6; // 32 ways to break the lines are enough
        int breaks = Math.Max(0, Math.Min(words.Length, mostWords) - 1);
        for (int set = 0; set < 1 << breaks; set++)
        {
            var lines = new List<string> { words.Length > 0 ? words[0] : "" };
            for (int i = 1; i < words.Length; i++)
            {
                if (i <= breaks && (set & (1 << (i - 1))) != 0)
                {
                    lines.Add(words[i]);
                }
                else
                {
                    lines[^1] += " " + words[i];
                }
            }

            yield return [.. lines];
        }
    }

    private readonly record struct Setting(Patch Patch, string[] Lines, bool Along, double Height);

    // The patch, the way to write and the line breaks that give the largest letters; the first of equals.
    private Setting? Fit(IReadOnlyList<Patch> patches, Func<bool, IEnumerable<string[]>> texts, double highest)
    {
        Setting? best = null;
        foreach (var patch in patches)
        {
            foreach (bool along in new[] { true, false })
            {
                foreach (string[] lines in texts(along))
                {
                    var (width, height) = along ? Room(patch) : (Room(patch).Height, Room(patch).Width);
                    LetterBlock block = new(lines);
                    double unit = Math.Min(Math.Min(block.UnitIn(width, height), Askew(patch, block, along)), highest / EngravedLetters.CapHeight);
                    if (best is not { } held || unit * EngravedLetters.CapHeight > held.Height)
                    {
                        best = new(patch, lines, along, unit * EngravedLetters.CapHeight);
                    }
                }
            }
        }

        return best;
    }

    // A patch is bent with the track; the rectangle in it loses the versine and is no longer than its shorter side.
    private (double Width, double Height) Room(Patch patch)
    {
        double middle = (patch.From + patch.To) / 2;
        double curvature = chart.Plan.Spine.Bend(middle); // positive where the platform is inside the curve
        double shrink = Math.Min(1 - (curvature * patch.Near), 1 - (curvature * patch.Far));
        double length = patch.Length * shrink;
        return (length, patch.Width - (Math.Abs(curvature) * length * length / 8));
    }

    // Where lines across are askew a patch is a parallelogram, and writing stays square to the track: the unit at which a block reaches one of its sides.
    private double Askew(Patch patch, LetterBlock block, bool isAlong)
    {
        double unit = double.PositiveInfinity;
        if (!chart.Plan.Spec.Skew.IsAny)
        {
            return unit;
        }

        var (middle, forward) = Lying(patch, isAlong);
        Point2[] corners = [.. new[] { (patch.From, patch.Near), (patch.To, patch.Near), (patch.To, patch.Far), (patch.From, patch.Far) }
            .Select(c => chart.Plan.ToLayout(c.Item1, c.Item2))];
        for (int i = 0; i < corners.Length; i++)
        {
            var side = corners[(i + 1) % corners.Length] - corners[i];
            double half = ((Math.Abs(Point2.Cross(side, forward)) * block.Width) + (Math.Abs(Point2.Dot(side, forward)) * block.Height)) / 2;
            unit = Math.Min(unit, Math.Abs(Point2.Cross(side, middle - corners[i])) / half);
        }

        return unit;
    }

    // The middle of a patch in the layout, and the way in which is written.
    private (Point2 Middle, Point2 Forward) Lying(Patch patch, bool isAlong)
    {
        double s = (patch.From + patch.To) / 2;
        var along = chart.Plan.Spine.Tangent(s);
        return (chart.Plan.ToLayout(s, (patch.Near + patch.Far) / 2), isAlong ? along : along.Left);
    }

    private IEnumerable<ColumnBlock> Cut(Setting setting)
    {
        var plan = chart.Plan;
        double s = (setting.Patch.From + setting.Patch.To) / 2;
        var (middle, forward) = Lying(setting.Patch, setting.Along);

        // Read from below, the writing's up is to the right of its direction in plan.
        var up = forward.Left * -1;
        double unit = setting.Height / EngravedLetters.CapHeight;
        var underside = top.Along(s).Raised(-plan.Spec.Deck.Thickness);
        var shown = plan.Trestle?.Stretch.Holds(s) == true ? TrestleBlocks.PaintOf(plan.Spec.Trestle!) : Paint.Wall;
        foreach (var stroke in new LetterBlock(setting.Lines).Centred())
        {
            var ring = Array.ConvertAll(stroke, p => middle + (forward * (p.X * unit)) + (up * (p.Y * unit)));
            Array.Reverse(ring); // mirrored, so it turns the other way
            yield return Layer.Removed(ring, underside.Raised(-Overshoot), underside.Raised(depth), shown);
        }
    }
}
