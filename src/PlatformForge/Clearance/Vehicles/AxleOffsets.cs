namespace PlatformForge.Clearance.Vehicles;

/// <summary>
/// How far each axle of a vehicle stands to the left of the track's middle, mm, foremost first, and each end of the body on its pivot to
/// the left across its bogie.
/// All nil for a vehicle that stands true.
/// </summary>
internal readonly record struct AxleOffsets(double LeadFront, double LeadRear, double LeadPivot, double TrailFront, double TrailRear, double TrailPivot)
{
    /// <summary>The offsets when the leading end is off by a share of the most that it can be, −1 to 1, and the trailing end by another.</summary>
    public static AxleOffsets Of(in EndPlay lead, double leading, in EndPlay trail, double trailing) => new(
        lead.Front * leading, lead.Rear * leading, lead.Pivot * leading, trail.Front * trailing, trail.Rear * trailing, trail.Pivot * trailing);
}
