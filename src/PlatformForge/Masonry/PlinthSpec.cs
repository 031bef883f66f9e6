using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Masonry;

/// <summary>A plinth: the foot of the walls stands out, and steps back to them at its head, a course a step. It stands where the smooth wall would, and what
/// is over it
/// is set back. Lengths in mm of the model; the defaults are for 4 mm scale.</summary>
public sealed record PlinthSpec
{
    // In full size, mm: three courses of bricks high, a quarter of a brick before the wall; common practice, no source.
    private const double FullHeight = 225, FullProjection = 56.25;

    // Greatest step unasked, mm, and how many of them: the line of a nozzle of 0.4 carries the next one deck down, where a step is an underside.
    private const double UsualStep = 0.4, UnaskedSteps = 3;

    private readonly int? steps;
    private readonly double? height, projection;

    /// <summary>Height over the baseboard of its head, which goes to the nearest bed. Default 2.95 (225 mm: common practice, no source).</summary>
    public double Height
    {
        get => height ?? FullHeight / Ratio;
        init => height = value;
    }

    /// <summary>Whether its height is stated; otherwise it is as much higher as its steps need.</summary>
    public bool StatesHeight => height is not null;

    /// <summary>Full size to model, for what is not stated.</summary>
    public double Ratio { get; init; } = 76.2;

    /// <summary>How far its foot stands before the wall over it. Default 0.74 (56 mm, a quarter of a brick, 1.2 at most: common practice, no source); less
    /// where its height has fewer courses than that takes steps, as of stone.</summary>
    public double Projection
    {
        get => projection ?? UnaskedProjection;
        init => projection = value;
    }

    /// <summary>Whether its projection is stated.</summary>
    public bool StatesProjection => projection is not null;

    /// <summary>Whether its steps are stated.</summary>
    public bool StatesSteps => steps is not null;

    /// <summary>How far it stands out where that is not stated, mm.</summary>
    public double UnaskedProjection { get; init; } = FullProjection / 76.2;

    /// <summary>Greatest step unasked, mm: 0.4, or the line of a finer nozzle.</summary>
    public double UnaskedStep { get; init; } = UsualStep;

    /// <summary>The plinth for a nozzle: unasked it has as many steps as keep each within a line of it, mm.</summary>
    public PlinthSpec Printed(double nozzle) => this with { UnaskedStep = Math.Min(UsualStep, nozzle) };

    /// <summary>Courses over which it steps back, the last of them its head; unasked as many as keep each step within 0.4 mm.</summary>
    public int Steps
    {
        get => steps ?? Math.Max(1, (int)Math.Ceiling((Projection / UnaskedStep) - Tolerances.Rounding));
        init => steps = value;
    }

    /// <summary>The plinth on walls that lean back so far with every course, mm: unasked it has as many more steps as keep each within 0.4 mm with
    /// that.</summary>
    public PlinthSpec Leaning(double lean) =>
        steps is not null || lean <= 0 || lean >= UnaskedStep ? this
        : this with { Steps = Math.Max(Steps, (int)Math.Ceiling(Projection / (UnaskedStep - lean))) };

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<PlinthSpec> Keys { get; } = new SpecKeys<PlinthSpec>(For)
        .Length("height", NumberRange.From(0.2, 200), "Height of the plinth's head over the baseboard; it goes to the nearest bed.", p => p.Height,
            (p, v) => p with { Height = v })
        .Length("projection", NumberRange.From(0.05, 50), "How far the plinth's foot stands before the wall over it, which is set back by it.", p =>
            p.Projection, (p, v) => p with { Projection = v })
        .Number("steps", NumberRange.From(1, 20), "", "Courses over which the plinth steps back, its head among them; unasked as many as keep "
            + "each within 0.4 mm.", p =>
            p.Steps, (p, v) => p with { Steps = (int)v }, whole: true);

    /// <summary>The defaults for a scale.</summary>
    public static PlinthSpec For(ModelScale scale) => new()
    {
        Ratio = FullHeight / scale.ToModel(FullHeight),
        UnaskedProjection = Math.Min(scale.ToModel(FullProjection), UnaskedSteps * UsualStep),
    };
}
