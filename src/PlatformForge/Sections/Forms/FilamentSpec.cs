namespace PlatformForge.Sections.Forms;

/// <summary>What is printed with; every figure goes into an estimate only.</summary>
/// <param name="Name">Kind of plastic, PLA.</param>
/// <param name="Density">Grams per cm³ (PLA 1.22 to 1.26, PETG 1.25 to 1.29).</param>
/// <param name="Diameter">Diameter of the strand, mm.</param>
/// <param name="PricePerKilogram">Price of a kilogram in <paramref name="Currency"/>; null leaves cost out.</param>
/// <param name="Currency">Unit the price is in, as the user writes it.</param>
public sealed record FilamentSpec(string Name = "PLA", double Density = 1.24, double Diameter = 1.75, double? PricePerKilogram = null, string Currency = "")
{
    /// <summary>Mass in grams of a solid volume in mm³.</summary>
    public double Grams(double volume) => volume * Density / 1000;

    /// <summary>Length of strand in metres that holds a volume in mm³.</summary>
    public double Metres(double volume) => volume / (Math.PI * Diameter * Diameter / 4) / 1000;
}
