using PlatformForge.Geometry;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Sections.Forms;
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
            new KeyTable<PrintSpeeds>(SectionSpecKeys.Speeds),
            p => p.Speeds,
            (p, v) => p with { Speeds = v })
        .Numbers("strip", NumberRange.From(0, 5000), "mm",
            "What the strip of 100 mm among the gauges measured along the bed and across it (half the sum of outer and inner measure), "
            + "printed without this key: every piece is then written to come out true.",
            (p, v) => p with { MeasuredStrip = new(v[0], v[1]) }, 2, 2)
        .Table("filament", "What is printed with; for estimates only.", new KeyTable<FilamentSpec>(SectionSpecKeys.Filament), p => p.Filament,
            (p, v) => p with { Filament = v });

    public static KeyTable<JointSpec> Joint { get; } = new(SectionSpecKeys.Joint);

    public static KeyTable<SectionSpec> Sections { get; } = new(SectionSpecKeys.Sections);

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

        var ring = Corners((ListRule)either.Second, items, key, reading);
        if (ring.Count < items.Count)
        {
            return null;
        }

        double area = Area(ring);
        if (ring.Count < 3 || Math.Abs(area) < 100)
        {
            reading.Fault("PF1014", key, node.Place, FormattableString.Invariant($"bed encloses {Math.Abs(area):0.####} mm²."),
                "List at least three corners in order round the bed, or give [width, depth].", new Cure(CureAct.Set, key, "[220, 220]"));
            return null;
        }

        if (area < 0)
        {
            ring.Reverse();
        }

        return ring;
    }

    // Corners of a bed that are pairs of figures; of others a fault is told, and they are left out.
    private static List<Point2> Corners(ListRule corner, IReadOnlyList<TreeNode> items, string key, KeyReading reading)
    {
        var ring = new List<Point2>();
        for (int i = 0; i < items.Count; i++)
        {
            string place = FormattableString.Invariant($"{key}[{i}]");
            if (reading.List(corner, items[i], place) is { } pair && reading.Number((NumberRule)corner.Item, pair[0], place + "[0]") is { } x
                && reading.Number((NumberRule)corner.Item, pair[1], place + "[1]") is { } y)
            {
                ring.Add(new(x, y));
            }
        }

        return ring;
    }

    // mm², positive anticlockwise.
    private static double Area(List<Point2> ring)
    {
        double area = 0;
        for (int i = 0; i < ring.Count; i++)
        {
            area += Point2.Cross(ring[i], ring[(i + 1) % ring.Count]) / 2;
        }

        return area;
    }
}
