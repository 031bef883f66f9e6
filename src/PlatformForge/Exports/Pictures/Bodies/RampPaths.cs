using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Exports.Pictures.Bodies;

/// <summary>
/// The path that leads up to a ramp, for pictures: a ramp ends at the height of its foot, which it needs to print, and the ground of a layout comes
/// up to it. Nothing is ever made from it.
/// </summary>
internal static class RampPaths
{
    // Of cinders. The path goes on down as steeply as a ramp of 1 in 8, its sides fall as ballast does: common practice, no source.
    private static readonly Rgb Colour = new(0x8F, 0x88, 0x7E);

    private const double Slope = 8, Side = 1.2;

    // Thickness of its thin end, mm: a closed body needs some.
    private const double Thin = 0.02;

    /// <summary>One for each ramp.</summary>
    public static IEnumerable<SceneBody> Of(PlatformPlan plan)
    {
        if (plan.Spec.StartRamp is not null)
        {
            yield return Path(plan, plan.Stations[0], -1);
        }

        if (plan.Spec.EndRamp is not null)
        {
            yield return Path(plan, plan.Stations[^1], 1);
        }
    }

    private static SceneBody Path(PlatformPlan plan, double end, int way)
    {
        double near = plan.CopingFront.At(end), far = plan.Outer.At(end), high = Math.Min(plan.TopAt(end, near), plan.TopAt(end, far));
        Point2 ahead = plan.Chart.At(end).Tangent * way, over = plan.ToLayout(end, far) - plan.ToLayout(end, near), beside = over * (Side * high / over.Length);
        Point2 a = plan.ToLayout(end, near), b = plan.ToLayout(end, far), on = ahead * (Slope * high);
        Point2[] top = [a, b, b + on, a + on], bottom = [a - beside, b + beside, b + on, a + on];
        bool turned = Point2.Cross(over, on) < 0;
        var mesh = Blocks.Loft(turned ? [.. bottom.Reverse()] : bottom, 0, turned ? [.. top.Reverse()] : top, high);

        // The farther two of the upper corners lie on the ground.
        return new(mesh with { Vertices = [.. mesh.Vertices.Select((v, i) => i < 4 || (turned ? i > 5 : i < 6) ? v : v with { Z = Thin })] }, [Colour], false);
    }
}
