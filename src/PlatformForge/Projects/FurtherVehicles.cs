using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Manifests;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;
using PlatformForge.Verification;
using static System.FormattableString;

namespace PlatformForge.Projects;

/// <summary>Vehicles that a design did not know of, from presets or files of their own, and where each of them is stated.</summary>
public sealed class FurtherVehicles
{
    // The vehicles' keys begin with this and their number, so that a finding leads back to its file.
    private const string Word = "further";

    private readonly IReadOnlyList<(string Name, SourceMap? Places)> sources;

    private FurtherVehicles(IReadOnlyList<Vehicle> vehicles, IReadOnlyList<(string Name, SourceMap? Places)> sources) =>
        (Vehicles, this.sources) = (vehicles, sources);

    /// <summary>All of them, bodies of sets one by one, in the order they were asked for.</summary>
    public IReadOnlyList<Vehicle> Vehicles { get; }

    /// <summary>Reads them at a scale; the faults of all at once.</summary>
    /// <param name="names">Names of presets, or of files ending in .toml.</param>
    /// <param name="scale">Scale that divides full-size figures.</param>
    public static Outcome<FurtherVehicles> Read(IReadOnlyList<string> names, ModelScale scale)
    {
        var read = names.Select((name, i) => (Name: name, Vehicle: VehicleReader.One(name, scale, Invariant($"{Word}[{i}]")))).ToArray();
        Finding[] findings = [.. read.SelectMany(r => r.Vehicle.Findings)];
        return read.All(r => r.Vehicle.Value is not null)
            ? new(new([.. read.SelectMany(r => r.Vehicle.Value!.Bodies)], [.. read.Select(r => (r.Name, r.Vehicle.Value!.Places))]), findings)
            : Outcome.Fault<FurtherVehicles>(findings);
    }

    /// <summary>The same at the scale of a finished folder.</summary>
    public static Outcome<FurtherVehicles> Read(IReadOnlyList<string> names, WrittenFolder folder) =>
        names.Count == 0 ? Outcome.Of(new FurtherVehicles([], []))
        : folder[DesignCopy.FileName] is { } bytes && DesignForm.Read(bytes, DesignCopy.FileName).Value is { } design
        ? Read(names, new ModelScale(design.Ratio))
        : Outcome.Fault<FurtherVehicles>(Finding.Error("PF1021", "", $"The folder has no readable {DesignCopy.FileName}, so its scale is not known.",
            "Build the folder again.", FaultKind.Mesh));

    /// <summary>Findings with those on these vehicles led to file, line and key; a preset is named by the option that asks for it.</summary>
    public IEnumerable<Finding> Placed(IEnumerable<Finding> findings) => findings.Select(Placed);

    private Finding Placed(Finding finding)
    {
        int source = Enumerable.Range(0, sources.Count).FirstOrDefault(i => finding.Key.StartsWith(Invariant($"{Word}[{i}]"), StringComparison.Ordinal), -1);
        if (source < 0 || finding.File is not null)
        {
            return finding;
        }

        // Keys of a vehicle's own file stand at its root.
        string key = finding.Key[(finding.Key.IndexOf(']', StringComparison.Ordinal) + 1)..].TrimStart('.');
        var (name, places) = sources[source];
        if (places is null)
        {
            return finding with { Key = key, File = "--with-vehicle " + name };
        }

        // What a vehicle as a whole does is told at its name.
        key = key.Length == 0 ? "name" : key;
        var place = places.Find(key);
        return finding with { Key = key, File = place.File, Line = place.Line, Column = place.Column };
    }
}
