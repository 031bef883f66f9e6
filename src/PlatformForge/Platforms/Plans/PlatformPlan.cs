using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Track;

namespace PlatformForge.Platforms.Plans;

/// <summary>
/// A platform worked out: a plan for each of its faces, and the body between them. What belongs to a track is told by the face on it, in that track's chainage
/// and reach; the body, and what stands on and under its deck, in those of the spine, which has the first face's chainage along its edge. All lengths in mm.
/// All lines of the body
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
    public LineBand? WhiteLine => First.WhiteLine;

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

    /// <summary>The bents that it stands on; null where walls carry it.</summary>
    public PlanTrestle? Trestle { get; init; }

    /// <summary>Piers in its walls; clear of all cuts after <see cref="PlatformPlanner.Divided"/>.</summary>
    public IReadOnlyList<PlannedPier> Piers { get; init; } = [];

    /// <summary>Downpipes before its walls; clear of all cuts after <see cref="PlatformPlanner.Divided"/>.</summary>
    public IReadOnlyList<PlannedDownpipe> Downpipes { get; init; } = [];

    /// <summary>Openings in its walls; clear of all cuts after <see cref="PlatformPlanner.Divided"/>.</summary>
    public IReadOnlyList<PlannedOpening> WallOpenings { get; init; } = [];

    /// <summary>What these come to, a row for each that was asked for: all that rooms after this one know of them.</summary>
    public IReadOnlyList<FittingRow> Fittings { get; init; } = [];

    /// <summary>All that is open in its walls, in the order of their numbers.</summary>
    public IEnumerable<(FittingRow Row, WallFitting Place)> Holes =>
        Fittings.SelectMany(r => r.Places.Where(p => p.Hole is not null).Select(p => (r, p))).OrderBy(h => h.p.Number);

    /// <summary>The bank behind it; null where its back is another. Worked out from the walking surface when asked.</summary>
    public PlanBank? Bank => PlanBank.Of(this);

    /// <summary>The farthest line behind: the foot of its bank, or its back. Worked out when asked.</summary>
    public PlanLine Outer => Bank?.Foot ?? Back;

    /// <summary>Outer face of a wall between its piers, which are before it, as a line of the body: of the part of its height that lies deepest.</summary>
    /// <param name="isFar">Of the wall on the far side.</param>
    public PlanLine Panels(bool isFar) => Behind(isFar, Spec.Facing?.SetBack(isFar && !Spec.IsIsland) ?? 0);

    /// <summary>Outer face of a wall at a chainage of the spine: of a pier where one stands; of the part of its height that lies deepest.</summary>
    /// <param name="isFar">Of the wall on the far side.</param>
    /// <param name="chainage">Chainage, mm.</param>
    public PlanLine WallAt(bool isFar, double chainage) => FrontAt(isFar, chainage) is not null ? Behind(isFar, Spec.Facing!.ProfileDepth) : Panels(isFar);

    /// <summary>How far the foot of the wall under the coping lies behind the face that is held against vehicles at a chainage, mm: nothing where a plinth
    /// or, in walls
    /// without one, a pier stands at that face. Of islands, whose walls are told along their own tracks, the line of the piers is told.</summary>
    public double PanelDepthAt(double chainage) => Spec.Facing is not { } facing ? 0
        : facing.FootBack + (Spec.IsIsland || FrontAt(false, chainage) is not null ? 0 : facing.SetBack(false) - facing.ProfileDepth);

    /// <summary>What steps out of a wall at a chainage; its foot is wider by what a plinth stands out. Null where the wall does not.</summary>
    /// <param name="isFar">Of the wall on the far side.</param>
    /// <param name="chainage">Chainage, mm.</param>
    public FittingRow? FrontAt(bool isFar, double chainage) =>
        Fittings.FirstOrDefault(r => r.StepsOut && r.Places.Any(p => p.IsFar == isFar && p.From <= chainage && p.To >= chainage));

    /// <summary>The two lines that something in or before a wall lies between in plan.</summary>
    /// <param name="fitting">It.</param>
    public (PlanLine Near, PlanLine Far) LinesOf(WallFitting fitting)
    {
        ArgumentNullException.ThrowIfNull(fitting);
        var panels = Panels(fitting.IsFar);
        PlanLine In(double depth) => depth == 0 ? panels : panels.Shifted(fitting.IsFar ? -depth : depth);
        return (In(-fitting.Footprint.Before), fitting.Footprint.Behind is { } depth ? In(depth) : fitting.IsFar ? BackWallFace : WallBack);
    }

    private PlanLine Behind(bool isFar, double back)
    {
        var line = isFar ? Body.FarWallFace : Body.WallFace;
        return back > 0 ? line.Shifted(isFar ? -back : back) : line;
    }

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

    /// <summary>The reach, square to the first face's track, at which a boundary of the body is met at a chainage of that track, mm.</summary>
    public double SquareReach(PlanLine line, double chainage)
    {
        if (Body.Across is null)
        {
            return line.At(chainage);
        }

        // Each step along the boundary leaves a small share of what was off, lines across and the square being nearly one.
        var frame = Chart.At(chainage);
        double s = chainage;
        Point2 at = ToLayout(s, line.At(s));
        for (int round = 0; round < SquareRounds; round++)
        {
            double off = Point2.Dot(at - frame.Position, frame.Tangent);
            if (Math.Abs(off) < Units.Tolerances.Rounding)
            {
                break;
            }

            s -= off / Math.Max(LeastPace, Spine.Stretch(s, line.At(s)));
            at = ToLayout(s, line.At(s));
        }

        return Side.Reach(Point2.Cross(frame.Tangent, at - frame.Position));
    }

    /// <summary>A place of the body as the first face's track tells it: its own chainage, and reach square to it.</summary>
    public PlanPlace OnTrack(PlanPlace place)
    {
        if (Body.Across is null)
        {
            return place;
        }

        var on = Chart.Locate(ToLayout(place.Chainage, place.Reach), place.Chainage);
        return new(on.Chainage, Side.Reach(on.Offset));
    }

    /// <summary>Height of the walking surface at a chainage of the first face's track and a reach square to it, mm.</summary>
    public double SquareTopAt(double chainage, double reach) =>
        Body.Across is null ? TopAt(chainage, reach) : Spine.Locate(First.ToLayout(chainage, reach), chainage) is var at ? TopAt(at.Chainage, at.Reach) : 0;

    private const int SquareRounds = 40;
    private const double LeastPace = 0.3;

    /// <summary>What carries the coordinates of the body.</summary>
    public Spine Spine => new(First.Chart, First.Side, Body.Across);

    /// <summary>The place in the layout frame of a place in the spine's coordinates.</summary>
    public Point2 ToLayout(double chainage, double reach) => Body.Across is null ? First.ToLayout(chainage, reach) : Spine.ToLayout(chainage, reach);
}
