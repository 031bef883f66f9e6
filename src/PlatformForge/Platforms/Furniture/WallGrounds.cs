using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms.Furniture;

/// <summary>Where walls stand that are faced in relief, or under a coping that turns the corner.</summary>
internal static class WallGrounds
{
    /// <summary>The ground of a platform's facing; null where nothing is faced and no coping stands out over an end.</summary>
    public static WallGround? Of(PlatformSpec spec, FacePlan face, BodyPlan body)
    {
        var facing = spec.Facing;
        double depth = facing?.Depth ?? 0, front = facing?.SetBack(false) ?? 0, back = spec.IsIsland ? front : facing?.SetBack(true) ?? 0;
        bool IsFaced(WallFinish? finish) => finish is { } laid && laid != WallFinish.Plain;
        bool near = IsFaced(facing?.Front), far = spec.IsIsland ? near : IsFaced(facing?.Back);
        var spine = new Spine(face.Chart, face.Side, body.Across);
        double from = body.Stations[0], to = body.Stations[^1], behind = facing?.EndsBack ?? 0;
        double first = behind + spec.Coping.EndOverhang(false), last = behind + spec.Coping.EndOverhang(true);
        return !near && !far && front + back + first + last == 0 ? null : new(
            near || front > 0 ? spine.Aside(body.WallFace, (near ? depth : 0) + front) : null,
            far || back > 0 ? spine.Aside(body.FarWallFace, -(far ? depth : 0) - back) : null,
            first > 0 ? from + Along(from, first) : from,
            last > 0 ? to - Along(to, last) : to);

        // A line square to the track comes nowhere nearer than that to the platform's end: along the track that is most where the curve makes
        // it shortest.
        double Along(double s, double behind) =>
            behind / Math.Min(spine.Stretch(s, body.WallFace.At(s)), spine.Stretch(s, body.FarWallFace.At(s)));
    }
}
