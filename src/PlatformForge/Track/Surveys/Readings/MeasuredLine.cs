namespace PlatformForge.Track.Surveys.Readings;

/// <summary>Which line of the track the ruler was held to.</summary>
public enum MeasuredPart
{
    /// <summary>The middle between the rails.</summary>
    Centre,

    /// <summary>The inner face of a rail's head, where the wheel flanges run.</summary>
    RunningEdge,

    /// <summary>The outer face of a rail's head.</summary>
    OuterFace,
}

/// <summary>One of the two rails, seen along increasing chainage.</summary>
public enum Rail
{
    Left = 1,
    Right = -1,
}

/// <summary>The line that was measured, and so how far it lies from the centreline.</summary>
/// <param name="Part">What was measured.</param>
/// <param name="Rail">At which rail; not looked at for the centre.</param>
/// <param name="Gauge">Distance between the running edges, mm.</param>
/// <param name="RailWidth">Width of a rail's head, mm; looked at only for the outer face.</param>
public sealed record MeasuredLine(MeasuredPart Part, Rail Rail, double Gauge, double RailWidth)
{
    /// <summary>The middle of the track.</summary>
    public static MeasuredLine Centre { get; } = new(MeasuredPart.Centre, Rail.Left, 0, 0);

    /// <summary>Offset of the measured line from the centreline, mm, left positive.</summary>
    public double FromCentre => Part switch
    {
        MeasuredPart.RunningEdge => (int)Rail * Gauge / 2,
        MeasuredPart.OuterFace => (int)Rail * ((Gauge / 2) + RailWidth),
        _ => 0,
    };
}
