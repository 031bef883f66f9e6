using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Runs;

/// <summary>Whether the readings of a surveyed track go as far as its platforms need it, see <see cref="MeasuringStretch"/>.</summary>
public static class MeasuredEnough
{
    // Nearer than this, mm, they go far enough.
    private const double Close = 0.05;

    /// <summary>A finding for each platform that needs more of one of these tracks than was measured.</summary>
    public static IEnumerable<Finding> Check(ProjectSpec project, IReadOnlyList<LaidTrack> tracks)
    {
        foreach (var track in tracks.Where(t => t.Survey is not null))
        {
            double length = track.Survey!.Line.Length;
            foreach (var need in MeasuringStretch.Of(project).Where(s => s.Track == track.Entry.Name && (s.From < -Close || s.To > length + Close)))
            {
                string[] missing = [.. new[]
                {
                    need.From < -Close ? Invariant($"{-need.From:0.#} mm before the first") : "",
                    need.To > length + Close ? Invariant($"{need.To - length:0.#} mm beyond the last") : "",
                }.Where(w => w.Length > 0)];
                yield return Finding.Warning(
                    "PF2207",
                    track.Entry.Key + ".survey",
                    Invariant($"The readings of {track.Entry.Name} go from chainage 0 to {length:0.#} mm; platform {need.Platform} needs them from ")
                        + Invariant($"{need.From:0.#} to {need.To:0.#}: along it, and past each end that is not at buffers for the {need.Beyond:0.#} mm ")
                        + Invariant($"of {need.Vehicle}, the longest vehicle."),
                    $"Measure {string.Join(" and ", missing)} reading too; or say that the track has buffers there, or make the platform shorter. "
                        + "Readings before the first add as much to every chainage of the project.",
                    FaultKind.Input);
            }
        }
    }
}
