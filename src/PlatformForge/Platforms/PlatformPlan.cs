using PlatformForge.Geometry;
using PlatformForge.Platforms.Features;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Track;

namespace PlatformForge.Platforms;

/// <summary>
/// A platform worked out: a plan for each of its faces, and the body between them. What belongs to a track is told by the face on it, in that track's chainage
/// and reach; the body, and what stands on and under its deck, in those of the first face, whose chart is the spine. All lengths in mm. All lines of the body
/// are straight in the layout between the mapped points of neighbouring stations. Heights are over the baseboard.
/// </summary>
public sealed record PlatformPlan
{
    /// <summary>What was asked for.</summary>
    public required PlatformSpec Spec { get; init; }

    public required PlatformSite Site { get; init; }

    /// <summary>The faces in the order asked; one at least.</summary>
    public required IReadOnlyList<FacePlan> Faces { get; init; }

    /// <summary>What lies between them.</summary>
    public required BodyPlan Body { get; init; }

    /// <summary>The face that a figure belongs to where nothing says which.</summary>
    public FacePlan First => Faces[0];

    /// <inheritdoc cref="FacePlan.Chart"/>
    public Centreline Chart => First.Chart;

    /// <inheritdoc cref="FacePlan.Side"/>
    public Side Side => First.Side;

    /// <inheritdoc cref="BodyPlan.Stations"/>
    public double[] Stations => Body.Stations;

    /// <inheritdoc cref="BodyPlan.CopingFront"/>
    public PlanLine CopingFront => Body.CopingFront;

    /// <inheritdoc cref="BodyPlan.CopingBack"/>
    public PlanLine CopingBack => Body.CopingBack;

    /// <inheritdoc cref="BodyPlan.WallFace"/>
    public PlanLine WallFace => Body.WallFace;

    /// <inheritdoc cref="BodyPlan.WallBack"/>
    public PlanLine WallBack => Body.WallBack;

    /// <inheritdoc cref="BodyPlan.BackWallFace"/>
    public PlanLine BackWallFace => Body.BackWallFace;

    /// <inheritdoc cref="BodyPlan.Back"/>
    public PlanLine Back => Body.Back;

    /// <inheritdoc cref="FacePlan.Profile"/>
    public HeightProfile Profile => First.Profile;

    /// <inheritdoc cref="FacePlan.CopingJoints"/>
    public double[] CopingJoints => First.CopingJoints;

    /// <inheritdoc cref="FacePlan.WhiteLine"/>
    public WhiteLineBand? WhiteLine => First.WhiteLine;

    /// <inheritdoc cref="FacePlan.Requirement"/>
    public RequirementTrace Requirement => First.Requirement;

    /// <inheritdoc cref="FacePlan.Alternatives"/>
    public IReadOnlyList<PlanLine> Alternatives => First.Alternatives;

    /// <inheritdoc cref="FacePlan.Gaps"/>
    public GapTable Gaps => First.Gaps;

    /// <summary>The narrowest place between two faces; null where the platform has a back.</summary>
    public Waist? Waist { get; init; }

    /// <summary>Walls and stiffeners under the deck, in order of kind and chainage: of the whole platform with its stated cuts, or, after
    /// <see cref="PlatformPlanner.Divided"/>, between all its cuts.</summary>
    public required IReadOnlyList<PlanRib> Ribs { get; init; }

    /// <summary>How far apart the ribs across are.</summary>
    public RibPitch RibPitch { get; init; } = new(0, 0, 0, 0, 0, 0);

    /// <summary>What stands on it and is let into it, in the order asked; placed by the first face.</summary>
    public IReadOnlyList<PlannedFeature> Features { get; init; } = [];

    /// <summary>All that is open in the walking surface.</summary>
    public IEnumerable<Opening> Openings => Features.SelectMany(f => f.Openings);

    /// <summary>All places that something stays off.</summary>
    public IEnumerable<Keepout> Keepouts => Features.SelectMany(f => f.Keepouts);

    /// <summary>Places for cuts in order of chainage, each clear of what keeps cuts off; ribs make room for the cuts that are chosen.</summary>
    public required IReadOnlyList<CutCandidate> CutCandidates { get; init; }

    /// <summary>The walking surface, coping included, as planes that meet in lines across the platform; in sections at their ends.</summary>
    public DeckSurface Surface { get; init; } = DeckSurface.None;

    /// <summary>
    /// Height of the walking surface over the baseboard, mm: between the ramp heads the profile's level along the coping's front edge, less the crossfall
    /// away from it, as near as planes come (<see cref="DeckFit"/>). A ramp is one plane in the layout, through the line at its head and the foot of the coping
    /// front, so that it can be printed lying on its slope; on a curve its foot is not quite level.
    /// </summary>
    public double TopAt(double chainage, double reach) => Surface.At(chainage).At(ToLayout(chainage, reach));

    /// <inheritdoc cref="FacePlan.TrackOf"/>
    public string TrackOf(int vehicle) => First.TrackOf(vehicle);

    /// <summary>The place in the layout frame of a place in the spine's coordinates.</summary>
    public Point2 ToLayout(double chainage, double reach) => First.ToLayout(chainage, reach);
}
