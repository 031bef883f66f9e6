using PlatformForge.Geometry;
using PlatformForge.Sections.Forecasts;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Poses;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
using PlatformForge.Units.Memories;

namespace PlatformForge.Sections;

/// <summary>The blocks of an end with and without what is taken off the edge that lies on the bed.</summary>
/// <param name="Whole">Without it.</param>
/// <param name="Relief">What is taken off.</param>
internal sealed record ReliefPart(ColumnBlock[] Whole, ColumnBlock[] Relief);

/// <summary>The blocks whose volumes a section's volume comes about by.</summary>
/// <param name="Plain">The platform between the cuts.</param>
/// <param name="TrimStart">What is trimmed off at its start; empty where nothing is.</param>
/// <param name="TrimEnd">What is trimmed off at its end.</param>
/// <param name="Fillings">Walls and bosses of its joints, as far as they fill what was hollow.</param>
/// <param name="Letters">Lettering, as material.</param>
/// <param name="Reliefs">Edges taken off for the bed.</param>
/// <param name="Bores">Volume of its bores, mm³.</param>
internal sealed record VolumeParts(
    ColumnBlock[] Plain, ColumnBlock[] TrimStart, ColumnBlock[] TrimEnd, IReadOnlyList<ColumnBlock[]> Fillings, ColumnBlock[] Letters,
    IReadOnlyList<ReliefPart> Reliefs, double Bores)
{
    /// <summary>The volumes, each of the columns that stand.</summary>
    public SectionVolumes Volumes() => new(Of(Plain), Of(TrimStart) + Of(TrimEnd), Fillings.Sum(Of), Bores, Of(Letters))
    {
        Relief = Reliefs.Sum(r => Of(r.Whole) - Of([.. r.Whole, .. r.Relief])),
    };

    private static double Of(ColumnBlock[] blocks) => SolidRaiser.Volume(blocks);
}

/// <summary>The account of a section, each part of it remembered by what it depends on.</summary>
/// <param name="Volumes">How its volume comes about.</param>
/// <param name="Overhangs">What hangs free.</param>
/// <param name="Estimate">Filament, time and cost.</param>
internal sealed record SectionAccount(SectionVolumes Volumes, OverhangReport Overhangs, PrintEstimate Estimate)
{
    public static SectionAccount Of(SectionForm form, VolumeParts parts, PrinterSpec printer, Memory memory, CancellationToken cancel)
    {
        var volumes = memory.Of("volumes of a section", parts, static (p, _) => p.Volumes(), cancel) with { Facing = form.Solid.ReliefVolume };
        var lying = new OverhangInput(form, printer.Layer, printer.Nozzle, printer.LongestBridge);
        var overhangs = memory.Of("overhangs of a section", lying, OverhangInput.Measured, cancel);
        return new(volumes, overhangs, memory.Of("forecast of a section", new ForecastInput(form, printer), ForecastInput.Made, cancel));
    }

    private static Mesh OnBed(SectionForm form) => form.Solid.Mesh.Moved(form.ToLayout.Inverse());

    private sealed record OverhangInput(SectionForm Form, double Layer, double Nozzle, double LongestBridge)
    {
        public static OverhangReport Measured(OverhangInput input, CancellationToken cancel) =>
            OverhangMeter.Measure(OnBed(input.Form), input.Layer, input.Nozzle, input.LongestBridge);
    }

    private sealed record ForecastInput(SectionForm Form, PrinterSpec Printer)
    {
        public static PrintEstimate Made(ForecastInput input, CancellationToken cancel) =>
            PrintForecast.Of(OnBed(input.Form), input.Form.Solid.ColumnVolume, input.Printer);
    }
}
