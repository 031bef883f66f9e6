using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Track;
using static System.FormattableString;

namespace PlatformForge.Exports.Stock;

/// <summary>
/// Ribs across, between the inner faces of the strips, and ribs along, between the end walls, halved into one another: those across are slotted from
/// below, those
/// along from above. End walls close both ends of every section.
/// </summary>
internal sealed class RibParts(StockBody body)
{
    // Lower than this, mm, a rib is left out: glue fills it.
    private const double Least = 1.5;

    private readonly PlatformPlan plan = body.Plan;

    /// <summary>Chainages of the middles of the ribs across in a section, mm.</summary>
    public static IEnumerable<double> Transverse(PlatformPlan plan, PlatformSection section) =>
        plan.Ribs.Where(r => r.Kind == RibKind.Transverse && r.From > section.From && r.To < section.To).Select(r => (r.From + r.To) / 2);

    public IEnumerable<CutPart> Of(PlatformSection section)
    {
        double half = body.Stock.Thickness / 2;
        var along = Longitudinal(section).ToArray();
        CutPart?[] parts =
        [
            Across(section, section.From + half, Invariant($"end wall at {section.From:0}"), []),
            .. Transverse(plan, section).Select((s, i) => Across(section, s, Invariant($"rib {i + 1}"), along)),
            Across(section, section.To - half, Invariant($"end wall at {section.To:0}"), []),
            .. along.Select((line, i) => Along(section, line, along.Length == 1 ? "rib along" : Invariant($"rib along {i + 1}"))),
        ];
        return parts.OfType<CutPart>();
    }

    /// <summary>Middles of the ribs along.</summary>
    private IEnumerable<PlanLine> Longitudinal(PlatformSection section) =>
        from rib in plan.Ribs
        where rib.Kind == RibKind.Longitudinal && rib.From < section.To && rib.To > section.From
        let middle = (section.From + section.To) / 2
        group rib by Math.Round((rib.Near.At(middle) + rib.Far.At(middle)) / 2, 2) into row
        let first = row.First()
        select new PlanLine(first.Near.Stations, [.. first.Near.Reach.Zip(first.Far.Reach, (a, b) => (a + b) / 2)]);

    private CutPart? Across(PlatformSection section, double s, string name, IReadOnlyList<PlanLine> slotted)
    {
        double thick = body.Stock.Thickness;
        double[] faces = [.. ((double[])[s - (thick / 2), s + (thick / 2)]).Select(x => Math.Clamp(x, section.From, section.To))];
        double width = faces.Min(x => (plan.ToLayout(x, body.FarInside.At(x)) - plan.ToLayout(x, body.NearInside.At(x))).Length);
        double near = body.UndersideOver(s, body.NearInside.At(s), thick), far = body.UndersideOver(s, body.FarInside.At(s), thick);
        if (Math.Max(near, far) < Least || width <= 0)
        {
            return null;
        }

        double HeightAt(double x) => near + ((far - near) * x / width);
        var ring = new List<Point2> { new(0, 0) };
        var origin = plan.ToLayout(s, body.NearInside.At(s));
        foreach (double x in slotted.Select(l => (plan.ToLayout(s, l.At(s)) - origin).Length).Order())
        {
            double slot = (thick + body.Stock.Fit) / 2, up = HeightAt(x) / 2;
            ring.AddRange([new(x - slot, 0), new(x - slot, up), new(x + slot, up), new(x + slot, 0)]);
        }

        ring.AddRange([new(width, 0), new(width, far), new(0, near)]);
        return Named(section, name, WallParts.Plain(ring),
            Invariant($"track side on the left, seen along {(plan.Side == Side.Right ? "rising" : "falling")} chainage") + FacedNote(name, s));
    }

    // An end wall that closes the platform stands between the strips, and so is shorter than the wall that a print has faced: what
    // shows of it is marked by hand.
    private string FacedNote(string name, double s)
    {
        if (!name.StartsWith("end wall", StringComparison.Ordinal))
        {
            return "";
        }

        double thick = body.Stock.Thickness;
        string face = s - plan.Stations[0] < thick ? WallNames.AtStart : plan.Stations[^1] - s < thick ? WallNames.AtEnd : "";
        return WallNames.Faced(plan).Any(w => w.Wall == face)
            ? "; mark its outer face from the elevation of the full-size paper, which runs round over both strips' ends"
            : "";
    }

    private CutPart? Along(PlatformSection section, PlanLine line, string name)
    {
        double thick = body.Stock.Thickness, from = section.From + thick, to = section.To - thick;
        double[] stations = [.. body.Stations(section).Where(s => s > from && s < to).Prepend(from).Append(to)];
        double[] lengths = new double[stations.Length];
        for (int i = 1; i < stations.Length; i++)
        {
            lengths[i] = lengths[i - 1] + (plan.ToLayout(stations[i], line.At(stations[i])) - plan.ToLayout(stations[i - 1], line.At(stations[i - 1]))).Length;
        }

        double HeightAt(double s) => Math.Max(0, Math.Min(body.UndersideAt(s, line.At(s) - (thick / 2)), body.UndersideAt(s, line.At(s) + (thick / 2))));
        var top = new List<(double Along, double Height)>(stations.Zip(lengths, (s, l) => (l, HeightAt(s))));
        var slots = Transverse(plan, section).Where(s => s > from && s < to).Select(s => (At: Between(stations, lengths, s), Down: HeightAt(s) / 2)).ToArray();
        double half = (thick + body.Stock.Fit) / 2;
        top.RemoveAll(p => slots.Any(s => Math.Abs(p.Along - s.At) <= half));
        foreach (var (at, down) in slots)
        {
            int place = top.FindIndex(p => p.Along > at);
            place = place < 0 ? top.Count : place;
            double left = Level(top, at - half), right = Level(top, at + half);
            top.InsertRange(place, [(at - half, left), (at - half, down), (at + half, down), (at + half, right)]);
        }

        if (top.Max(p => p.Height) < Least)
        {
            return null;
        }

        var ring = ((Point2[])[new(0, 0), new(lengths[^1], 0)]).Concat(top.AsEnumerable().Reverse().Select(p => new Point2(p.Along, p.Height)));
        return Named(section, name, WallParts.Plain(ring), "bends with the platform");

        double Level(List<(double Along, double Height)> points, double at)
        {
            int next = Math.Clamp(points.FindIndex(p => p.Along >= at), 1, points.Count - 1);
            var (a, b) = (points[next - 1], points[next]);
            return b.Along == a.Along ? b.Height : a.Height + ((b.Height - a.Height) * (at - a.Along) / (b.Along - a.Along));
        }
    }

    private static double Between(double[] stations, double[] lengths, double s)
    {
        int next = Math.Clamp(Array.FindIndex(stations, x => x >= s), 1, stations.Length - 1);
        return lengths[next - 1] + ((lengths[next] - lengths[next - 1]) * (s - stations[next - 1]) / (stations[next] - stations[next - 1]));
    }

    private static CutPart Named(PlatformSection section, string name, IReadOnlyList<Point2> ring, string note) =>
        new(Invariant($"{section.Number} {name}"), StockKind.Frame, [new(CutLayer.Cut, ring)])
        {
            Words = [new(Invariant($"{section.Number}  {name}"), new(3, 1), 2.5)],
            Note = note,
        };
}
