namespace PlatformForge.Track;

/// <summary>Which curvatures are told as straight: wherever a radius is written, and wherever one is read.</summary>
public static class StraightRule
{
    /// <summary>The longest radius that a project file may state, mm. Over a metre its middle lies an eighth of a millimetre off a straight.</summary>
    public const double LongestRadius = 1e6;

    /// <summary>A curvature as it is told, 1/mm: nil where its radius is longer than <see cref="LongestRadius"/>.</summary>
    public static double Told(double curvature) => Math.Abs(curvature) * LongestRadius < 1 ? 0 : curvature;
}
