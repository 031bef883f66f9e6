using PlatformForge.Geometry;
using PlatformForge.Platforms;

namespace PlatformForge.Exports.Drawings;

/// <summary>The outline of a platform cut square to its track, mm: reach, and height over the baseboard.</summary>
internal static class SectionRing
{
    /// <summary>The cut material's outline: reach and height.</summary>
    /// <param name="plan">The platform.</param>
    /// <param name="s">Chainage, mm.</param>
    public static Point2[] Of(PlatformPlan plan, double s)
    {
        var spec = plan.Spec;
        double front = plan.CopingFront.At(s), wall = plan.WallFace.At(s), back = plan.Back.At(s), top = plan.Profile.At(s);
        double under = top - spec.Coping.Thickness, slab = spec.Deck.Thickness, copingBack = plan.CopingBack.At(s), wallBack = plan.WallBack.At(s), backWall = plan.BackWallFace.At(s);
        if (plan.Body.FarCopingBack is { } farCoping)
        {
            // An island has a coping on either side.
            double farWall = plan.Body.FarWallFace.At(s), over = plan.TopAt(s, back), beneath = over - spec.Coping.Thickness, inner = farCoping.At(s);
            return
            [
                new(wall, 0), new(wall, under), new(front, under), new(front, top - spec.Coping.ArrisChamfer), new(front + spec.Coping.ArrisChamfer, top),
                new(copingBack, plan.TopAt(s, copingBack)), new(inner, plan.TopAt(s, inner)), new(back - spec.Coping.ArrisChamfer, over),
                    new(back, over - spec.Coping.ArrisChamfer), new(back, beneath), new(farWall, beneath),
                new(farWall, 0), new(backWall, 0), new(backWall, plan.TopAt(s, backWall) - slab),
                    new(wallBack, plan.TopAt(s, wallBack) - slab), new(wallBack, 0),
            ];
        }

        return
        [
            new(wall, 0), new(wall, under), new(front, under), new(front, top - spec.Coping.ArrisChamfer), new(front + spec.Coping.ArrisChamfer, top),
            new(copingBack, plan.TopAt(s, copingBack)), new(back, plan.TopAt(s, back)),
            new(back, 0), new(backWall, 0), new(backWall, plan.TopAt(s, backWall) - slab), new(wallBack, plan.TopAt(s, wallBack) - slab), new(wallBack, 0),
        ];
    }
}
