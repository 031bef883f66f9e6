namespace PlatformForge.Platforms.AsBuilt;

/// <summary>One gap measured on the finished layout.</summary>
/// <param name="File">File it stands in, for findings.</param>
/// <param name="Line">Line of the file.</param>
/// <param name="Chainage">Where, mm along the plan's chart.</param>
/// <param name="Gap">The gap, mm. Without a vehicle: square to the track from the running edge of the nearer rail to the coping. With one: the
/// smallest gap seen between it and the coping while it is pushed past, pressed lightly towards the platform so that its play is used up.</param>
/// <param name="Vehicle">Name of the vehicle; null when measured from the rail.</param>
public sealed record EdgeReading(string File, int Line, double Chainage, double Gap, string? Vehicle = null);

/// <summary>What is really left for one vehicle at a reading.</summary>
/// <param name="Vehicle">Its name.</param>
/// <param name="Part">The part that comes nearest.</param>
/// <param name="Swept">How far it reaches there, play included, mm from the track's middle.</param>
/// <param name="Planned">From there to the coping as planned, mm.</param>
/// <param name="Left">From there to the coping as it stands, mm; below 0 it fouls.</param>
public sealed record VehicleRoom(string Vehicle, string Part, double Swept, double Planned, double Left);

/// <summary>A reading held against the plan.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="Planned">Reach of the coping as planned, mm from the track's middle.</param>
/// <param name="True">Its reach as it stands, mm.</param>
/// <param name="Vehicles">What is left for each vehicle that comes there, in the order of the project.</param>
public sealed record EdgeMeasure(EdgeReading Reading, double Planned, double True, IReadOnlyList<VehicleRoom> Vehicles)
{
    /// <summary>How far the coping stands off its planned place, mm; below 0 it is too near the track.</summary>
    public double OffBy => True - Planned;

    /// <summary>The vehicle with the least room; null where none comes.</summary>
    public VehicleRoom? Closest => Vehicles.MinBy(v => v.Left);
}
