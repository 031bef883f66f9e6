using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;

namespace PlatformForge.Clearance.Requests;

/// <summary>Vehicles that run over one track.</summary>
/// <param name="Ride">The line the wheels follow, kinks of sectional track and all.</param>
/// <param name="Vehicles">Everything that runs there.</param>
public sealed record TrackRun(Centreline Ride, IReadOnlyList<Vehicle> Vehicles)
{
    /// <summary>The track begins at buffer stops, so no more of it need be known before its first point.</summary>
    public bool StartsAtBuffers { get; init; }

    /// <summary>The track ends at buffer stops.</summary>
    public bool EndsAtBuffers { get; init; }

    /// <summary>Sets that some of the vehicles are bodies of; each body is among <see cref="Vehicles"/> too.</summary>
    public IReadOnlyList<VehicleSet> Sets { get; init; } = [];

    /// <summary>Height of its rails over the baseboard, mm, where it is another than the layout's; null where it is that.</summary>
    public double? RailTop { get; init; }

    /// <summary>How much higher its rails lie than those of the track that a request's platform faces, mm.</summary>
    public double Above { get; init; }

    /// <summary>Key of the track in the project file, for findings.</summary>
    public string Key { get; init; } = "track";
}
