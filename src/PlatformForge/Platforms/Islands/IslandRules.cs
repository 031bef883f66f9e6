using PlatformForge.Clearance.Vehicles;
using PlatformForge.Platforms.Features;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Islands;

/// <summary>What can be told of an island before anything is swept.</summary>
internal static class IslandRules
{
    /// <param name="spec">The platform by one of its faces.</param>
    /// <param name="chart">That face's track.</param>
    /// <param name="longest">The longest vehicle on it; null where none is.</param>
    /// <param name="buffers">Whether the track begins, and whether it ends, at buffer stops.</param>
    /// <param name="findings">Takes what is wrong.</param>
    public static void Check(PlatformSpec spec, Centreline chart, Vehicle? longest, (bool Start, bool End) buffers, List<Finding> findings)
    {
        if (spec.Deck.Crossfall > 0)
        {
            findings.Add(IslandFindings.NotLevel($"{spec.Key}.deck.crossfall"));
        }

        findings.AddRange(FeaturePlanner.Keyed(spec).Where(f => f.Feature.NeedsBack).Select(f => IslandFindings.NoFence(f.Key)));

        if (spec.Face.Key != FaceSpec.OtherKey)
        {
            return;
        }

        var face = spec.Face;
        double need = longest?.Length ?? 0, before = face.From, after = chart.Length - face.To;
        foreach (var (atStart, have, ends) in new[] { (true, before, buffers.Start), (false, after, buffers.End) })
        {
            if (have < (ends ? 0 : need))
            {
                findings.Add(IslandFindings.TooLittleTrack(spec.FaceKey, face.Track, atStart, have, ends ? 0 : need, longest?.Name ?? "a vehicle"));
            }
        }
    }
}
