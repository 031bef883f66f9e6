using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms.Furniture;

/// <summary>What divides a stretch between two walls, mm: ribs, or the bents of a trestle.</summary>
/// <param name="Pitch">Greatest distance from middle to middle; 0 for none.</param>
/// <param name="Thickness">Of each.</param>
/// <param name="Depth">Below the deck's underside; null down to the baseboard.</param>
/// <param name="IsBents">Whether posts stand under them.</param>
internal sealed record RibRow(double Pitch, double Thickness, double? Depth, bool IsBents)
{
    /// <summary>Key of the pitch under the platform's.</summary>
    public string Key => IsBents ? "trestle.pitch" : "ribs.pitch";

    public static RibRow Ribs(RibSpec ribs) => new(ribs.Pitch, ribs.Thickness, ribs.Depth, false);

    public static RibRow Bents(TrestleSpec trestle) => new(trestle.Pitch, trestle.Post, trestle.Cap, true);
}
