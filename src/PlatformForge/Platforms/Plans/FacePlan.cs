using PlatformForge.Geometry;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;

namespace PlatformForge.Platforms.Plans;

/// <summary>
/// One face of a platform worked out: all that belongs to the track it faces, in that track's own chainage s and in reach t, the distance from its
/// middle towards the platform. A face knows nothing of others; what lies between faces is the <see cref="BodyPlan"/>'s. All lengths in mm, heights over the
/// baseboard. Its lines share <see cref="Stations"/> and are straight in the layout between the mapped points of neighbouring stations; so drawn, the coping
/// front stays clear of what is required.
/// </summary>
public sealed record FacePlan
{
    /// <summary>What was asked for, its ends as they came to lie.</summary>
    public required FaceSpec Spec { get; init; }

    /// <summary>The centreline that carries its coordinates.</summary>
    public required Centreline Chart { get; init; }

    /// <summary>Height of its track's rails over the baseboard, mm.</summary>
    public required double RailTop { get; init; }

    /// <summary>Side of that track on which the platform stands.</summary>
    public Side Side => Spec.Side;

    /// <summary>Facet stations: chainages from the face's start to its end, with every coping joint and ramp head among them.</summary>
    public required double[] Stations { get; init; }

    /// <summary>Front edge of the coping, the nearest line to the track.</summary>
    public required PlanLine CopingFront { get; init; }

    public required PlanLine CopingBack { get; init; }

    /// <summary>Face of the front wall towards the track.</summary>
    public required PlanLine WallFace { get; init; }

    /// <summary>Inner face of the front wall.</summary>
    public required PlanLine WallBack { get; init; }

    /// <summary>Height of the coping's top along the face.</summary>
    public required HeightProfile Profile { get; init; }

    /// <summary>Chainages of joints between coping slabs, the ends not included.</summary>
    public required double[] CopingJoints { get; init; }

    /// <summary>The white line along its edge; null where there is none.</summary>
    public LineBand? WhiteLine { get; init; }

    /// <summary>The tactile strip along its edge; null where there is none.</summary>
    public LineBand? Tactile { get; init; }

    /// <summary>Lines and strips along its edge.</summary>
    public IEnumerable<LineBand> Lines => new[] { WhiteLine, Tactile }.OfType<LineBand>();

    /// <summary>What the vehicles need of the coping.</summary>
    public required RequirementTrace Requirement { get; init; }

    /// <summary>Coping fronts of all three styles, on the same stations, indexed by <see cref="EdgeStyle"/>.</summary>
    public required IReadOnlyList<PlanLine> Alternatives { get; init; }

    public required GapTable Gaps { get; init; }

    /// <summary>Name of the track that a vehicle of the requirement, by index, runs on.</summary>
    public string TrackOf(int vehicle) => Requirement.OtherTrack(vehicle) is { Length: > 0 } other ? other : Spec.Track;

    /// <summary>The place in the layout frame of a place in the face's coordinates.</summary>
    public Point2 ToLayout(double chainage, double reach) => Chart.PointAt(chainage, Side.Outward(reach));
}
