using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Rules;

/// <summary>Refuses a stated reach of a uniform edge that vehicles, or the budget kept beyond them, need more than.</summary>
internal static class StatedReachRule
{
    // Stated lengths that differ by less than this, mm, are equal.
    private const double Grain = Tolerances.Rounding;

    // A lack below this, mm, is not told.
    private const double Told = 0.005;

    // With digits enough to show a lack.
    private static string Digits(
        double mm,
        double lack) => mm.ToString(lack >= 0.01 ? "0.00" : lack >= 0.001 ? "0.000" : "0.000000", System.Globalization.CultureInfo.InvariantCulture);

    /// <param name="request">The platform.</param>
    /// <param name="trace">What it needs.</param>
    /// <param name="least">Least reach of a uniform edge, mm.</param>
    /// <param name="findings">Takes PF4025.</param>
    public static void Check(PlatformRequest request, RequirementTrace trace, double least, List<Finding> findings)
    {
        var face = request.Spec.Face;
        if (face.Reach is not { } reach || reach >= least - Grain)
        {
            return;
        }

        // Where it lacks no more than the sweep may err, the reach is as good as enough. Chords over a curve may need a little more than any
        // station does, so the stretch may be empty.
        int[] lacking = [.. Enumerable.Range(0, trace.Stations.Length).Where(i => trace.Required(i) - request.Envelope.ErrorBound - Told > reach)];
        int worst = Enumerable.Range(0, trace.Stations.Length).MaxBy(trace.Required);
        double swept = trace.Swept[worst];
        string who = Invariant($"at chainage {trace.Stations[worst]:0} mm {trace.Called(trace.GoverningVehicle[worst])} ({trace.GoverningPart[worst]}) ")
            + Invariant($"reaches {swept:0.00} mm");
        string need = swept > reach
            ? Invariant($"{who} and fouls it by {swept - reach:0.00} mm, {trace.Required(worst) - swept:0.00} mm more are to be kept")
            : Invariant($"{who}, which leaves {Digits(reach - swept, least - reach)} mm where {Digits(trace.Required(worst) - swept, least - reach)} mm are ")
            + "to be kept"
                + (least - trace.Required(worst) > Grain ? Invariant($" and {Digits(least - trace.Required(worst), least - reach)} mm more for the edge's ")
                + "straight facets, which cut inside the curve" : "");
        double from = trace.Stations[lacking.Length > 0 ? lacking[0] : worst], to = trace.Stations[lacking.Length > 0 ? lacking[^1] : worst];
        findings.Add(PlatformFindings.StatedReach($"{request.Spec.FaceKey}.reach", reach, need, least, from, to));
    }
}
