using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Exports.Stock;

/// <summary>The edge alone, in card: laid at the coping's height beside the track, vehicles are pushed past it before anything else is cut. A piece for each
/// section and face.</summary>
internal sealed class MockUpParts(StockBody body)
{
    // Width of the card, mm: stiff enough to stand on two blocks.
    private const double Width = 35;

    // Chainages are ticked so far apart, so long, mm.
    private const double Tick = 50, TickLength = 8;

    // Their figures begin so far from the edge, mm, past the tick's end, in type of this size.
    private const double FigureFrom = 11, FigureSize = 2.5;

    /// <summary>The pieces of a section, one for each face of the platform.</summary>
    public IEnumerable<CutPart> Of(PlatformSection section)
    {
        var plan = body.Plan;
        yield return Of(section, plan.First, section.From, section.To, plan.CopingFront, 1, Invariant($"its top {plan.Spec.Height:0.##} mm over rail top on ")
            + "the level part");
        if (plan.Faces is [_, var far])
        {
            double At(double s) => far.Chart.Locate(plan.ToLayout(s, plan.Back.At(s))).Chainage;
            double from = At(section.From), to = At(section.To);
            yield return Of(section, far, Math.Min(from, to), Math.Max(from, to), plan.Back, -1, Invariant($"its top {far.Profile.Level:0.##} mm over the ")
                + "baseboard on the level part");
        }
    }

    // The edge lies along a line of the body, the card on the side of it that the platform is on.
    private CutPart Of(PlatformSection section, FacePlan face, double from, double to, PlanLine edge, int inward, string height)
    {
        var plan = body.Plan;
        double[] stations = body.Stations(section);
        Point2 Place(double s, double off) => plan.ToLayout(s, edge.At(s) + (inward * off));
        double Deep(double s) => Math.Min(Width, plan.Body.WidthAt(s));
        var chord = Place(section.To, 0) - Place(section.From, 0);
        var along = chord * (1 / chord.Length);
        Point2 Turned(Point2 p) => new(Point2.Dot(p, along), Point2.Dot(p, along.Left));

        Point2[] front = [.. stations.Select(s => Turned(Place(s, 0)))], back = [.. stations.Reverse().Select(s => Turned(Place(s, Deep(s))))];
        var lines = new List<CutLine> { new(CutLayer.Cut, [.. front, .. back]) };
        var figures = new List<CutWords>();
        for (double s = Tick * Math.Ceiling(from / Tick); s <= to; s += Tick)
        {
            double reach = face.CopingFront.At(s);
            lines.Add(new(CutLayer.Mark, [Turned(face.ToLayout(s, reach)), Turned(face.ToLayout(s, reach + TickLength))], IsClosed: false));
            figures.Add(new(Invariant($"{s:0}"), Turned(face.ToLayout(s, reach + FigureFrom)), FigureSize));
        }

        // Where there are two edges each is named by its track.
        string own = plan.Faces.Count > 1 ? $"edge of {face.Spec.Track}" : "edge";
        double middle = (section.From + section.To) / 2;
        var words = new CutWords(Invariant($"{section.Number}  {own}, {from:0} to {to:0}"), Turned(Place(middle, Deep(middle) / 2)), 4);
        return CutPart.AtOrigin(new(Invariant($"{section.Number} {own}"), StockKind.Card, lines) { Words = [words, .. figures], Note = height });
    }
}
