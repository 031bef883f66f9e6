using PlatformForge.Verification.Written;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>Verdicts of several platforms over one folder.</summary>
public class JoinedTests
{
    [Fact]
    public void Of_several_verdicts_on_a_vehicle_the_least_stays_once_for_each_track()
    {
        var joined = VehicleVerdict.Joined([
            Of("coach", "up", 2, 3), Of("van", "up", 4, null), Of("coach", "up", 1.5, 3.5),
            Of("coach", "down", 9, 9), Of("van", "up", null, 0.7), Of("coach", "up", 1.7, 0.2)]);
        Assert.Equal(
            [("coach", "up", 1.5, 0.2), ("van", "up", 4.0, 0.7), ("coach", "down", 9.0, 9.0)],
            joined.Select(v => (v.Vehicle, v.Track, v.Closest!.Clearance, v.Tightest!.Clearance)));
    }

    private static VehicleVerdict Of(string vehicle, string track, double? closest, double? tightest) =>
        new(vehicle, track, closest is { } c ? At(c) : null, tightest is { } t ? At(t) : null);

    private static Nearness At(double clearance) => new(clearance, "", "", "", "", 0, 0, 0, default, false);
}
