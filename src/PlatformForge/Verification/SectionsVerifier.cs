using PlatformForge.Units;
using PlatformForge.Verification.Distances;
using PlatformForge.Verification.Rules;
using static System.FormattableString;

namespace PlatformForge.Verification;

/// <summary>Front door of the room for meshes that were read back: pure, no files.</summary>
public static class SectionsVerifier
{
    /// <summary>
    /// Checks every section by itself (sound mesh, bed, walls), where it stands, and the least distance to every vehicle
    /// over poses of the room's own choosing.
    /// </summary>
    public static Verdict Verify(IReadOnlyList<WrittenSection> sections, DesignFacts facts, CancellationToken cancel = default)
    {
        var findings = new List<Finding>();
        var placed = sections.Select(s => s.Mesh.Moved(s.ToLayout)).ToArray();
        findings.AddRange(PlaceRule.Check(sections, placed, facts));

        var vehicles = new List<VehicleVerdict>();
        foreach (var run in facts.Runs)
        {
            var verdicts = new TrackSearch(run, facts, sections, placed, cancel).Run();
            for (int i = 0; i < verdicts.Length; i++)
            {
                if (verdicts[i] is { } verdict)
                {
                    vehicles.Add(verdict);
                }
                else
                {
                    findings.Add(Finding.Error("PF8022", run.Vehicles[i].Key.Length > 0 ? run.Vehicles[i].Key : run.Key, Invariant($"'{run.Vehicles[i].Name}' cannot stand beside the platform on track '{run.Ride.Name}' with all its axles on the track."), "Lay more track beyond the platform's ends, or take the vehicle off this track.", FaultKind.DesignRule));
                }
            }
        }

        findings.AddRange(ClearanceRule.Check(vehicles));
        return new(
            vehicles.Select(v => v.Closest).Aggregate((Nearness?)null, TrackSearch.Less),
            vehicles.Select(v => v.Tightest).Aggregate((Nearness?)null, TrackSearch.Less),
            vehicles,
            [],
            findings);
    }
}
