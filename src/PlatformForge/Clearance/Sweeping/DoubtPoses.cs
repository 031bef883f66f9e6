using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>The poses in which a vehicle can reach the stations of a request, evenly spaced, for each way round that it runs.</summary>
internal static class DoubtPoses
{
    public static IReadOnlyList<IReadOnlyList<StandingPose>> Of(EnvelopeRequest request, Centreline ride, Vehicle vehicle, double step)
    {
        double from = ride.Locate(request.Chart.PointAt(request.From)).Chainage, to = ride.Locate(request.Chart.PointAt(request.To)).Chainage;
        (from, to) = (Math.Min(from, to), Math.Max(from, to));
        double reach = Reach(vehicle) + step;
        var ways = new List<IReadOnlyList<StandingPose>> { Poses(request, ride, vehicle, from - reach, to + reach, step, turned: false) };
        if (vehicle.EitherWayRound && !LooksAlike(vehicle))
        {
            ways.Add(Poses(request, ride, vehicle, from - reach, to + reach, step, turned: true));
        }

        return ways;
    }

    private static List<StandingPose> Poses(EnvelopeRequest request, Centreline ride, Vehicle vehicle, double from, double to, double step, bool turned)
    {
        var poses = new List<StandingPose>();
        double half = vehicle.PivotCentres / 2;
        int count = (int)Math.Ceiling((to - from) / step);
        double guess = double.NaN;
        for (int k = 0; k <= count; k++)
        {
            double s = from + (k * step);
            var point = ride.PointAt(s);
            guess = (double.IsNaN(guess) ? request.Chart.Locate(point) : request.Chart.Locate(point, guess)).Chainage;
            VehiclePose pose;
            if (turned ? PoseSolver.TryPlaceTurned(ride, vehicle, s + half, out pose) : PoseSolver.TryPlace(ride, vehicle, s + half, out pose))
            {
                poses.Add(new(ride, vehicle, pose, s, guess));
            }
        }

        return poses;
    }

    // Greatest distance of anything from midway between the pivots.
    private static double Reach(Vehicle vehicle) => vehicle.Parts
        .SelectMany(p => p.Outline.Select(c => Math.Abs(c.X) + (p.Carrier == PartCarrier.Body ? 0 : vehicle.PivotCentres / 2)))
        .DefaultIfEmpty(vehicle.PivotCentres / 2).Max();

    // A vehicle whose outlines are the same turned round gains nothing by it.
    private static bool LooksAlike(Vehicle vehicle) =>
        vehicle.LeadingWheelbase == vehicle.TrailingWheelbase && vehicle.LeadingPivotAhead == -vehicle.TrailingPivotAhead
        && vehicle.Parts.All(p => vehicle.Parts.Any(q => q.Carrier == About(p.Carrier) && q.Outline.ToHashSet().SetEquals(p.Outline.Select(c => c * -1))));

    private static PartCarrier About(PartCarrier carrier) => carrier switch
    {
        PartCarrier.LeadingBogie => PartCarrier.TrailingBogie,
        PartCarrier.TrailingBogie => PartCarrier.LeadingBogie,
        _ => carrier,
    };
}
