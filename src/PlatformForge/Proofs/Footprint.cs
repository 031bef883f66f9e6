using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Track;
using static System.FormattableString;

namespace PlatformForge.Proofs;

/// <summary>The outline of a section in plan as a thin print, with grooves where its walls stand, its openings, and its number.</summary>
internal static class Footprint
{
    // Width of a groove, mm: a line and a half of the usual nozzle; a pencil's point follows it.
    private const double Groove = 0.6;

    // Height that is above everything.
    private const double Above = 1;

    public static IEnumerable<ColumnBlock> Blocks(SectionSet set, PlatformSection section, ProofSpec spec, PrinterSpec printer, double trim,
        string mark)
    {
        var plan = set.Plan;
        var chart = new FacetedPlan(plan);
        var (from, to) = section.Trimmed(trim);
        double[] chainages = chart.Chainages(from, to);
        yield return Shape.Added(chart.Ring(plan.CopingFront, plan.Back, chainages), 0, spec.Footprint);

        double floor = spec.Footprint - Math.Max(printer.Layer, spec.Footprint / 3);
        yield return Shape.Taken(chart.Ring(plan.WallFace, plan.WallFace.Shifted(Groove), chainages), floor, spec.Footprint + Above);
        yield return Shape.Taken(chart.Ring(plan.Body.FarWallFace.Shifted(-Groove - (plan.Body.FarCopingBack is null ? Groove : 0)),
            plan.Body.FarWallFace.Shifted(plan.Body.FarCopingBack is null ? -Groove : 0), chainages), floor, spec.Footprint + Above);
        foreach (var hole in plan.Features.SelectMany(f => f.Prisms).Where(p => p.Act == PrismAct.Remove && p.Shows == PrismFace.Deck
            && p.Middle.Chainage > from && p.Middle.Chainage < to))
        {
            yield return Shape.Taken(hole.Ring, -Above, spec.Footprint + Above);
        }

        foreach (var stroke in Number(set, section, (from + to) / 2, floor, Words(section, mark), spec, printer))
        {
            yield return stroke;
        }
    }

    // In the middle of the deck, to be read from the track.
    private static IEnumerable<ColumnBlock> Number(SectionSet set, PlatformSection section, double middle, double floor, string words,
        ProofSpec spec, PrinterSpec printer)
    {
        var plan = set.Plan;
        double near = plan.CopingFront.At(middle), far = plan.Back.At(middle);
        var at = plan.ToLayout(middle, (near + far) / 2);
        var right = plan.Spine.Tangent(middle);
        right = plan.Side.Outward(1) > 0 ? right : right * -1;
        var room = Room(set, section, middle);
        var strokes = Lettering.Cut([words], room * -0.5, room * 0.5, spec.Footprint, printer, 8);
        return strokes.Select(s => s with { Outline = Array.ConvertAll(s.Outline, p => at + (right * p.X) + (right.Left * p.Y)), Lower = new(floor) });
    }

    /// <summary>What is cut into it.</summary>
    public static IReadOnlyList<string> Engraved(SectionSet set, PlatformSection section, PrinterSpec printer, string mark) =>
        Lettering.Kept([Words(section, mark)], Room(set, section, (section.From + section.To) / 2), printer);

    private static string Words(PlatformSection section, string mark) => Invariant($"{mark}  {section.Number}/{section.Count}");

    private static Point2 Room(SectionSet set, PlatformSection section, double middle) =>
        new(Math.Min(40, (section.To - section.From) / 2), Math.Min(10, (set.Plan.Back.At(middle) - set.Plan.CopingFront.At(middle)) / 3));
}
