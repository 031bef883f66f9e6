namespace PlatformForge.Platforms.Specs;

/// <summary>The two lines along the edge that tell a slab's tooled margins from its middle, mm behind the coping's front.</summary>
/// <param name="Front">Middle of the one nearer to the front.</param>
/// <param name="Back">Middle of the other one.</param>
/// <param name="Half">Half their width.</param>
internal sealed record MarginLines(double Front, double Back, double Half)
{
    // Stone kept between one of them and another groove, mm: a printed line (common practice, no source).
    private const double Land = 0.4;

    /// <summary>Where something may begin just behind the front one, mm.</summary>
    public double Behind => Front + Half + Land;

    /// <summary>Whether something comes so near to one of them, or over it, that no printed line is left between.</summary>
    public bool Meets(double from, double to) => Meets(Front, from, to) || Meets(Back, from, to);

    private bool Meets(double middle, double from, double to) =>
        from < middle + Half + Land - Units.Tolerances.Rounding && to > middle - Half - Land + Units.Tolerances.Rounding;
}
