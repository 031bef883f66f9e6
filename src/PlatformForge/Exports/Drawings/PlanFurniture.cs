using PlatformForge.Geometry;
using PlatformForge.Platforms;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings;

/// <summary>What stands on a platform, in plan: sockets, holes, the fence with its gates, each named.</summary>
internal sealed class PlanFurniture(PlatformPlan plan, IReadOnlyList<double> cuts)
{
    /// <summary>Line of a fence.</summary>
    public static readonly Pen Fence = new(0.3, HouseStyle.Quiet);

    public void DrawOn(Sheet sheet, PlanView view)
    {
        foreach (var (a, b) in Panels(plan))
        {
            sheet.Line(Of(view, a), Of(view, b), Fence);
        }

        foreach (var (a, b) in Gates(plan))
        {
            var ends = (From: Of(view, a), To: Of(view, b));
            var inward = view.Of(plan.ToLayout(a.Chainage, plan.CopingFront.At(a.Chainage))) - ends.From;
            Gate(sheet, ends.From, ends.To, inward * (1 / inward.Length));
        }

        foreach (var socket in plan.Sockets)
        {
            var frame = plan.Chart.At(socket.Chainage);
            var middle = plan.ToLayout(socket.Chainage, socket.Reach);
            Point2 along = frame.Tangent * (socket.Along / 2), across = frame.Tangent.Left * (socket.Across / 2);
            bool seat = Seat(socket, view);
            sheet.Area(
                ((Point2[])[middle - along - across, middle + along - across, middle + along + across, middle - along + across]).Select(view.Of),
                seat ? new(HouseStyle.Hair, 0.6) : new(HouseStyle.Ink), seat ? HouseStyle.Thin : null);
        }

        foreach (var hole in plan.PostHoles)
        {
            sheet.Circle(Of(view, hole), Math.Max(0.3, hole.Diameter / 2 / view.Reduction), new(HouseStyle.White), HouseStyle.Thin);
        }
    }

    /// <summary>Writes the names: a seat's on it, those of sockets and single holes beside them with a stroke.</summary>
    public void Name(Sheet sheet, PlanView view, Labels labels)
    {
        foreach (var (a, b) in Gates(plan))
        {
            // No words over an open gate.
            Point2 from = Of(view, a), to = Of(view, b), leaf = from + (Inward(view, a.Chainage) * (to - from).Length);
            labels.Keep(Math.Min(from.X, Math.Min(to.X, leaf.X)), Math.Min(from.Y, Math.Min(to.Y, leaf.Y)), Math.Max(from.X, Math.Max(to.X, leaf.X)), Math.Max(from.Y, Math.Max(to.Y, leaf.Y)));
        }

        foreach (var socket in plan.Sockets.Where(s => Seat(s, view)))
        {
            double angle = view.AngleOf(plan.Chart.At(socket.Chainage).Tangent);
            labels.PutOver(socket.Name, HouseStyle.Small with { Colour = HouseStyle.Ink }, null, (view.Of(plan.ToLayout(socket.Chainage, socket.Reach)) + new Point2(0, 0.8), TextAnchor.Middle, angle));
        }

        var places = plan.Sockets.Where(s => !Seat(s, view)).Select(s => (s.Name, s.Chainage, s.Reach)).Concat(Single().Select(h => (h.Name, h.Chainage, h.Reach)));
        foreach (var (name, chainage, reach) in places.OrderBy(p => p.Chainage))
        {
            Lead(sheet, view, labels, name, view.Of(plan.ToLayout(chainage, reach)), Inward(view, chainage), (plan.Back.At(chainage) - reach) / view.Reduction);
        }

        if (plan.Fence is { Posts.Count: > 0 } fence)
        {
            var middle = fence.Posts[fence.Posts.Count / 2];
            Lead(sheet, view, labels, Invariant($"{fence.Posts.Count} x {middle.Name}"), Of(view, middle), Inward(view, middle.Chainage), (plan.Back.At(middle.Chainage) - middle.Reach) / view.Reduction);
        }

        foreach (var (a, b) in Gates(plan))
        {
            Lead(sheet, view, labels, Invariant($"gate {Figures.Mm((plan.ToLayout(b.Chainage, b.Reach) - plan.ToLayout(a.Chainage, a.Reach)).Length)} wide"), (Of(view, a) + Of(view, b)) * 0.5, Inward(view, a.Chainage), (plan.Back.At(a.Chainage) - a.Reach) / view.Reduction);
        }
    }

    /// <summary>Panels of the fence: from post to post, gates left out.</summary>
    public static IEnumerable<(PlanHole From, PlanHole To)> Panels(PlatformPlan plan) => Bays(plan, b => b.Kind != FenceBayKind.Gate);

    /// <summary>Gates and steps: posts with nothing between them.</summary>
    public static IEnumerable<(PlanHole From, PlanHole To)> Gates(PlatformPlan plan) => Bays(plan, b => b.Kind == FenceBayKind.Gate);

    /// <summary>A gate as plans show it: its leaf open, and the quarter it turns through.</summary>
    public static void Gate(Sheet sheet, Point2 from, Point2 to, Point2 inward)
    {
        double width = (to - from).Length;
        var along = (to - from) * (1 / width);
        sheet.Line(from, from + (inward * width), Fence);
        sheet.Lines(Enumerable.Range(0, 13).Select(i => Math.SinCos(i * Math.PI / 24)).Select(t => from + (along * (width * t.Cos)) + (inward * (width * t.Sin))), new(0.12, HouseStyle.Quiet, 1, 0.6));
    }

    private static IEnumerable<(PlanHole From, PlanHole To)> Bays(PlatformPlan plan, Func<FenceBay, bool> which) =>
        plan.Fence is not { } fence ? [] : fence.Bays.Select((bay, i) => (bay, fence.Posts[i], fence.Posts[i + 1])).Where(b => which(b.bay)).Select(b => (b.Item2, b.Item3));

    private IEnumerable<PlanHole> Single() => plan.Fence is { } fence ? plan.PostHoles.Except(fence.Posts) : plan.PostHoles;

    // A recess wide enough on paper to be written on.
    private static bool Seat(PlanSocket socket, PlanView view) => Math.Min(socket.Along, socket.Across) / view.Reduction > 4 && TextStyle.Length(socket.Name, HouseStyle.Small) < socket.Along / view.Reduction;

    private Point2 Of(PlanView view, PlanHole hole) => view.Of(plan.ToLayout(hole.Chainage, hole.Reach));

    // On paper, from the platform's back towards its front.
    private Point2 Inward(PlanView view, double s)
    {
        var across = view.Of(plan.ToLayout(s, plan.CopingFront.At(s))) - view.Of(plan.ToLayout(s, plan.Back.At(s)));
        return across * (1 / across.Length);
    }

    // Behind the platform first, then on the deck.
    private void Lead(Sheet sheet, PlanView view, Labels labels, string name, Point2 at, Point2 inward, double toBack)
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
                if (cuts.Any(c => Crosses(view, c, low, low + length, end.Y)))
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

    private bool Crosses(PlanView view, double cut, double low, double high, double y)
    {
        Point2 near = view.Of(plan.ToLayout(cut, plan.CopingFront.At(cut))), far = view.Of(plan.ToLayout(cut, plan.Back.At(cut)));
        double t = Math.Abs(far.Y - near.Y) < 1 ? 0 : (y - near.Y) / (far.Y - near.Y), x = near.X + (t * (far.X - near.X));
        return t is > -0.2 and < 1.2 && x > low - 1 && x < high + 1;
    }
}
