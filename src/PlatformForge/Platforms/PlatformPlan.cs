using PlatformForge.Geometry;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Track;

namespace PlatformForge.Platforms;

/// <summary>
/// A side platform worked out, in plan coordinates: chainage s along the track it faces, and reach t, the distance from the
/// centreline on the platform's side (layout offset = side × t). All lengths in mm. All lines share <see cref="Stations"/> and are
/// straight in the layout between the mapped points of neighbouring stations; so drawn, the coping front stays clear of what is required.
/// Heights are over the baseboard.
/// </summary>
public sealed record PlatformPlan
{
    /// <summary>What was asked for.</summary>
    public required PlatformSpec Spec { get; init; }

    public required PlatformSite Site { get; init; }

    /// <summary>The centreline that carries the plan coordinates.</summary>
    public required Centreline Chart { get; init; }

    public Side Side => Spec.Face.Side;

    /// <summary>Facet stations: chainages in mm from the platform's start to its end, with every coping joint and ramp head among them.</summary>
    public required double[] Stations { get; init; }

    /// <summary>Front edge of the coping, the nearest line to the track.</summary>
    public required PlanLine CopingFront { get; init; }

    public required PlanLine CopingBack { get; init; }

    /// <summary>Face of the front wall towards the track.</summary>
    public required PlanLine WallFace { get; init; }

    /// <summary>Inner face of the front wall.</summary>
    public required PlanLine WallBack { get; init; }

    /// <summary>Inner face of the back wall.</summary>
    public required PlanLine BackWallFace { get; init; }

    /// <summary>Outer face of the back wall, the platform's back edge.</summary>
    public required PlanLine Back { get; init; }

    /// <summary>Height of the coping's top along the platform.</summary>
    public required HeightProfile Profile { get; init; }

    /// <summary>Chainages of joints between coping slabs, the ends not included.</summary>
    public required double[] CopingJoints { get; init; }

    /// <summary>Walls and stiffeners under the deck, in order of kind and chainage: of the whole platform with its stated cuts, or, after
    /// <see cref="PlatformPlanner.Divided"/>, between all its cuts.</summary>
    public required IReadOnlyList<PlanRib> Ribs { get; init; }

    /// <summary>How far apart the ribs across are.</summary>
    public RibPitch RibPitch { get; init; } = new(0, 0, 0, 0, 0, 0);

    public required IReadOnlyList<PlanSocket> Sockets { get; init; }

    /// <summary>Holes of the fence's posts, then single ones for lamps and the like.</summary>
    public required IReadOnlyList<PlanHole> PostHoles { get; init; }

    /// <summary>The fence whose posts those are; null where there is none.</summary>
    public PlanFence? Fence { get; init; }

    public required WhiteLineBand? WhiteLine { get; init; }

    /// <summary>Places for cuts in order of chainage, each clear of sockets and holes; ribs make room for the cuts that are chosen.</summary>
    public required IReadOnlyList<CutCandidate> CutCandidates { get; init; }

    /// <summary>What the vehicles need of the coping.</summary>
    public required RequirementTrace Requirement { get; init; }

    /// <summary>Coping fronts of all three styles, on the same stations, indexed by <see cref="EdgeStyle"/>.</summary>
    public required IReadOnlyList<PlanLine> Alternatives { get; init; }

    public required GapTable Gaps { get; init; }

    /// <summary>The walking surface, coping included, as planes that meet in lines across the platform; in sections at their ends.</summary>
    public DeckSurface Surface { get; init; } = DeckSurface.None;

    /// <summary>
    /// Height of the walking surface over the baseboard, mm: between the ramp heads the profile's level along the coping's front edge, less the crossfall
    /// away from it, as near as planes come (<see cref="DeckFit"/>). A ramp is one plane in the layout, through the line at its head and the foot of the coping
    /// front, so that it can be printed lying on its slope; on a curve its foot is not quite level.
    /// </summary>
    public double TopAt(double chainage, double reach) => Surface.At(chainage).At(ToLayout(chainage, reach));

    /// <summary>Name of the track that a vehicle of the requirement, by index, runs on.</summary>
    public string TrackOf(int vehicle) => Requirement.OtherTrack(vehicle) is { Length: > 0 } other ? other : Spec.Face.Track;

    /// <summary>The place in the layout frame of a place in plan coordinates.</summary>
    public Point2 ToLayout(double chainage, double reach) => Chart.PointAt(chainage, (int)Side * reach);
}
