using System.Text.Json.Serialization;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Manifests;

/// <summary>
/// What an output folder holds: the proof of which files are ours, and for every section where its file's coordinates lie on
/// the layout.
/// </summary>
/// <param name="Project">Name of the layout.</param>
/// <param name="Version">Version of the program that wrote the folder.</param>
/// <param name="InputHash">SHA-256 of what the run was made from.</param>
/// <param name="Sections">Sections in the order of platforms and numbers.</param>
/// <param name="Files">Every file but the manifest itself, by path.</param>
public sealed record Manifest(
    string Project,
    string Version,
    string InputHash,
    IReadOnlyList<ManifestSection> Sections,
    IReadOnlyList<ManifestFile> Files)
{
    /// <summary>Name of the file in the output folder.</summary>
    public const string FileName = "manifest.json";

    /// <summary>Word by which a manifest of ours is known.</summary>
    public const string OurTool = "PlatformForge";

    /// <summary>The form of the file that this program writes and reads.</summary>
    public const int OurFormat = 3;

    [JsonRequired]
    public string Tool { get; init; } = OurTool;

    [JsonRequired]
    public int Format { get; init; } = OurFormat;

    /// <summary>By how much every print's file is longer along x and y than the print is to come out, about the file's origin: put right before any
    /// motion.</summary>
    [JsonRequired]
    public Point2 Stretch { get; init; } = new(1, 1);

    /// <summary>Lines and strips among the files that are prints of their own.</summary>
    public IReadOnlyList<ManifestLine> Lines { get; init; } = [];

    /// <summary>Gauges and proofs among the files.</summary>
    [JsonRequired]
    public IReadOnlyList<ManifestProof> Proofs { get; init; } = [];
}

/// <summary>A file by its path below the folder, its length and its SHA-256 in 64 small hexadecimal digits.</summary>
public sealed record ManifestFile(string Path, long Bytes, string Sha256);

/// <summary>A section and where it belongs.</summary>
/// <param name="Platform">Name of its platform.</param>
/// <param name="Name">Its own name.</param>
/// <param name="Number">Its place in the row, from 1.</param>
/// <param name="From">Chainage of its lower end, mm.</param>
/// <param name="To">Chainage of its upper end, mm.</param>
/// <param name="Stl">Its STL file.</param>
/// <param name="Plate">The 3MF file of its plate.</param>
/// <param name="ObjectId">Its object's id there and in the file of all plates.</param>
/// <param name="ToLayout">From the coordinates of either file's mesh to the layout frame, mm.</param>
public sealed record ManifestSection(
    string Platform, string Name, int Number, double From, double To, string Stl, string Plate, int ObjectId, RigidTransform ToLayout)
{
    /// <summary>The 3MF file of all plates that it is in too; null where there is none.</summary>
    [JsonRequired]
    public string? AllPlates { get; init; }
}

/// <summary>A line or a strip of a section that is a print of its own.</summary>
/// <param name="Platform">Name of its platform.</param>
/// <param name="Name">Its own name.</param>
/// <param name="Section">Number of its section.</param>
/// <param name="IsInlay">Whether it is printed within its section: then its file's coordinates are its section's.</param>
/// <param name="Depth">How far it reaches below the deck, mm.</param>
/// <param name="Rise">How far it stands over the deck, mm.</param>
/// <param name="Stl">Its STL file.</param>
/// <param name="Plate">The 3MF file of its plate: its section's where it is an inlay.</param>
/// <param name="ObjectId">Its object's id there, and in the file of all plates.</param>
/// <param name="ToLayout">From the coordinates of either file's mesh to the layout frame, mm.</param>
public sealed record ManifestLine(
    string Platform, string Name, int Section, bool IsInlay, double Depth, double Rise, string Stl, string Plate, int ObjectId, RigidTransform ToLayout)
{
    /// <summary>The 3MF file of all plates that it is in too; null where there is none.</summary>
    public string? AllPlates { get; init; }

    /// <summary>Whether it lies in no rebate but stands on the baseboard, as a bank behind a wall.</summary>
    internal bool IsGrounded => !IsInlay && Depth == 0;
}

/// <summary>A gauge or a proof.</summary>
/// <param name="Platform">Name of its platform; empty for what belongs to the printer.</param>
/// <param name="Name">Its own name.</param>
/// <param name="Kind">What it is for, in a word.</param>
/// <param name="Stl">Its STL file.</param>
/// <param name="Plate">The 3MF file of its bed.</param>
/// <param name="ObjectId">Its object's id there.</param>
/// <param name="ToLayout">From the coordinates of either file's mesh to the layout frame, mm; null where it has no place there.</param>
/// <param name="Rides">How it rides on a track; null where it does not.</param>
public sealed record ManifestProof(string Platform, string Name, string Kind, string Stl, string Plate, int ObjectId, RigidTransform? ToLayout,
    ManifestRide? Rides);

/// <summary>How a slide gauge rides on its track, and what it keeps from the platform; all mm.</summary>
/// <param name="Track">Name of the track.</param>
/// <param name="Chainage">Chainage along the platform's face at which it stands.</param>
/// <param name="RailHead">Width of a rail's head.</param>
/// <param name="Play">Least play of its tongues on each side.</param>
/// <param name="Air">Air that it keeps from coping and wall.</param>
public sealed record ManifestRide(string Track, double Chainage, double RailHead, double Play, double Air);
