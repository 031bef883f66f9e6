using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Specs;

/// <summary>
/// A footing along the back, beside the level deck and, if asked, down the ramps, on which the fence stands: a kerb, printed by itself and laid into
/// a rebate, with the holes for the posts
/// that go through it. Lengths in mm of the model; the defaults are for 4 mm scale.
/// </summary>
public sealed record KerbSpec
{
    private readonly double? width;

    /// <summary>How far it stands over the deck. Default 2 (6 in: common practice, no source).</summary>
    public double Height { get; init; } = 2;

    /// <summary>Its width. Default <see cref="Usual"/>, and wider where the posts behind it would not go through it.</summary>
    public double Width
    {
        get => width ?? Math.Max(Usual, Holding(Carried));
        init => width = value;
    }

    /// <summary>Its width where nothing asks for more. Default 5 (15 in: common practice, no source).</summary>
    public double Usual { get; init; } = 5;

    /// <summary>How far from the platform's back the holes of what goes through it reach, mm; 0 where nothing does.</summary>
    public double Carried { get; init; }

    /// <summary>Depth of its rebate. Default 0.6, three layers of 0.2 (common practice, no source).</summary>
    public double Depth { get; init; } = 0.6;

    /// <summary>Air on either side in its rebate. Default 0.1 (common practice, no source).</summary>
    public double Fit { get; init; } = 0.1;

    /// <summary>Whether it runs down the ramps too. Default no: it ends at their tops.</summary>
    public bool Ramps { get; init; }

    /// <summary>The least width, mm, that keeps two printed lines before holes that reach so far from the platform's back.</summary>
    public double Holding(double reach) => reach <= 0 ? 0
        : Math.Ceiling((reach + (2 * LineMake.LeastLand) - BackSpec.Lip - Fit - Tolerances.Rounding) * 100) / 100;

    /// <summary>What it takes of the deck, mm.</summary>
    public double Taken => Width + (2 * Fit);

    /// <summary>What it comes to.</summary>
    public LineMake Make => new(LineMake.Kerb, LineForm.Strip, Depth, Fit, Height) { IsPierced = true };

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<KerbSpec> Keys { get; } = new SpecKeys<KerbSpec>(For)
        .Length("height", NumberRange.From(0.2, 50), "How far it stands over the deck.", k => k.Height, (k, v) => k with { Height = v })
        .Length(
            "width",
            NumberRange.From(0.5, 100),
            "Its width; a lip of 0.8 mm of the deck stays behind it. Left out, the fence's posts go through it.",
            k => k.Width,
            (k, v) => k with { Width = v })
        .Length("depth", NumberRange.From(0.1, 10), "Depth of its rebate in the deck.", k => k.Depth, (k, v) => k with { Depth = v })
        .Length("fit", NumberRange.From(0, 1), "Air on either side in its rebate.", k => k.Fit, (k, v) => k with { Fit = v })
        .Flag("ramps", "Whether it runs down the ramps too.", k => k.Ramps, (k, v) => k with { Ramps = v });

    /// <summary>The defaults for a scale: 6 in high and 15 in wide, or as wide as its posts need.</summary>
    public static KerbSpec For(ModelScale scale) => new() { Height = scale.ToModel(6 * 25.4), Usual = scale.ToModel(15 * 25.4) };
}
