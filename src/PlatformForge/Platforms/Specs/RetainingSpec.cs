using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Specs;

/// <summary>What a retaining wall does beside ramps.</summary>
public enum RampWall
{
    /// <summary>It ends at the ramps' tops.</summary>
    None,

    /// <summary>Its coping falls with the ramp, as that of a wing wall.</summary>
    Sloped,

    /// <summary>Its coping runs on level, as the ground that it holds: it stands higher over a ramp.</summary>
    Level,
}

/// <summary>
/// A retaining wall along the back, beside the level deck and, if asked, beside ramps: what lies behind the platform lies higher than its deck. It is
/// faced as the front is. It cannot lie on the bed with the deck, so
/// it is a print of its own, on its coping, whose foot stands in a rebate of the deck. Lengths in mm of the model; the defaults are for 4 mm scale.
/// </summary>
public sealed record RetainingSpec
{
    /// <summary>Height of its coping's top over the deck. Default 16 (4 ft: common practice, no source).</summary>
    public double Height { get; init; } = 4 * FullSize.Foot / 76.2;

    /// <summary>Thickness of its plinth and coping. Default 2.4: six printed lines, one of which the wall between them stands back by.</summary>
    public double Thickness { get; init; } = 2.4;

    /// <summary>How far coping and plinth stand before its face. Default 0.4, a line of a nozzle of 0.4, which holds itself.</summary>
    public double Oversail { get; init; } = 0.4;

    /// <summary>Thickness of its coping. Default 1 (3 in: common practice, no source).</summary>
    public double Coping { get; init; } = 76.2 / 76.2;

    /// <summary>Height of its plinth over the deck. Default 3 (9 in: common practice, no source).</summary>
    public double Plinth { get; init; } = 9 * 25.4 / 76.2;

    /// <summary>Depth of its rebate. Default 0.8, four layers of 0.2 (common practice, no source).</summary>
    public double Depth { get; init; } = 0.8;

    /// <summary>Air on either side in its rebate. Default 0.1 (common practice, no source).</summary>
    public double Fit { get; init; } = 0.1;

    /// <summary>What it does beside ramps. Default nothing: it ends at their tops.</summary>
    public RampWall Ramps { get; init; }

    /// <summary>What it takes of the deck, mm.</summary>
    public double Taken => Thickness + (2 * Fit);

    /// <summary>What it comes to.</summary>
    public LineMake Make => new(LineMake.Retaining, LineForm.Strip, Depth, Fit, Height) { Wall = new(Oversail, Coping, Plinth) };

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<RetainingSpec> Keys { get; } = new SpecKeys<RetainingSpec>(For)
        .Length("height", NumberRange.From(1, 300), "Height of its coping's top over the deck.", r => r.Height, (r, v) => r with { Height = v })
        .Length("thickness", WallSpec.Thicknesses, "Thickness of its plinth and coping.", r => r.Thickness, (r, v) => r with { Thickness = v })
        .Length("oversail", NumberRange.From(0, 5), "How far coping and plinth stand before its face.", r => r.Oversail, (r, v) => r with { Oversail = v })
        .Length("coping", NumberRange.From(0.2, 20), "Thickness of its coping.", r => r.Coping, (r, v) => r with { Coping = v })
        .Length("plinth", NumberRange.From(0, 100), "Height of its plinth over the deck.", r => r.Plinth, (r, v) => r with { Plinth = v })
        .Length("depth", NumberRange.From(0.1, 10), "Depth of its rebate in the deck.", r => r.Depth, (r, v) => r with { Depth = v })
        .Length("fit", NumberRange.From(0, 1), "Air on either side in its rebate.", r => r.Fit, (r, v) => r with { Fit = v })
        .Choice(
            "ramps",
            "What it does beside ramps: it ends at their tops; falls with them; or runs on level, and stands higher over them.",
            r => r.Ramps,
            (r, v) => r with { Ramps = v },
            [("none", RampWall.None), ("sloped", RampWall.Sloped), ("level", RampWall.Level)])
        .Check((r, key) => r.Height > r.Coping + r.Plinth ? null : new(
            "height",
            FormattableString.Invariant($"A wall {r.Height:0.###} mm high has no face between a plinth of {r.Plinth:0.###} and a coping of {r.Coping:0.###}."),
            FormattableString.Invariant($"Give {r.Coping + r.Plinth + 1:0.###} mm or more, or a lower plinth."),
            Cure.Set(key + ".height", r.Coping + r.Plinth + 1)));

    /// <summary>The defaults for a scale: heights scale, what a printer needs does not.</summary>
    public static RetainingSpec For(ModelScale scale) => new()
    {
        Height = scale.ToModel(4 * FullSize.Foot),
        Coping = Math.Max(0.6, scale.ToModel(76.2)),
        Plinth = scale.ToModel(9 * 25.4),
    };
}
