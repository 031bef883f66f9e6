using PlatformForge.Units;
using PlatformForge.Verification.Distances;
using PlatformForge.Verification.Written;
using static System.FormattableString;

namespace PlatformForge.Verification.Rules;

/// <summary>No vehicle touches anything, and play and budget leave something over everywhere.</summary>
internal static class ClearanceRule
{
    /// <param name="vehicles">How near they come.</param>
    /// <param name="asked">Air that is to be left beside a vehicle with its play at the worst, mm: as long as less of it is missing, nothing touches.</param>
    public static IEnumerable<Finding> Check(IEnumerable<VehicleVerdict> vehicles, double asked)
    {
        foreach (var verdict in vehicles)
        {
            if (verdict.Closest is { Clearance: < 0 } foul)
            {
                yield return Finding.Error(
                    "PF8020",
                    verdict.Key,
                    foul.InPlan
                        ? Invariant($"{Who(foul)} overlaps {foul.Section} by {-foul.Clearance:F2} mm seen from above, {Where(foul)}. They do not touch, but ")
                        + Invariant($"nothing of the platform is to lie {Under(foul)} vehicles.")
                        : Invariant($"{Who(foul)} runs {-foul.Clearance:F2} mm into {foul.Section} {Where(foul)}."),
                    Invariant($"Set that stretch back by {Up(Math.Max(-foul.Clearance, -(verdict.Tightest?.Clearance ?? 0)))} mm: ")
                        + "build it again with this vehicle in the project ([[vehicle]]), or take the vehicle off this track."
                        + (foul.InPlan && foul.Height < foul.Underside ? " Or say bodies_pass_over = true in the platform's face, where bodies may." : ""),
                    FaultKind.DesignRule);
            }
            else if (verdict.Tightest is { } tight && tight.Clearance < -Slab.Rounding)
            {
                yield return Finding.Error(
                    "PF8021",
                    verdict.Key,
                    Invariant($"{Who(tight)} comes {-tight.Clearance:F3} mm nearer to {tight.Section}{(tight.InPlan ? ", seen from above," : "")} than play ")
                        + Invariant($"and budget allow, {Where(tight)}; {StandingTrue(verdict)}."),
                    Invariant($"Set that stretch back by {Up(-tight.Clearance)} mm: build it again with this vehicle in the project ([[vehicle]]).")
                        + (-tight.Clearance < asked ? Invariant($" Or make do with {Up(-tight.Clearance)} mm less than was asked for: ")
                        + "it does not touch." : ""),
                    FaultKind.DesignRule);
            }
        }
    }

    // Never less than nothing here: what runs into a section is told as that.
    private static string StandingTrue(VehicleVerdict verdict) => verdict.Closest is { } closest
        ? Invariant($"standing true it clears by {Math.Max(0, closest.Clearance):F2} mm") : "standing true nothing of it comes near";

    private static string Who(Nearness n) =>
        Invariant($"On track '{n.Track}' '{n.Vehicle}' ({n.Part}{(n.Backwards ? ", running backwards" : "")})");

    private static string Where(Nearness n) =>
        Invariant($"at chainage {n.Chainage:F1} mm, {Math.Abs(n.Offset):F2} mm {(n.Offset < 0 ? "right" : "left")} of the middle and ") + (n.InPlan
            ? (n.Height < n.Underside ? Invariant($"{n.Height:F1} mm above the rails, where the vehicle's underside is {n.Underside:F1} mm above ")
            + "them" : Invariant($"{n.Height:F1} mm above the rails, higher than the vehicle there"))
            : Invariant($"{n.Height:F1} mm above the rails"));

    private static string Under(Nearness n) => n.Height < n.Underside ? "under" : "over";

    // Rounded up to hundredths, so that doing as told is enough.
    private static string Up(double mm) => Invariant($"{Math.Ceiling(mm * 100) / 100:F2}");
}
