using PlatformForge.Geometry;
using PlatformForge.Projects.Reading;
using PlatformForge.Sections;
using PlatformForge.Units;

namespace PlatformForge.Projects.Keys;

/// <summary>Keys of <c>[printer]</c>, <c>[joint]</c> and <c>[sections]</c>.</summary>
internal static class PrinterKeys
{
    private static readonly NumberRange Bed = NumberRange.From(20, 5000);

    private static readonly ListRule BedRule = new(
        "bed",
        "Printable area: [width, depth], or a list of corners [[x, y], …] for any other outline.",
        new EitherRule(
            "",
            "A width, or a corner.",
            new NumberRule("", "Width or depth.", Bed, "mm"),
            new ListRule("", "A corner.", new NumberRule("", "Its x or y.", NumberRange.From(-5000, 5000), "mm"), 2, 2)),
        2,
        200)
    { Default = "[220, 220]" };

    public static KeyTable<PrinterSpec> Printer { get; } = new KeyTable<PrinterSpec>(_ => PrinterSpec.Oblong(220, 220, 250))
        .Text("preset", "Name of a printer by its bed. See: platformforge presets printers", _ => null, (p, _) => p)
        .Text("name", "What you call it.", p => p.Name, (p, v) => p with { Name = v })
        .Own(BedRule, (p, node, key, reading) => ReadBed(node, key, reading) is { } ring ? p with { Bed = ring } : p)
        .Length("height", NumberRange.From(5, 5000), "Tallest print.", p => p.Height, (p, v) => p with { Height = v })
        .Length("nozzle", NumberRange.From(0.1, 2), "Bore of the nozzle.", p => p.Nozzle, (p, v) => p with { Nozzle = v })
        .Length("layer", NumberRange.From(0.02, 1), "Layer height.", p => p.Layer, (p, v) => p with { Layer = v })
        .Length("margin", NumberRange.From(0, 200), "Strip along the bed's edge that is kept free.", p => p.Margin, (p, v) => p with { Margin = v })
        .Length("spacing", NumberRange.From(0, 200), "Space between two sections on one bed.", p => p.Spacing, (p, v) => p with { Spacing = v })
        .Length(
            "longest_bridge",
            NumberRange.From(0, 200),
            "Longest gap that is printed over without support.",
            p => p.LongestBridge,
            (p, v) => p with { LongestBridge = v })
        .Length(
            "first_layer",
            NumberRange.From(0.02, 1),
            "Height of the first layer; left out, that of the others.",
            p => p.FirstLayer,
            (p, v) => p with { FirstLayer = v })
        .Number(
            "walls",
            NumberRange.From(1, 20),
            "",
            "Lines round every outline; for estimates.",
            p => p.Walls,
            (p, v) => p with { Walls = (int)v },
            whole: true)
        .Number(
            "solid_layers",
            NumberRange.From(1, 50),
            "",
            "Solid layers under and over all that lies open; for estimates.",
            p => p.SolidLayers,
            (p, v) => p with { SolidLayers = (int)v },
            whole: true)
        .Number(
            "infill",
            NumberRange.From(0, 1),
            "",
            "Share of plastic in the filling, 0.2 for a fifth; for estimates.",
            p => p.Infill,
            (p, v) => p with { Infill = v })
        .Choice(
            "pace",
            "How fast the printer goes, for the estimate of time; speeds gives single figures.",
            p => p.Pace,
            (p, v) => p with { Pace = v, Speeds = PrintSpeeds.Of(v) },
            [("ordinary", PrintPace.Ordinary), ("fast", PrintPace.Fast)])
        .Table(
            "speeds",
            "Speeds for the estimate of time, as the slicer's settings have them; left out, those of the pace.",
            Speeds,
            p => p.Speeds,
            (p, v) => p with { Speeds = v })
        .Numbers("strip", NumberRange.From(0, 5000), "mm", "What the strip of 100 mm among the gauges measured along the bed and across it (half the sum of outer and inner measure), printed without this key: every piece is then written to come out true.", (p, v) => p with { MeasuredStrip = new(v[0], v[1]) }, 2, 2)
        .Table("filament", "What is printed with; for estimates only.", Filament, p => p.Filament, (p, v) => p with { Filament = v });

    public static KeyTable<JointSpec> Joint { get; } = new KeyTable<JointSpec>(_ => new())
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
            NumberRange.From(0, 5),
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

    public static KeyTable<SectionSpec> Sections { get; } = new KeyTable<SectionSpec>(_ => new())
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

    private static KeyTable<PrintSpeeds> Speeds
    {
        get
        {
            var speed = NumberRange.From(1, 2000);
            return new KeyTable<PrintSpeeds>(_ => new())
                .Number("outer_wall", speed, "mm/s", "The outermost line of a wall.", s => s.OuterWall, (s, v) => s with { OuterWall = v })
                .Number("wall", speed, "mm/s", "The lines behind it.", s => s.Wall, (s, v) => s with { Wall = v })
                .Number("small_wall", speed, "mm/s", "Lines round openings.", s => s.SmallWall, (s, v) => s with { SmallWall = v })
                .Number("infill", speed, "mm/s", "Filling, solid or open.", s => s.Infill, (s, v) => s with { Infill = v })
                .Number("bridge", speed, "mm/s", "Lines over open filling or air.", s => s.Bridge, (s, v) => s with { Bridge = v })
                .Number("first_layer", speed, "mm/s", "Everything in the first layer.", s => s.FirstLayer, (s, v) => s with { FirstLayer = v })
                .Number("travel", speed, "mm/s", "Moves without plastic.", s => s.Travel, (s, v) => s with { Travel = v })
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
        }
    }

    private static KeyTable<FilamentSpec> Filament => new KeyTable<FilamentSpec>(_ => new())
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

    private static IReadOnlyList<Point2>? ReadBed(TreeNode node, string key, KeyReading reading)
    {
        if (reading.List(BedRule, node, key) is not { } items)
        {
            return null;
        }

        var either = (EitherRule)BedRule.Item;
        if (items.Count == 2 && items[0] is not TreeList)
        {
            var side = (NumberRule)either.First;
            return reading.Number(side, items[0], key + "[0]") is { } width && reading.Number(side, items[1], key + "[1]") is { } depth
                ? PrinterSpec.Oblong(width, depth, 1).Bed
                : null;
        }

        var ring = new List<Point2>();
        var corner = (ListRule)either.Second;
        for (int i = 0; i < items.Count; i++)
        {
            string place = FormattableString.Invariant($"{key}[{i}]");
            if (reading.List(corner, items[i], place) is { } pair && reading.Number((NumberRule)corner.Item, pair[0], place + "[0]") is { } x
                && reading.Number((NumberRule)corner.Item, pair[1], place + "[1]") is { } y)
            {
                ring.Add(new(x, y));
            }
        }

        if (ring.Count < items.Count)
        {
            return null;
        }

        double area = 0;
        for (int i = 0; i < ring.Count; i++)
        {
            area += Point2.Cross(ring[i], ring[(i + 1) % ring.Count]) / 2;
        }

        if (ring.Count < 3 || Math.Abs(area) < 100)
        {
            reading.Fault(
                "PF1014",
                key,
                node.Place,
                FormattableString.Invariant($"bed encloses {Math.Abs(area):0.####} mm²."),
                "List at least three corners in order round the bed, or give [width, depth].",
                new Cure(CureAct.Set, key, "[220, 220]"));
            return null;
        }

        if (area < 0)
        {
            ring.Reverse();
        }

        return ring;
    }
}
