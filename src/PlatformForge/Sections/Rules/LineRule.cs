using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies;
using PlatformForge.Units;

namespace PlatformForge.Sections.Rules;

/// <summary>What of lines and strips a printer can make, and what stands in their way.</summary>
internal static class LineRule
{
    // An inlay is so many layers deep at least, or the deck's colour shows through it: common practice, no source.
    private const double LeastLayers = 2;

    // A depth that is whole layers but for this share of one prints as stated.
    private const double Whole = 0.05;

    private const double Rounding = Tolerances.Rounding;

    public static IEnumerable<Finding> Check(PlatformPlan plan, PrinterSpec printer)
    {
        foreach (var (line, key) in plan.Body.Lines.Select(l => (Line: l, Key: KeyOf(plan, l))).Where(l => l.Line.GrooveDepth > 0).DistinctBy(l => l.Key))
        {
            foreach (var found in line.Made.IsPrinted ? Printed(line, key, printer, Before(plan, line.Made)) : [])
            {
                yield return found;
            }

            var open = plan.Openings.Where(o => Meets(o, line) && !Pierces(o, line)).Concat(Engraved(plan).Where(o => Meets(o, line)));
            foreach (var alike in open.GroupBy(o => o.Name))
            {
                yield return LineFindings.InTheWay(key, line, [.. alike], CureOf(plan, line, key, [.. alike]));
            }
        }
    }

    // The width of a kerb through which holes go that now lie before it; null where another width helps none of them.
    private static double? Wider(PlatformPlan plan, LineBand line, IReadOnlyList<Opening> open)
    {
        if (!line.Made.IsPierced || plan.Spec.Back.Kerb is not { } kerb)
        {
            return null;
        }

        double Behind(Opening o) => plan.Body.Back.At(o.Middle.Chainage) - o.Middle.Reach;
        double width = kerb.Holding(open.Max(o => Behind(o) + (o.Across / 2)));
        double least = BackSpec.Lip + kerb.Fit + (2 * LineMake.LeastLand) - Rounding;
        return width > kerb.Width && open.All(o => Behind(o) - (o.Across / 2) >= least) ? width : null;
    }

    private static Cure? CureOf(PlatformPlan plan, LineBand line, string key, IReadOnlyList<Opening> open) =>
        Wider(plan, line, open) is { } width ? Cure.Set(key + ".width", width) : Moved(plan, line, open);

    // The inset at which a feature stands just before a strip along the back; null where it has none, or another strip is in its way.
    private static Cure? Moved(PlatformPlan plan, LineBand line, IReadOnlyList<Opening> open)
    {
        var feature = plan.Features.FirstOrDefault(f => f.Openings.Contains(open[0]));
        if (line.Made is { Wall: null, IsPierced: false } || feature?.Stands.FirstOrDefault(s => s.Inset is not null)?.Inset is not { } inset)
        {
            return null;
        }

        double by = open.Max(o => o.Middle.Reach + (o.Across / 2) + LineMake.LeastLand - line.Near.At(o.Middle.Chainage)) - Rounding;
        return Cure.Set(inset.Key, inset.From == InsetFrom.Back ? Math.Ceiling((inset.Mm + by) * 100) / 100 : Math.Floor((inset.Mm - by) * 100) / 100);
    }

    // What features engrave in the deck, each as one place.
    private static IEnumerable<Opening> Engraved(PlatformPlan plan) => plan.Features.SelectMany(f => f.Prisms.Where(p => p.IsEngraved).Take(1).SelectMany(p =>
        f.Marks.OfType<AreaMark>().Select(m => new Opening(f.Name, m.Middle, m.Along, m.Across, false, null, 0))));

    private static string KeyOf(PlatformPlan plan, LineBand line) => line.Made.Name == LineMake.Retaining ? plan.Spec.Key + ".back.retaining"
        : line.Made.Name == LineMake.Kerb ? plan.Spec.Key + ".back.kerb"
        : line.Made.Name == LineMake.Tactile ? plan.Spec.Key + ".tactile"
        : plan.Spec.Faces.FirstOrDefault(f => f.WhiteLine?.Make == line.Made) is { } face ? $"{plan.Spec.Key}.{face.Key}.line" : plan.Spec.Key + ".line";

    // What stands before a retaining wall's own thickness: its oversail, and what is laid on it.
    private static double Before(PlatformPlan plan, LineMake made) => made.Wall is { } wall ? wall.Oversail + (plan.Spec.Facing?.FaceDepth(false) ?? 0) : 0;

    private static IEnumerable<Finding> Printed(LineBand line, string key, PrinterSpec printer, double before)
    {
        var made = line.Made;
        double width = line.Far.At(line.From) - line.Near.At(line.From), layers = made.Depth / printer.Layer;
        double own = width - (2 * made.Fit) - before;
        if (own < printer.LeastWall - Rounding)
        {
            double air = made.Wall is null && !made.IsPierced ? 2 * made.Fit : 0; // of strips along the back the width is stated without it
            yield return LineFindings.TooNarrow(key, made, own, printer.Nozzle, (printer.LeastWall, printer.LeastWall + air + before));
        }

        double least = (made.Form == LineForm.Inlay ? LeastLayers : 1) * printer.Layer;
        if (made.Depth < least - (Whole * printer.Layer))
        {
            yield return LineFindings.TooThin(key, made, printer.Layer, least);
        }
        else if (made.Form == LineForm.Inlay && Math.Abs(layers - Math.Round(layers)) > Whole)
        {
            yield return LineFindings.NotWhole(key, made, printer.Layer, Math.Max(LeastLayers, Math.Round(layers)) * printer.Layer);
        }

        if (made.Pattern != StripPattern.Plain && made.Stud < printer.LeastWall - Rounding)
        {
            yield return LineFindings.StudTooSmall(key, made, printer.Nozzle, printer.LeastWall);
        }

        if (made.Rise > 0)
        {
            yield return LineFindings.Raised(key, made);
        }
    }

    // What goes through a kerb with a line of the nozzle on either side of it.
    private static bool Pierces(Opening open, LineBand line)
    {
        double s = open.Middle.Chainage, t = open.Middle.Reach, half = (open.Across / 2) + (2 * LineMake.LeastLand);
        return line.Made.IsPierced && t - half >= line.Near.At(s) + line.Made.Fit && t + half <= line.Far.At(s) - line.Made.Fit;
    }

    // What is let into the deck at a place, with a line of the nozzle about it, and a strip.
    private static bool Meets(Opening open, LineBand line)
    {
        double s = open.Middle.Chainage, t = open.Middle.Reach, half = (open.Across / 2) + LineMake.LeastLand;
        return s > line.From - open.Along && s < line.To + open.Along && t + half > line.Near.At(s) && t - half < line.Far.At(s);
    }
}
