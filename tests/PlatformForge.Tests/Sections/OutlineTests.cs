using PlatformForge.Geometry;
using PlatformForge.Sections.Cuts;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>The size by which cuts are chosen is that of all that is printed between them, on the inside of a curve and on the outside.</summary>
public class OutlineTests
{
    [Theory]
    [InlineData(false, PrintPose.Upright)]
    [InlineData(true, PrintPose.Upright)]
    [InlineData(false, PrintPose.DeckDown)]
    [InlineData(true, PrintPose.DeckDown)]
    public void Every_place_of_both_edges_lies_on_the_outline_or_within(bool mirrored, PrintPose pose)
    {
        var plan = mirrored ? Workbench.PendlewickMirrored() : Workbench.PendlewickPlan;
        var chart = new FacetedPlan(plan);
        var outline = new SectionOutline(chart, pose);
        var top = new TopSurface(chart);
        double[] ends = [plan.Stations[0], .. plan.CutCandidates.Select(c => c.Chainage).Where((_, i) => i % 9 == 4), plan.Stations[^1]];
        foreach (var (from, to) in ends.Zip(ends.Skip(1)))
        {
            var (hull, height) = outline.Printed(from, to);
            var turn = outline.Turn(from, to);
            double[] along = [.. Enumerable.Range(0, 101).Select(i => from + ((to - from) * i / 100.0)), .. chart.Stations.Where(s => s > from && s < to)];
            Point3[] places = [.. from s in along
                               from line in new[] { plan.CopingFront, plan.Back }
                               let p = chart.On(line, s)
                               from z in new[] { 0, top.Along(s).At(p) }
                               select turn.Apply(new Point3(p.X, p.Y, z))];
            Assert.All(places, p => Assert.True(Inside(hull, new(p.X, p.Y))));
            Assert.Equal(ConvexRing.Area(ConvexRing.Hull([.. places.Select(p => new Point2(p.X, p.Y))])), ConvexRing.Area(hull), 1e-6);
            Assert.Equal(places.Max(p => p.Z) - places.Min(p => p.Z), height, 1e-9);
        }
    }

    private static bool Inside(Point2[] ring, Point2 p) => Enumerable.Range(0, ring.Length).All(i =>
    {
        var along = ring[(i + 1) % ring.Length] - ring[i];
        return Point2.Cross(along, p - ring[i]) >= -1e-6 * along.Length;
    });
}
