using PlatformForge.Clearance.Vehicles;

namespace PlatformForge.Verification.Poses;

/// <summary>How far the axles at one end of a vehicle stand to the left of the track's middle, and the body on its pivot to the left across what carries it,
/// mm.</summary>
internal readonly record struct EndOff(double Front, double Rear, double Pivot)
{
    /// <summary>
    /// An end pressed to the left as far as it goes: a wheelset between the rails; a pivot between its axles by both of them, a pivot beyond them by the
    /// nearer to the left
    /// and the farther to the right, which turns what carries it; and the body on a bogie's pivot by the pivot's own play. A hinge has none.
    /// </summary>
    public static EndOff Left(double wheelbase, double ahead, RunningPlay play, bool hinge)
    {
        double q = play.Wheelset;
        return wheelbase == 0 ? new(q, q, 0) : new(ahead < -wheelbase / 2 ? -q : q, ahead > wheelbase / 2 ? -q : q, hinge ? 0 : play.Pivot);
    }

    /// <summary>The end pressed the other way.</summary>
    public EndOff ToRight() => new(-Front, -Rear, -Pivot);

    /// <summary>Whether it is off at all.</summary>
    public bool IsOff => Front != 0 || Rear != 0 || Pivot != 0;
}

/// <summary>Both ends of a vehicle, leading end first.</summary>
internal readonly record struct AxlesOff(EndOff Lead, EndOff Trail)
{
    /// <summary>Every way in which both ends are pressed aside; the one way of a vehicle that has no play.</summary>
    public static IReadOnlyList<AxlesOff> Ways(Vehicle vehicle, RunningPlay play)
    {
        static EndOff[] Both(EndOff left) => left.IsOff ? [left, left.ToRight()] : [left];
        var lead = Both(EndOff.Left(vehicle.LeadingWheelbase, vehicle.LeadingPivotAhead, play, vehicle.Hangs));
        var trail = Both(EndOff.Left(vehicle.TrailingWheelbase, vehicle.TrailingPivotAhead, play, vehicle.Hangs));
        return [.. from a in lead from b in trail select new AxlesOff(a, b)];
    }
}
