using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Specs;

/// <summary>
/// Ends and stated cuts on the skew, as at a backscene or at a joint in the baseboard that lies askew to the track. Each angle is in degrees off the
/// square; of an
/// end it is positive where the platform's back reaches farther than its edge, of a cut where the back is met farther along the track.
/// </summary>
public sealed record SkewSpec
{
    /// <summary>At the lower chainage. Default 0, square.</summary>
    public double Start { get; init; }

    /// <summary>At the higher chainage. Default 0, square.</summary>
    public double End { get; init; }

    /// <summary>Cuts between that lie askew, as at a joint in the baseboard.</summary>
    public IReadOnlyList<SkewCut> Cuts { get; init; } = [];

    /// <summary>Whether an end or a cut is askew.</summary>
    public bool IsAny => Start != 0 || End != 0 || Cuts.Any(c => c.Angle != 0);

    /// <summary>By how much farther along the track a line at an angle meets the back of a deck than its edge, mm.</summary>
    internal static double Shift(double width, double angle) => width * Math.Tan(angle * Math.PI / 180);

    /// <summary>Length along the track over which lines across turn to an end or a cut, mm: twice what they are off there, so that at the back they draw
    /// together, or apart, by a half at most.</summary>
    internal static double Stretch(double width, double angle) => 2 * Math.Abs(Shift(width, angle));

    /// <summary>Length beside a skew end, and on either side of a skew cut, over which lines across stay parallel to it, mm: the walls there are as thick at
    /// the back as at the edge, a plinth's step as wide, and joints have their bosses against them.</summary>
    internal const double Parallel = 4;

    /// <summary>All of the length beside a skew end or cut over which lines across are not square, mm; none where it is square itself.</summary>
    internal static double Turn(double width, double angle) => angle == 0 ? 0 : Parallel + Stretch(width, angle);

    /// <summary>Share of all that an end or a cut is off the square by which lines across are so at a distance from it.</summary>
    internal static double Share(double width, double angle, double distance) => Math.Clamp(1 - ((distance - Parallel) / Stretch(width, angle)), 0, 1);

    /// <summary>Ends and cuts that lie askew, each by the angle of its line across: positive where that meets the back farther along the track.</summary>
    internal static IEnumerable<SkewCut> Lines(PlatformSpec spec) => spec.IsIsland ? [] : spec.Skew.Cuts
        .Append(new() { At = spec.Face.From, Angle = -spec.Skew.Start }).Append(new() { At = spec.Face.To, Angle = spec.Skew.End }).Where(c => c.Angle != 0);

    /// <summary>Chainages at which lines across begin or end to turn.</summary>
    internal static IEnumerable<double> Bends(PlatformSpec spec) => Lines(spec)
        .SelectMany(c => new[] { Parallel, Turn(spec.Deck.Width, c.Angle) }.SelectMany(d => new[] { c.At - d, c.At + d }))
        .Where(s => s > spec.Face.From && s < spec.Face.To);

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<SkewSpec> Keys { get; } = new SpecKeys<SkewSpec>(_ => new())
        .Number("start", Angles, "degrees", "End at the lower distance along the track.", s => s.Start, (s, v) => s with { Start = v })
        .Number("end", Angles, "degrees", "End at the higher distance along the track.", s => s.End, (s, v) => s with { End = v })
        .Tables("cut", "A stated cut that lies askew, as at a joint in the baseboard.", Cut, s => s.Cuts, (s, v) => s with { Cuts = v });

    private static SpecKeys<SkewCut> Cut => new SpecKeys<SkewCut>(_ => new())
        .Length("at", NumberRange.Anywhere, "Which one: its distance along the track, as cuts or baseboard_joints have it.", c => c.At,
            (c, v) => c with { At = v }, required: true)
        .Example("440")
        .Number("angle", Angles, "degrees", "How far off the square, positive where it meets the back farther along the track.", c => c.Angle,
            (c, v) => c with { Angle = v });

    // Farther off the square an acute corner would break off, and sections come apart only by sliding along one another: common practice, no source.
    private static NumberRange Angles => NumberRange.From(-40, 40);
}

/// <summary>A cut on the skew.</summary>
public sealed record SkewCut
{
    /// <summary>Chainage at which it meets the platform's edge, mm: that of a stated cut.</summary>
    public double At { get; init; }

    /// <summary>Degrees off the square, positive where it meets the back farther along the track than the edge. Default 0, square.</summary>
    public double Angle { get; init; }
}
