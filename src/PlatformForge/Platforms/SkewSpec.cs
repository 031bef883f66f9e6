using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms;

/// <summary>
/// Ends cut on the skew, as at a backscene or at a joint in the baseboard that lies askew to the track. Each angle is in degrees off the square, positive where
/// the platform's back reaches farther than its edge.
/// </summary>
public sealed record SkewSpec
{
    /// <summary>At the lower chainage. Default 0, square.</summary>
    public double Start { get; init; }

    /// <summary>At the higher chainage. Default 0, square.</summary>
    public double End { get; init; }

    /// <summary>Whether an end is askew.</summary>
    public bool IsAny => Start != 0 || End != 0;

    /// <summary>By how much farther along the track an end's line meets the back of a deck than its edge, mm.</summary>
    internal static double Shift(double width, double angle) => width * Math.Tan(angle * Math.PI / 180);

    /// <summary>Length along the track over which an end's lines across turn, mm: twice what they are off there, so that at the back they draw together, or
    /// apart, by a half at most.</summary>
    internal static double Stretch(double width, double angle) => 2 * Math.Abs(Shift(width, angle));

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<SkewSpec> Keys { get; } = new SpecKeys<SkewSpec>(_ => new())
        .Number("start", Angles, "degrees", "End at the lower distance along the track.", s => s.Start, (s, v) => s with { Start = v })
        .Number("end", Angles, "degrees", "End at the higher distance along the track.", s => s.End, (s, v) => s with { End = v });

    // Farther off the square an acute corner would break off, and sections come apart only by sliding along one another: common practice, no source.
    private static NumberRange Angles => NumberRange.From(-40, 40);
}
