using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;

namespace PlatformForge.Verification.Poses;

/// <summary>
/// The poses of one vehicle, one way round, along a stretch of track.
/// </summary>
/// <param name="Vehicle">The vehicle as it stands, turned if it runs backwards.</param>
/// <param name="Backwards">Whether it is turned.</param>
/// <param name="Fronts">Chainage of the foremost axle of each pose, mm, <see cref="Step"/> apart.</param>
/// <param name="Poses">The poses.</param>
/// <param name="Off">How far its axles are off the track's middle.</param>
internal sealed record PoseRun(Vehicle Vehicle, bool Backwards, double[] Fronts, VehiclePose[] Poses, AxlesOff Off)
{
    /// <summary>Whether it leans on springs: a bogie's frames do not.</summary>
    public bool Rolls { get; init; } = true;

    /// <summary>Whether it halts before buffer stops so that nothing of it ever comes beside the stretch: then it has no poses, and there is nothing to hold
    /// against it.</summary>
    public bool HaltsShort { get; init; }

    /// <summary>
    /// Distance between poses, mm: the golden ratio, which no even spacing of anything else keeps in step with. On a radius of R mm
    /// a pose between two of them is nearer by at most Step²/8R, 0.0011 mm at 300 mm.
    /// </summary>
    public const double Step = 1.618033988749895;

    // Room beyond the stretch, so that a vehicle comes from clear air.
    private const double Run = 12.3;

    /// <summary>
    /// Stands a vehicle everywhere that any part of it comes beside a stretch, with all axles on the track. Null when the axles
    /// find no place; no poses when the track has no room for the vehicle, or it halts short of the stretch. At buffer stops it goes as far as its end is at
    /// the end of the track.
    /// </summary>
    public static PoseRun? Of(TrackRun stock, Vehicle vehicle, bool backwards, double from, double to) =>
        Of(stock, LooseCarrier.Whole(backwards ? WayRound.Turned(vehicle) : vehicle), backwards, default, from, to);

    /// <summary>Whether a vehicle has no play, and nothing on it moves but with its body: then standing true is its only way.</summary>
    public static bool IsAllOf(Vehicle vehicle, RunningPlay play) =>
        vehicle.Parts.Count > 0 && vehicle.Parts.All(p => p.Carrier == PartCarrier.Body)
        && AxlesOff.Ways(vehicle, play) is [{ Lead.IsOff: false, Trail.IsOff: false }];

    /// <summary>Every way in which a vehicle is pressed aside by its play, carrier by carrier; null when the axles find no place in one.</summary>
    public static IReadOnlyList<PoseRun>? Loose(TrackRun stock, Vehicle vehicle, RunningPlay play, bool backwards, double from, double to)
    {
        var runs = new List<PoseRun>();
        foreach (var carrier in LooseCarrier.Of(backwards ? WayRound.Turned(vehicle) : vehicle))
        {
            foreach (var off in AxlesOff.Ways(carrier.Stands, play))
            {
                if (Of(stock, carrier, backwards, off, from, to) is not { } run)
                {
                    return null;
                }

                runs.Add(run);
            }
        }

        return runs;
    }

    // All axles of the whole vehicle stand on the track, and all of it before buffers.
    private static PoseRun? Of(TrackRun stock, LooseCarrier carrier, bool backwards, AxlesOff off, double from, double to)
    {
        var (ride, standing, own) = (stock.Ride, carrier.Stands, LooseCarrier.Whole(carrier.Stands));
        double first = Math.Max(own.Behind, Math.Max(carrier.Behind, stock.StartsAtBuffers ? carrier.Rear : 0)),
            last = ride.Length - Math.Max(carrier.Ahead, stock.EndsAtBuffers ? carrier.Front : 0);
        double low = Math.Max(first, from - Run - own.Front), high = Math.Min(last, to + Run + own.Rear);
        if (high < low)
        {
            // Between its first place and its last it can stand; what keeps it away from the stretch is the buffers that it halts before.
            bool halts = last >= first && (low == first ? stock.StartsAtBuffers : stock.EndsAtBuffers);
            return new(standing, backwards, [], [], off) { Rolls = carrier.Rolls, HaltsShort = halts };
        }

        int count = (int)((high - low) / Step) + 1;
        var fronts = new double[count + 1];
        var poses = new VehiclePose[count + 1];
        var walker = new StandingVehicle(ride, standing, off);
        for (int i = 0; i <= count; i++)
        {
            // The last stands at the very end, since a platform may lie about the buffers.
            fronts[i] = i < count ? low + (i * Step) : high;
            if (walker.At(fronts[i]) is not { } pose)
            {
                return null;
            }

            poses[i] = pose;
        }

        return new(standing, backwards, fronts, poses, off) { Rolls = carrier.Rolls };
    }
}
