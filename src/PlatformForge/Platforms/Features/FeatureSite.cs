using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Features;

/// <summary>What a feature is planned at: the platform asked for, its lines and heights, and the face whose chainage places it.</summary>
/// <param name="Spec">The platform as asked for, with all its features.</param>
/// <param name="Ground">What the platform stands on.</param>
/// <param name="Chart">What carries the plan coordinates.</param>
/// <param name="Lines">The platform's long lines.</param>
/// <param name="Profile">Heights along it.</param>
/// <param name="Slabs">Slabs of the coping, with the places for cuts between them.</param>
/// <param name="Key">Key of the feature.</param>
internal sealed record FeatureSite(
    PlatformSpec Spec,
    PlatformSite Ground,
    Spine Chart,
    BodyPlan Lines,
    HeightProfile Profile,
    SlabLayout Slabs,
    string Key)
{
    /// <summary>Thickness of material round an opening below the deck and under its floor, mm: three printed lines.</summary>
    public const double BossWall = 1.2;

    /// <summary>Least material in mm left between an opening and an edge of the deck: two printed lines.</summary>
    public const double LeastLand = 0.8;

    /// <summary>Sums of stated lengths that differ by less than this, mm, are equal.</summary>
    public const double Grain = Tolerances.Rounding;

    /// <summary>Sides of the polygon drawn around a round upright hole.</summary>
    public const int HoleSides = 12;

    // Share of a recess's depth, or of the deck a hole goes through, that the chamfer of its mouth takes at most.
    private const double MostOfDepth = 0.5;

    public FaceSpec Face => Spec.Face;

    /// <summary>Material in mm round and under an opening of a depth: none where the deck alone is deep enough, or it goes right through.</summary>
    public static double Boss(PlatformSpec spec, double? depth) => depth > spec.Deck.Thickness - LeastLand ? BossWall : 0;

    /// <summary>Reach of what stands at an inset.</summary>
    public double Reach(
        double chainage,
        double inset,
        InsetFrom from) => from == InsetFrom.Back ? Lines.Back.At(chainage) - inset : Lines.CopingFront.At(chainage) + inset;

    /// <summary>Inset of what stands at a reach.</summary>
    public double Inset(
        double chainage,
        double reach,
        InsetFrom from) => from == InsetFrom.Back ? Lines.Back.At(chainage) - reach : reach - Lines.CopingFront.At(chainage);

    /// <summary>Length in the layout at a place for a millimetre of chainage.</summary>
    public double Stretch(PlanPlace place) => Chart.Stretch(place.Chainage, place.Reach);

    /// <summary>Height of the coping's top over the baseboard less what the deck has fallen from there to a place, mm.</summary>
    public double Top(PlanPlace place) =>
        Profile.At(place.Chainage) - (Spec.Deck.Crossfall > 0 ? (place.Reach - Lines.CopingFront.At(place.Chainage)) / Spec.Deck.Crossfall : 0);

    /// <summary>The place in the layout.</summary>
    public Point2 ToLayout(PlanPlace place) => Chart.ToLayout(place.Chainage, place.Reach);

    /// <summary>Unit direction of the track at a chainage; between two tracks, of the middle between them.</summary>
    public Point2 Tangent(double chainage) => Chart.Tangent(chainage);

    /// <summary>Unit direction from the track to the platform at a chainage.</summary>
    public Point2 Away(double chainage) => Chart.Away(chainage);

    /// <summary>An oblong in the layout about a place, its sides along and square to the track there.</summary>
    public Point2[] Oblong(PlanPlace place, double along, double across) => Oblong(ToLayout(place), Tangent(place.Chainage), along, across);

    /// <summary>An oblong about a point, one side along a unit direction.</summary>
    public static Point2[] Oblong(Point2 middle, Point2 direction, double along, double across)
    {
        Point2 x = direction * (along / 2), y = direction.Left * (across / 2);
        return [middle - x - y, middle + x - y, middle + x + y, middle - x + y];
    }

    /// <summary>Ring of a regular polygon whose sides touch a circle, so that a pin fits at every side: radius/cos(π/n).</summary>
    public Point2[] Round(PlanPlace place, double radius)
    {
        var middle = ToLayout(place);
        double heading = Chart.Heading(place.Chainage), corner = radius / Math.Cos(Math.PI / HoleSides);
        return [.. Enumerable.Range(0, HoleSides).Select(k => middle + (Point2.FromAngle(heading + (2 * Math.PI * (k + 0.5) / HoleSides)) * corner))];
    }

    /// <summary>The chamfered mouth of an opening so deep, from what its ring is for an allowance on every side; null where the deck has no chamfers.</summary>
    public PrismMouth? Mouth(double depth, Func<double, Point2[]> ring) =>
        Math.Min(Spec.Deck.MouthChamfer, depth * MostOfDepth) is > 0 and var size ? new(size, ring(size)) : null;

    /// <summary>The part of a convex ring between the middles of front and back wall, told at a chainage.</summary>
    public Point2[] BetweenWalls(Point2[] ring, double chainage)
    {
        var walls = Spec.Walls;
        ring = Beyond(ring, chainage, Lines.WallBack.At(chainage) - (walls.FrontThickness / 2), towardsBack: true);
        double behind = Spec.BackDepth > 0 ? walls.BackThickness / 2 : 0;
        return ring.Length == 0 ? ring : Beyond(ring, chainage, Lines.BackWallFace.At(chainage) + behind, towardsBack: false);
    }

    // The part of a ring beyond a reach, or before it.
    private Point2[] Beyond(Point2[] ring, double chainage, double reach, bool towardsBack)
    {
        var on = ToLayout(new(chainage, reach));
        return ConvexRing.LeftOf(ring, on, on + (Tangent(chainage) * Face.Side.Outward(towardsBack ? 1 : -1)));
    }
}
