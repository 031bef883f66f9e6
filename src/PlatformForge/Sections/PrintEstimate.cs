namespace PlatformForge.Sections;

/// <summary>What a print takes, estimated from its solid volume; the slicer decides in the end.</summary>
/// <param name="Volume">Solid volume, mm³.</param>
/// <param name="Grams">Mass of filament.</param>
/// <param name="Metres">Length of filament.</param>
/// <param name="LeastHours">Time if the stated flow is held throughout.</param>
/// <param name="MostHours">Time at the average that <see cref="FlowShare"/> of the stated flow is.</param>
/// <param name="Cost">Price of the filament; null when no price was given.</param>
public sealed record PrintEstimate(double Volume, double Grams, double Metres, double LeastHours, double MostHours, double? Cost)
{
    /// <summary>Share of the steady flow that is left as an average over walls, turns and travel. Common practice, no published source.</summary>
    public const double FlowShare = 0.4;

    /// <summary>What the figures rest on, in words for a report.</summary>
    public const string Basis =
        "from the solid volume at the stated density, all of it plastic (walls this thin have no infill), without supports, brim and purge; " +
        "time from the stated flow, the longer one at two fifths of it; the slicer decides";

    /// <summary>Estimate for a solid volume in mm³.</summary>
    public static PrintEstimate Of(double volume, PrinterSpec printer)
    {
        double grams = printer.Filament.Grams(volume), hours = volume / printer.Flow / 3600;
        return new(volume, grams, printer.Filament.Metres(volume), hours, hours / FlowShare, printer.Filament.PricePerKilogram * grams / 1000);
    }
}
