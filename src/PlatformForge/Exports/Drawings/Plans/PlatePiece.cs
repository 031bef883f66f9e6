using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Plans;

/// <summary>One section on a plate, seen from above as it lies: what is uppermost is drawn whole, what lies underneath dashed.</summary>
internal sealed class PlatePiece
{
    private static readonly Pen Under = new(0.2, HouseStyle.Ink, 1.6, 0.9);

    private readonly PlatformPlan plan;
    private readonly PlatformSection section;
    private readonly RigidTransform toBed;
    private readonly Func<Point2, Point2> of;
    private readonly double[] stations;
    private readonly bool deckDown;

    public PlatePiece(PlatformPlan plan, PlacedSection placed, Func<Point2, Point2> of)
    {
        (this.plan, this.of, section) = (plan, of, placed.Section);
        toBed = section.ToLayout.Inverse().Then(placed.ToBed);
        stations = [.. plan.Stations.Where(s => s > section.From && s < section.To).Prepend(section.From).Append(section.To)];
        deckDown = section.Pose == PrintPose.DeckDown;
    }

    public void DrawOn(Sheet sheet)
    {
        if (plan.Bank is { IsApart: false } bank)
        {
            Fill turf = new(Palette.Of(Solids.Paint.Turf), 0.3);
            sheet.Area(Line(bank.Edge).Concat(Line(bank.Foot).Reverse()), turf, HouseStyle.Thin);
            foreach (var turn in bank.Returns.Where(r => r.IsAtEnd ? section.To >= plan.Stations[^1] : section.From <= plan.Stations[0]))
            {
                sheet.Area(turn.Toe.Prepend(turn.Corner).Select(p => OnBed(p, bank.Ground)), turf, HouseStyle.Thin);
            }
        }

        var outline = Line(plan.CopingFront).Concat(Line(plan.Back).Reverse()).ToArray();
        sheet.Area(outline, new(HouseStyle.Deck));
        if (deckDown)
        {
            Underside(sheet);
        }
        else
        {
            foreach (var coping in plan.Body.Top.Where(s => s.Role == StripRole.Coping))
            {
                sheet.Area(Line(coping.Near).Concat(Line(coping.Far).Reverse()), new(HouseStyle.Coping), HouseStyle.Thin);
            }

            foreach (var (turn, ring) in CopingLines.Areas(plan).Where(a => a.Return.IsAtEnd ? section.To >= a.Return.End : section.From <= a.Return.End))
            {
                double top = plan.TopAt(turn.End, plan.CopingFront.At(turn.End));
                sheet.Area(ring.Select(p => OnBed(p, top)), new(HouseStyle.Coping), HouseStyle.Thin);
            }

            Ribs(sheet, null, HouseStyle.Hidden with { Width = 0.1 });
        }

        sheet.Area(outline, null, HouseStyle.Outline);
        Words(sheet);
    }

    // Seen from underneath: walls and ribs stand up from the deck, the coping lies on the bed.
    private void Underside(Sheet sheet)
    {
        Fill wall = new(HouseStyle.Coping);
        foreach (var (inner, outer) in plan.Trestle is { Stretch: var bents } && bents.Holds((section.From + section.To) / 2)
            ? plan.Trestle.Rows.Select(r => (r.Near, r.Far)) : plan.Body.Standing.Select(s => (s.Near, s.Far)))
        {
            sheet.Area(Line(inner).Concat(Line(outer).Reverse()), wall, HouseStyle.Thin);
        }

        Ribs(sheet, wall, HouseStyle.Thin);
        foreach (var (bent, row) in plan.Trestle?.Bents.SelectMany(b => plan.Trestle.Rows.Select(r => (b, r))) ?? [])
        {
            Strip(sheet, row.Near, row.Far, (bent.From, bent.To), new(HouseStyle.Quiet), HouseStyle.Thin);
        }

        foreach (var pocket in section.Pockets)
        {
            sheet.Area(pocket.Select(p => OnBed(p, 0)), new(HouseStyle.White), HouseStyle.Thin);
        }

        sheet.Lines(Line(plan.CopingBack), Under);
        if (plan.Body.FarCopingBack is { } far)
        {
            sheet.Lines(Line(far), Under);
        }
    }

    private void Ribs(Sheet sheet, Fill? fill, Pen pen)
    {
        foreach (var rib in plan.Ribs)
        {
            Strip(sheet, rib.Near, rib.Far, (rib.From, rib.To), fill, pen);
        }
    }

    private void Strip(Sheet sheet, PlanLine near, PlanLine far, (double From, double To) stretch, Fill? fill, Pen pen)
    {
        if (stretch.From < section.To && stretch.To > section.From)
        {
            var along = stations.Where(s => s > stretch.From && s < stretch.To).Prepend(Math.Max(stretch.From, section.From))
                .Append(Math.Min(stretch.To, section.To)).ToArray();
            sheet.Area(along.Select(s => Place(s, near.At(s))).Concat(along.Reverse().Select(s => Place(s, far.At(s)))), fill, pen);
        }
    }

    private void Words(Sheet sheet)
    {
        double s = (section.From + section.To) / 2, t = (plan.CopingBack.At(s) + plan.Back.At(s)) / 2;
        var at = Place(s, t);
        var towards = Place(Math.Min(section.To, s + 1), t) - Place(Math.Max(section.From, s - 1), t);
        var ahead = towards * (1 / towards.Length);
        string size = Invariant($"{Figures.Mm(section.Size.X)} x {Figures.Mm(section.Size.Y)} x {Figures.Mm(section.Size.Z)}");
        string[] lines = [section.PoseInWords, size];
        double words = lines.Max(l => TextStyle.Length(l, HouseStyle.Small));
        sheet.Box(at.X - (words / 2) - 0.8, at.Y + 3.6, words + 1.6, 6.6, new(HouseStyle.Paper, 0.92));
        for (int i = 0; i < lines.Length; i++)
        {
            sheet.Text(lines[i], at + new Point2(0, 6 + (3.2 * i)), HouseStyle.Small with { Colour = HouseStyle.Ink, Bold = i == 0 }, TextAnchor.Middle);
        }

        // The arrow that is engraved underneath: towards higher chainage.
        // Where it would run through the words it begins beyond them.
        Point2 from = at + (ahead * (ahead.Y > 0.3 ? 11.5 : 3.8)), tip = from + (ahead * 6);
        sheet.Line(from, tip, new(0.4, HouseStyle.Accent));
        sheet.Area([tip + (ahead * 1.4), tip + (ahead.Left * 0.9), tip - (ahead.Left * 0.9)], new(HouseStyle.Accent));
        sheet.Circle(at, 3.1, new(HouseStyle.Accent));
        sheet.Text(Invariant($"{section.Number}"), at + new Point2(0, 1.15), HouseStyle.Strong with { Size = 3.2, Colour = HouseStyle.White },
            TextAnchor.Middle);
    }

    private Point2[] Line(PlanLine line) => Array.ConvertAll(stations, s => Place(s, line.At(s)));

    private Point2 Place(double s, double t)
    {
        return OnBed(plan.ToLayout(s, t), plan.TopAt(s, t));
    }

    private Point2 OnBed(Point2 p, double z)
    {
        var q = toBed.Apply(new(p.X, p.Y, z));
        return of(new(q.X, q.Y));
    }
}
