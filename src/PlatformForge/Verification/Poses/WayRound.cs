using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;

namespace PlatformForge.Verification.Poses;

/// <summary>Turns a vehicle end for end.</summary>
internal static class WayRound
{
    /// <summary>The same vehicle with what led now trailing; outlines are turned by half a turn.</summary>
    public static Vehicle Turned(Vehicle vehicle) => vehicle with
    {
        LeadingWheelbase = vehicle.TrailingWheelbase,
        TrailingWheelbase = vehicle.LeadingWheelbase,
        LeadingPivotAhead = -vehicle.TrailingPivotAhead,
        TrailingPivotAhead = -vehicle.LeadingPivotAhead,
        Parts = [.. vehicle.Parts.Select(Turned)],
    };

    /// <summary>Whether a vehicle turned end for end is what it was before: then it comes as near one way round as the other.</summary>
    public static bool IsAlike(Vehicle vehicle) =>
        vehicle.LeadingWheelbase == vehicle.TrailingWheelbase && vehicle.LeadingPivotAhead == -vehicle.TrailingPivotAhead
        && vehicle.Parts.Select(Turned).All(turned => vehicle.Parts.Any(part => IsSame(part, turned)));

    // The corner that a ring begins with makes no difference.
    private static bool IsSame(VehiclePart a, VehiclePart b)
    {
        int count = a.Outline.Count;
        return a.Carrier == b.Carrier && a.ZLow == b.ZLow && a.ZHigh == b.ZHigh && count == b.Outline.Count
            && Enumerable.Range(0, Math.Max(1, count)).Any(first => Enumerable.Range(0, count).All(i => a.Outline[i] == b.Outline[(first + i) % count]));
    }

    private static VehiclePart Turned(VehiclePart part) => part with
    {
        Outline = [.. part.Outline.Select(p => new Point2(-p.X, -p.Y))],
        Carrier = part.Carrier switch
        {
            PartCarrier.LeadingBogie => PartCarrier.TrailingBogie,
            PartCarrier.TrailingBogie => PartCarrier.LeadingBogie,
            _ => PartCarrier.Body,
        },
    };
}
