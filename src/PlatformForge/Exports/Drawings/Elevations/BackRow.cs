using PlatformForge.Exports.Drawings.Elevations.Walls;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>A row of the elevation of a back without a wall.</summary>
/// <param name="sight">The back.</param>
/// <param name="pieces">Its sections in the row, each with where it begins and ends from the back's left end, mm, and whether the section begins there.</param>
/// <param name="scale">Sheet mm to a mm of the model.</param>
/// <param name="standing">What stands on the deck, the farthest first.</param>
internal sealed class BackRow(
    BackSight sight, IReadOnlyList<(int Section, double From, double To, bool Begins)> pieces, double scale, IReadOnlyList<StandingMark> standing)
    : IElevationRow
{
    // mm on the sheet from one stroke down a bank to the next, and how far down the short ones go.
    private const double Apart = 1.6, Short = 0.45;

    private static readonly Pen Stroke = new(0.1, HouseStyle.Quiet);

    private readonly PlatformPlan plan = sight.Plan;
    private readonly double from = pieces[0].From, to = pieces[^1].To;

    // Returns of a bank round the platform's ends that the row has.
    private readonly BankReturn? left = pieces[0].From <= 0 ? sight.Turn(atLeft: true) : null;
    private readonly BankReturn? right = pieces[^1].To >= sight.Length ? sight.Turn(atLeft: false) : null;

    private RowStanding? foundStanding;

    public double Height => (scale * Top) + Under;

    public double Under => Foot().Depth;

    public double Length => scale * ((left?.Radius ?? 0) + Covers + (right?.Radius ?? 0));

    public double Covers => to - from;

    public bool Begins => pieces[0].Begins;

    public (double Base, double Top) Span => (0, Top);

    public IReadOnlyList<RowLevel> Left => [.. Levels(from).Select(l => l with { In = left?.Radius ?? 0 })];

    public IReadOnlyList<RowLevel> Right => [.. Levels(to).Where(r => !Left.Any(l => l.Word == r.Word && Math.Abs(l.Height - r.Height) < Alike))
        .Select(l => l with { In = right?.Radius ?? 0 })];

    // Levels nearer than this, mm, are one.
    private const double Alike = 0.05;

    private double Highest => sight.Bends(from, to).Max(sight.Top) + plan.Body.Lines.Select(Rise).DefaultIfEmpty(0).Max();

    private double Top => Math.Max(Highest, Over.Top / scale);

    private RowStanding Over => foundStanding ??= new(standing, f => (Along(sight.Place(f.Chainage)), pieces.Any(p => p.Section == f.Section)), Length, scale);

    // From the row's left end, sheet mm.
    private double Along(double place) => scale * ((left?.Radius ?? 0) + place - from);

    public void DrawOn(Sheet sheet, Point2 corner)
    {
        double foot = corner.Y + (scale * Top);
        Point2 Of(double x, double z) => new(corner.X + Along(x), foot - (scale * z));
        Over.Draw(sheet, new(corner.X, foot));
        if (sight.Bank is { } bank)
        {
            Bank(sheet, bank, Of);
            Turned(sheet, bank, left, (x, z) => Of(from - x, z));
            Turned(sheet, bank, right, (x, z) => Of(to + x, z));
        }
        else
        {
            Hollow(sheet, Of);
        }

        foreach (var line in plan.Body.Lines.Where(l => Rise(l) > 0))
        {
            Band(sheet, Within(line.From, line.To), sight.Top, x => sight.Top(x) + Rise(line), Of, new(LineLooks.Of(line.Made, plan.Spec)));
        }

        foreach (var (_, a, _, _) in pieces.Where(p => p.Begins && p.From > from))
        {
            sheet.Line(Of(a, Highest) - new Point2(0, 1.5), Of(a, 0) + new Point2(0, Under - 1), HouseStyle.Cut);
        }

        sheet.Line(Of(from - (left?.Radius ?? 0), 0), Of(to + (right?.Radius ?? 0), 0), HouseStyle.Outline);
        Foot().Draw(sheet, new(corner.X, foot));
    }

    private RowFoot Foot() => new([.. pieces.Select(p => new RowSection(p.Section, Along(p.From), Along(p.To),
        sight.IsWhole(p.Section, p.From, p.To) ? p.To - p.From : null))], []);

    private RowLevel[] Levels(double place)
    {
        double deck = sight.Top(place), rise = plan.Body.Lines.Where(l => Within(l.From, l.To) is var (a, b) && a <= place && b >= place).Select(Rise)
            .DefaultIfEmpty(0).Max();
        return
        [
            new(0, "baseboard"), .. sight.Bank is { Ground: > 0 } bank ? [new RowLevel(bank.Ground, "ground")] : Array.Empty<RowLevel>(), new(deck, "deck"),
            .. rise > 0 ? [new RowLevel(deck + rise, "kerb")] : Array.Empty<RowLevel>(),
        ];
    }

    // Only what stands on the deck beside the back shows over it.
    private static double Rise(LineBand line) => line.Made.Name is LineMake.Kerb or LineMake.Retaining ? line.Made.Rise : 0;

    // The face from the deck's edge to the ground, with strokes down it, and what stands under the ground.
    private void Bank(Sheet sheet, PlanBank bank, Func<double, double, Point2> of)
    {
        var turf = Palette.Of(Paint.Turf);
        Band(sheet, (from, to), _ => bank.Ground, sight.Top, of, new(turf, 0.5));
        if (bank.Ground > 0)
        {
            Band(sheet, (from, to), _ => 0, _ => bank.Ground, of, new(turf));
        }

        int count = Math.Max(1, (int)(scale * Covers / Apart));
        for (int i = 0; i <= count; i++)
        {
            double x = from + (Covers * i / count), high = sight.Top(x);
            sheet.Line(of(x, high), of(x, high - ((high - bank.Ground) * (i % 2 == 0 ? 1 : Short))), Stroke);
        }
    }

    // The facets of a return beyond the platform's end, from the line of the bank's foot round to that of its edge.
    private static void Turned(Sheet sheet, PlanBank bank, BankReturn? turn, Func<double, double, Point2> of)
    {
        foreach (var ring in turn is null ? [] : ReturnFacets.Of(bank, turn))
        {
            sheet.Area(ring.Select(c => of(Point2.Dot(c.Place - turn!.Corner, turn.Toe[^1] - turn.Corner) / turn.Radius, c.Height)),
                new(Palette.Of(Paint.Turf), 0.5), ReturnFacets.Pen);
        }
    }

    // The inside of the front wall behind the ends of ribs and end walls, under the deck's edge.
    private void Hollow(Sheet sheet, Func<double, double, Point2> of)
    {
        double deck = plan.Spec.Deck.Thickness;
        double Under(double x) => sight.Top(x) - deck;
        Band(sheet, (from, to), _ => 0, Under, of, new(HouseStyle.Deck, 0.6));
        var ribs = plan.Ribs.Where(r => r.Kind != RibKind.Longitudinal).Select(r => (r.From, r.To, r.Depth));
        var walls = ribs.Concat(sight.JointWalls.Select(w => (w.From, w.To, Depth: (double?)null)));
        foreach (var (first, last, depth) in walls)
        {
            Band(sheet, Within(first, last), x => depth is { } d ? Math.Max(0, Under(x) - d) : 0, Under, of, new(HouseStyle.Coping));
        }

        Band(sheet, (from, to), Under, sight.Top, of, new(Palette.Of(Paint.Deck), 0.72));
    }

    // What lies between two chainages, as far as the row goes.
    private (double From, double To) Within(double first, double last) =>
        sight.Place(first) is var a && sight.Place(last) is var b ? (Math.Max(from, Math.Min(a, b)), Math.Min(to, Math.Max(a, b))) : default;

    private void Band(
        Sheet sheet, (double From, double To) part, Func<double, double> low, Func<double, double> high, Func<double, double, Point2> of, Fill fill)
    {
        if (part.To > part.From)
        {
            double[] places = sight.Bends(part.From, part.To);
            sheet.Area(places.Select(x => of(x, low(x))).Concat(places.Reverse().Select(x => of(x, high(x)))), fill, HouseStyle.Thin);
        }
    }
}
