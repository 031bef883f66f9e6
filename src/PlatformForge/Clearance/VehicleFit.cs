using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Clearance;

/// <summary>
/// Whether vehicles can run curves at all, told without a sweep: for designs that stop at another fault before anything is swept, so that a curve
/// too tight for a vehicle is not hidden behind what it does to the track's length.
/// </summary>
public static class VehicleFit
{
    /// <summary>Faults on a laid track between two chainages in mm, and a vehicle's length beyond them.</summary>
    public static IEnumerable<Finding> OnTrack(TrackRun run, double from, double to) =>
        run.Vehicles.SelectMany(v => TrackFitRule.CurveFault(run.Ride.Name, v, TrackFitRule.Sharpest(run, from - v.Length, to + v.Length)));

    /// <summary>Everything that a vehicle's own limits say of a laid track between two chainages in mm: faults, and axles that have too
    /// little side play.</summary>
    public static IEnumerable<Finding> Limits(TrackRun run, double from, double to) =>
        OnTrack(run, from, to)
        .Concat(run.Vehicles.SelectMany(v => TrackFitRule.MiddleAxle(run.Ride.Name, v, TrackFitRule.Sharpest(run, from - v.Length, to + v.Length))));

    /// <summary>Warnings (PF3026) where too little of a track is known for its vehicles to be followed on to a platform and off it.</summary>
    /// <param name="run">The track with the vehicles in question.</param>
    /// <param name="chart">Line of the platform's chainages.</param>
    /// <param name="from">Where the platform begins, mm.</param>
    /// <param name="to">Where it ends, mm.</param>
    public static IEnumerable<Finding> Beyond(TrackRun run, Centreline chart, double from, double to) =>
        run.Vehicles.SelectMany(v => KnownTrack.Findings(run, chart, v, from, to));

    /// <summary>
    /// Faults on an alignment that could not be laid, by the radii it states.
    /// </summary>
    /// <param name="alignment">The alignment.</param>
    /// <param name="vehicles">What runs on it.</param>
    public static IEnumerable<Finding> OnAlignment(AlignmentSpec alignment, IReadOnlyList<Vehicle> vehicles)
    {
        var (sharpest, place, chainage) = (double.PositiveInfinity, 0.0, 0.0);
        foreach (var element in alignment.Elements)
        {
            var (length, radius) = element switch
            {
                StraightSpec s => (s.Length, double.PositiveInfinity),
                CurveSpec c => (c.Length ?? (c.Radius * (c.Angle ?? 0)), c.Radius),
                TransitionSpec t => (t.Length, t.ToRadius ?? double.PositiveInfinity),
                _ => (0.0, double.PositiveInfinity),
            };
            if (radius > 0 && radius < sharpest)
            {
                (sharpest, place) = (radius, chainage);
            }

            chainage += length > 0 && double.IsFinite(length) ? length : 0;
        }

        return vehicles.SelectMany(v => TrackFitRule.CurveFault(alignment.Name, v, (sharpest, place)));
    }
}
