using PlatformForge.Clearance.Requests;
using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Watches;
using PlatformForge.Track;
using PlatformForge.Track.Charts;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Results;
using PlatformForge.Units;
using PlatformForge.Units.Memories;

namespace PlatformForge.Projects.Runs;

/// <summary>A track as laid, with the smooth line that carries plan coordinates.</summary>
public sealed record LaidTrack(TrackEntry Entry, TrackChart Chart)
{
    /// <summary>What its survey found; null for a track that is stated.</summary>
    public SurveyedTrack? Survey { get; init; }

    /// <summary>Lays every track of a project; all their faults at once.</summary>
    /// <param name="project">The project.</param>
    /// <param name="watch">Whose memory is asked, and who stops the work.</param>
    public static Outcome<IReadOnlyList<LaidTrack>> LayAll(ProjectSpec project, RunWatch? watch = null)
    {
        var (memory, cancel) = watch is null ? (Memory.None, default) : (watch.Memory, watch.Cancel);
        var tracks = new List<LaidTrack>();
        var findings = new List<Finding>();
        foreach (var entry in project.Tracks)
        {
            var surveyed = entry.Survey is { } survey ? memory.Of("survey", survey, static (s, _) => TrackSurveyor.Survey(s), cancel) : null;
            var laid = surveyed is null ? memory.Of("track", entry.Alignment, static (a, _) => TrackLayer.Lay(a), cancel)
                : new(surveyed.Value?.Line, surveyed.Findings);
            findings.AddRange(laid.Findings);
            if (laid.Value is { } ride)
            {
                tracks.Add(new(entry, memory.Of("chart", ride, static (r, _) => KinkRounder.Chart(r), cancel)) { Survey = surveyed?.Value });
            }
        }

        return tracks.Count < project.Tracks.Count
            ? Outcome.Fault<IReadOnlyList<LaidTrack>>(findings)
            : new(tracks, findings);
    }

    /// <summary>The track with the vehicles that run on it.</summary>
    internal TrackRun Run(ProjectSpec project) => new(Chart.Ride, project.VehiclesOn(Entry))
    {
        Sets = project.SetsOn(Entry),
        StartsAtBuffers = Entry.StartsAtBuffers,
        EndsAtBuffers = Entry.EndsAtBuffers,
        Key = Entry.Key,
        RailTop = RailTopOf(project) == project.Layout.RailTop ? null : Entry.RailTop,
    };

    /// <summary>Height of its rails over the baseboard, mm.</summary>
    internal double RailTopOf(ProjectSpec project) => Entry.RailTop ?? project.Layout.RailTop;
}
