using PlatformForge.Clearance.Vehicles;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Projects.Runs;

/// <summary>
/// From where to where a track has to be known for a platform: along all of it, and for the length of the longest vehicle beyond both ends,
/// since that swings out beside the platform
/// while most of it stands elsewhere.
/// </summary>
/// <param name="Track">Name of the track.</param>
/// <param name="Platform">Name of the platform.</param>
/// <param name="From">First chainage, mm; below nil where the platform begins too near to chainage 0.</param>
/// <param name="To">Last chainage, mm.</param>
/// <param name="Vehicle">The longest vehicle that runs there.</param>
/// <param name="Beyond">Its length, mm.</param>
public sealed record MeasuringStretch(string Track, string Platform, double From, double To, string Vehicle, double Beyond)
{
    /// <summary>Tracks of islands' second faces, whose ends lie across from those of the first ones, so that no chainage can be told before both are
    /// known.</summary>
    public static IReadOnlyList<(string Platform, string Track, string First, string Vehicle, double Beyond)> Across(ProjectSpec project) =>
    [
        .. from platform in project.Platforms
           where platform.OtherFace is not null
           let track = project.Tracks.First(t => string.Equals(t.Name, platform.OtherFace!.Track, StringComparison.Ordinal))
           let longest = project.VehiclesOn(track).MaxBy(v => v.Length)
           where longest is not null
           select (platform.Name, track.Name, platform.Face.Track, longest.Name, longest.Length),
    ];

    /// <summary>One for each platform, of the tracks that vehicles run on; ends at buffers need nothing beyond.</summary>
    public static IReadOnlyList<MeasuringStretch> Of(ProjectSpec project) => [.. project.Platforms.Select(p => Of(project, p)).OfType<MeasuringStretch>()];

    private static MeasuringStretch? Of(ProjectSpec project, PlatformSpec platform)
    {
        var track = project.Tracks.First(t => string.Equals(t.Name, platform.Face.Track, StringComparison.Ordinal));
        Vehicle? longest = project.VehiclesOn(track).MaxBy(v => v.Length);
        return longest is null ? null : new(
            track.Name,
            platform.Name,
            platform.Face.From - (track.StartsAtBuffers ? 0 : longest.Length),
            platform.Face.To + (track.EndsAtBuffers ? 0 : longest.Length),
            longest.Name,
            longest.Length);
    }
}
