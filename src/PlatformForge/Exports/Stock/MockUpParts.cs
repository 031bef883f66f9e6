using PlatformForge.Geometry;
using PlatformForge.Sections;
using static System.FormattableString;

namespace PlatformForge.Exports.Stock;

/// <summary>The edge alone, in card: laid at the coping's height beside the track, vehicles are pushed past it before anything else is cut.</summary>
internal sealed class MockUpParts(StockBody body)
{
    // Width of the card, mm: stiff enough to stand on two blocks.
    private const double Width = 35;

    // Chainages are ticked so far apart, mm.
    private const double Tick = 50;

    public CutPart Of(PlatformSection section)
    {
        var plan = body.Plan;
        double[] stations = body.Stations(section);
        Point2 Place(double s, double off) => plan.ToLayout(s, plan.CopingFront.At(s) + off);
        double Deep(double s) => Math.Min(Width, plan.Body.WidthAt(s));
        var chord = plan.ToLayout(section.To, plan.CopingFront.At(section.To)) - plan.ToLayout(section.From, plan.CopingFront.At(section.From));
        var along = chord * (1 / chord.Length);
        Point2 Turned(Point2 p) => new(Point2.Dot(p, along), Point2.Dot(p, along.Left));

        Point2[] front = [.. stations.Select(s => Turned(Place(s, 0)))], back = [.. stations.Reverse().Select(s => Turned(Place(s, Deep(s))))];
        var lines = new List<CutLine> { new(CutLayer.Cut, [.. front, .. back]) };
        for (double s = Tick * Math.Ceiling(section.From / Tick); s <= section.To; s += Tick)
        {
            lines.Add(new(CutLayer.Mark, [Turned(Place(s, 0)), Turned(Place(s, 8))], IsClosed: false));
        }

        double middle = (section.From + section.To) / 2;
        var words = new CutWords(Invariant($"{section.Number}  edge, {section.From:0} to {section.To:0}"), Turned(Place(middle, Deep(middle) / 2)), 4);
        string note = Invariant($"its top {plan.Spec.Height:0.##} mm over rail top on the level part");
        return CutPart.AtOrigin(new(Invariant($"{section.Number} edge"), StockKind.Card, lines) { Words = [words], Note = note });
    }
}
