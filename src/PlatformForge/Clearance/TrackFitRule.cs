using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Clearance;

/// <summary>Whether vehicles can run a stretch of track, and whether enough of the track is known.</summary>
internal static class TrackFitRule
{
    /// <summary>Sharpest kink in radians that is taken for track at all: sectional track laid badly has a tenth of it.</summary>
    public const double SharpestKink = 0.2;

    private const double Degree = Math.PI / 180;

    private static readonly double ChordPerRadius = 2 * Math.Sin(PoseSolver.GreatestSlew);

    /// <param name="run">Track and vehicles.</param>
    /// <param name="span">The stretch of it that is swept.</param>
    /// <param name="around">How much farther than the stations that were asked for that goes at both ends, mm: of the track nothing more is asked for
    /// it.</param>
    /// <param name="request">What is asked for.</param>
    public static IEnumerable<Finding> Findings(TrackRun run, RunSpan span, double around, EnvelopeRequest request)
    {
        if (run.Vehicles.Count == 0)
        {
            yield break;
        }

        double longest = run.Vehicles.Max(v => v.Length);
        if (ReferenceEquals(run, request.Runs[0]) && !request.StraightBeyondEnds)
        {
            double before = span.From + around, after = run.Ride.Length - span.To + around;
            if (before < longest && !run.StartsAtBuffers)
            {
                yield return Beyond(run, longest, before, "before", "start");
            }

            if (after < longest && !run.EndsAtBuffers)
            {
                yield return Beyond(run, longest, after, "after", "end");
            }
        }

        foreach (var kink in run.Ride.Kinks.Where(k => Math.Abs(k.Turn) > SharpestKink && k.Chainage > span.From - longest && k.Chainage < span.To + longest))
        {
            yield return Finding.Error("PF3023", run.Key,
                Invariant($"Track '{run.Ride.Name}' has a kink of {Math.Abs(kink.Turn) / Degree:F1} degrees at chainage {kink.Chainage:F0} mm; ")
                    + "no vehicle stays on that.",
                Invariant($"Check the points measured there: {SharpestKink / Degree:F1} degrees are the most that is taken."));
        }

        foreach (var finding in run.Vehicles.SelectMany(v => CurveFault(run.Ride.Name, v, Sharpest(run, span.From - v.Length, span.To + v.Length))))
        {
            yield return finding;
        }

        foreach (var finding in run.Vehicles.SelectMany(v => MiddleAxle(run.Ride.Name, v, Sharpest(run, span.From - v.Length, span.To + v.Length))))
        {
            yield return finding;
        }
    }

    /// <summary>Whether a vehicle can stand on a curve, and may: by its own measures, and by the least radius stated for it.</summary>
    /// <param name="track">Name of the track.</param>
    /// <param name="vehicle">The vehicle.</param>
    /// <param name="curve">Radius in mm, and chainage where it is met.</param>
    internal static IEnumerable<Finding> CurveFault(string track, Vehicle vehicle, (double Radius, double Chainage) curve)
    {
        string Key(string name) => vehicle.Key.Length == 0 ? "" : vehicle.Key + "." + name;
        double bogie = Math.Max(vehicle.LeadingWheelbase, vehicle.TrailingWheelbase), most = curve.Radius * ChordPerRadius;
        if (curve.Radius < vehicle.PivotCentres / ChordPerRadius)
        {
            string what = bogie > 0 ? "pivot centres" : "wheelbase";
            yield return Finding.Error("PF3021", Key("pivots"), Invariant($"{vehicle.Name} cannot stand on the curve of {curve.Radius:F0} mm radius at ")
                + Invariant($"chainage {curve.Chainage:F0} mm of track '{track}': with {what} of {vehicle.PivotCentres:0.##} mm it would slew by more than 45 ")
                + "degrees.", Invariant($"Its {what} can be {Down(most)} mm at most there, or the curve's ")
                + Invariant($"radius {Math.Ceiling(vehicle.PivotCentres / ChordPerRadius):F0} mm or more."),
                FaultKind.DesignRule).Curing(Math.Floor(most * 10) / 10);
        }
        else if (curve.Radius < bogie / ChordPerRadius && vehicle.TruckOf is null && !vehicle.Hangs)
        {
            yield return Finding.Error("PF3021", Key(vehicle.LeadingWheelbase >= vehicle.TrailingWheelbase ? "bogie_wheelbase" : "trailing_bogie_wheelbase"),
                Invariant($"{vehicle.Name} cannot stand on the curve of {curve.Radius:F0} mm radius at chainage {curve.Chainage:F0} mm of track '{track}': ")
                    + Invariant($"a bogie with a wheelbase of {bogie:0.##} mm would slew by more than 45 degrees."),
                    Invariant($"The bogie's wheelbase can be {Down(most)} mm at most there, or the curve's radius {Math.Ceiling(bogie / ChordPerRadius):F0} ")
                        + "mm or more.", FaultKind.DesignRule).Curing(Math.Floor(most * 10) / 10);
        }
        else if (vehicle.LeastRadius is { } least && curve.Radius < least)
        {
            yield return Finding.Error("PF3022", Key("least_radius"), Invariant($"{vehicle.Name} is stated to need a radius of {least:F0} mm, but the curve ")
                + Invariant($"at chainage {curve.Chainage:F0} mm of track '{track}' has {curve.Radius:F1} mm."),
                Invariant($"A least radius of {Math.Floor(curve.Radius):F0} mm would be met; otherwise keep this vehicle off the track."),
                FaultKind.DesignRule).Curing(Math.Floor(curve.Radius));
        }
    }

    // The middle axle of a rigid wheelbase has to go aside by the versine of the curve over it.
    internal static IEnumerable<Finding> MiddleAxle(string track, Vehicle vehicle, (double Radius, double Chainage) curve)
    {
        double half = vehicle.PivotCentres / 2, versine = curve.Radius > half ? curve.Radius - Math.Sqrt((curve.Radius * curve.Radius) - (half * half))
            : double.NaN;
        if (vehicle.MiddleAxlePlay is { } play && versine > play)
        {
            yield return Finding.Warning("PF3025", vehicle.Key.Length == 0 ? "" : vehicle.Key + ".middle_axle_play",
                Invariant($"The middle axle of {vehicle.Name} has {play:0.##} mm of side play each way; on the curve of {curve.Radius:F0} mm radius at ")
                    + Invariant($"chainage {curve.Chainage:F0} mm of track '{track}' it has to go {versine:F2} mm aside."),
                    Invariant($"Give the axle {Math.Ceiling(versine * 10) / 10:0.0} mm of side play; with {play:0.##} mm the tightest curve ")
                        + Invariant($"is {Math.Ceiling(((half * half) + (play * play)) / (2 * play)):F0} mm.")).Curing(Math.Ceiling(versine * 10) / 10);
        }
    }

    private static string Down(double mm) => Invariant($"{Math.Floor(mm * 10) / 10:F1}");

    /// <summary>A pose that could not be placed although no curve is too sharp by itself: kinks, or curves that follow on one another.</summary>
    public static Finding Stuck(TrackRun run, Vehicle vehicle, double chainage)
    {
        var curve = Sharpest(run, chainage - vehicle.Length, chainage + vehicle.Length);
        return Finding.Error("PF3021", vehicle.Key, Invariant($"{vehicle.Name} cannot stand on track '{run.Ride.Name}' with its leading pivot at ")
            + Invariant($"chainage {chainage:F0} mm: the track turns by more than 45 degrees under it."), double.IsFinite(curve.Radius)
                ? Invariant($"The sharpest curve nearby has {curve.Radius:F0} mm radius at chainage {curve.Chainage:F0} mm; ")
                + Invariant($"pivot centres of {Math.Floor(curve.Radius):F0} mm or less are safe on it.")
                : Invariant($"No curve lies nearby: look at the kinks of the track, and at the pivot centres of {vehicle.PivotCentres:0.##} mm."),
                FaultKind.DesignRule)
            .Curing(vehicle.Key.Length == 0 || !double.IsFinite(curve.Radius) ? null : Cure.Set(vehicle.Key + ".pivots", Math.Floor(curve.Radius)));
    }

    private static Finding Beyond(TrackRun run, double longest, double known, string where, string end) =>
        Finding.Error("PF3020", run.Key, Invariant($"Only {Math.Max(0, known):0.#} mm of track '{run.Ride.Name}' are known {where} the ")
            + Invariant($"platform; {run.Vehicles.MaxBy(v => v.Length)!.Name} is {longest:0.#} mm long and still slews there: {longest - known:0.#} mm are ")
            + Invariant($"missing at the track's {end}."),
            Invariant($"Measure or state at least {Math.Ceiling(longest - known):F0} mm more of it at its {end}, so that {Math.Ceiling(longest):F0} mm are ")
                + Invariant($"known {where} the platform, or say buffers = \"{end}\" if it ends there."));

    // Radius and place of the sharpest curve of a stretch.
    internal static (double Radius, double Chainage) Sharpest(TrackRun run, double from, double to)
    {
        double sharpest = 0, chainage = from;
        for (int i = 0; i < run.Ride.Elements.Count; i++)
        {
            var element = run.Ride.Elements[i];
            foreach (double end in (ReadOnlySpan<double>)[0, element.Length])
            {
                double at = Math.Clamp(run.Ride.StartOf(i) + end, from, to) - run.Ride.StartOf(i);
                double curvature = at >= 0 && at <= element.Length ? Math.Abs(element.CurvatureAt(at)) : 0;
                if (curvature > sharpest)
                {
                    (sharpest, chainage) = (curvature, run.Ride.StartOf(i) + at);
                }
            }
        }

        return (1 / sharpest, chainage);
    }
}
