namespace PlatformForge.Sections.Forms;

/// <summary>What a print takes, forecast from the lines of its layers; the slicer decides in the end.</summary>
/// <param name="Volume">Solid volume, mm³.</param>
/// <param name="Plastic">What becomes plastic of it, open filling counted by its share, mm³.</param>
/// <param name="Grams">Mass of filament.</param>
/// <param name="Metres">Length of filament.</param>
/// <param name="Hours">Printing time.</param>
/// <param name="Cost">Price of the filament; null when no price was given.</param>
public sealed record PrintEstimate(double Volume, double Plastic, double Grams, double Metres, double Hours, double? Cost)
{
    /// <summary>How far a slicer's time may lie from <see cref="Hours"/> at the same speeds: held for eight of ten plates of the samples by an outside
    /// test.</summary>
    public const double Doubt = 0.2;

    /// <summary>What the figures rest on, in words for a report.</summary>
    public const string Basis =
        "from the lengths of walls and filling of every layer at the speeds and accelerations stated, without supports, brim, heating up and purge; " +
        "a slicer with the same settings comes within a fifth of the time and a tenth of the grams; the slicer decides";

    /// <summary>Estimate for volumes in mm³ and a time in hours.</summary>
    public static PrintEstimate Of(double volume, double plastic, double hours, PrinterSpec printer)
    {
        double grams = printer.Filament.Grams(plastic);
        return new(volume, plastic, grams, printer.Filament.Metres(plastic), hours, printer.Filament.PricePerKilogram * grams / 1000);
    }

    /// <summary>Several prints together.</summary>
    public static PrintEstimate Sum(IEnumerable<PrintEstimate> parts, PrinterSpec printer)
    {
        PrintEstimate[] all = [.. parts];
        return Of(all.Sum(e => e.Volume), all.Sum(e => e.Plastic), all.Sum(e => e.Hours), printer);
    }
}
