using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Exports.Drawings.Plans;

/// <summary>The marks that features put on a plan, each named, and their lines in its key.</summary>
internal sealed class PlanMarks(PlatformPlan plan, IReadOnlyList<double> cuts)
{
    /// <summary>Line of what runs along the platform.</summary>
    public static readonly Pen Along = new(0.3, HouseStyle.Quiet);

    /// <summary>Outline of what is below the deck.</summary>
    public static readonly Pen Below = new(0.2, HouseStyle.Accent, 1, 0.5);

    private readonly PlanMark[] marks = [.. plan.Features.SelectMany(f => f.Marks)];

    public void DrawOn(Sheet sheet, PlanView view)
    {
        foreach (var mark in marks.OfType<HiddenMark>())
        {
            sheet.Area(mark.Ring.Select(view.Of), null, Below);
        }

        foreach (var mark in marks.OfType<LineMark>())
        {
            sheet.Line(Of(view, mark.From), Of(view, mark.To), Along);
        }

        foreach (var mark in marks.OfType<LeafMark>())
        {
            var (from, to) = (Of(view, mark.From), Of(view, mark.To));
            var inward = view.Of(plan.ToLayout(mark.From.Chainage, plan.CopingFront.At(mark.From.Chainage))) - from;
            Leaf(sheet, from, to, inward * (1 / inward.Length));
        }

        foreach (var mark in marks.OfType<AreaMark>())
        {
            bool roomy = IsRoomy(mark, view);
            sheet.Area(mark.Ring.Select(view.Of), roomy ? new(HouseStyle.Hair, 0.6) : new(HouseStyle.Ink), roomy ? HouseStyle.Thin : null);
            if (mark.Inner is var (inner, _))
            {
                // A cover in its frame.
                sheet.Area(inner.Select(view.Of), new(HouseStyle.Hair), roomy ? HouseStyle.Thin : null);
            }
        }

        foreach (var mark in marks.OfType<CircleMark>())
        {
            sheet.Circle(Of(view, mark.Middle), Math.Max(0.3, mark.Diameter / 2 / view.Reduction), new(HouseStyle.White), HouseStyle.Thin);
        }
    }

    /// <summary>Writes the names: on a recess where it has room, else beside the mark with a stroke; of a row once, and those of ways through last.</summary>
    public void Name(Sheet sheet, PlanView view, Labels labels)
    {
        foreach (var mark in marks.OfType<LeafMark>())
        {
            // No words over an open gate.
            Point2 from = Of(view, mark.From), to = Of(view, mark.To), leaf = from + (Inward(view, mark.From.Chainage) * (to - from).Length);
            labels.Keep(Math.Min(from.X, Math.Min(to.X, leaf.X)), Math.Min(from.Y, Math.Min(to.Y, leaf.Y)), Math.Max(from.X, Math.Max(to.X, leaf.X)),
                Math.Max(from.Y, Math.Max(to.Y, leaf.Y)));
        }

        foreach (var ring in marks.OfType<HiddenMark>().Select(m => m.Ring.Select(view.Of).ToArray()))
        {
            labels.Keep(ring.Min(p => p.X), ring.Min(p => p.Y), ring.Max(p => p.X), ring.Max(p => p.Y));
        }

        foreach (var mark in marks.OfType<AreaMark>().Where(m => IsRoomy(m, view)))
        {
            double angle = view.AngleOf(plan.Chart.At(mark.Middle.Chainage).Tangent);
            labels.PutOver(mark.Label!, HouseStyle.Small with { Colour = HouseStyle.Ink }, null,
                (Of(view, mark.Middle) + new Point2(0, 0.8), TextAnchor.Middle, angle));
        }

        (Point2 Near, Point2 Far)[] joints =
            [.. cuts.Select(c => (view.Of(plan.ToLayout(c, plan.CopingFront.At(c))), view.Of(plan.ToLayout(c, plan.Back.At(c)))))];
        foreach (var mark in marks.Where(m => m.Label is not null && !(m is AreaMark area && IsRoomy(area, view)))
            .OrderBy(m => m is LeafMark ? 2 : m.InRow ? 1 : 0).ThenBy(m => m is LeafMark ? 0 : At(m).Chainage))
        {
            var at = mark is LeafMark leaf ? (Of(view, leaf.From) + Of(view, leaf.To)) * 0.5 : Of(view, At(mark));
            Lead(sheet, joints, labels, mark.Label!, at, Inward(view, At(mark).Chainage), (plan.Back.At(At(mark).Chainage) - At(mark).Reach) / view.Reduction);
        }
    }

    /// <summary>Lines of the key: a form and a word once each.</summary>
    public IEnumerable<(string Name, Action<Sheet, double, double> Draw)> Keys() =>
        marks.GroupBy(m => (Order: Form(m), m.Legend)).OrderBy(g => g.Key.Order).Select(g => (g.Key.Legend, Sign(g.First())));

    private static int Form(PlanMark mark) => mark switch { CircleMark => 0, LineMark => 1, LeafMark => 2, AreaMark => 3, _ => 4 };

    private static Action<Sheet, double, double> Sign(PlanMark mark) => mark switch
    {
        CircleMark => (s, x, y) => s.Circle(new(x + 5.5, y), 0.7, new(HouseStyle.White), HouseStyle.Thin),
        LineMark => (s, x, y) => s.Line(new(x, y), new(x + 7, y), Along),
        LeafMark => (s, x, y) => Leaf(s, new(x + 0.5, y + 1.2), new(x + 6, y + 1.2), new(0, -1)),
        AreaMark => (s, x, y) => s.Box(x + 4.8, y - 0.7, 1.4, 1.4, new(HouseStyle.Ink)),
        _ => (s, x, y) => s.Box(x, y - 0.6, 7, 1.2, null, Below),
    };

    // A way through as plans show it: its leaf open, and the quarter it turns through.
    private static void Leaf(Sheet sheet, Point2 from, Point2 to, Point2 inward)
    {
        double width = (to - from).Length;
        var along = (to - from) * (1 / width);
        sheet.Line(from, from + (inward * width), Along);
        sheet.Lines(Enumerable.Range(0, 13).Select(i => Math.SinCos(i * Math.PI / 24))
            .Select(t => from + (along * (width * t.Cos)) + (inward * (width * t.Sin))), new(0.12, HouseStyle.Quiet, 1, 0.6));
    }

    private static PlanPlace At(PlanMark mark) => mark switch
    {
        CircleMark m => m.Middle,
        AreaMark m => m.Middle,
        HiddenMark m => m.Middle,
        LineMark m => m.From,
        LeafMark m => m.From,
        _ => throw new ArgumentException("A mark has no place.", nameof(mark)),
    };

    // A recess wide enough on paper to be written on.
    private static bool IsRoomy(AreaMark mark, PlanView view) =>
        mark.Label is { } label && Math.Min(mark.Along, mark.Across) / view.Reduction > 4
        && TextStyle.Length(label, HouseStyle.Small) < mark.Along / view.Reduction;

    private Point2 Of(PlanView view, PlanPlace place) => view.Of(plan.ToLayout(place.Chainage, place.Reach));

    // On paper, from the platform's back towards its front.
    private Point2 Inward(PlanView view, double s)
    {
        var across = view.Of(plan.ToLayout(s, plan.CopingFront.At(s))) - view.Of(plan.ToLayout(s, plan.Back.At(s)));
        return across * (1 / across.Length);
    }

    // Behind the platform first, then on the deck.
    private static void Lead(Sheet sheet, (Point2 Near, Point2 Far)[] joints, Labels labels, string name, Point2 at, Point2 inward, double toBack)
    {
        var style = HouseStyle.Small with { Colour = HouseStyle.Ink };
        double length = TextStyle.Length(name, style);
        foreach (double off in ((double[])[4, 7.5, 11, 14.5, 18]).Select(o => -toBack - o).Concat([5, 8.5, 12]).OrderBy(o => o < 0 ? -o - toBack : o))
        {
            foreach (double along in (double[])[0, 4, -4, 8, -8])
            {
                var end = at + (inward * off) + new Point2(along, 0);
                var anchor = along >= 0 ? TextAnchor.Start : TextAnchor.End;
                double side = along >= 0 ? 0.6 : -0.6, low = end.X + (along >= 0 ? 0 : -length);
                if (joints.Any(j => Crosses(j.Near, j.Far, low, low + length, end.Y)))
                {
                    continue;
                }

                if (labels.PutOver(name, style, new(off < 0 ? HouseStyle.Paper : HouseStyle.Deck, 0.85), (end + new Point2(side, 0.8), anchor, 0)))
                {
                    sheet.Line(at, end, new(0.13, HouseStyle.Ink));
                    return;
                }
            }
        }
    }

    private static bool Crosses(Point2 near, Point2 far, double low, double high, double y)
    {
        double t = Math.Abs(far.Y - near.Y) < 1 ? 0 : (y - near.Y) / (far.Y - near.Y), x = near.X + (t * (far.X - near.X));
        return t is > -0.2 and < 1.2 && x > low - 1 && x < high + 1;
    }
}
