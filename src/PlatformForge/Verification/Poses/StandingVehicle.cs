using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Verification.Poses;

/// <summary>
/// Puts a vehicle on a track, axle by axle, told by the chainage of its foremost axle. A second way to the same poses as
/// the Clearance room's, on purpose: nothing but the track's geometry is shared, so one cannot hide the other's slip.
/// </summary>
/// <param name="ride">The track as ridden.</param>
/// <param name="vehicle">The vehicle.</param>
/// <param name="off">How far its axles are off the middle.</param>
internal sealed class StandingVehicle(Centreline ride, Vehicle vehicle, AxlesOff off = default)
{
    // Axles lie on the track and bogies at their distance to within this, mm.
    private const double Closeness = Tolerances.CentrelinePosition;
    private const int MostRounds = 60;

    // A line beside a kinked one is broken at the kink, by the kink's turn times the distance beside: there an axle finds no place to the last digit. Kinks
    // turn by less than this.
    private const double MostKink = 0.1;

    private readonly double gap = MostKink * new[] { off.Lead.Front, off.Lead.Rear, off.Trail.Front, off.Trail.Rear }.Max(Math.Abs);

    private double leadChord = vehicle.LeadingWheelbase;
    private double trailFront = (vehicle.LeadingWheelbase / 2) - vehicle.LeadingPivotAhead + vehicle.PivotCentres + vehicle.TrailingPivotAhead
        - (vehicle.TrailingWheelbase / 2);
    private double trailChord = vehicle.TrailingWheelbase;

    /// <summary>
    /// The pose whose foremost axle (pivot, where there is no wheelbase) stands at a chainage in mm; null when the axles
    /// find no place on the track. Keeps the last pose as the first guess of the next.
    /// </summary>
    public VehiclePose? At(double front)
    {
        if (Carry(front, vehicle.LeadingWheelbase, vehicle.LeadingPivotAhead, off.Lead, ref leadChord) is not { } lead)
        {
            return null;
        }

        double back = trailFront;
        for (int round = 0; round < MostRounds; round++)
        {
            if (Carry(front - back, vehicle.TrailingWheelbase, vehicle.TrailingPivotAhead, off.Trail, ref trailChord) is not { } trail)
            {
                return null;
            }

            var join = lead.Origin - trail.Origin;
            double distance = join.Length, miss = vehicle.PivotCentres - distance;
            if (Math.Abs(miss) < Closeness || (round == MostRounds - 1 && Math.Abs(miss) < gap))
            {
                trailFront = back;
                return new(front - (leadChord / 2), new((lead.Origin + trail.Origin) * 0.5, join * (1 / distance)), lead, trail);
            }

            // The trailing bogie goes back along its own direction.
            double gain = Point2.Dot(join, trail.Forward) / distance;
            back += miss / Math.Max(0.3, gain);
        }

        return null;
    }

    // Frame of a bogie whose leading axle is at a chainage: its other axle is a chord further back, its pivot midway or so far ahead of that.
    private CarrierPose? Carry(double front, double wheelbase, double ahead, EndOff aside, ref double chord)
    {
        var first = ride.At(front);
        var wheels = first.At(aside.Front);
        if (wheelbase == 0)
        {
            return new(wheels, first.Tangent);
        }

        for (int round = 0; round < MostRounds; round++)
        {
            var second = ride.At(front - chord);
            var other = second.At(aside.Rear);
            var join = wheels - other;
            double distance = join.Length, miss = wheelbase - distance;
            if (Math.Abs(miss) < Closeness || (round == MostRounds - 1 && Math.Abs(miss) < gap))
            {
                var along = join * (1 / distance);
                return new(((wheels + other) * 0.5) + (along * ahead) + (along.Left * aside.Pivot), along);
            }

            chord += miss / Math.Max(0.3, Point2.Dot(join, second.Tangent) / Math.Max(distance, Closeness));
        }

        return null;
    }
}
