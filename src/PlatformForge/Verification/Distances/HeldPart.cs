using PlatformForge.Clearance;

namespace PlatformForge.Verification.Distances;

/// <summary>A vehicle's part made ready for measuring.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Carrier">What carries it.</param>
/// <param name="Slab">The height band in which things are held away from it, mm above the baseboard.</param>
/// <param name="Own">Its own heights, mm above the baseboard.</param>
/// <param name="Bare">Its outline.</param>
/// <param name="Played">Its outline widened by the vehicle's play.</param>
internal sealed record HeldPart(string Name, PartCarrier Carrier, Slab Slab, Slab Own, OutlineDistance Bare, OutlineDistance Played)
{
    public static HeldPart Of(VehiclePart part, Vehicle vehicle, DesignFacts facts)
    {
        double low = Math.Min(part.ZLow - facts.VerticalAllowance, facts.HeldDownTo ?? double.PositiveInfinity);
        return new(
            part.Name,
            part.Carrier,
            new(facts.RailTop + low, facts.RailTop + part.ZHigh + facts.VerticalAllowance),
            new(facts.RailTop + part.ZLow, facts.RailTop + part.ZHigh),
            new(part.Outline),
            new(PlayedOutline.Of(part, vehicle, facts.Play)));
    }
}
