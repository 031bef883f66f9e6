using System.Text;
using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Presets;
using PlatformForge.Units;

namespace PlatformForge.Projects.Schemas;

/// <summary>
/// The commented project file that a newcomer fills in. Every key of the model is in it: those that have to be stated with an example, the
/// others as a comment with their default.
/// </summary>
public static class StartingFile
{
    /// <summary>Column at which remarks begin, where the value leaves room.</summary>
    private const int RemarkColumn = 34;

    /// <summary>What is filled in, by key. Everything else stays at its default, commented out.</summary>
    private static readonly (string Key, string Value)[] Filled =
    [
        ("layout.name", "\"Marrowby Cross\""),
        ("layout.scale", "\"4mm\""),
        ("layout.rail_top", "8.0"),
        ("track.name", "\"main\""),
        ("track.alignment", "[\n  { straight = 400 },\n  { transition = 150, to_radius = 900, hand = \"left\" },\n  { curve = 900, angle = 30, hand = \"left\" "
            + "},\n  { transition = 150, hand = \"left\" },\n  { straight = 300 },\n]"),
        ("vehicle.name", "\"my longest coach\""),
        ("vehicle.length", "240"),
        ("vehicle.pivots", "170"),
        ("vehicle.width", "34"),
        ("vehicle.sill.height", "13"),
        ("clearance.running", "0.7"),
        ("platform.name", "\"main platform\""),
        ("platform.face.track", "\"main\""),
        ("platform.face.side", "\"right\""),
        ("platform.face.from", "350"),
        ("platform.face.to", "1000"),
        ("platform.ramps.start.gradient", "8"),
        ("platform.ramps.end.gradient", "8"),
        ("platform.deck.width", "48"),
        ("platform.line.width", "1"),
        ("printer.bed", "[220, 220]"),
    ];

    /// <summary>What stands in the commented lines of keys that have no default.</summary>
    private static readonly (string Key, string Value)[] Suggested =
    [
        ("layout.ratio", "76.2"),
        ("layout.gauge", "16.5"),
        ("layout.rail_head", "0.9"),
        ("clearance.survey", "0.3"),
        ("printer.first_layer", "0.2"),
        ("track.rail_top", "10.0"),
        ("track.survey.kind", "\"string\""),
        ("track.survey.file", "\"survey/main-string.csv\""),
        ("track.survey.unit", "\"mm\""),
        ("track.survey.chord", "200"),
        ("track.survey.spacing", "100"),
        ("track.survey.least_radius", "600"),
        ("track.survey.least_ease", "200"),
        ("track.survey.radii", "[438, 505, 571.5]"),
        ("track.survey.greatest_kink", "2"),
        ("track.survey.joints", "[168, 336, 504]"),
        ("track.survey.element", "\"main\""),
        ("track.survey.closing.from", "0"),
        ("track.survey.closing.to", "1600"),
        ("track.survey.closing.length", "1420"),
        ("track.survey.closing.versine", "310"),
        ("track.survey.closing.error", "0.5"),
        ("track.survey.calibrate.length", "300"),
        ("track.survey.also.file", "\"survey/main-right-rail.csv\""),
        ("track.survey.also.unit", "\"mm\""),
        ("track.vehicles", "[\"my longest coach\"]"),
        ("vehicle.preset", "\"stock/my-coach.toml\""),
        ("vehicle.body_name", "\"first coach\""),
        ("vehicle.trailing_bogie_wheelbase", "34"),
        ("vehicle.least_radius", "600"),
        ("vehicle.leading_truck.at", "58"),
        ("vehicle.leading_truck.pivot", "36"),
        ("vehicle.trailing_truck.at", "-58"),
        ("vehicle.trailing_truck.pivot", "-36"),
        ("vehicle.truck.part.name", "\"truck frames\""),
        ("vehicle.truck.part.from", "-9"),
        ("vehicle.truck.part.to", "9"),
        ("vehicle.truck.part.width", "26"),
        ("vehicle.truck.part.low", "1"),
        ("vehicle.truck.part.high", "8"),
        ("vehicle.truck.part.plan.at", "-9"),
        ("vehicle.truck.part.plan.width", "26"),
        ("vehicle.sill.width", "35"),
        ("vehicle.sill.from", "-110"),
        ("vehicle.sill.to", "110"),
        ("clearance.wheelset_play", "0.25"),
        ("clearance.back_to_back", "14.5"),
        ("vehicle.middle_axle_play", "2"),
        ("vehicle.body.middle_axle_play", "2"),
        ("vehicle.taper.length", "12"),
        ("vehicle.taper.width", "30"),
        ("vehicle.front_taper.length", "20"),
        ("vehicle.front_taper.width", "26"),
        ("vehicle.rear_taper.length", "12"),
        ("vehicle.rear_taper.width", "30"),
        ("vehicle.part.plan.at", "56"),
        ("vehicle.part.plan.width", "34"),
        ("vehicle.body.name", "\"second coach\""),
        ("vehicle.body.joined_by", "\"shared bogie\""),
        ("vehicle.body.gap", "6"),
        ("vehicle.body.length", "210"),
        ("vehicle.body.pivots", "190"),
        ("vehicle.body.width", "34"),
        ("vehicle.body.bogie_wheelbase", "34"),
        ("vehicle.body.trailing_bogie_wheelbase", "34"),
        ("vehicle.body.low", "4"),
        ("vehicle.body.high", "50"),
        ("vehicle.body.taper.length", "12"),
        ("vehicle.body.taper.width", "30"),
        ("vehicle.body.front_taper.length", "20"),
        ("vehicle.body.front_taper.width", "26"),
        ("vehicle.body.rear_taper.length", "12"),
        ("vehicle.body.rear_taper.width", "30"),
        ("vehicle.body.sill.height", "13"),
        ("vehicle.body.sill.width", "35"),
        ("vehicle.body.sill.from", "-100"),
        ("vehicle.body.sill.to", "100"),
        ("vehicle.body.part.name", "\"footboards\""),
        ("vehicle.body.part.from", "-90"),
        ("vehicle.body.part.to", "90"),
        ("vehicle.body.part.width", "35"),
        ("vehicle.body.part.low", "8"),
        ("vehicle.body.part.high", "10"),
        ("vehicle.body.part.plan.at", "-90"),
        ("vehicle.body.part.plan.width", "34"),
        ("vehicle.body.gangway.width", "16"),
        ("vehicle.body.gangway.low", "12"),
        ("vehicle.body.gangway.high", "42"),
        ("vehicle.part.name", "\"cylinders\""),
        ("vehicle.part.from", "56"),
        ("vehicle.part.to", "76"),
        ("vehicle.part.width", "36"),
        ("vehicle.part.low", "2"),
        ("vehicle.part.high", "12"),
        ("platform.cuts", "[640]"),
        ("platform.baseboard_joints", "[720]"),
        ("platform.face.reach", "24"),
        ("platform.face.running", "0.9"),
        ("platform.other_face.track", "\"down\""),
        ("platform.other_face.side", "\"left\""),
        ("platform.other_face.reach", "24"),
        ("platform.other_face.running", "0.9"),
        ("platform.other_face.least_radius", "1000"),
        ("platform.face.least_radius", "1000"),
        ("platform.ramps.start.foot", "0"),
        ("platform.ramps.end.foot", "0"),
        ("platform.ramps.start.length", "96"),
        ("platform.ramps.end.length", "96"),
        ("platform.ribs.depth", "6"),
        ("platform.fence.depth", "4"),
        ("platform.fence.from", "360"),
        ("platform.fence.to", "990"),
        ("platform.fence.gap.at", "708"),
        ("platform.fence.gap.width", "16"),
        ("platform.fence.gap.from", "700"),
        ("platform.fence.gap.to", "716"),
        ("printer.preset", "\"bed-220x220\""),
        ("printer.filament.price", "20"),
        ("printer.filament.currency", "\"EUR\""),
        ("sections.longest", "200"),
        ("gauges.at", "[420, 640]"),
        ("gauges.throw_boards", "[\"long coach\"]"),
        ("paper.bars", "[99.6, 100.2]"),
        ("printer.strip", "[99.7, 100.1]"),
    ];

    private static readonly Preset FourMm = PresetShelf.Find(PresetKind.Scales, "4mm")
        ?? throw new BrokenInvariantException("Projects: the scale of 4 mm to the foot is missing.");

    /// <summary>The file's text, with the defaults and examples of a scale; of 4 mm to the foot where none is named.</summary>
    /// <param name="scale">One of the presets of scales.</param>
    public static string Write(Preset? scale = null)
    {
        var sheet = new ScaledExamples(scale ?? FourMm);
        var text = new StringBuilder();
        text.Append("""
            # A platform project. Lines that begin with # are comments; take the # away to state what follows it.
            # Lengths are millimetres of the model, angles degrees, heights above rail top unless it says otherwise.
            # A length may also be a text with its unit: "1.5 in", or "4 ft 6 in full size", which the scale divides.
            # Check it with: platformforge check FILE      Build it with: platformforge build FILE

            """.ReplaceLineEndings("\n"));
        foreach (var key in ProjectKeys.Root.Keys)
        {
            Section(text, sheet, key, key.Name, key.Name, live: true);
        }

        return text.ToString();
    }

    /// <summary>The example of a key of the model, as it is written in a file; null when there is none.</summary>
    internal static string? Example(string path) =>
        Filled.FirstOrDefault(f => f.Key == path).Value ?? Suggestion(path);

    // Trucks are the same on a vehicle and on a further body, and their parts the same ahead and behind.
    private static string? Suggestion(string path)
    {
        string body = path.Replace(".body.leading_truck", ".leading_truck", StringComparison.Ordinal)
            .Replace(".body.trailing_truck", ".trailing_truck", StringComparison.Ordinal);
        string truck = body.Replace(".leading_truck.part", ".truck.part", StringComparison.Ordinal)
            .Replace(".trailing_truck.part", ".truck.part", StringComparison.Ordinal);
        return ((string[])[path, body, truck]).Select(p => Suggested.FirstOrDefault(f => f.Key == p).Value).FirstOrDefault(v => v is not null);
    }

    private static void Section(StringBuilder text, ScaledExamples sheet, KeyRule rule, string header, string path, bool live)
    {
        var (keys, list) = rule switch
        {
            TableRule table => (table.Keys, false),
            ListRule { Item: TableRule item } => (item.Keys, true),
            _ => throw new ArgumentOutOfRangeException(nameof(rule), rule.Name),
        };
        live = live && (Filled.Any(f => f.Key.StartsWith(path + ".", StringComparison.Ordinal))
            || header == path && !list && !header.Contains('.', StringComparison.Ordinal));
        text.Append("\n# ").Append(rule.Says).Append('\n').Append(live ? "" : "# ").Append(list ? $"[[{header}]]" : $"[{header}]").Append('\n');
        foreach (var key in keys.Where(k => !IsSection(k, path)))
        {
            Line(text, sheet, key, path + "." + key.Name, live);
        }

        foreach (var key in keys.Where(k => IsSection(k, path)))
        {
            Section(text, sheet, key, header + "." + key.Name, path + "." + key.Name, live);
        }
    }

    /// <summary>An alignment stays a list of short tables in one place; all other tables get a heading.</summary>
    private static bool IsSection(KeyRule rule, string path) =>
        rule is TableRule or ListRule { Item: TableRule } && !Filled.Any(f => f.Key == path + "." + rule.Name);

    private static void Line(StringBuilder text, ScaledExamples sheet, KeyRule rule, string path, bool live)
    {
        string? filled = Filled.FirstOrDefault(f => f.Key == path).Value;
        string statement = (live && filled is not null ? "" : "# ") + rule.Name + " = "
            + (sheet.Of(rule, path, filled) ?? rule.DefaultAt?.Invoke(sheet.Scale) ?? rule.Default ?? sheet.Of(rule, path, rule.Example ?? Suggestion(path))
                ?? throw new BrokenInvariantException($"Projects: the starting file has no example for {path}."));
        if (statement.Contains('\n', StringComparison.Ordinal))
        {
            text.Append("# ").Append(rule.Says).Append('\n').Append(statement).Append('\n');
            return;
        }

        text.Append(statement.PadRight(RemarkColumn)).Append(" # ").Append(Remark(rule)).Append('\n');
    }

    private static string Remark(KeyRule rule) => rule switch
    {
        NumberRule { Unit.Length: > 0 } number => $"{number.Unit}. {rule.Says}",
        TextRule { Choices.Count: > 1 } text => $"{rule.Says} One of: {string.Join(", ", text.Choices)}.",
        _ => rule.Says,
    };
}
