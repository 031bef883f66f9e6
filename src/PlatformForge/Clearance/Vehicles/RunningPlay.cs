namespace PlatformForge.Clearance.Vehicles;

/// <summary>
/// How far vehicles may stand off the centreline, each way, and how far they may lean. Every wheelset stands off by itself, square to the
/// track. What stands on two of
/// them at a distance a apart goes sideways with both or, when they are off to opposite sides, turns: to first order the most at a distance x
/// from midway is q·max(1, 2|x|/a).
/// </summary>
/// <param name="Wheelset">Side play of a wheelset between the rails, each way from the middle, mm.</param>
/// <param name="Pivot">Side play of a body on its bogie pivot, each way across the bogie, mm. Only vehicles that have pivots have it.</param>
/// <param name="Roll">Greatest lean of a body on its springs, each way, radians.</param>
/// <param name="RollCentreHeight">Height above rail top about which bodies lean, mm.</param>
public sealed record RunningPlay(double Wheelset, double Pivot = 0, double Roll = 0, double RollCentreHeight = 0)
{
    public static RunningPlay None { get; } = new(0);

    /// <summary>Greatest cant of the tracks, radians: with one rail higher than the other everything leans about rail top, bogies too.
    /// Taken either way.</summary>
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

    /// <summary>Sideways travel in mm at a height above rail top that a body's lean on its springs adds in its middle, by itself.</summary>
    public double LeanAt(double height) => Math.Sin(Roll) * Math.Abs(height - RollCentreHeight);

    /// <summary>Sideways travel in mm at a height above rail top that the cant adds in the middle, for bodies and bogies alike, by itself.</summary>
    public double CantAt(double height) => Math.Sin(Cant) * Math.Abs(height);

    /// <summary>Lowest height above rail top in mm that any place of a part sinks to: its lower side when it leans as far as it can, off
    /// the middle by all its play.</summary>
    public double Lowest(VehiclePart part, Vehicle vehicle) => Lean(part.Carrier).Lowest(HalfWidth(part), part.ZLow, Shift(part, vehicle));

    /// <summary>Greatest height above rail top in mm that any place of a part rises to.</summary>
    public double Highest(VehiclePart part, Vehicle vehicle) => Lean(part.Carrier).Highest(HalfWidth(part), part.ZHigh, Shift(part, vehicle));

    /// <summary>How far things on a carrier lean: a body by its springs and the cant, what stands on its axles by the cant.</summary>
    internal LeanRange Lean(PartCarrier carrier) => new(carrier == PartCarrier.Body ? Roll : 0, Cant, RollCentreHeight);

    private static double HalfWidth(VehiclePart part) => part.Outline.Max(p => Math.Abs(p.Y));

    // How far the play brings a part off the middle, to first order.
    private double Shift(VehiclePart part, Vehicle vehicle)
    {
        var guides = GuidedPoints.Of(vehicle, part.Carrier, this);
        double lever = Math.Max(1, part.Outline.Max(p => Math.Abs(p.X)) / (guides.Apart / 2));
        return lever * Math.Max(guides.Leading.Most, guides.Trailing.Most);
    }
}
