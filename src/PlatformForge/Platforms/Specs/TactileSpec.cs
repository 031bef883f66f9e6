using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Specs;

/// <summary>
/// The tactile strip along the edge: studs or ribs that a printer can make stand over the deck, so it is a print of its own, right way up, laid into a rebate;
/// it stops at the ramp tops. Lengths in mm; the defaults are for 4 mm scale.
/// </summary>
public sealed record TactileSpec
{
    // Two lines of a nozzle of 0.4, mm; studs and their pitch at full size.
    private const double UsualStud = 0.8, FullStud = 25, FullPitch = 64;

    private readonly double? stud, pitch;

    /// <summary>From the coping's front edge to its near side. Default 6.56 (500 mm, from memory, no source).</summary>
    public double Inset { get; init; } = 500 / 76.2;

    /// <summary>Default 5.25 (400 mm, from memory, no source).</summary>
    public double Width { get; init; } = 400 / 76.2;

    /// <summary>Depth of its rebate. Default 0.6, three layers of 0.2 (common practice, no source).</summary>
    public double Depth { get; init; } = 0.6;

    /// <summary>How far studs or ribs, or a plain strip, stand over the deck. Default 0.2, a layer (common practice, no source).</summary>
    public double Rise { get; init; } = 0.2;

    /// <summary>Air on either side in its rebate. Default 0.1 (common practice, no source).</summary>
    public double Fit { get; init; } = 0.1;

    public StripPattern Pattern { get; init; } = StripPattern.Studs;

    /// <summary>Width of studs and ribs. Default 0.8, two lines of a nozzle of 0.4, or 25 mm at scale where that is more (from memory, no source).</summary>
    public double Stud
    {
        get => stud ?? Math.Max(LeastStud, FullStud / Ratio);
        init => stud = value;
    }

    /// <summary>Between the middles of studs and ribs. Default 1.6, or 64 mm at scale where that is more (from memory, no source).</summary>
    public double Pitch
    {
        get => pitch ?? Math.Max(2 * LeastStud, FullPitch / Ratio);
        init => pitch = value;
    }

    /// <summary>No stud is narrower unasked, mm: two lines of the nozzle.</summary>
    public double LeastStud { get; init; } = UsualStud;

    private double Ratio { get; init; } = 76.2;

    /// <summary>The strip for a nozzle so wide, mm.</summary>
    public TactileSpec Printed(double nozzle) => this with { LeastStud = Math.Max(UsualStud, PrintedLines.Two(nozzle)) };

    /// <summary>What it comes to.</summary>
    public LineMake Make => new(LineMake.Tactile, LineForm.Strip, Depth, Fit, Rise, Rise > 0 ? Pattern : StripPattern.Plain, Stud, Pitch);

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<TactileSpec> Keys { get; } = new SpecKeys<TactileSpec>(For)
        .Length("inset", NumberRange.From(0, 500), "From the coping's front edge to the strip.", t => t.Inset, (t, v) => t with { Inset = v })
        .Length("width", NumberRange.From(0.5, 100), "Width of its rebate.", t => t.Width, (t, v) => t with { Width = v })
        .Length("depth", NumberRange.From(0.1, 10), "Depth of its rebate.", t => t.Depth, (t, v) => t with { Depth = v })
        .Length("rise", NumberRange.From(0, 3), "How far it stands over the deck.", t => t.Rise, (t, v) => t with { Rise = v })
        .Length("fit", NumberRange.From(0, 1), "Air on either side in its rebate.", t => t.Fit, (t, v) => t with { Fit = v })
        .Choice(
            "pattern",
            "What stands on it.",
            t => t.Pattern,
            (t, v) => t with { Pattern = v },
            [("studs", StripPattern.Studs), ("ribs", StripPattern.Ribs), ("plain", StripPattern.Plain)])
        .Length("stud", NumberRange.From(0.2, 20), "Width of studs and ribs.", t => t.Stud, (t, v) => t with { Stud = v })
        .Length("pitch", NumberRange.From(0.4, 50), "Between the middles of studs and ribs.", t => t.Pitch, (t, v) => t with { Pitch = v })
        .Check((t, key) => t.Pitch > t.Stud ? null : new(
            "pitch",
            FormattableString.Invariant($"Studs {t.Stud:0.###} mm wide at a pitch of {t.Pitch:0.###} mm leave nothing between them."),
            FormattableString.Invariant($"Give a pitch of {2 * t.Stud:0.###} mm."),
            Cure.Set(key + ".pitch", 2 * t.Stud)));

    /// <summary>The defaults for a scale: places and widths scale; what a printer needs does not.</summary>
    public static TactileSpec For(ModelScale scale) => new()
    {
        Inset = scale.ToModel(500),
        Width = scale.ToModel(400),
        Ratio = scale.Ratio,
    };
}
