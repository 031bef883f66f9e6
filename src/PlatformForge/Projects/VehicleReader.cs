using PlatformForge.Clearance.Vehicles;
using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;

namespace PlatformForge.Projects;

/// <summary>Reads one vehicle by itself: a preset, or a TOML file with the keys of a <c>[[vehicle]]</c> table.</summary>
public static class VehicleReader
{
    /// <summary>The vehicle at a scale; all its bodies when it is a set.</summary>
    /// <param name="name">Name of a preset, or of a file ending in .toml.</param>
    /// <param name="scale">Scale that divides full-size figures.</param>
    public static Outcome<IReadOnlyList<Vehicle>> Read(string name, ModelScale scale)
    {
        var one = One(name, scale, "");
        return new(one.Value?.Bodies, one.Findings);
    }

    /// <summary>The same with the places of its keys.</summary>
    /// <param name="name">Name of a preset, or of a file ending in .toml.</param>
    /// <param name="scale">Scale that divides full-size figures.</param>
    /// <param name="key">What the keys of its bodies begin with.</param>
    internal static Outcome<ReadVehicle> One(string name, ModelScale scale, string key)
    {
        var reading = new KeyReading { Scale = scale, What = FileWords.Vehicle };
        bool isFile = name.EndsWith(".toml", StringComparison.OrdinalIgnoreCase);
        var tree = isFile ? OfFile(name) : OfPreset(name);
        if (tree.Value is not { } table)
        {
            return Outcome.Fault<ReadVehicle>(tree.Findings);
        }

        var named = table.Find("name") is null ? table.With(new("name", table.Place, new TreeText(table.Place, Path.GetFileNameWithoutExtension(name))))
            : table;
        var form = VehicleKeys.Table.Read(VehicleKeys.Table.DefaultsAt(scale) with { Key = "" }, named, "", reading);
        return reading.HasErrors
            ? Outcome.Fault<ReadVehicle>(reading.Findings)
            : Outcome.Of(new ReadVehicle([.. form.ToVehicles().Select(v => v with { Key = v.Key.Length == 0 || key.Length == 0 ? key : key + "." + v.Key })],
                isFile ? new SourceMap(named) : null));
    }

    private static Outcome<TreeTable> OfFile(string name)
    {
        var text = ProjectText.Read(name, name, what: FileWords.Vehicle);
        var tree = text.Value is null ? Outcome.Fault<TreeTable>(text.Findings) : TreeReader.Read(text.Value, name, FileWords.Vehicle);
        return tree.Value is null ? tree : Outcome.Of(PresetShelf.Body(tree.Value));
    }

    private static Outcome<TreeTable> OfPreset(string name)
    {
        if (PresetShelf.Find(PresetKind.Vehicles, name) is { } preset)
        {
            return Outcome.Of(preset.Tree.With(new("name", preset.Tree.Place, new TreeText(preset.Tree.Place, preset.Spoken))));
        }

        string? near = NearestName.Of(name, PresetShelf.Of(PresetKind.Vehicles).Select(p => p.Name));
        return Outcome.Fault<TreeTable>(Finding.Error("PF1011", "", $"There is no vehicle preset \"{name}\".",
            (near is null ? "" : $"Did you mean \"{near}\"? ") + "See: platformforge presets vehicles. A file's name ends in .toml.")
            with
        { File = "--with-vehicle " + name });
    }
}

/// <summary>A vehicle read by itself.</summary>
/// <param name="Bodies">The vehicle, or the bodies of a set.</param>
/// <param name="Places">Where its keys stand; null for a preset.</param>
internal sealed record ReadVehicle(IReadOnlyList<Vehicle> Bodies, SourceMap? Places);
