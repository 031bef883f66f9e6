using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;

namespace PlatformForge.Platforms.Requests;

/// <summary>Everything a platform is planned from.</summary>
/// <param name="Spec">What is asked for.</param>
/// <param name="Site">What it stands on.</param>
/// <param name="Chart">Smooth line that carries the plan coordinates; the faced track itself when that has no kinks.</param>
/// <param name="Envelope">What vehicles sweep, told along <paramref name="Chart"/> over at least the platform's length; run 0 is the faced track.</param>
/// <param name="Budget">What is kept between vehicles and platform.</param>
public sealed record PlatformRequest(PlatformSpec Spec, PlatformSite Site, Centreline Chart, SweptEnvelope Envelope, ClearanceBudget Budget)
{
    /// <summary>Where door sills lie along the platform, for the gap table; none leaves the table empty.</summary>
    public IReadOnlyList<SillReach> Sills { get; init; } = [];

    /// <summary>Sweeps with less play, from none at all upwards, for telling what each play costs; none where there is no play.</summary>
    public IReadOnlyList<PlayStep> LessPlay { get; init; } = [];

    /// <summary>The faced track as it is ridden, with all that runs on it; null takes the chart with the vehicles that were swept, which is the same where
    /// the track has no kinks.</summary>
    public TrackRun? Faced { get; init; }

    /// <summary>The faced track with all that runs on it.</summary>
    internal TrackRun Own => Faced ?? new(Chart, [.. Envelope.Parts.Where(p => p.IsFaced).Select(p => p.Vehicle).Distinct()])
    {
        StartsAtBuffers = StartsAtBuffers,
        EndsAtBuffers = EndsAtBuffers,
    };

    /// <summary>The track begins at buffer stops: no vehicle's length of track is needed before the platform.</summary>
    public bool StartsAtBuffers { get; init; }

    /// <summary>The track ends at buffer stops.</summary>
    public bool EndsAtBuffers { get; init; }
}
