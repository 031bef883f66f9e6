using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Exports.Drawings.Sections;

/// <summary>The outline of a platform cut square to its track, mm: reach, and height over the baseboard.</summary>
internal static class SectionRing
{
    /// <summary>The cut material's outline: reach and height.</summary>
    /// <param name="plan">The platform.</param>
    /// <param name="s">Chainage, mm.</param>
    public static Point2[] Of(PlatformPlan plan, double s)
    {
        var spec = plan.Spec;
        double front = plan.SquareReach(plan.CopingFront, s), back = plan.SquareReach(plan.Back, s),
            top = plan.Profile.At(s);
        var profile = WallProfiles.Of(plan);
        double under = top - spec.Coping.Thickness, slab = spec.Deck.Thickness, copingBack = plan.SquareReach(plan.CopingBack, s),
            wallBack = plan.SquareReach(plan.WallBack, s), backWall = plan.SquareReach(plan.BackWallFace, s);
        if (plan.Trestle is { Stretch: var bents } && bents.Holds(s))
        {
            return OnBents(plan, s);
        }

        if (plan.Body.FarCopingBack is { } farCoping)
        {
            // An island has a coping on either side.
            double over = plan.SquareTopAt(s, back), beneath = over - spec.Coping.Thickness,
                inner = plan.SquareReach(farCoping, s);
            return
            [
                .. Face(plan, profile, false, s, under), new(front, under), .. Arris(spec.Coping, front, 1, top),
                new(copingBack, plan.SquareTopAt(s, copingBack)), new(inner, plan.SquareTopAt(s, inner)), .. Arris(spec.Coping, back, -1, over).Reverse(),
                    new(back, beneath), .. Face(plan, profile, true, s, beneath).Reverse(),
                new(backWall, 0), new(backWall, plan.SquareTopAt(s, backWall) - slab),
                    new(wallBack, plan.SquareTopAt(s, wallBack) - slab), new(wallBack, 0),
            ];
        }

        Point2[] behind = spec.Back.Kind switch
        {
            BackKind.Bank when !spec.Back.Apart => BankRing.Of(plan.Bank!, s, back, plan.SquareTopAt(s, back), slab),
            BackKind.Open => [new(back, plan.SquareTopAt(s, back) - slab)],
            _ => [.. BackOf(plan, profile, s, back), new(backWall, 0), new(backWall, plan.SquareTopAt(s, backWall) - slab)],
        };
        return
        [
            .. Face(plan, profile, false, s, under), new(front, under), .. Arris(spec.Coping, front, 1, top),
            new(copingBack, plan.SquareTopAt(s, copingBack)), new(back, plan.SquareTopAt(s, back)),
            .. behind, new(wallBack, plan.SquareTopAt(s, wallBack) - slab), new(wallBack, 0),
        ];
    }

    // Between fronts the back wall is set back under its deck.
    private static Point2[] BackOf(PlatformPlan plan, WallProfile profile, double s, double back)
    {
        double panel = plan.SquareReach(plan.WallAt(true, s), s), slab = plan.Spec.Deck.Thickness;
        return panel >= back - Units.Tolerances.Rounding ? [new(back, 0)]
            : [new(back, plan.SquareTopAt(s, back) - slab), .. Face(plan, profile, true, s, plan.SquareTopAt(s, panel) - slab).Reverse()];
    }

    // Deck, copings and the bearers under it, between two bents.
    private static Point2[] OnBents(PlatformPlan plan, double s)
    {
        var spec = plan.Spec;
        double slab = spec.Deck.Thickness, front = plan.SquareReach(plan.CopingFront, s), back = plan.SquareReach(plan.Back, s), top = plan.Profile.At(s),
            over = plan.SquareTopAt(s, back);
        double Under(double t) => plan.SquareTopAt(s, t) - slab;
        var ring = new List<Point2>();
        foreach (var row in plan.Trestle!.Rows.Reverse())
        {
            double near = plan.SquareReach(row.Near, s), far = plan.SquareReach(row.Far, s), deep = spec.Trestle!.Bearer;
            ring.AddRange([new(far, Under(far)), new(far, Under(far) - deep), new(near, Under(near) - deep), new(near, Under(near))]);
        }

        // The coping is thicker than the deck, or thinner, and stands out over its bearer.
        double copingBack = plan.SquareReach(plan.CopingBack, s), wall = ring[^1].X;
        ring[^1] = new(wall, Math.Min(ring[^1].Y, top - spec.Coping.Thickness));
        double under = top - spec.Coping.Thickness, beneath = over - spec.Coping.Thickness;
        ring.AddRange([new(wall, under), new(front, under), .. Arris(spec.Coping, front, 1, top), new(copingBack, plan.SquareTopAt(s, copingBack))]);
        if (plan.Body.FarCopingBack is { } farCoping)
        {
            double inner = plan.SquareReach(farCoping, s);
            ring.AddRange([new(inner, plan.SquareTopAt(s, inner)), .. Arris(spec.Coping, back, -1, over).Reverse(), new(back, beneath),
                new(ring[0].X, beneath)]);
            return [.. ring];
        }

        ring.AddRange([new(back, over), new(back, Under(back))]);
        return [.. ring];
    }

    // The outer face of a wall from its foot to a height, or of a front that steps out there, whose head may slope.
    private static Point2[] Face(PlatformPlan plan, WallProfile profile, bool isFar, double s, double top)
    {
        int outward = isFar ? 1 : -1;
        double wall = plan.SquareReach(plan.WallAt(isFar, s), s), panel = plan.SquareReach(plan.Panels(isFar), s);
        if (profile.FrontHead is not { } head || plan.FrontAt(isFar, s)?.Head is not { } slope)
        {
            return Parts(profile.Zones, wall, outward, top);
        }

        double front = Math.Min(top, head - slope.Rise);
        return [.. Parts(profile.Zones, wall, outward, front), .. Parts(profile.Zones.Where(z => z.High > head), panel, outward, top)];
    }

    private static Point2[] Parts(IEnumerable<WallZone> zones, double wall, int outward, double top) =>
        [.. zones.Where(z => z.Low < top).Select(z => (At: wall + (outward * z.Out), z.Low, z.High))
            .SelectMany(z => new Point2[] { new(z.At, Math.Max(0, z.Low)), new(z.At, Math.Min(z.High, top)) })];

    // From the front face to the top.
    private static Point2[] Arris(CopingSpec coping, double edge, int inward, double top) =>
        coping.Arris() is { Count: > 0 } worked ? [.. worked.Select(c => new Point2(edge + (inward * c.Inward), top - c.Drop))] : [new(edge, top)];
}
