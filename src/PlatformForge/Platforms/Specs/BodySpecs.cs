using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Specs;

/// <summary>The walking surface. Lengths in mm of the model; the defaults are for 4 mm scale.</summary>
public sealed record DeckSpec
{
    // A printed plate so thick, mm, does not sag between ribs: common practice, no source.
    private const double UsualThickness = 1.5;

    private readonly double? thickness;

    /// <summary>Thickness of the slab under the walking surface. Default 1.5: a printed plate that does not sag between ribs (common practice).</summary>
    public double Thickness
    {
        get => thickness ?? UnaskedThickness;
        init => thickness = value;
    }

    /// <summary>Its thickness where that is not stated, mm.</summary>
    public double UnaskedThickness { get; init; } = UsualThickness;

    /// <summary>The deck for a nozzle: unasked it is two lines thick under its joints, and what is engraved of a paving leaves two lines of it.</summary>
    /// <param name="nozzle">Width of a line, mm.</param>
    public DeckSpec Printed(double nozzle)
    {
        double joints = Math.Max(Paving?.Depth ?? 0, ExpansionJoints > 0 ? JointDepth : 0);
        var held = this with { UnaskedThickness = Math.Max(UsualThickness, PrintedLines.Two(nozzle, joints)) };
        return held with { Paving = Paving?.Printed(nozzle, held.Thickness) };
    }

    /// <summary>From the coping's front edge to the platform's back, square to the edge. Default 48 (12 ft).</summary>
    public double Width { get; init; } = 48;

    /// <summary>Fall away from the track as n of 1 in n, from the coping's front edge to the back; 0 is level.</summary>
    public double Crossfall { get; init; }

    /// <summary>Chamfer at the mouths of holes and sockets, measured along both faces. Default 0.3: takes up the squashed first layer of a print laid deck
    /// down.</summary>
    public double MouthChamfer { get; init; } = 0.3;

    /// <summary>What it is paved with; null leaves it smooth, as of tarmac or ash.</summary>
    public PavingSpec? Paving { get; init; }

    /// <summary>Width and depth of an expansion joint, mm: a printed line, and as deep as joints of pavings (common practice, no source).</summary>
    public const double JointWidth = 0.4, JointDepth = 0.3;

    /// <summary>Distance between expansion joints across the deck, from coping to back; 0 makes none.</summary>
    public double ExpansionJoints { get; init; }

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<DeckSpec> Keys { get; } = new SpecKeys<DeckSpec>(For)
        .Length("thickness", NumberRange.From(0.2, 50), "Thickness of the deck.", d => d.Thickness, (d, v) => d with { Thickness = v })
        .Length("width", NumberRange.From(1, 2000), "From the coping's front edge to the platform's back.", d => d.Width, (d, v) => d with { Width = v })
        .Number(
            "crossfall",
            NumberRange.NoneOr(10, 1000),
            "",
            "Fall away from the edge, 1 in this; 0 is level.",
            d => d.Crossfall,
            (d, v) => d with { Crossfall = v })
        .Length(
            "mouth_chamfer",
            NumberRange.From(0, 5),
            "Chamfer at the mouths of holes and sockets, against the squashed first layer.",
            d => d.MouthChamfer,
            (d, v) => d with { MouthChamfer = v })
        .Length(
            "expansion_joints",
            NumberRange.NoneOr(5, 5000),
            "Distance between expansion joints across the deck; 0 makes none.",
            d => d.ExpansionJoints,
            (d, v) => d with { ExpansionJoints = v })
        .Table("paving", "What it is paved with; left out, it is smooth.", PavingSpec.Keys, d => d.Paving, (d, v) => d with { Paving = v });

    /// <summary>The defaults for a scale: 12 ft wide; the thickness is the printer's and does not scale.</summary>
    public static DeckSpec For(ModelScale scale) => new() { Width = scale.ToModel(12 * FullSize.Foot) };
}

/// <summary>Walls from baseboard to deck. Thicknesses in mm; default 1.6, four lines of the usual nozzle, or two of a wider one behind what is laid on
/// them.</summary>
public sealed record WallSpec
{
    private const double Usual = 1.6;

    private readonly double? front, back, end;

    public double FrontThickness
    {
        get => front ?? Unasked.Front;
        init => front = value;
    }

    public double BackThickness
    {
        get => back ?? Unasked.Back;
        init => back = value;
    }

    /// <summary>Thickness of the walls that close both ends of the platform.</summary>
    public double EndThickness
    {
        get => end ?? Unasked.End;
        init => end = value;
    }

    /// <summary>What those are thick that are not stated, mm.</summary>
    public (double Front, double Back, double End) Unasked { get; init; } = (Usual, Usual, Usual);

    /// <summary>The walls for a nozzle: unasked they are two lines thick behind what is cut into them.</summary>
    /// <param name="nozzle">Width of a line, mm.</param>
    /// <param name="cut">How deep joints and recesses of each go in, mm.</param>
    public WallSpec Printed(double nozzle, (double Front, double Back, double End) cut)
    {
        double Thick(double depth) => Math.Max(Usual, PrintedLines.Two(nozzle, depth));
        return this with { Unasked = (Thick(cut.Front), Thick(cut.Back), Thick(cut.End)) };
    }

    /// <summary>What a wall, or a rib, may be thick, mm.</summary>
    internal static NumberRange Thicknesses => NumberRange.From(0.2, 50);

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<WallSpec> Keys { get; } = new SpecKeys<WallSpec>(_ => new())
        .Length("front_thickness", Thicknesses, "Thickness of the wall under the coping.", w => w.FrontThickness, (w, v) => w with { FrontThickness = v })
        .Length("back_thickness", Thicknesses, "Thickness of the back wall.", w => w.BackThickness, (w, v) => w with { BackThickness = v })
        .Length("end_thickness", Thicknesses, "Thickness of the walls that close both ends.", w => w.EndThickness, (w, v) => w with { EndThickness = v });
}

/// <summary>Stiffeners under the deck. Lengths in mm.</summary>
public sealed record RibSpec
{
    private const double Usual = 1.2;

    private readonly double? thickness, lengthwise;

    /// <summary>Greatest distance between the middles of transverse ribs; 0 makes none. Default 30.</summary>
    public double Pitch { get; init; } = 30;

    /// <summary>Least thickness of a transverse rib. Default 1.2, or two lines of a wider nozzle.</summary>
    public double Thickness
    {
        get => thickness ?? Unasked;
        init => thickness = value;
    }

    /// <summary>How many ribs run along the platform. Default 1.</summary>
    public int LongitudinalCount { get; init; } = 1;

    /// <summary>Thickness of such a rib. Default 1.2, or two lines of a wider nozzle.</summary>
    public double LongitudinalThickness
    {
        get => lengthwise ?? Unasked;
        init => lengthwise = value;
    }

    /// <summary>Thickness of ribs where it is not stated, mm.</summary>
    public double Unasked { get; init; } = Usual;

    /// <summary>The ribs for a nozzle so wide, mm: unasked they are two lines thick.</summary>
    public RibSpec Printed(double nozzle) => this with { Unasked = Math.Max(Usual, PrintedLines.Two(nozzle)) };

    /// <summary>Depth below the deck's underside; null reaches down to the baseboard.</summary>
    public double? Depth { get; init; }

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<RibSpec> Keys { get; } = new SpecKeys<RibSpec>(_ => new())
        .Length(
            "pitch",
            NumberRange.NoneOr(5, 1000),
            "Greatest distance between ribs across the platform; 0 makes none.",
            r => r.Pitch,
            (r, v) => r with { Pitch = v })
        .Length("thickness", WallSpec.Thicknesses, "Thickness of a rib across.", r => r.Thickness, (r, v) => r with { Thickness = v })
        .Number(
            "lengthwise",
            NumberRange.From(0, 20),
            "",
            "How many ribs run along the platform.",
            r => r.LongitudinalCount,
            (r, v) => r with { LongitudinalCount = (int)v },
            whole: true)
        .Length(
            "lengthwise_thickness",
            WallSpec.Thicknesses,
            "Thickness of a rib along the platform.",
            r => r.LongitudinalThickness,
            (r, v) => r with { LongitudinalThickness = v })
        .Length(
            "depth", NumberRange.From(
                0.2,
                300), "Depth below the deck; left out, ribs reach down to the baseboard.", r => r.Depth, (r, v) => r with { Depth = v });
}

/// <summary>Full-size lengths in mm used by the defaults.</summary>
public static class FullSize
{
    /// <summary>One foot, exactly.</summary>
    public const double Foot = 304.8;
}
