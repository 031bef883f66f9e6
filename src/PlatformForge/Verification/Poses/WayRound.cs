using PlatformForge.Clearance;
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
