using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Masonry;

/// <summary>Piers in a platform's walls: they stand where the smooth wall would, and the panels between them are set back. Lengths in mm of the model; the
/// defaults are for 4 mm scale.</summary>
public sealed record PierSpec
{
    // Sizes in full size, mm: two bricks wide, half a brick before the panels, some ten feet apart; common practice, no source.
    private const double FullWidth = 450, FullProjection = 112.5, FullPitch = 3048;

    private readonly double? width, projection;

    /// <summary>Which walls have them.</summary>
    public PierWalls On { get; init; } = PierWalls.Front;

    /// <summary>From the middle of one to the next, about: they are spread evenly. Default 40 (10 ft: common practice, no source).</summary>
    public double Pitch { get; init; } = FullPitch / 76.2;

    /// <summary>Chainages of their middles; none spreads them by <see cref="Pitch"/>.</summary>
    public IReadOnlyList<double> At { get; init; } = [];

    /// <summary>Width. Default 5.9 (two bricks, 450 mm: common practice, no source).</summary>
    public double Width
    {
        get => width ?? Math.Max(Least.Width, FullWidth / Ratio);
        init => width = value;
    }

    /// <summary>How far they stand before the panels between them. Default 1.48 (half a brick, 112.5 mm: common practice, no source).</summary>
    public double Projection
    {
        get => projection ?? Math.Max(Least.Projection, FullProjection / Ratio);
        init => projection = value;
    }

    /// <summary>None is narrower or shallower unasked, mm.</summary>
    public (double Width, double Projection) Least { get; init; }

    /// <summary>Full size over model size, for what is not stated.</summary>
    public double Ratio { get; init; } = 76.2;

    /// <summary>Piers for a nozzle: unasked two lines of them stand beside their joints, and a line before the wall.</summary>
    /// <param name="nozzle">Width of a line, mm.</param>
    /// <param name="joints">Depth of the joints, mm.</param>
    public PierSpec Printed(double nozzle, double joints) => this with { Least = (PrintedLines.Two(nozzle, 2 * joints), nozzle) };

    /// <summary>Height over the baseboard at which their weathered heads meet the wall, mm: they are buttresses then. Null goes up to the coping.</summary>
    public double? Height { get; init; }

    /// <summary>Slope of such a head, degrees from level. Default 60 (common practice, no source).</summary>
    public double Weathering { get; init; } = 60;

    /// <summary>How much lower such a head is over a pier's front than at the wall, mm.</summary>
    public double HeadRise => Projection * Math.Tan(Weathering * Math.PI / 180);

    /// <summary>What they do at a joint between sections.</summary>
    public PierJoints Joints { get; init; } = PierJoints.Beside;

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<PierSpec> Keys { get; } = new SpecKeys<PierSpec>(For)
        .Choice("on", "Walls that have piers.", p => p.On, (p, v) => p with { On = v },
            [("front", PierWalls.Front), ("back", PierWalls.Back), ("both", PierWalls.Both)])
        .Length("pitch", NumberRange.From(1, 2000), "From one pier to the next, about: they are spread evenly.", p => p.Pitch, (p, v) => p with { Pitch = v })
        .Lengths("at", NumberRange.Anywhere, "Distances along the track of the middles of piers; left out, they are spread by their pitch.", p => p.At,
            (p, v) => p with { At = v })
        .Example("[300, 352.5]")
        .Length("width", NumberRange.From(0.4, 200), "Width of a pier.", p => p.Width, (p, v) => p with { Width = v })
        .Length("projection", NumberRange.From(0.2, 50), "How far piers stand before the panels between them, which are set back by it.", p => p.Projection,
            (p, v) => p with { Projection = v })
        .Length("height", NumberRange.From(0.4, 200), "Height over the baseboard at which a weathered head meets the wall, as on buttresses; "
            + "it goes to the nearest bed. Left out, piers go up to the coping.",
            p => p.Height, (p, v) => p with { Height = v })
        .Example("12")
        .Number("weathering", NumberRange.From(45, 80), "degrees", "Slope of weathered heads from level; flatter ones would hang free, printed "
            + "deck down.", p => p.Weathering, (p, v) =>
            p with { Weathering = v })
        .Choice("joints", "At a joint between sections: a pier beside it, which hides it in its angle, or a panel across it, where it shows.", p => p.Joints,
            (p, v) => p with { Joints = v }, [("beside", PierJoints.Beside), ("between", PierJoints.Between)]);

    /// <summary>Whether a wall has piers.</summary>
    /// <param name="isBack">The back, where no second face is.</param>
    public bool Has(bool isBack) => On == PierWalls.Both || (On == PierWalls.Back) == isBack;

    /// <summary>The defaults for a scale.</summary>
    public static PierSpec For(ModelScale scale) => new()
    {
        Pitch = scale.ToModel(FullPitch),
        Ratio = scale.Ratio,
    };
}

/// <summary>Walls with piers.</summary>
public enum PierWalls
{
    /// <summary>Under the copings.</summary>
    Front,

    /// <summary>The back.</summary>
    Back,

    /// <summary>Front and back.</summary>
    Both,
}

/// <summary>What piers do at a joint between sections.</summary>
public enum PierJoints
{
    /// <summary>One stands beside it, and it lies in the angle between pier and panel.</summary>
    Beside,

    /// <summary>It goes through a panel, midway between two.</summary>
    Between,
}
