using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sets;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Platforms.AsBuilt;
using PlatformForge.Platforms.Plans;
using PlatformForge.Proofs;
using PlatformForge.Sections.Forms;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Exports.Files;

/// <summary>Everything known at the end of a run, read-only. Writers take it and compute nothing that decides a design.</summary>
public sealed record Dossier
{
    /// <summary>Name of the layout.</summary>
    public required string Project { get; init; }

    /// <summary>Who drew it up; empty leaves the field out.</summary>
    public string Designer { get; init; } = "";

    public required ModelScale Scale { get; init; }

    /// <summary>Distance between the running edges of the rails, mm of the model.</summary>
    public required double Gauge { get; init; }

    /// <summary>Height of the rails' running surface over the baseboard, mm.</summary>
    public required double RailTop { get; init; }

    /// <summary>Width of a rail's head, mm, as stated; null where it was not.</summary>
    public double? RailHeadWidth { get; init; }

    /// <summary>Width of a rail's head, mm: as stated, or 70 mm of full size (2 3/4 in, from memory).</summary>
    public double RailHead => RailHeadWidth ?? Scale.ToModel(UsualRailHead);

    /// <summary>Every track with the vehicles on it, as they are ridden.</summary>
    public required IReadOnlyList<TrackRun> Tracks { get; init; }

    /// <summary>Height of a track's rails over the baseboard, mm.</summary>
    public double RailTopOf(string track) => Tracks.FirstOrDefault(t => t.Ride.Name == track)?.RailTop ?? RailTop;

    public required PrinterSpec Printer { get; init; }

    /// <summary>The platforms in the project's order; at least one.</summary>
    public required IReadOnlyList<PlatformDossier> Platforms { get; init; }

    /// <summary>Gauges and proofs; null where none were asked for.</summary>
    public ProofSet? Proofs { get; init; }

    /// <summary>What holding the design against its vehicles came to; null where that was not done.</summary>
    public VerdictBrief? Verdict { get; init; }

    /// <summary>The same in a line; empty where it was not done.</summary>
    public string VerdictLine => Verdict?.Line ?? "";

    /// <summary>Warnings and notes gathered on the way.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>SHA-256 of everything the run was made from, 64 hexadecimal digits.</summary>
    public required string InputHash { get; init; }

    /// <summary>Version of the program.</summary>
    public required string Version { get; init; }

    private const double UsualRailHead = 70;
}

/// <summary>Everything known of one platform.</summary>
/// <param name="Plan">The platform in plan coordinates.</param>
/// <param name="Envelope">What vehicles sweep along it.</param>
/// <param name="Budget">What is kept between them.</param>
/// <param name="Sections">What is printed.</param>
public sealed record PlatformDossier(PlatformPlan Plan, SweptEnvelope Envelope, ClearanceBudget Budget, SectionSet Sections)
{
    /// <summary>Name of the platform.</summary>
    public string Name => Plan.Spec.Name;

    /// <summary>Vehicles where they come nearest, for drawings.</summary>
    public IReadOnlyList<VehicleOutlinePose> Poses { get; init; } = [];

    /// <summary>Where each vehicle comes nearest, in the project's order, for drawings.</summary>
    public IReadOnlyList<TightPlace> Tightest { get; init; } = [];

    /// <summary>Gaps measured on the finished layout, held against the plan; null where there are none.</summary>
    public AsBuiltEdge? AsBuilt { get; init; }

    /// <summary>The platform as its further faces see it, each in its own track's chainage, with what is swept along it; empty for a side platform.</summary>
    public IReadOnlyList<PlatformDossier> FurtherFaces { get; init; } = [];

    /// <summary>The platform by each of its faces.</summary>
    public IEnumerable<PlatformDossier> Faces => [this, .. FurtherFaces];

    /// <summary>Name of the track that this view is told along.</summary>
    public string Track => Plan.Spec.Face.Track;

    /// <summary>Name for what is told of this face: the platform's, and its track where it has several.</summary>
    public string FaceName => Plan.Spec.IsIsland ? $"{Name}, track {Track}" : Name;

    /// <summary>How wide the spaces between the bodies of sets are along it.</summary>
    public IReadOnlyList<JointOpening> Joints { get; init; } = [];

    /// <summary>The line its vehicles ride on, kinks and all; null where that is the plan's own chart.</summary>
    public Centreline? Ride { get; init; }
}

/// <summary>What holding a design against its vehicles came to, for those who tell of it.</summary>
/// <param name="Line">The one line that everybody reads.</param>
/// <param name="IsClear">Whether nothing touches, nothing was left out, and nothing measured on the layout says otherwise.</param>
/// <param name="Vehicles">Each vehicle on each track.</param>
public sealed record VerdictBrief(string Line, bool IsClear, IReadOnlyList<HeldVehicle> Vehicles);

/// <summary>How near a vehicle comes to anything printed, mm; nothing where it comes to the height of nothing printed.</summary>
/// <param name="Vehicle">Its name.</param>
/// <param name="Track">Its track.</param>
/// <param name="Part">Part of it that comes nearest.</param>
/// <param name="Where">Where that is.</param>
/// <param name="Clears">Distance when it stands true on the track.</param>
/// <param name="Left">What is left of it after play and budget.</param>
public sealed record HeldVehicle(string Vehicle, string Track, string Part, string Where, double? Clears, double? Left);
