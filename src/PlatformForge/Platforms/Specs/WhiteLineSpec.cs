using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Specs;

/// <summary>The white line along the edge; it stops at the ramp tops. Lengths in mm.</summary>
public sealed record WhiteLineSpec
{
    // Two lines of a nozzle of 0.4 mm: less is no print of its own (common practice, no source).
    private const double UsualLeast = 0.8;

    // A layer where none is told, mm, and so many of them in an inlay: through one the deck's colour shows (common practice, no source).
    private const double UsualLayer = 0.2, InlayLayers = 2;

    private readonly LineForm? form;

    // From the coping's edge where nothing else is in the way, mm.
    private const double UsualInset = 0.8;

    private readonly double? depth, width, inset;

    /// <summary>From the coping's front edge to the line's near side. Default 0.8; where a slab's tooled margin is told by a line that would lie under it, just
    /// behind that line.</summary>
    public double Inset
    {
        get => inset ?? (Margins is { } m && m.Meets(UsualInset, UsualInset + Width) && !m.Meets(m.Behind, m.Behind + Width) ? m.Behind : UsualInset);
        init => inset = value;
    }

    /// <summary>The lines of the tooled margins beside the slabs' edges, which it keeps off; null where there are none.</summary>
    internal MarginLines? Margins { get; init; }

    /// <summary>Width of what a brush or a print of its own takes of the deck. Default <see cref="Usual"/>, and more where an inlay, or a strip and
    /// the air beside it, could not be printed as narrow.</summary>
    public double Width
    {
        get => width ?? Math.Max(Usual, Form == LineForm.Inlay ? LeastPrint : Form == LineForm.Strip ? LeastPrint + (2 * Fit) : 0);
        init => width = value;
    }

    /// <summary>No print of its own is narrower unasked, mm.</summary>
    public double LeastPrint { get; init; } = UsualLeast;

    /// <summary>Height of the printer's layers, mm: an inlay is two of them deep unasked.</summary>
    public double Layer { get; init; } = UsualLayer;

    /// <summary>The line for a nozzle so wide and layers so high, mm: unasked a print of its own is two lines wide, and an inlay two layers deep.</summary>
    public WhiteLineSpec Printed(double nozzle, double layer = UsualLayer) =>
        this with { LeastPrint = Math.Max(UsualLeast, PrintedLines.Two(nozzle)), Layer = layer };

    /// <summary>Width of a painted line where none is stated. Default 1, 3 in at 4 mm scale.</summary>
    public double Usual { get; init; } = 1;

    /// <summary>How it is made. Default paint, or a groove where a depth of one is stated.</summary>
    public LineForm Form
    {
        get => form ?? (GrooveDepth > 0 ? LineForm.Groove : LineForm.Paint);
        init => form = value;
    }

    /// <summary>Depth of a shallow groove to paint in; 0 makes none and leaves colour only.</summary>
    public double GrooveDepth { get; init; }

    /// <summary>Depth of what is cut into the deck. Default for a groove 0.2; for an inlay two layers of the printer; for a strip's rebate 0.4, two layers of
    /// 0.2 (common practice, no source).</summary>
    public double Depth
    {
        get => depth ?? Form switch
        {
            LineForm.Groove => GrooveDepth > 0 ? GrooveDepth : UsualLayer,
            LineForm.Inlay => InlayLayers * Layer,
            _ => InlayLayers * UsualLayer,
        };
        init => depth = value;
    }

    /// <summary>Air on either side of a strip in its rebate. Default 0.1 (common practice, no source).</summary>
    public double Fit { get; init; } = 0.1;

    /// <summary>How far a strip stands over the deck. Default 0.</summary>
    public double Rise { get; init; }

    /// <summary>What it comes to.</summary>
    public LineMake Make => Form == LineForm.Strip ? new(LineMake.White, Form, Depth, Fit, Rise) : new(LineMake.White, Form, Form == LineForm.Paint ? 0
        : Depth);

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<WhiteLineSpec> Keys { get; } = new SpecKeys<WhiteLineSpec>(For)
        .Length("inset", NumberRange.From(0, 200), "From the coping's front edge to the line.", l => l.Inset, (l, v) => l with { Inset = v })
        .Length(
            "width",
            NumberRange.From(0.1, 50),
            "Width of the line; left out, an inlay or a strip is as wide as prints.",
            l => l.Width,
            (l, v) => l with { Width = v })
        .Choice(
            "form",
            "How it is made: painted, in a groove to paint in, inlaid in another colour, or a strip printed by itself for a rebate.",
            l => l.Form,
            (l, v) => l with { Form = v },
            [("paint", LineForm.Paint), ("groove", LineForm.Groove), ("inlay", LineForm.Inlay), ("strip", LineForm.Strip)])
        .Length("depth", NumberRange.From(0.05, 10), "Depth of groove, inlay or rebate.", l => l.Depth, (l, v) => l with { Depth = v })
        .Length("fit", NumberRange.From(0, 1), "Air on either side of a strip in its rebate.", l => l.Fit, (l, v) => l with { Fit = v })
        .Length("rise", NumberRange.From(0, 3), "How far a strip stands over the deck.", l => l.Rise, (l, v) => l with { Rise = v })
        .Length(
            "groove_depth",
            NumberRange.From(0, 10),
            "Depth of a groove to paint in; 0 makes none.",
            l => l.GrooveDepth,
            (l, v) => l with { GrooveDepth = v })
        .Check((l, key) => l.GrooveDepth <= 0 || l.Form == LineForm.Groove ? null : new(
            "groove_depth",
            $"A line that is {l.Form.ToString().ToLowerInvariant()} has no groove.",
            "Give form = \"groove\", or leave groove_depth out.",
            Cure.LeaveOut(key + ".groove_depth")));

    /// <summary>The defaults for a scale: 3 in wide, or as wide as prints.</summary>
    public static WhiteLineSpec For(ModelScale scale) => new() { Usual = scale.ToModel(76.2) };
}
