using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms;

/// <summary>The white line along the edge; it stops at the ramp tops. Lengths in mm.</summary>
public sealed record WhiteLineSpec
{
    /// <summary>From the coping's front edge to the line's near side. Default 0.8.</summary>
    public double Inset { get; init; } = 0.8;

    /// <summary>Default 1.</summary>
    public double Width { get; init; } = 1;

    /// <summary>Depth of a shallow groove to paint in; 0 makes none and leaves colour only.</summary>
    public double GrooveDepth { get; init; }

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<WhiteLineSpec> Keys { get; } = new SpecKeys<WhiteLineSpec>(For)
        .Length("inset", NumberRange.From(0, 200), "From the coping's front edge to the line.", l => l.Inset, (l, v) => l with { Inset = v })
        .Length("width", NumberRange.From(0.1, 50), "Width of the line.", l => l.Width, (l, v) => l with { Width = v })
        .Length(
            "groove_depth",
            NumberRange.From(0, 10),
            "Depth of a groove to paint in; 0 makes none.",
            l => l.GrooveDepth,
            (l, v) => l with { GrooveDepth = v });

    /// <summary>The defaults for a scale: 3 in wide.</summary>
    public static WhiteLineSpec For(ModelScale scale) => new() { Width = scale.ToModel(76.2) };
}
