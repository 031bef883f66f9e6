using PlatformForge.Track;

namespace PlatformForge.Clearance.Vehicles;

/// <summary>
/// Stands vehicles on a track: every axle on the centreline, axles of a bogie exactly their wheelbase apart, its pivot midway between
/// them or at its stated place, the body's pivots exactly their centres apart. Works on any line, transitions, reverse curves and kinks included.
/// </summary>
public static class PoseSolver
{
    /// <summary>Axles and pivots are placed to within this along the track, mm.</summary>
    public const double Closeness = 1e-10;

    /// <summary>A body or bogie never stands at more than this angle in radians to the track under its pivots or axles (an eighth of a turn):
    /// beyond, a chord no longer has one place on the curve. A circular curve so needs a radius of chord/√2 or more.</summary>
    public const double GreatestSlew = Math.PI / 4;

    /// <summary>
    /// Places a vehicle.
    /// </summary>
    /// <param name="ride">Line the wheels follow.</param>
    /// <param name="vehicle">The vehicle, leading end forward.</param>
    /// <param name="leadingChainage">Where the leading pivot is, mm: its leading axle stands half a wheelbase of track ahead.</param>
    /// <param name="pose">The pose.</param>
    /// <returns>False where the track is too tight for a wheelbase or the pivot centres.</returns>
    public static bool TryPlace(Centreline ride, Vehicle vehicle, double leadingChainage, out VehiclePose pose)
    {
        var gear = RunningGear.Of(ride, vehicle, turned: false);
        return gear.Place(leadingChainage, out pose);
    }

    /// <summary>The same with the trailing end of the vehicle forward; frames are those of the vehicle as drawn, turned round.</summary>
    public static bool TryPlaceTurned(Centreline ride, Vehicle vehicle, double leadingChainage, out VehiclePose pose)
    {
        var gear = RunningGear.Of(ride, vehicle, turned: true);
        bool placed = gear.Place(leadingChainage, out pose);
        pose = About(pose);
        return placed;
    }

    /// <summary>The pose of a vehicle that runs with its trailing end first, with the frames of the vehicle as drawn.</summary>
    internal static VehiclePose About(VehiclePose pose) => new(pose.LeadingChainage, About(pose.Body), About(pose.TrailingBogie), About(pose.LeadingBogie));

    private static CarrierPose About(CarrierPose carrier) => new(carrier.Origin, carrier.Forward * -1);
}
