using PlatformForge.Platforms;

namespace PlatformForge.Solids.Bodies;

/// <summary>
/// Piers before the walls: each reaches into the wall behind it, stands as high, and has a cap as high as the deck's edge, so that its faces and the wall's
/// are one panel round its corners.
/// </summary>
internal static class PierBlocks
{
    public static void Add(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        var (plan, body) = (chart.Plan, chart.Plan.Body);
        double deck = plan.Spec.Deck.Thickness;
        if (plan.Piers.Count == 0)
        {
            return;
        }

        var (near, far) = Faces(plan);
        PlanLine nearWall = body.WallLine.Shifted(plan.Spec.Walls.FrontThickness / 2);
        PlanLine farWall = body.FarWallLine.Shifted(-(plan.Spec.IsIsland ? plan.Spec.Walls.FrontThickness : plan.Spec.Walls.BackThickness) / 2);
        foreach (var pier in plan.Piers)
        {
            var (a, b) = pier.IsFar ? (farWall, far) : (near, nearWall);
            foreach (var piece in top.Cover(a, b, Math.Max(from, pier.From), Math.Min(to, pier.To)))
            {
                blocks.Add(Layer.Added(piece.Ring, Layer.Baseboard, piece.Top.Raised(-deck), Paint.Wall) with { WallFaces = WallNames.OfPier(chart, pier, piece) });
                blocks.Add(Layer.Added(piece.Ring, piece.Top.Raised(-deck), piece.Top.Raised(-Math.Min(deck, plan.Spec.Coping.Thickness) / 2), Paint.Deck));
            }
        }
    }

    // The lines that piers' fronts stand on: the faces held against vehicles, or the ground of their facing.
    private static (PlanLine Near, PlanLine Far) Faces(PlatformPlan plan)
    {
        var facing = plan.Spec.Facing!;
        return (plan.Body.WallFace.Shifted(facing.FaceDepth(false)), plan.Body.FarWallFace.Shifted(-facing.FaceDepth(!plan.Spec.IsIsland)));
    }
}
