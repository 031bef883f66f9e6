using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Clearance.Requests;

/// <summary>
/// How much of a platform a vehicle comes beside before all its axles stand on known track. Told of vehicles that a design did not ask for: their
/// clearance along that much is open, since nobody knows how they come there.
/// </summary>
internal static class KnownTrack
{
    // Rounds that put an axle to the end of the track, and how close, mm.
    private const int MostRounds = 12;
    private const double Closeness = Tolerances.SameLength;

    /// <summary>Warnings (PF3026) of what can't be told of a vehicle at the ends of a track that are not at buffers.</summary>
    /// <param name="run">Track with its ends.</param>
    /// <param name="chart">Line of the platform's chainages.</param>
    /// <param name="vehicle">The vehicle.</param>
    /// <param name="from">Where the platform begins, mm.</param>
    /// <param name="to">Where it ends, mm.</param>
    public static IEnumerable<Finding> Findings(TrackRun run, Centreline chart, Vehicle vehicle, double from, double to)
    {
        if (!run.StartsAtBuffers && Reached(run.Ride, chart, vehicle, atStart: true) is { } foremost && foremost > from)
        {
            yield return Open(run.Ride.Name, vehicle, from, Math.Min(to, foremost), from, foremost - from, "before", "start");
        }

        if (!run.EndsAtBuffers && Reached(run.Ride, chart, vehicle, atStart: false) is { } hindmost && hindmost < to)
        {
            yield return Open(run.Ride.Name, vehicle, Math.Max(from, hindmost), to, chart.Length - to, to - hindmost, "after", "end");
        }
    }

    /// <summary>
    /// With its last axle on the very start of the track, the farthest chainage of the chart that any corner of a vehicle comes to; or with its first
    /// axle on the very end, the least one. Either way round. Null where it can't stand.
    /// </summary>
    internal static double? Reached(Centreline ride, Centreline chart, Vehicle vehicle, bool atStart)
    {
        double? most = null;
        foreach (bool turned in vehicle.EitherWayRound ? [false, true] : (ReadOnlySpan<bool>)[false])
        {
            if (Standing(ride, vehicle, turned, atStart) is not { } pose)
            {
                return null;
            }

            foreach (var corner in vehicle.Parts.SelectMany(p => p.Outline.Select(pose.Of(p.Carrier).Apply)))
            {
                double chainage = chart.Locate(corner, atStart ? 0 : chart.Length).Chainage;
                most = most is null ? chainage : atStart ? Math.Max(most.Value, chainage) : Math.Min(most.Value, chainage);
            }
        }

        return most;
    }

    private static VehiclePose? Standing(Centreline ride, Vehicle vehicle, bool turned, bool atStart)
    {
        var (lead, trail) = turned ? (vehicle.TrailingWheelbase, vehicle.LeadingWheelbase) : (vehicle.LeadingWheelbase, vehicle.TrailingWheelbase);
        var gear = RunningGear.Of(ride, vehicle, turned);
        double u = atStart ? vehicle.PivotCentres + (trail / 2) : ride.Length - (lead / 2);
        for (int round = 0; round < MostRounds; round++)
        {
            if (!gear.Place(u, out var pose))
            {
                return null;
            }

            double beyond = atStart ? u - gear.Behind(3) : 0;
            if (Math.Abs(beyond) < Closeness)
            {
                return turned ? PoseSolver.About(pose) : pose;
            }

            u -= beyond;
        }

        return null;
    }

    private static Finding Open(string track, Vehicle vehicle, double first, double last, double known, double missing, string where, string end) =>
        Finding.Warning(
        "PF3026",
        vehicle.Key,
        Invariant($"{Math.Max(0, known):0.#} mm of track '{track}' are known {where} the platform: {vehicle.Name} comes beside it before all its axles stand ")
            + Invariant($"on them. What it clears from chainage {first:0.#} to {last:0.#} mm holds only as long as it stands wholly on known track; ")
            + "how it comes there from beyond is not known.",
        Invariant($"Measure or state {Math.Ceiling(missing):0} mm more of the track at its {end}: {Math.Ceiling(known + missing):0} mm {where} the platform ")
            + Invariant($"are enough. Or say buffers = \"{end}\" if it ends there."));
}
