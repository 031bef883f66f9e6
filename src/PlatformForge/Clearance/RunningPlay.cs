namespace PlatformForge.Clearance;

/// <summary>
/// How far vehicles may stand off the centreline, each way. Both ends may be off to the same side (shift) or to opposite
/// sides (yaw); at a distance x from midway between two guided points a apart the worst of both is
/// q·max(1, 2|x|/a).
/// </summary>
/// <param name="Wheelset">Side play of a wheelset between the rails, each way from the middle, mm.</param>
/// <param name="Pivot">Side play of the body on its bogie pivot, each way, mm.</param>
/// <param name="Roll">Greatest lean of a body on its springs, each way, radians.</param>
/// <param name="RollCentreHeight">Height above rail top about which bodies lean, mm.</param>
public sealed record RunningPlay(double Wheelset, double Pivot = 0, double Roll = 0, double RollCentreHeight = 0)
{
    public static RunningPlay None { get; } = new(0);

    /// <summary>Greatest cant of the tracks, radians: with one rail higher than the other everything leans about rail top, bogies too. Taken either way.</summary>
    public double Cant { get; init; }

    /// <summary>
    /// Side play of a wheelset each way: half of what the gauge leaves beside back-to-back and two flanges, mm. Never below 0.
    /// </summary>
    /// <param name="gauge">Distance between the running edges, mm.</param>
    /// <param name="backToBack">Distance between the backs of the wheels, mm.</param>
    /// <param name="flangeThickness">Thickness of one flange at rail level, mm.</param>
    public static double WheelsetPlay(double gauge, double backToBack, double flangeThickness) =>
        Math.Max(0, (gauge - backToBack - (2 * flangeThickness)) / 2);

    /// <summary>Cant in radians of a track whose rails differ in height, both in mm.</summary>
    public static double CantAngle(double gauge, double difference) => Math.Asin(Math.Min(1, difference / gauge));

    /// <summary>Sideways travel in mm at a height above rail top that a body's lean on its springs adds.</summary>
    public double LeanAt(double height) => Math.Sin(Roll) * Math.Abs(height - RollCentreHeight);

    /// <summary>Sideways travel in mm at a height above rail top that the cant adds, for bodies and bogies alike.</summary>
    public double CantAt(double height) => Math.Sin(Cant) * Math.Abs(height);

    /// <summary>The most that lean and cant add to a part: each part by its own heights.</summary>
    public double SwayOf(VehiclePart part)
    {
        double SwayAt(double height) => CantAt(height) + (part.Carrier == PartCarrier.Body ? LeanAt(height) : 0);
        return Math.Max(SwayAt(part.ZLow), SwayAt(part.ZHigh));
    }
}
