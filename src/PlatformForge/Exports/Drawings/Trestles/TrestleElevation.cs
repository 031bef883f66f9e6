using PlatformForge.Exports.Drawings.Elevations;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Features;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Copings;
using PlatformForge.Solids.Bodies.Trestles;
using PlatformForge.Solids.Bodies.Walls;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Trestles;

/// <summary>The front of a trestle laid flat, or its back, section by section.</summary>
internal sealed class TrestleElevation
{
    private const double Faint = 0.72;

    private readonly PlatformPlan plan;
    private readonly SectionSet set;
    private readonly LineLength along;
    private readonly bool rising, isBack;
    private readonly IReadOnlyList<LongitudinalBrace> braces;
    private readonly IReadOnlyList<StandingMark> standing;

    /// <param name="platform">The platform.</param>
    /// <param name="isBack">Whether it is seen from behind: of an island, from its second track.</param>
    /// <param name="broken">How far over the deck what stands on that is broken off, mm.</param>
    public TrestleElevation(PlatformDossier platform, bool isBack = false, double broken = double.PositiveInfinity)
    {
        (set, plan, this.isBack) = (platform.Sections, platform.Sections.Plan, isBack);
        var line = isBack ? plan.Trestle!.Rows[^1].Far : plan.Trestle!.Rows[0].Near;
        along = new(plan.Stations[0], plan.Stations[^1], (a, b) => (plan.ToLayout(b, line.At(b)) - plan.ToLayout(a, line.At(a))).Length);
        rising = plan.Side == Track.Side.Left != isBack;
        braces = [.. LongitudinalBraces.Of(new(plan), out _).Where(b => b.Row == (isBack ? plan.Trestle!.Rows.Count - 1 : 0))];
        standing = [.. StandingMarks.Of(set, rising, isBack).Select(m => m.Broken(broken))];
    }

    /// <summary>Height of a row over its line, with what stands on the deck and the names of that, mm.</summary>
    public double Tall(IReadOnlyList<PlatformSection> row) => Math.Max(plan.Profile.Level, Over(row).Top);

    private RowStanding Over(IReadOnlyList<PlatformSection> row)
    {
        double start = row.Min(s => along.To(s.From)), end = row.Max(s => along.To(s.To));
        return new(standing, f => (rising ? along.To(f.Chainage) - start : end - along.To(f.Chainage), row.Any(s => s.Number == f.Section)), end - start, 1);
    }

    /// <summary>Sections in rows no longer than a room, from left to right; one that is longer has a row of its own.</summary>
    public IReadOnlyList<IReadOnlyList<PlatformSection>> Rows(double room)
    {
        var rows = new List<List<PlatformSection>>();
        double left = 0;
        foreach (var section in rising ? set.Sections : set.Sections.Reverse())
        {
            double length = along.To(section.To) - along.To(section.From);
            if (rows.Count == 0 || length > left)
            {
                rows.Add([]);
                left = room;
            }

            rows[^1].Add(section);
            left -= length;
        }

        return rows;
    }

    /// <summary>Length of a section's front or back, laid flat, mm.</summary>
    public double Length(PlatformSection section) => along.To(section.To) - along.To(section.From);

    /// <summary>Draws a row with its lower left corner at a place.</summary>
    public void DrawRow(Sheet sheet, IReadOnlyList<PlatformSection> row, Point2 corner)
    {
        double start = row.Min(s => along.To(s.From)), end = row.Max(s => along.To(s.To));
        Point2 Of(double s, double z) => new(corner.X + (rising ? along.To(s) - start : end - along.To(s)), corner.Y - z);
        Over(row).Draw(sheet, corner);
        foreach (var section in row)
        {
            Draw(sheet, section, Of);
            double from = Of(section.From, 0).X, to = Of(section.To, 0).X;
            sheet.Text(Invariant($"{section.Number}"), new((from + to) / 2, corner.Y + 8.5), HouseStyle.Strong, TextAnchor.Middle);
            double cut = Math.Max(from, to);
            if (cut < corner.X + end - start - 1)
            {
                sheet.Line(new(cut, corner.Y - plan.Profile.Level - 2), new(cut, corner.Y + 6), HouseStyle.Cut);
            }
        }

        sheet.Line(corner, new(corner.X + end - start, corner.Y), HouseStyle.Outline);
        double s0 = rising ? row[0].From : row[0].To, high = Top(s0);
        Dimensions.Between(sheet, Of(s0, 0), Of(s0, high), -8, Figures.Mm(high));
    }

    private void Draw(Sheet sheet, PlatformSection section, Func<double, double, Point2> of)
    {
        var (spec, bents) = (plan.Spec, plan.Trestle!.Stretch);
        double deck = spec.Deck.Thickness, a = Math.Clamp(section.From, bents.From, bents.To), b = Math.Clamp(section.To, bents.From, bents.To);
        var (timber, wall) = (new Fill(Palette.Of(TrestleBlocks.PaintOf(spec.Trestle!)), Faint), new Fill(Palette.Of(WallPaint), Faint));
        Band(sheet, of, section.From, a, _ => 0, s => Top(s) - deck, wall);
        Band(sheet, of, b, section.To, _ => 0, s => Top(s) - deck, wall);
        foreach (var brace in braces.Where(t => t.At(0) > section.From && t.At(0) < section.To))
        {
            Brace(sheet, brace, of, timber);
        }

        if (spec.Trestle!.Boarded is BoardedSides.Both || spec.Trestle.Boarded == (isBack ? BoardedSides.Back : BoardedSides.Front))
        {
            Band(sheet, of, a, b, _ => 0, s => Top(s) - deck, timber);
        }

        foreach (var bent in plan.Trestle.Bents.Where(t => t.Middle > section.From && t.Middle < section.To))
        {
            Band(sheet, of, bent.From, bent.To, _ => 0, s => Top(s) - deck, timber);
            Place(sheet, bent, of);
        }

        Band(sheet, of, a, b, s => Top(s) - deck - spec.Trestle.Bearer, s => Top(s) - deck, timber);
        bool hasCoping = !isBack || spec.IsIsland;
        double slab = hasCoping ? Math.Max(deck, spec.Coping.Thickness) : deck;
        var paint = hasCoping ? CopingGrooves.PaintOf(plan) : Paint.Deck;
        Band(sheet, of, section.From, section.To, s => Math.Max(0, Top(s) - slab), Top, new(Palette.Of(paint), Faint));
    }

    // From its post to the bearer, which is drawn over its end.
    private static void Brace(Sheet sheet, LongitudinalBrace brace, Func<double, double, Point2> of, Fill fill)
    {
        var (line, soffit) = (brace.Line, brace.Soffit);
        double upper = Math.Max(0, soffit.Met(line.Foot + line.Deep, line.Rise) ?? 0);
        double side = Math.Min(soffit.At(0), line.Foot + line.Deep);
        Point2[] ring = [new(0, line.Foot), new(line.Run, soffit.At(line.Run)), new(upper, soffit.At(upper)), new(0, side)];
        sheet.Area(ring.Select(p => of(brace.At(p.X), p.Y)), fill, HouseStyle.Thin);
    }

    // The middle of a bent from the left end; figures of a pair beside a cut stand on either side of it.
    private void Place(Sheet sheet, PlannedBent bent, Func<double, double, Point2> of)
    {
        double place = along.To(bent.Middle);
        var (at, anchor) = bent.Cut is not { } cut ? (of(bent.Middle, 0), TextAnchor.Middle)
            : of(bent.Middle, 0).X < of(cut, 0).X ? (of(cut, 0) - new Point2(1, 0), TextAnchor.End) : (of(cut, 0) + new Point2(1, 0), TextAnchor.Start);
        sheet.Text(Figures.Mm(rising ? place : along.Total - place), at + new Point2(0, 4), HouseStyle.Small, anchor);
    }

    // What walls under ramps show: their facing, or the bents' material where the foot of a ramp is solid.
    private Paint WallPaint => plan.Spec is { Facing: { } facing } spec ? FacingRelief.PaintOf(isBack && !spec.IsIsland ? facing.Back : facing.Front)
        : plan.Spec.Trestle!.Ramps == TrestleRamps.Bents ? TrestleBlocks.PaintOf(plan.Spec.Trestle) : Paint.Wall;

    private double Top(double s) => plan.TopAt(s, (isBack ? plan.Back : plan.CopingFront).At(s));

    // A strip between two heights, with every bend of them.
    private void Band(Sheet sheet, Func<double, double, Point2> of, double from, double to, Func<double, double> low, Func<double, double> high, Fill fill)
    {
        if (to > from)
        {
            double[] at = [from, .. plan.Stations.Where(s => s > from && s < to), to];
            sheet.Area(at.Select(s => of(s, low(s))).Concat(at.Reverse().Select(s => of(s, high(s)))), fill, HouseStyle.Thin);
        }
    }
}
