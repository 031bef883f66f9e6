namespace PlatformForge.Clearance.Sweeping;

/// <summary>How the play of wheels reaches the pivots of a body.</summary>
internal static class PivotPlay
{
    /// <summary>
    /// How many times the wheels' play a pivot may be off: once, where it lies between the axles that carry it; 2|x|/a times at a distance x from the middle of axles a
    /// apart, where it lies beyond them.
    /// </summary>
    public static double Share(Vehicle vehicle) => Math.Max(1, Math.Max(
        Of(vehicle.LeadingPivotAhead, vehicle.LeadingWheelbase), Of(vehicle.TrailingPivotAhead, vehicle.TrailingWheelbase)));

    private static double Of(double ahead, double wheelbase) => ahead == 0 ? 1 : 2 * Math.Abs(ahead) / wheelbase;
}
