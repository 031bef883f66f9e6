using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;

namespace PlatformForge.Projects.Presets;

/// <summary>Lays the presets that a project names under its own keys: what the project states itself wins.</summary>
internal sealed class PresetLaying(KeyReading reading, Func<string, string, KeyReading, TreeTable?> readFile)
{
    public TreeTable Lay(TreeTable root)
    {
        if (root.Find("layout") is { Value: TreeTable layout } layoutEntry && layout.TextOf("scale") is { } scale)
        {
            var place = layout.Find("scale")!.Value.Place;
            root = root.With(layoutEntry with { Value = Under(layout, PresetKind.Scales, scale, "layout.scale", place) });
        }

        if (root.Find("printer") is { Value: TreeTable printer } printerEntry && printer.TextOf("preset") is { } bed)
        {
            root = root.With(printerEntry with { Value = Under(printer, PresetKind.Printers, bed, "printer.preset", printer.Find("preset")!.Value.Place) });
        }

        if (root.Find("vehicle") is { Value: TreeList vehicles } vehicleEntry)
        {
            root = root.With(vehicleEntry with { Value = new TreeList(vehicles.Place, [.. vehicles.Items.Select(WithVehiclePreset)]) });
        }

        return root;
    }

    private TreeNode WithVehiclePreset(TreeNode node, int index) =>
        node is TreeTable vehicle && vehicle.TextOf("preset") is { } kind
            ? Under(vehicle, PresetKind.Vehicles, kind, FormattableString.Invariant($"vehicle[{index}].preset"), vehicle.Find("preset")!.Value.Place)
            : node;

    private TreeTable Under(TreeTable own, PresetKind kind, string name, string key, SourcePlace place)
    {
        if (kind != PresetKind.Scales && name.EndsWith(".toml", StringComparison.OrdinalIgnoreCase))
        {
            return readFile(name, key, reading) is { } file ? own.Over(PresetShelf.Body(file)) : own;
        }

        var meant = kind == PresetKind.Scales ? PresetShelf.Scales(name) : [];
        if (meant.Count > 1)
        {
            reading.Fault("PF1089", key, place, ScaleWords.Ambiguous(name, meant), ScaleWords.Choose(meant));
            return own;
        }

        if ((kind != PresetKind.Scales ? PresetShelf.Find(kind, name) : meant.Count > 0 ? meant[0] : null) is { } preset)
        {
            var whole = kind == PresetKind.Scales ? own.With(new("scale", place, new TreeText(place, preset.Name))).Over(preset.Tree) : own.Over(preset.Tree);
            return kind == PresetKind.Vehicles && own.Find("name") is null ? whole.With(new("name", place, new TreeText(place, preset.Spoken))) : whole;
        }

        if (string.IsNullOrWhiteSpace(name))
        {
            // Told with the key itself.
            return own;
        }

        var names = PresetShelf.Of(kind).SelectMany(p => p.OtherNames.Prepend(p.Name)).ToArray();
        string? near = NearestName.Of(name, names);
        reading.Fault("PF1011", key, place,
            $"There is no preset \"{(name.Length > 40 ? name[..40] + "…" : name)}\" among the {kind.ToString().ToLowerInvariant()}.",
            (near is null ? "" : $"Did you mean \"{near}\"? ") + $"See: platformforge presets {kind.ToString().ToLowerInvariant()}",
            near is not null ? Cure.Text(key, near) : null);
        return own;
    }
}
