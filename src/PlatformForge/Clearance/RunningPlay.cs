namespace PlatformForge.Clearance;

/// <summary>
/// How far vehicles may stand off the centreline, each way. Both ends may be off to the same side (shift) or to opposite
/// sides (yaw); at a distance x from midway between two guided points a apart the worst of both is
/// q·max(1, 2|x|/a).
/// </summary>
/// <param name="Wheelset">Side play of a wheelset between the rails, each way from the middle, mm.</param>
/// <param name="Pivot">Side play of the body on its bogie pivot, each way, mm.</param>
/// <param name="Roll">Greatest lean of a body, each way, radians: suspension, and cant the track was not measured with.</param>
/// <param name="RollCentreHeight">Height above rail top about which bodies lean, mm.</param>
public sealed record RunningPlay(double Wheelset, double Pivot = 0, double Roll = 0, double RollCentreHeight = 0)
{
    public static RunningPlay None { get; } = new(0);

    /// <summary>
    /// Side play of a wheelset each way: half of what the gauge leaves beside back-to-back and two flanges, mm. Never below 0.
    /// </summary>
    /// <param name="gauge">Distance between the running edges, mm.</param>
    /// <param name="backToBack">Distance between the backs of the wheels, mm.</param>
    /// <param name="flangeThickness">Thickness of one flange at rail level, mm.</param>
    public static double WheelsetPlay(double gauge, double backToBack, double flangeThickness) =>
        Math.Max(0, (gauge - backToBack - (2 * flangeThickness)) / 2);

    /// <summary>Sideways travel in mm at a height above rail top that the lean adds.</summary>
    public double LeanAt(double height) => Math.Sin(Roll) * Math.Abs(height - RollCentreHeight);
}
