namespace PlatformForge.Sections.Forms;

/// <summary>Two kinds of printer by how fast they go, for the forecast of time.</summary>
public enum PrintPace
{
    /// <summary>A bed that moves on belts, hobby class.</summary>
    Ordinary,

    /// <summary>A stiff machine that corrects for its own ringing.</summary>
    Fast,
}

/// <summary>
/// How fast a printer goes, in mm/s and mm/s². Common practice, no source: slicers come with figures of this size. Anyone's own figures stand in
/// the slicer's settings for speed.
/// </summary>
public sealed record PrintSpeeds
{
    /// <summary>The outermost line, which is seen.</summary>
    public double OuterWall { get; init; } = 30;

    /// <summary>Lines of a wall behind the outermost.</summary>
    public double Wall { get; init; } = 50;

    /// <summary>Any line of a ring shorter than <see cref="SmallRing"/>: holes, sockets.</summary>
    public double SmallWall { get; init; } = 15;

    /// <summary>Filling, solid or open.</summary>
    public double Infill { get; init; } = 100;

    /// <summary>Lines over open filling or air.</summary>
    public double Bridge { get; init; } = 60;

    /// <summary>Everything in the first layer.</summary>
    public double FirstLayer { get; init; } = 30;

    /// <summary>Moves without plastic.</summary>
    public double Travel { get; init; } = 130;

    /// <summary>How fast it gains speed, mm/s².</summary>
    public double Acceleration { get; init; } = 1000;

    /// <summary>Change of speed that a corner may ask at once ("jerk").</summary>
    public double CornerJump { get; init; } = 10;

    /// <summary>Most plastic that the nozzle melts, mm³/s; wide lines are held below it.</summary>
    public double Flow { get; init; } = 12;

    /// <summary>Seconds that drawing the strand back before a move and pushing it on after it take together.</summary>
    public double Retraction { get; init; } = 0.1;

    /// <summary>Length of ring in mm up to which it counts as small: a circle of 6.5 mm radius. Common practice, no source.</summary>
    public const double SmallRing = 41;

    /// <summary>The figures of a kind of printer.</summary>
    public static PrintSpeeds Of(PrintPace pace) => pace == PrintPace.Ordinary ? new() : new()
    {
        OuterWall = 120,
        Wall = 200,
        SmallWall = 60,
        Infill = 250,
        Bridge = 60,
        FirstLayer = 50,
        Travel = 400,
        Acceleration = 5000,
        CornerJump = 10,
        Flow = 22,
        Retraction = 0.05,
    };
}
