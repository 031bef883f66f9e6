using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Clearance.Requests;

/// <summary>What is to be swept, and in whose coordinates the answer is wanted.</summary>
/// <param name="Chart">Smooth line (no kinks) whose chainage and offset the answer is told in; the ride line itself when that has no kinks.</param>
/// <param name="From">First station, chart chainage in mm.</param>
/// <param name="To">Last station, mm, above <paramref name="From"/>.</param>
/// <param name="Runs">Tracks with their vehicles; the platform's own track first, then any others near it.</param>
public sealed record EnvelopeRequest(Centreline Chart, double From, double To, IReadOnlyList<TrackRun> Runs)
{
    /// <summary>Greatest distance between stations, mm. The last station falls on <see cref="To"/>, so the true one may be a little less.</summary>
    public double Spacing { get; init; } = 1;

    /// <summary>How far stations go on beyond both ends, mm: what stands just beyond a platform's end is near its corner too. Nothing more is
    /// asked of the track for it.</summary>
    public double Beyond { get; init; }

    /// <summary>Play that lets vehicles stand off the centreline; swept with them.</summary>
    public RunningPlay Play { get; init; } = RunningPlay.None;

    /// <summary>Heights above rail top in mm of what the edge is, such as a coping with the room over and under it. Parts that lean are
    /// told apart there: what stays below it and what
    /// stays above, so that how far a roof leans is not mixed with what happens low down. Null tells every part as a whole.</summary>
    public (double Low, double High)? Edge { get; init; }

    /// <summary>The same heights above the rails of one of the tracks.</summary>
    internal (double Low, double High)? EdgeOf(TrackRun run) => Edge is var (low, high) ? (low - run.Above, high - run.Above) : null;

    /// <summary>Greatest error in mm of the reach at a station, above 0; always on the safe side.</summary>
    public double Tolerance { get; init; } = Tolerances.EnvelopeError;

    /// <summary>Whether the first track is taken to run on straight beyond its known ends. Otherwise a track that ends less than its longest
    /// vehicle beyond the stations is an error, unless it ends at buffer stops.</summary>
    public bool StraightBeyondEnds { get; init; }

    /// <summary>Key for findings about the request itself.</summary>
    public string Key { get; init; } = "platform";
}
