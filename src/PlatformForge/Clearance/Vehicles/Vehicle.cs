using PlatformForge.Geometry;

namespace PlatformForge.Clearance.Vehicles;

/// <summary>What carries a part of a vehicle and so decides how it swings.</summary>
public enum PartCarrier
{
    Body,
    LeadingBogie,
    TrailingBogie,
}

/// <summary>
/// One part of a vehicle: a plan outline between two heights.
/// </summary>
/// <param name="Name">What the user calls it: body, cylinders, steps.</param>
/// <param name="Carrier">Body or bogie.</param>
/// <param name="Outline">Convex or simple ring in mm in the carrier's frame, counter-clockwise: x forward from midway between the
/// pivots (body) or from the pivot (bogie), y to the left.</param>
/// <param name="ZLow">Lowest height above rail top, mm.</param>
/// <param name="ZHigh">Greatest height above rail top, mm.</param>
public sealed record VehiclePart(string Name, PartCarrier Carrier, IReadOnlyList<Point2> Outline, double ZLow, double ZHigh)
{
    /// <summary>A rectangle symmetrical about the carrier's long axis.</summary>
    public static VehiclePart Box(string name, PartCarrier carrier, double fromX, double toX, double width, double zLow, double zHigh) =>
        new(name, carrier, [new(fromX, -width / 2), new(toX, -width / 2), new(toX, width / 2), new(fromX, width / 2)], zLow, zHigh);
}

/// <summary>
/// A rigid body carried at two pivots that follow the track. A vehicle without bogies is the case of nil bogie wheelbase:
/// its pivots are its end axles.
/// </summary>
/// <param name="Name">Name in the project file.</param>
/// <param name="PivotCentres">Distance between the pivots (bogie centres, or rigid wheelbase), mm.</param>
/// <param name="LeadingWheelbase">Wheelbase of the leading bogie, mm; 0 when the pivot itself rides on the centreline.</param>
/// <param name="TrailingWheelbase">The same for the trailing bogie.</param>
/// <param name="Parts">Everything that can touch.</param>
public sealed record Vehicle(string Name, double PivotCentres, double LeadingWheelbase, double TrailingWheelbase, IReadOnlyList<VehiclePart> Parts)
{
    /// <summary>Body side that a passenger steps from: half its width in mm, its height above rail top, and its reach along the body
    /// from midway between the pivots. Null for vehicles nobody boards.</summary>
    public DoorSill? Sill { get; init; }

    /// <summary>Whether the vehicle also runs the other way round; a vehicle with equal ends gains nothing by it.</summary>
    public bool EitherWayRound { get; init; } = true;

    /// <summary>Key of the vehicle in the project file, for findings.</summary>
    public string Key { get; init; } = "vehicle";

    /// <summary>Name of the articulated set or coupled unit that it is a body of; null when it runs by itself. A body of a set may have its
    /// pivots beyond its ends, where it shares bogies with its neighbours.</summary>
    public string? SetName { get; init; }

    /// <summary>How far forward of the middle of its axles the leading bogie's pivot lies, mm. Other than nil where what carries a vehicle
    /// is the frame of
    /// another: a truck hangs on its pivot at the engine's frames, whose axles are the coupled wheels.</summary>
    public double LeadingPivotAhead { get; init; }

    /// <summary>The same of the trailing bogie.</summary>
    public double TrailingPivotAhead { get; init; }

    /// <summary>Whether it has no wheels and hangs at the bodies ahead and behind, which are its bogies.</summary>
    public bool Hangs { get; init; }

    /// <summary>Name of the vehicle whose leading or trailing truck this is; null for what runs by itself.</summary>
    public string? TruckOf { get; init; }

    /// <summary>Least radius in mm the vehicle can run, when stated by the user.</summary>
    public double? LeastRadius { get; init; }

    /// <summary>Side play of a middle axle each way, mm, when the vehicle has one between the axles that guide it and its play is known.</summary>
    public double? MiddleAxlePlay { get; init; }

    /// <summary>Length over everything on the body, mm.</summary>
    public double Length
    {
        get
        {
            var xs = Parts.Where(p => p.Carrier == PartCarrier.Body).SelectMany(p => p.Outline).Select(p => p.X).ToArray();
            return xs.Length == 0 ? PivotCentres : xs.Max() - xs.Min();
        }
    }
}

/// <summary>Where a passenger steps from; all in mm.</summary>
public sealed record DoorSill(double HalfWidth, double Height, double FromX, double ToX);
