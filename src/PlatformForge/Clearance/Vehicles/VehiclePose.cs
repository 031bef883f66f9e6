using PlatformForge.Geometry;

namespace PlatformForge.Clearance.Vehicles;

/// <summary>Place and direction of a carrier's frame in plan: x axis along <paramref name="Forward"/>.</summary>
public readonly record struct CarrierPose(Point2 Origin, Point2 Forward)
{
    /// <summary>A point of the carrier's frame in the layout frame, mm.</summary>
    public Point2 Apply(Point2 p) => Origin + (Forward * p.X) + (Forward.Left * p.Y);
}

/// <summary>A vehicle standing on the track.</summary>
/// <param name="LeadingChainage">Chainage in mm of the leading pivot as the wheels tell it: the foremost axle stands half a wheelbase of track ahead of
/// it.</param>
/// <param name="Body">Frame of the body, origin midway between the pivots.</param>
/// <param name="LeadingBogie">Frame of the leading bogie, origin at its pivot.</param>
/// <param name="TrailingBogie">Frame of the trailing bogie.</param>
public readonly record struct VehiclePose(double LeadingChainage, CarrierPose Body, CarrierPose LeadingBogie, CarrierPose TrailingBogie)
{
    public CarrierPose Of(PartCarrier carrier) => carrier switch
    {
        PartCarrier.LeadingBogie => LeadingBogie,
        PartCarrier.TrailingBogie => TrailingBogie,
        _ => Body,
    };
}
