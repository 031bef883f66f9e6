using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sets;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Clearance;

/// <summary>Finds the poses that drawings show: the one in which a part reaches farthest at a chainage.</summary>
public static class PoseFinder
{
    // Poses are first tried this far apart, mm, then ten times finer around the best, three times over.
    private const double FirstStep = 4;
    private const int Refinements = 3;
    private const int Finer = 10;

    /// <summary>
    /// The pose, either way round, in which a part reaches farthest to one side of the chart at a chainage; null when it never comes there.
    /// Its outlines are the vehicle's own, without play.
    /// </summary>
    /// <param name="run">Track the vehicle runs on.</param>
    /// <param name="chart">Line whose chainage is meant.</param>
    /// <param name="vehicle">The vehicle.</param>
    /// <param name="part">One of its parts.</param>
    /// <param name="side">Side of the chart.</param>
    /// <param name="chainage">Chart chainage, mm.</param>
    public static VehicleOutlinePose? Farthest(TrackRun run, Centreline chart, Vehicle vehicle, VehiclePart part, Side side, double chainage)
    {
        var station = chart.At(chainage);
        var (best, bestReach) = ((Pose: default(VehiclePose), Turned: false), double.NegativeInfinity);
        double middle = run.Ride.Locate(station.Position).Chainage, range = vehicle.Length + vehicle.PivotCentres + Math.Abs(vehicle.LeadingPivotAhead)
            + Math.Abs(vehicle.TrailingPivotAhead);
        foreach (bool turned in vehicle.EitherWayRound ? [false, true] : (ReadOnlySpan<bool>)[false])
        {
            double from = middle - range, to = middle + range, step = FirstStep, own = double.NegativeInfinity, at = middle;
            for (int round = 0; round <= Refinements; round++)
            {
                for (double u = from; u <= to; u += step)
                {
                    if (Place(run.Ride, vehicle, turned, u, out var pose) && ReachAt(pose, part, station, side) is var reach && reach > own)
                    {
                        (own, at) = (reach, u);
                        best = reach > bestReach ? (pose, turned) : best;
                        bestReach = Math.Max(bestReach, reach);
                    }
                }

                (from, to, step) = (at - step, at + step, step / Finer);
            }
        }

        return double.IsNegativeInfinity(bestReach) ? null : Outline(vehicle, best.Pose, best.Turned);
    }

    /// <summary>The poses in which the governing parts of a reach line come nearest to the platform: for each vehicle that governs anywhere,
    /// the one at the chainage of its greatest reach, in order of chainage.</summary>
    public static IReadOnlyList<VehicleOutlinePose> Tightest(EnvelopeRequest request, SweptEnvelope envelope, ReachLine line)
    {
        var places = new SortedDictionary<int, PartReach>();
        for (int index = 0; index < envelope.Parts.Count; index++)
        {
            int best = -1;
            for (int i = 0; i < line.Count; i++)
            {
                best = line.Governing[i] == index && (best < 0 || line.Reach[i] > line.Reach[best]) ? i : best;
            }

            if (best >= 0)
            {
                places[best] = envelope.Parts[index];
            }
        }

        var poses = new List<VehicleOutlinePose>();
        foreach (var (station, part) in places)
        {
            var run = request.Runs[part.Run];
            if (Farthest(run, request.Chart, part.Vehicle, part.Part, line.Side, line.ChainageOf(station)) is { } pose)
            {
                poses.Add(WithSet(run, pose));
            }
        }

        return poses;
    }

    /// <summary>A vehicle's parts in the layout frame, its leading pivot at a chainage; null where it cannot stand.</summary>
    public static VehicleOutlinePose? At(Centreline ride, Vehicle vehicle, double leadingChainage, bool turned = false) =>
        Place(ride, vehicle, turned, leadingChainage, out var pose) ? Outline(vehicle, pose, turned) : null;

    /// <summary>The pose with the rest of its set, which stands where the vehicle's own place puts it.</summary>
    /// <param name="run">Track it stands on, with its sets.</param>
    /// <param name="pose">The vehicle.</param>
    public static VehicleOutlinePose WithSet(TrackRun run, VehicleOutlinePose pose)
    {
        var set = run.Sets.FirstOrDefault(s => s.Bodies.Any(b => ReferenceEquals(b, pose.Vehicle)));
        int body = set is null ? -1 : Enumerable.Range(0, set.Bodies.Count).First(i => ReferenceEquals(set.Bodies[i], pose.Vehicle));
        return set is null || SetSolver.PlaceBody(run.Ride, set, body, pose.Pose.LeadingChainage, pose.TurnedRound) is not { } poses
            ? pose
            : pose with { Coupled = [.. poses.Select((p, i) => Outline(set.Bodies[i], p, pose.TurnedRound)).Where((_, i) => i != body)] };
    }

    private static bool Place(Centreline ride, Vehicle vehicle, bool turned, double u, out VehiclePose pose) =>
        turned ? PoseSolver.TryPlaceTurned(ride, vehicle, u, out pose) : PoseSolver.TryPlace(ride, vehicle, u, out pose);

    private static VehicleOutlinePose Outline(Vehicle vehicle, VehiclePose pose, bool turned) =>
        new(vehicle, turned, pose, [.. vehicle.Parts.Select(p => new PlacedPart(p, [.. p.Outline.Select(pose.Of(p.Carrier).Apply)]))]);

    private static double ReachAt(in VehiclePose pose, VehiclePart part, TrackFrame station, Side side)
    {
        double reach = double.NegativeInfinity;
        var carrier = pose.Of(part.Carrier);
        for (int i = 0; i < part.Outline.Count; i++)
        {
            Point2 a = carrier.Apply(part.Outline[i]) - station.Position, b = carrier.Apply(part.Outline[(i + 1) % part.Outline.Count]) - station.Position;
            if (StationCut.Offset(a, b, station) is { } offset)
            {
                reach = Math.Max(reach, side.Reach(offset));
            }
        }

        return reach;
    }
}
