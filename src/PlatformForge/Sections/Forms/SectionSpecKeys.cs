using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Sections.Forms;

/// <summary>The keys of joints, sections, speeds and filament in the project file: every figure's range stands here and nowhere else.</summary>
internal static class SectionSpecKeys
{
    private static readonly NumberRange Speed = NumberRange.From(1, 2000);

    /// <summary>Of joints.</summary>
    public static SpecKeys<JointSpec> Joint { get; } = new SpecKeys<JointSpec>(_ => new())
        .Choice(
            "kind",
            "How two sections are held in line.",
            j => j.Kind,
            (j, v) => j with { Kind = v },
            [("dowel", JointKind.Dowel), ("plate", JointKind.Plate), ("none", JointKind.None)])
        .Length(
            "dowel_diameter",
            NumberRange.From(0.5, 20),
            "Diameter of the loose dowel; a cut length of filament is 1.75.",
            j => j.DowelDiameter,
            (j, v) => j with { DowelDiameter = v })
        .Length("dowel_length", NumberRange.From(2, 200), "Length to cut a dowel or a plate to.", j => j.DowelLength, (j, v) => j with { DowelLength = v })
        .Length(
            "plate_width",
            NumberRange.From(2, 50),
            "Width of the flat strip that lies across a joint of kind plate.",
            j => j.PlateWidth,
            (j, v) => j with { PlateWidth = v })
        .Length("plate_thickness", NumberRange.From(0.2, 10), "Thickness of that strip.", j => j.PlateThickness, (j, v) => j with { PlateThickness = v })
        .Length(
            "fit",
            Platforms.Features.FigureRanges.Fit,
            "Added to the dowel's diameter or the plate's width and thickness so that it goes in.",
            j => j.Fit,
            (j, v) => j with { Fit = v })
        .Length(
            "depth_allowance",
            NumberRange.From(0, 10),
            "How much deeper a bore is than half the dowel.",
            j => j.DepthAllowance,
            (j, v) => j with { DepthAllowance = v })
        .Length("mouth_chamfer", NumberRange.From(0, 5), "Widening of a bore's mouth.", j => j.MouthChamfer, (j, v) => j with { MouthChamfer = v })
        .Length("slot_play", NumberRange.From(0, 20), "Play of the slotted bore along its slot.", j => j.SlotPlay, (j, v) => j with { SlotPlay = v })
        .Length(
            "end_trim",
            NumberRange.From(0, JointSpec.MostEndTrim),
            "Taken off each end at a joint, so that lengths do not add up.",
            j => j.EndTrim,
            (j, v) => j with { EndTrim = v })
        .Length(
            "end_wall",
            NumberRange.From(0.4, 50),
            "Thickness of the wall that closes a section at a joint.",
            j => j.EndWall,
            (j, v) => j with { EndWall = v })
        .Length(
            "face_relief",
            NumberRange.From(0, 5),
            "Chamfer of a joint's face where it lies on the bed, against the squashed first layer.",
            j => j.FaceRelief,
            (j, v) => j with { FaceRelief = v });

    /// <summary>Of how a platform is cut.</summary>
    public static SpecKeys<SectionSpec> Sections { get; } = new SpecKeys<SectionSpec>(_ => new())
        .Choice(
            "pose",
            "How a section lies on the bed.",
            s => s.Pose,
            (s, v) => s with { Pose = v },
            [("automatic", PrintPose.Automatic), ("deck-down", PrintPose.DeckDown), ("upright", PrintPose.Upright)])
        .Length(
            "longest",
            NumberRange.From(10, 10000),
            "Longest section wanted; left out, the bed decides.",
            s => s.LongestSection,
            (s, v) => s with { LongestSection = v })
        .Length(
            "cut_clearance",
            NumberRange.From(0, 100),
            "Least distance from a cut to an opening in the deck or a rib.",
            s => s.CutClearance,
            (s, v) => s with { CutClearance = v })
        .Flag("engrave", "Whether number, name and arrow are engraved underneath.", s => s.Engrave, (s, v) => s with { Engrave = v })
        .Length("engraving_depth", NumberRange.From(0.1, 5), "Depth of the engraving.", s => s.EngravingDepth, (s, v) => s with { EngravingDepth = v })
        .Length("engraving_height", NumberRange.From(2, 100), "Height of its letters.", s => s.EngravingHeight, (s, v) => s with { EngravingHeight = v });

    /// <summary>How fast a printer goes.</summary>
    public static SpecKeys<PrintSpeeds> Speeds { get; } = new SpecKeys<PrintSpeeds>(_ => new())
        .Number("outer_wall", Speed, "mm/s", "The outermost line of a wall.", s => s.OuterWall, (s, v) => s with { OuterWall = v })
        .Number("wall", Speed, "mm/s", "The lines behind it.", s => s.Wall, (s, v) => s with { Wall = v })
        .Number("small_wall", Speed, "mm/s", "Lines round openings.", s => s.SmallWall, (s, v) => s with { SmallWall = v })
        .Number("infill", Speed, "mm/s", "Filling, solid or open.", s => s.Infill, (s, v) => s with { Infill = v })
        .Number("bridge", Speed, "mm/s", "Lines over open filling or air.", s => s.Bridge, (s, v) => s with { Bridge = v })
        .Number("first_layer", Speed, "mm/s", "Everything in the first layer.", s => s.FirstLayer, (s, v) => s with { FirstLayer = v })
        .Number("travel", Speed, "mm/s", "Moves without plastic.", s => s.Travel, (s, v) => s with { Travel = v })
        .Number(
            "acceleration",
            NumberRange.From(10, 100000),
            "mm/s²",
            "How fast it gains speed.",
            s => s.Acceleration,
            (s, v) => s with { Acceleration = v })
        .Number(
            "corner_jump",
            NumberRange.From(0.1, 100),
            "mm/s",
            "Change of speed that a corner may ask at once (jerk).",
            s => s.CornerJump,
            (s, v) => s with { CornerJump = v })
        .Number("flow", NumberRange.Over0(200), "mm³/s", "Most plastic that the nozzle melts.", s => s.Flow, (s, v) => s with { Flow = v })
        .Number(
            "retraction",
            NumberRange.From(0, 10),
            "s",
            "Drawing the strand back before a move and pushing it on after it.",
            s => s.Retraction,
            (s, v) => s with { Retraction = v });

    /// <summary>What is printed with.</summary>
    public static SpecKeys<FilamentSpec> Filament { get; } = new SpecKeys<FilamentSpec>(_ => new())
        .Text("name", "Kind of plastic.", f => f.Name, (f, v) => f with { Name = v })
        .Number("density", NumberRange.From(0.5, 10), "g/cm³", "Mass of a cubic centimetre.", f => f.Density, (f, v) => f with { Density = v })
        .Length("diameter", NumberRange.From(0.5, 5), "Diameter of the strand.", f => f.Diameter, (f, v) => f with { Diameter = v })
        .Number(
            "price",
            NumberRange.From(0, 1e6),
            "",
            "Price of a kilogram; left out, no cost is told.",
            f => f.PricePerKilogram,
            (f, v) => f with { PricePerKilogram = v })
        .Text("currency", "What the price is in.", f => f.Currency, (f, v) => f with { Currency = v });

    /// <summary>Figures that no file could have stated, for whoever calls the library without one.</summary>
    public static IEnumerable<Finding> Check(SectionSpec spec) =>
        Joint.Stray(spec.Joint).Select(f => (Key: "joint", f)).Concat(Sections.Stray(spec).Select(f => (Key: spec.Key, f)))
            .Select(f => SectionFindings.OutOfRange($"{f.Key}.{f.f.Key}", f.f));
}
