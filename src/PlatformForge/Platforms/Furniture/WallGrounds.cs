using PlatformForge.Masonry;

namespace PlatformForge.Platforms.Furniture;

/// <summary>Where walls stand that are faced in relief.</summary>
internal static class WallGrounds
{
    /// <summary>The ground of a platform's facing; null where nothing is faced.</summary>
    public static WallGround? Of(PlatformSpec spec, FacePlan face, BodyPlan body)
    {
        if (spec.Facing is not { } facing)
        {
            return null;
        }

        double depth = facing.Depth, front = facing.SetBack(false), back = spec.IsIsland ? front : facing.SetBack(true);
        bool near = facing.Front != WallFinish.Plain, far = spec.IsIsland ? near : facing.Back != WallFinish.Plain, ends = facing.Ends != WallFinish.Plain;
        var spine = new Spine(face.Chart, face.Side, body.Across);
        double from = body.Stations[0], to = body.Stations[^1];
        double behind = facing.EndsBack;
        return !near && !far && !ends && front + back == 0 ? null : new(
            near || front > 0 ? spine.Aside(body.WallFace, (near ? depth : 0) + front) : null,
            far || back > 0 ? spine.Aside(body.FarWallFace, -(far ? depth : 0) - back) : null,
            behind > 0 ? from + Along(from) : from,
            behind > 0 ? to - Along(to) : to);

        // A line square to the track comes nowhere nearer than that to the platform's end: along the track that is most where the curve makes
        // it shortest.
        double Along(double s) =>
            behind / Math.Min(spine.Stretch(s, body.WallFace.At(s)), spine.Stretch(s, body.FarWallFace.At(s)));
    }
}
