using PlatformForge.Sections.Forecasts;
using PlatformForge.Sections.Poses;
using PlatformForge.Solids;

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
    ColumnBlock[] Plain, ColumnBlock[] TrimStart, ColumnBlock[] TrimEnd, IReadOnlyList<ColumnBlock[]> Fillings, ColumnBlock[] Letters, IReadOnlyList<ReliefPart> Reliefs, double Bores)
{
    /// <summary>The volumes, each of the columns that stand.</summary>
    public SectionVolumes Volumes() => new(Of(Plain), Of(TrimStart) + Of(TrimEnd), Fillings.Sum(Of), Bores, Of(Letters))
    {
        Relief = Reliefs.Sum(r => Of(r.Whole) - Of([.. r.Whole, .. r.Relief])),
    };

    private static double Of(ColumnBlock[] blocks) => SolidRaiser.Volume(blocks);
}

/// <summary>Everything that the account of a section depends on.</summary>
internal sealed record AccountInput(SectionForm Form, VolumeParts Parts, PrinterSpec Printer);

/// <summary>The account of a section.</summary>
/// <param name="Volumes">How its volume comes about.</param>
/// <param name="Overhangs">What hangs free.</param>
/// <param name="Estimate">Filament, time and cost.</param>
internal sealed record SectionAccount(SectionVolumes Volumes, OverhangReport Overhangs, PrintEstimate Estimate)
{
    public static SectionAccount Of(AccountInput input, CancellationToken cancel)
    {
        var (form, parts, printer) = input;
        var volumes = parts.Volumes() with { Facing = form.Solid.ReliefVolume };
        cancel.ThrowIfCancellationRequested();
        var onBed = form.Solid.Mesh.Moved(form.ToLayout.Inverse());
        var overhangs = OverhangMeter.Measure(onBed, printer.Layer, printer.Nozzle, printer.LongestBridge);
        cancel.ThrowIfCancellationRequested();
        return new(volumes, overhangs, PrintForecast.Of(onBed, form.Solid.ColumnVolume, printer));
    }
}
