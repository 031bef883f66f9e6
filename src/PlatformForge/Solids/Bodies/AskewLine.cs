using PlatformForge.Geometry;
using PlatformForge.Platforms;

namespace PlatformForge.Solids.Bodies;

/// <summary>A cut or an end of a platform that lies askew, in the layout.</summary>
/// <param name="On">A place on it, mm.</param>
/// <param name="Along">Unit direction along it.</param>
public readonly record struct AskewLine(Point2 On, Point2 Along)
{
    /// <summary>All of a platform with a back; lines across an island are never far from square.</summary>
    public static IReadOnlyList<AskewLine> Of(PlatformPlan plan) =>
        [.. SkewSpec.Lines(plan.Spec).Select(c => new AskewLine(plan.ToLayout(c.At, plan.CopingFront.At(c.At)), plan.Spine.Away(c.At)))];
}
