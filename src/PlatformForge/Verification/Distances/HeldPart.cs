using PlatformForge.Clearance;
using PlatformForge.Verification.Rules;

namespace PlatformForge.Verification.Distances;

/// <summary>A vehicle's part made ready for measuring.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Carrier">What carries it.</param>
/// <param name="Slab">The height band in which things are held away from it, mm above the baseboard.</param>
/// <param name="Bare">Its outline.</param>
/// <param name="Played">Its outline widened by the vehicle's play.</param>
internal sealed record HeldPart(string Name, PartCarrier Carrier, Slab Slab, OutlineDistance Bare, OutlineDistance Played)
{
    public static HeldPart Of(VehiclePart part, Vehicle vehicle, DesignFacts facts)
    {
        // What stands at the very level a part may pass over is not held to it, and files round heights: the slab begins just above.
        double high = part.ZHigh + facts.VerticalAllowance, level = Math.Min(part.ZLow - facts.VerticalAllowance + ClearanceRule.Rounding, high);
        return new(
            part.Name,
            part.Carrier,
            new(facts.RailTop + Math.Min(level, facts.HeldDownTo ?? double.PositiveInfinity), facts.RailTop + high),
            new(part.Outline),
            new(PlayedOutline.Of(part, vehicle, facts.Play)));
    }
}
