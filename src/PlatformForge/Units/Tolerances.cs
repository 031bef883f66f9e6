namespace PlatformForge.Units;

/// <summary>
/// The small numbers of the program, each a different kind of thing, never added to one another.
/// </summary>
public static class Tolerances
{
    /// <summary>
    /// Spacing of the plan grid in mm: two plan points on one node are the same point. A power of two, so that grid coordinates
    /// are exact doubles. 2^-15: rounding changes the benchmark section's volume by up to 3·10⁻⁷ of it (with 2^-13 by 2·10⁻⁶),
    /// and neighbouring nodes still stay apart as 32-bit floats up to 512 mm from a file's origin.
    /// </summary>
    public const double GridStep = 1.0 / 32768;

    /// <summary>Greatest height in mm of a true curve over the facet that stands for it.</summary>
    public const double FacetVersine = 0.01;

    /// <summary>Greatest error in mm of a swept envelope at default settings, always on the safe side.</summary>
    public const double EnvelopeError = 0.01;

    /// <summary>
    /// Lengths in mm that differ by less than this are the same length told by two sums: doubles of the size of a layout, 10⁵ mm, end at 10⁻¹¹ mm, and a few
    /// dozen roundings later
    /// are still below. Rules leave it over, so that a figure offered as the limit is taken when it comes back.
    /// </summary>
    public const double Rounding = 1e-9;

    /// <summary>
    /// Lengths in mm of which one went through rounded figures (sizes of full size by a scale, a chainage told in a file, a ring that was clipped) are the same
    /// length within this: a nanometre, which no printer, knife or eye knows.
    /// </summary>
    public const double SameLength = 1e-6;

    /// <summary>A quotient of two lengths is the whole number next to it where it is off by less than this.</summary>
    public const double WholeQuotient = 1e-9;

    /// <summary>Newton's rule along a line ends at a step below this, mm: where doubles of the size of a layout end.</summary>
    public const double LastStep = 1e-11;

    /// <summary>Agreement in mm asked of positions computed along a centreline.</summary>
    public const double CentrelinePosition = 1e-9;
}
