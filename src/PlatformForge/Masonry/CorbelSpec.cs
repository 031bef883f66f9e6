using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Masonry;

/// <summary>Corbelled courses under the coping, each standing out before the one below it. The uppermost stands where the smooth wall would, and what is
/// under them is
/// set back. Lengths in mm of the model; the defaults are for 4 mm scale.</summary>
public sealed record CorbelSpec
{
    // An eighth of a brick in full size, mm: common practice, no source.
    private const double FullProjection = 28.125;

    private readonly int? courses;

    /// <summary>How many courses stand out. Default 2 of bricks, 1 of stones, which are as high (common practice, no source); fewer where a wall has no room
    /// for so many.</summary>
    public int Courses
    {
        get => courses ?? UnaskedCourses;
        init => courses = value;
    }

    /// <summary>Whether they are stated.</summary>
    public bool StatesCourses => courses is not null;

    /// <summary>How many there are where that is not stated.</summary>
    public int UnaskedCourses { get; init; } = 2;

    /// <summary>How far each stands before the one below it. Default 0.37 (28 mm, an eighth of a brick: common practice, no source).</summary>
    public double Projection { get; init; } = FullProjection / 76.2;

    /// <summary>How far the uppermost stands before the wall, mm.</summary>
    public double Out => Courses * Projection;

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<CorbelSpec> Keys { get; } = new SpecKeys<CorbelSpec>(For)
        .Number("courses", NumberRange.From(1, 20), "", "Courses under the coping that stand out, each before the one below.", c => c.Courses, (c, v) =>
            c with { Courses = (int)v }, whole: true)
        .Length("projection", NumberRange.From(0.05, 20), "How far each corbelled course stands before the one below it.", c => c.Projection, (c, v) =>
            c with { Projection = v });

    /// <summary>The defaults for a scale.</summary>
    public static CorbelSpec For(ModelScale scale) => new() { Projection = scale.ToModel(FullProjection) };
}
