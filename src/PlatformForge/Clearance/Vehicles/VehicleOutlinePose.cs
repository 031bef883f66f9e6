using PlatformForge.Geometry;

namespace PlatformForge.Clearance.Vehicles;

/// <summary>A vehicle where it stands, for drawings.</summary>
/// <param name="Vehicle">The vehicle.</param>
/// <param name="TurnedRound">Whether it runs with its trailing end first.</param>
/// <param name="Pose">Frames of body and bogies.</param>
/// <param name="Parts">Every part as a ring in the layout frame.</param>
public sealed record VehicleOutlinePose(Vehicle Vehicle, bool TurnedRound, VehiclePose Pose, IReadOnlyList<PlacedPart> Parts)
{
    /// <summary>Name of the track it stands on, where that is not the platform's own; empty on that.</summary>
    public string OtherTrack { get; init; } = "";

    /// <summary>The other bodies of its set where they stand meanwhile.</summary>
    public IReadOnlyList<VehicleOutlinePose> Coupled { get; init; } = [];
}

/// <summary>A part of a vehicle placed in the layout frame.</summary>
/// <param name="Part">The part.</param>
/// <param name="Ring">Its outline, mm, counter-clockwise.</param>
public sealed record PlacedPart(VehiclePart Part, IReadOnlyList<Point2> Ring);
