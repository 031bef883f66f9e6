using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms.Furniture;

/// <summary>The long lines of a side platform, all parallel to its coping front.</summary>
internal static class PlanLines
{
    /// <summary>The body between a coping front and a back at the deck's width.</summary>
    public static BodyPlan Of(PlatformSpec spec, PlanLine front)
    {
        double face = spec.Coping.Overhang, width = spec.Deck.Width;
        var back = front.Shifted(width);
        return new()
        {
            Stations = front.Stations,
            CopingFront = front,
            CopingBack = front.Shifted(spec.Coping.Width),
            WallFace = front.Shifted(face),
            WallBack = front.Shifted(face + spec.FrontDepth),
            BackWallFace = front.Shifted(width - spec.BackDepth),
            FarWallFace = back,
            Back = back,
        };
    }
}
