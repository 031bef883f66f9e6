using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Kernel;
using PlatformForge.Solids.Reliefs;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Solids.Bodies;

/// <summary>The walls of bodies by name: a band sunk into them takes what it should, straight, curved and on a ramp, on either side of the track.</summary>
public class BodyReliefTests
{
    [Theory]
    [InlineData(Side.Left, "front of face 1")]
    [InlineData(Side.Right, "front of face 1")]
    [InlineData(Side.Left, "back")]
    [InlineData(Side.Right, "back")]
    public void A_straight_platform_s_walls_have_names(Side side, string face)
    {
        var plan = Workbench.Straight(300, side, s => s with { StartRamp = new(Gradient: 8) });
        var (taken, length) = Taken(plan, face);
        Assert.InRange(length, 299.9, 300.1);
        Assert.Equal(280 * 3 * 0.3, taken, 1e-3);
    }

    [Fact]
    public void A_curved_platform_s_front_is_one_panel_along_its_facets()
    {
        var (taken, length) = Taken(Workbench.PendlewickPlan, WallNames.FrontOf(1));

        // Mitred floors are longer or shorter by 0.3 mm times the angle that the wall turns through: less than 2 radians.
        Assert.InRange(taken, ((length - 20) * 0.9) - (2 * 0.3 * 0.9), ((length - 20) * 0.9) + (2 * 0.3 * 0.9));
    }

    [Theory]
    [InlineData(Side.Left, "end wall at the start", false)]
    [InlineData(Side.Left, "end wall at the end", false)]
    [InlineData(Side.Right, "end wall at the start", false)]
    [InlineData(Side.Right, "end wall at the end", true)]
    public void The_walls_at_a_platform_s_ends_have_names(Side side, string face, bool ramps)
    {
        // From the wall's face under the coping to the back; a ramp's foot stands as high over the baseboard as its deck allows, and has an end wall too.
        var plan = Workbench.Straight(300, side, s => s with { StartRamp = ramps ? new(Gradient: 8) : null, EndRamp = ramps ? new(Gradient: 8) : null });
        var (taken, length) = Taken(plan, face);
        Assert.Equal(plan.Spec.Deck.Width - plan.Spec.Coping.Overhang, length, 1e-3);
        Assert.Equal((length - 20) * 3 * 0.3, taken, 1e-3);
    }

    [Theory]
    [InlineData(Side.Left, false)]
    [InlineData(Side.Right, false)]
    [InlineData(Side.Left, true)]
    public void One_relief_goes_all_round_a_platform_and_over_its_ramps(Side side, bool ramps)
    {
        var plan = Workbench.Straight(300, side, s => s with { StartRamp = ramps ? new(Gradient: 8) : null, EndRamp = ramps ? new(Gradient: 8) : null });
        double across = plan.Spec.Deck.Width - plan.Spec.Coping.Overhang, round = 2 * (300 + across);
        var (taken, length) = Taken(plan, [.. WallNames.AllRound(plan)]);
        Assert.Equal(round, length, 1e-2);

        // A band all round but for 10 mm to either side of where it is opened: three outward corners take twice half the depth each of its floor.
        Assert.Equal(((round - 20) - (3 * 0.3)) * 3 * 0.3, taken, 2e-3);
    }

    [Fact]
    public void A_section_s_end_at_a_cut_has_no_face()
    {
        var plan = Workbench.Straight(300);
        var chart = new FacetedPlan(plan);
        var blocks = PlatformBody.Blocks(chart, plan.Stations[0], plan.Stations[plan.Stations.Length / 2]).All;
        string[] names = [.. blocks.SelectMany(b => b.WallFaces).OfType<string>().Distinct()];
        Assert.Contains(WallNames.AtStart, names);
        Assert.DoesNotContain(WallNames.AtEnd, names);
    }

    private static (double Taken, double Length) Taken(PlatformPlan plan, params string[] faces)
    {
        var blocks = PlatformBody.Blocks(plan).All;
        var band = new Band();
        var solid = SolidRaiser.Raise(blocks, faces.ToDictionary(f => f, _ => (IWallRelief)band));
        var report = MeshCheck.Inspect(solid.Mesh);
        Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, report.ToString());
        Assert.Equal(solid.MeshVolume, report.Volume, 1e-6 * report.Volume);
        return (SolidRaiser.Volume(blocks) - solid.ColumnVolume, Assert.Single(band.Lengths));
    }

    /// <summary>A band 3 mm high and 0.3 deep, from 10 mm after one end to 10 mm before the other.</summary>
    private sealed class Band : IWallRelief
    {
        public List<double> Lengths { get; } = [];

        public IEnumerable<ReliefField> Fields(WallPanel panel)
        {
            Lengths.Add(panel.Length);
            return [new(10, panel.Length - 10, 1, 4, -0.3)];
        }
    }
}
