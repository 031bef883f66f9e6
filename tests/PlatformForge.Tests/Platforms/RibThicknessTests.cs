using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Tests.Sections;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>Ribs and end walls as they are laid, by the distance from a line's point on one of their sides to their other side.</summary>
public class RibThicknessTests
{
    private const double Thick = 1.6;

    /// <summary>Nowhere thinner than asked between front wall and back, and thicker by a tenth at most, but where lines across begin to turn.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(25, -15)]
    [InlineData(-30, 20)]
    public void Ribs_are_as_thick_as_asked_wherever_lines_across_turn(double start, double end)
    {
        var plan = Workbench.PendlewickAs(p => p with
        {
            Skew = new() { Start = start, End = end },
            StartRamp = null,
            EndRamp = null,
            Features = [],
            Deck = p.Deck with { Crossfall = 0, Width = 36 },
            Ribs = p.Ribs with { Thickness = Thick, Pitch = 12 },
            Walls = p.Walls with { EndThickness = Thick },
        });
        var chart = new FacetedPlan(plan);
        var ribs = plan.Ribs.Where(r => r.Kind != RibKind.Longitudinal).ToArray();
        Assert.True(ribs.Length > 20);
        double[] found = [.. ribs.Select(rib => new[] { plan.WallBack, plan.BackWallFace }
            .SelectMany(line => new[] { Square(chart.On(line, rib.To), rib.From), Square(chart.On(line, rib.From), rib.To) }).Min())];
        Assert.All(found, thickness => Assert.True(thickness >= Thick - 1e-3, $"{thickness}"));

        // A rib beside the place where lines begin to turn takes the closer of the two facets: one an end.
        Assert.InRange(found.Count(thickness => thickness > Thick * 1.1), 0, 2);

        double Square(Point2 place, double at)
        {
            var (origin, across) = chart.CrossLine(at);
            return Math.Abs(Point2.Cross(across, place - origin)) / across.Length;
        }
    }
}
