using PlatformForge.Clearance.Requests;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Clearance;

/// <summary>What makes a request unanswerable whatever the track is like.</summary>
internal static class RequestRule
{
    /// <summary>Greatest length of stations in mm that is taken.</summary>
    public const double LongestStretch = 1e6;

    public static List<Finding> Findings(EnvelopeRequest request)
    {
        var findings = new List<Finding>();
        if (!(double.IsFinite(request.From) && double.IsFinite(request.To) && request.To > request.From && request.To - request.From <= LongestStretch))
        {
            findings.Add(Finding.Error("PF3001", request.Key, Invariant($"The stretch from chainage {request.From:G6} to {request.To:G6} mm is no stretch of ")
                + "track.", "The second chainage has to be greater than the first, both plain numbers in mm."));
        }

        if (!(request.Spacing > 0 && request.Tolerance > 0 && double.IsFinite(request.Spacing) && double.IsFinite(request.Tolerance)))
        {
            findings.Add(Finding.Error("PF3002", request.Key, Invariant($"Stations {request.Spacing:0.####} mm apart with an error ")
                + Invariant($"of {request.Tolerance:0.####} mm cannot be computed."), "Give both above 0; 1 mm and 0.01 mm are usual."));
        }

        var play = request.Play;
        if (!(Amount(play.Wheelset) && Amount(play.Pivot) && Amount(play.Roll) && Amount(play.Cant) && play.Roll + play.Cant < Math.PI / 4
            && double.IsFinite(play.RollCentreHeight)))
        {
            findings.Add(Finding.Error("PF3003", "clearance", "A play of the vehicles is negative or no number.",
                "Give 0 or more: 0.2 mm of side play each way and a lean under 3 degrees are plenty in most scales."));
        }

        var vehicles = request.Runs.SelectMany(r => r.Vehicles).ToArray();
        if (vehicles.Length == 0)
        {
            findings.Add(Finding.Error("PF3004", request.Key, "No vehicle runs past the platform.",
                "List at least the longest coach and the widest engine that will."));
        }

        findings.AddRange(vehicles.Distinct().SelectMany(VehicleRule.Findings));
        return findings;
    }

    private static bool Amount(double value) => double.IsFinite(value) && value >= 0;
}
