using PlatformForge.Clearance;
using PlatformForge.Exports.Manifests;
using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;
using PlatformForge.Verification;

namespace PlatformForge.Projects;

/// <summary>Reads one vehicle by itself: a preset, or a TOML file with the keys of a <c>[[vehicle]]</c> table.</summary>
public static class VehicleReader
{
    /// <summary>The vehicle at a scale; all its bodies when it is a set.</summary>
    /// <param name="name">Name of a preset, or of a file ending in .toml.</param>
    /// <param name="scale">Scale that divides full-size figures.</param>
    public static Outcome<IReadOnlyList<Vehicle>> Read(string name, ModelScale scale)
    {
        var reading = new KeyReading { Scale = scale };
        var tree = name.EndsWith(".toml", StringComparison.OrdinalIgnoreCase) ? OfFile(name) : OfPreset(name);
        if (tree.Value is not { } table)
        {
            return Outcome.Fault<IReadOnlyList<Vehicle>>(tree.Findings);
        }

        var named = table.Find("name") is null ? table.With(new("name", table.Place, new TreeText(table.Place, Path.GetFileNameWithoutExtension(name)))) : table;
        var form = VehicleKeys.Table.Read(VehicleKeys.Table.DefaultsAt(scale), named, "", reading);
        return reading.HasErrors ? Outcome.Fault<IReadOnlyList<Vehicle>>(reading.Findings) : Outcome.Of<IReadOnlyList<Vehicle>>([.. form.ToVehicles().Select(v => v with { Key = "" })]);
    }

    /// <summary>The vehicle at the scale of a finished folder.</summary>
    public static Outcome<IReadOnlyList<Vehicle>> Read(string name, WrittenFolder folder) =>
        folder[DesignCopy.FileName] is { } bytes && DesignForm.Read(bytes, DesignCopy.FileName).Value is { } design
            ? Read(name, new ModelScale(design.Ratio))
            : Outcome.Fault<IReadOnlyList<Vehicle>>(Finding.Error("PF1021", "", $"The folder has no readable {DesignCopy.FileName}, so its scale is not known.", "Build the folder again.", FaultKind.Mesh));

    private static Outcome<TreeTable> OfFile(string name)
    {
        var text = ProjectText.Read(name, name);
        var tree = text.Value is null ? Outcome.Fault<TreeTable>(text.Findings) : TreeReader.Read(text.Value, name);
        return tree.Value is null ? tree : Outcome.Of(PresetShelf.Body(tree.Value));
    }

    private static Outcome<TreeTable> OfPreset(string name)
    {
        if (PresetShelf.Find(PresetKind.Vehicles, name) is { } preset)
        {
            return Outcome.Of(preset.Tree.With(new("name", preset.Tree.Place, new TreeText(preset.Tree.Place, preset.Spoken))));
        }

        string? near = NearestName.Of(name, PresetShelf.Of(PresetKind.Vehicles).Select(p => p.Name));
        return Outcome.Fault<TreeTable>(Finding.Error("PF1011", "", $"There is no vehicle preset \"{name}\".", (near is null ? "" : $"Did you mean \"{near}\"? ") + "See: platformforge presets vehicles. A file's name ends in .toml.") with { File = "--with-vehicle " + name });
    }
}
