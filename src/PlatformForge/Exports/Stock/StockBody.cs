using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Track;

namespace PlatformForge.Exports.Stock;

/// <summary>
/// A platform as it is made from sheet: outside it is the one that is printed, inside everything gives way to the thickness of the material. The deck lies over
/// walls and ribs; ribs stand between the strips of the walls, end walls between them too.
/// </summary>
internal sealed class StockBody(PlatformPlan plan, StockSpec stock)
{
    public PlatformPlan Plan { get; } = plan;

    public StockSpec Stock { get; } = stock;

    /// <summary>Inner face of the strip along the first face.</summary>
    public PlanLine NearInside { get; } = plan.WallFace.Shifted(stock.WallThickness);

    /// <summary>Inner face of the strip on the far side.</summary>
    public PlanLine FarInside { get; } = plan.Body.FarWallFace.Shifted(IsOpen(plan) ? 0 : -stock.WallThickness);

    /// <summary>Whether no strip stands on the far side: against a backscene ribs end there. A bank is laid against a strip.</summary>
    public bool HasFarStrip => !IsOpen(Plan);

    /// <summary>Stations of a piece, ends included.</summary>
    public double[] Stations(PlatformSection section) =>
        [.. Plan.Stations.Where(s => s > section.From && s < section.To).Prepend(section.From).Append(section.To)];

    /// <summary>Height of the deck's underside over the baseboard, mm: lower than its top by its thickness, measured upright.</summary>
    public double UndersideAt(double chainage, double reach)
    {
        var plane = Plan.Surface.At(chainage);
        return Plan.TopAt(chainage, reach) - (Stock.Thickness * Math.Sqrt(1 + (plane.X * plane.X) + (plane.Y * plane.Y)));
    }

    /// <summary>Least height of the underside over something as thick as it is along the track.</summary>
    public double UndersideOver(double chainage, double reach, double thickness) =>
        Math.Max(0, Math.Min(UndersideAt(Within(chainage - (thickness / 2)), reach), UndersideAt(Within(chainage + (thickness / 2)), reach)));

    /// <summary>A place of the deck's top, layout frame.</summary>
    public Point3 OnTop(double chainage, double reach)
    {
        var at = Plan.ToLayout(chainage, reach);
        return new(at.X, at.Y, Plan.TopAt(chainage, reach));
    }

    /// <summary>Whether chainage rises to the right for somebody who looks from inside the platform at a wall.</summary>
    public bool RisesRight(bool isFar) => (Plan.Side == Side.Right) != isFar;

    private static bool IsOpen(PlatformPlan plan) => !plan.Spec.IsIsland && plan.Spec.Back.Kind == BackKind.Open;

    private double Within(double chainage) => Math.Clamp(chainage, Plan.Stations[0], Plan.Stations[^1]);
}
