using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Proofs;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Chapters;

/// <summary>How the sections are to be printed, in words: what has to be set in the slicer for them to come out as planned and as forecast.</summary>
internal static class PrintWords
{
    /// <summary>A line each: supports, brim, layers, lines and filling, speeds.</summary>
    public static IEnumerable<string> Of(SectionSet set, PrinterSpec printer)
    {
        yield return Invariant($"Supports: {Supports(set)}.");
        yield return Invariant($"Brim: {Brim(set)}.");
        yield return Invariant($"Layer {Figures.Short(printer.Layer)} mm, first layer {Figures.Short(printer.FirstLayerHeight)} mm, ")
            + Invariant($"nozzle {Figures.Short(printer.Nozzle)} mm.");
        yield return Invariant($"{printer.Walls} lines round every outline, {printer.SolidLayers} solid layers under and over, ")
            + Invariant($"filling {Figures.Fixed(printer.Infill * 100, 0)} % between them.");
        yield return "Lay each file as it is: it lies on the bed as it prints, deck down where the table says so. "
            + (printer.IsCorrected ? "Shift it, but do not turn it: what the printer gets wrong along and across its bed is made up for in the file."
                : "Turn it about the upright axis only.");
        if (printer.MeasuredStrip is { } strip)
        {
            yield return Invariant($"A strip of 100 mm measured {Figures.Short(strip.X)} along and {Figures.Short(strip.Y)} across: files are ")
                + Invariant($"{StripRule.Percent(printer.Stretch.X)} and {StripRule.Percent(printer.Stretch.Y)}. Set no shrinkage in the slicer besides.");
        }

        yield return Speeds(printer);
    }

    private static string Supports(SectionSet set)
    {
        var hanging = set.Sections.Where(s => s.Overhangs.Unsupported >= WorthSupport).Select(s => s.Number).ToArray();
        return hanging.Length == 0 ? "off" : Invariant($"off, but for {Named(hanging)}, where something hangs free");
    }

    private static string Brim(SectionSet set)
    {
        var slender = set.Sections.Where(s => s.Brim > 0).ToArray();
        return slender.Length == 0 ? "none needed"
            : Invariant($"{Figures.Short(slender.Max(s => s.Brim))} mm round {Named([.. slender.Select(s => s.Number)])}, long and narrow; ")
            + "the others need none";
    }

    private static string Named(int[] sections) => Invariant($"section{(sections.Length == 1 ? "" : "s")} {string.Join(", ", sections)}");

    private static string Speeds(PrinterSpec printer)
    {
        var s = printer.Speeds;
        string kind = s == PrintSpeeds.Of(printer.Pace) ? Invariant($" ({printer.Pace.ToString().ToLowerInvariant()} pace; common practice, no source)") : "";
        return Invariant($"Time is forecast at {N(s.OuterWall)} mm/s for outer walls, {N(s.Wall)} for other walls, {N(s.SmallWall)} round ")
            + Invariant($"holes, {N(s.Infill)} for filling, {N(s.Bridge)} for bridges, {N(s.FirstLayer)} in the first layer, {N(s.Travel)} between, ")
            + Invariant($"at {N(s.Acceleration)} mm/s²{kind}. Put your slicer's own figures into printer.speeds.");
    }

    private static string N(double figure) => Figures.Short(figure);

    // A square of 2 mm: less than that droops a little and needs no support. Common practice, no source.
    private const double WorthSupport = 4;
}
