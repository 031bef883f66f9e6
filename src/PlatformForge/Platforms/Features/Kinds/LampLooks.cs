using PlatformForge.Platforms.Plans;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>A lamp on its post as pictures show it: sizes at full size, from memory; nothing is made from them.</summary>
internal static class LampLooks
{
    // mm at full size.
    private const double PostTop = 3300, LanternTop = 3700, Post = 90, Foot = 220, FootTop = 500, LanternBelow = 200, LanternAbove = 380;

    public static IReadOnlyList<ShownBody> Of(FeatureSite site, PlanPlace place)
    {
        double M(double fullSize) => site.Ground.Scale.ToModel(fullSize);
        Geometry.Point2[] Square(double size) => FeatureSite.Oblong(site.ToLayout(place), new(1, 0), M(size), M(size));
        ShownLoft Upright(double size, double top) => new(place, Square(size), 0, Square(size), M(top));
        return
        [
            new(Finish.Iron, [Upright(Post, PostTop), Upright(Foot, FootTop)]),
            new(Finish.Cream, [new ShownLoft(place, Square(LanternBelow), M(PostTop), Square(LanternAbove), M(LanternTop))]),
        ];
    }
}
