using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Paper;
using PlatformForge.Exports.Stock;
using PlatformForge.Platforms.Specs;
using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Reading;
using PlatformForge.Proofs;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;

namespace PlatformForge.Projects;

/// <summary>A project as it was read: what every room is asked for.</summary>
/// <param name="Layout">Name, scale, gauge, height of the rails.</param>
/// <param name="Tracks">At least one.</param>
/// <param name="Vehicles">At least one.</param>
/// <param name="Clearance">The clearance budget.</param>
/// <param name="Platforms">At least one.</param>
/// <param name="Printer">The printer that the sections have to fit.</param>
/// <param name="Sections">How platforms are cut; the joints are in it.</param>
public sealed record ProjectSpec(
    LayoutSpec Layout,
    IReadOnlyList<TrackEntry> Tracks,
    IReadOnlyList<Vehicle> Vehicles,
    ClearanceEntry Clearance,
    IReadOnlyList<PlatformSpec> Platforms,
    PrinterSpec Printer,
    SectionSpec Sections)
{
    /// <summary>Where every key was written.</summary>
    public required SourceMap Places { get; init; }

    /// <summary>SHA-256 of everything the project says, presets and overrides laid in: 64 hexadecimal digits.</summary>
    public required string InputHash { get; init; }

    /// <summary>Articulated sets and coupled units; their bodies are among <see cref="Vehicles"/>.</summary>
    public IReadOnlyList<VehicleSet> Sets { get; init; } = [];

    /// <summary>The paper of full-size sheets.</summary>
    public PaperSpec Paper { get; init; } = new();

    /// <summary>The sheet material that a platform is cut from where it is not printed.</summary>
    public StockSpec Sheet { get; init; } = new();

    /// <summary>Gauges and proofs.</summary>
    public ProofSpec Gauges { get; init; } = new();

    /// <summary>Notes of what further bodies of sets take over from the first.</summary>
    public IReadOnlyList<Finding> TakenOver { get; init; } = [];

    /// <summary>Vehicles that run on a track, with all bodies of sets.</summary>
    public IReadOnlyList<Vehicle> VehiclesOn(TrackEntry track) =>
        track.Vehicles is { } names ? [.. Vehicles.Where(v => names.Contains(v.SetName ?? v.Name, StringComparer.Ordinal))] : Vehicles;

    /// <summary>Sets that run on a track.</summary>
    public IReadOnlyList<VehicleSet> SetsOn(TrackEntry track) =>
        track.Vehicles is { } names ? [.. Sets.Where(s => names.Contains(s.Name, StringComparer.Ordinal))] : Sets;

    /// <summary>Findings of the rooms with file, line and column joined to them.</summary>
    public IReadOnlyList<Finding> Placed(IEnumerable<Finding> findings) => [.. findings.Select(Places.Join)];
}
