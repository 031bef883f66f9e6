using System.Runtime.CompilerServices;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;

namespace PlatformForge.Projects;

/// <summary>Front door of the room for reading: from a project file to what the rooms are asked for.</summary>
public static class ProjectReader
{
    /// <summary>Reads a project file and everything it names. All faults that can be told are told at once.</summary>
    /// <param name="path">The project file, as the user named it.</param>
    /// <param name="overrides">Values that stand in for those of the file.</param>
    /// <param name="cures">Changes made on top of those.</param>
    /// <param name="measured">Whether surveys' files have to be there; otherwise their readings are not looked at, and no such track can be laid.</param>
    public static Outcome<ProjectSpec> ReadFile(string path, IReadOnlyList<Override>? overrides = null, IReadOnlyList<Cure>? cures = null, bool measured = true)
    {
        // The tables of keys take as long to be made as the file to be taken apart; whoever asks for them first waits for the other.
        _ = Task.Run(static () => RuntimeHelpers.RunClassConstructor(typeof(ProjectKeys).TypeHandle));
        var text = ProjectText.Read(path, path);
        return text.Value is null
            ? Outcome.Fault<ProjectSpec>(text.Findings)
            : Read(text.Value, path, Path.GetDirectoryName(Path.GetFullPath(path))!, overrides, cures, measured);
    }

    /// <summary>Reads the text of a project file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">Its name for findings.</param>
    /// <param name="folder">Where files that it names are looked for; null refuses such names.</param>
    /// <param name="overrides">Values that stand in for those of the text.</param>
    /// <param name="cures">Changes made on top of those.</param>
    /// <param name="measured">Whether surveys' files have to be there.</param>
    public static Outcome<ProjectSpec> Read(string text, string file, string? folder = null, IReadOnlyList<Override>? overrides = null,
        IReadOnlyList<Cure>? cures = null, bool measured = true) =>
        Read(TreeReader.Read(text, file), file, folder, overrides, cures, measured);

    /// <summary>Reads a project whose text has been taken apart.</summary>
    internal static Outcome<ProjectSpec> Read(Outcome<TreeTable> tree, string file, string? folder, IReadOnlyList<Override>? overrides,
        IReadOnlyList<Cure>? cures, bool measured = true)
    {
        if (tree.Value is null)
        {
            return Outcome.Fault<ProjectSpec>(tree.Findings);
        }

        var reading = new KeyReading();
        var root = (cures ?? []).Aggregate(Changed(tree.Value, overrides, reading), (t, cure) => CuredTree.Of(t, cure, reading));
        var beside = new BesideProject(folder);
        root = new PresetLaying(reading, (name, key, r) => PresetFile(beside, name, key, root, r)).Lay(root);
        root = FitKeys.Lay(root, reading);
        var draft = References.Spoken(ProjectKeys.Table.Read(new ProjectDraft(), root, "", reading));
        var places = new SourceMap(root);
        var tracks = draft.Tracks;
        var texts = new List<string>();
        if (!reading.HasErrors)
        {
            References.Check(draft, places, reading);
            ClearanceKeys.CheckAgainst(draft.Layout.Gauge, draft.Clearance, places, reading);
            tracks = measured ? SurveyFiles.Load(draft, beside, places, reading, texts) : draft.Tracks;
        }

        if (reading.HasErrors)
        {
            return Outcome.Fault<ProjectSpec>(reading.Findings.OrderBy(f => f.File == file ? 0 : 1).ThenBy(f => f.Line).ThenBy(f => f.Column));
        }

        return Outcome.Of(Project(draft, tracks, places, TreeForm.Hash(root, texts)), reading.Findings);
    }

    // The project as written, by the line of each of its tracks.
    private static ProjectSpec Project(ProjectDraft draft, IReadOnlyList<TrackEntry> tracks, SourceMap places, string hash)
    {
        Vehicle[] vehicles = [.. draft.Vehicles.SelectMany(v => v.ToVehicles())];
        return new(
            draft.Layout,
            tracks,
            vehicles,
            draft.Clearance,
            [.. draft.Platforms.Select(p => p.Seated.Printed(draft.Printer.Nozzle, draft.Printer.Layer))],
            draft.Printer,
            draft.Sections with { Joint = draft.Joint.Printed(draft.Printer.Nozzle) })
        {
            Sets = [.. draft.Vehicles.Select(v => v.ToSet(vehicles)).OfType<VehicleSet>()],
            TakenOver = [.. draft.Vehicles.SelectMany(SetForm.TakenOver)],
            Paper = draft.Paper,
            Sheet = draft.Sheet,
            Gauges = draft.Gauges ?? GaugeKeys.Table.DefaultsAt(draft.Layout.Scale),
            Places = places,
            InputHash = hash,
        };
    }

    /// <summary>The keys of a project with presets laid under them and values over them.</summary>
    internal static TreeTable Tree(TreeTable tree, string? folder, IReadOnlyList<Override>? overrides)
    {
        var reading = new KeyReading();
        var root = Changed(tree, overrides, reading);
        return FitKeys.Lay(new PresetLaying(reading, (name, key, r) => PresetFile(new BesideProject(folder), name, key, root, r)).Lay(root), reading);
    }

    private static TreeTable Changed(TreeTable root, IReadOnlyList<Override>? overrides, KeyReading reading) =>
        (overrides ?? []).Aggregate(root, (tree, change) => change.ApplyTo(tree, reading));

    private static TreeTable? PresetFile(BesideProject files, string name, string key, TreeTable root, KeyReading reading)
    {
        var text = files.Read(name, key, new SourceMap(root).Find(key), ProjectText.LargestFile);
        var tree = text.Value is null ? Outcome.Fault<TreeTable>(text.Findings) : TreeReader.Read(text.Value, name);
        reading.Add(tree.Findings.Select(f => f with { Key = key }));
        return tree.Value;
    }
}
