using FsCheck.Xunit;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Sets;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Projects;
using PlatformForge.Tests.Projects;
using PlatformForge.Track;
using PlatformForge.Verification.Poses;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>Bodies without wheels that hang between two wheeled ones, as in some tramcars.</summary>
public class HungBodyTests
{
    private const string Tram = """
        length = 90
        pivots = 24
        width = 28
        body_name = "front car"

        [[vehicle.body]]
        name = "middle car"
        joined_by = "hinge"
        hung = true
        gap = 6
        length = 100

        [[vehicle.body]]
        name = "rear car"
        joined_by = "hinge"
        gap = 6

        """;

    private static string Project(string tram) => Samples.Small.Replace("length = 228\npivots = 162\nwidth = 34\n", tram, StringComparison.Ordinal);

    /// <summary>
    /// On a circle the wheeled cars stand with their axles' middle √(R² − a²/4) from its centre and their hinges, half a car and half a gap farther along, all
    /// equally far from it; the hung car is the chord between two hinges.
    /// </summary>
    [Fact]
    public void A_hung_car_reaches_on_a_circle_as_far_as_geometry_says()
    {
        const double Radius = 400, Axles = 24, Hinge = 45 + 3, Length = 100, Width = 28;
        double middle = Math.Sqrt((Radius * Radius) - (Axles * Axles / 4)), away = Math.Sqrt((Hinge * Hinge) + (middle * middle)), chord = Length + 6;
        double own = Math.Sqrt((away * away) - (chord * chord / 4)), outer = new Point2(Length / 2, own + (Width / 2)).Length, inner = own - (Width / 2);
        var bodies = Samples.Sound(Project(Tram)).Vehicles;
        var ring = DemoStock.Lay("ring", new CurveSpec(Radius, Hand.Right, Length: 1500));
        var envelope = EnvelopeSweeper.Sweep(new(ring, 700, 800, [new(ring, bodies)])).Value!;
        var hung = envelope.Parts.Single(p => p.Vehicle.Hangs);
        Assert.EndsWith("middle car", hung.Vehicle.Name, StringComparison.Ordinal);
        Assert.InRange(hung.Left[40], outer - Radius - 1e-9, outer - Radius + envelope.ErrorBound);
        Assert.InRange(hung.Right[40], Radius - inner - 1e-9, Radius - inner + envelope.ErrorBound);
    }

    [Property(MaxTest = 8, Arbitrary = [typeof(RunCases)])]
    public void The_reach_of_a_hung_car_is_never_below_the_truth_nor_above_it_by_more_than_the_bound(RunCase run) =>
        SweepProperties.AgainstBrute(run with { Vehicle = Hung(run) }, run.Smooth());

    [Property(MaxTest = 6, Arbitrary = [typeof(RunCases)])]
    public void The_same_holds_for_a_hung_car_on_kinked_track(RunCase run) => SweepProperties.AgainstBrute(run with { Vehicle = Hung(run) }, run.Kinked());

    [Theory]
    [InlineData(false, 24)]
    [InlineData(true, 24)]
    [InlineData(false, 40)]
    [InlineData(true, 40)]
    public void In_a_set_of_any_axles_on_a_reverse_curve_hinges_meet_and_the_poses_that_verify_agree(bool turned, int rearPivots)
    {
        var project = Samples.Sound(Project(Tram.Replace("name = \"rear car\"", $"name = \"rear car\"\npivots = {rearPivots}", StringComparison.Ordinal)));
        var set = Assert.Single(project.Sets);
        var track = DemoStock.Lay("s", new StraightSpec(300), new TransitionSpec(120, 420, Hand.Left), new CurveSpec(420, Hand.Left, Length: 150),
            new TransitionSpec(120, null, Hand.Left), new TransitionSpec(120, 380, Hand.Right), new CurveSpec(380, Hand.Right, Length: 300));
        for (double u = 420; u < 1000; u += 37)
        {
            var poses = SetSolver.Place(track, set, u, turned)!;
            var (front, middle, rear) = (poses[0].Body, poses[1].Body, poses[2].Body);
            double half = set.Bodies[1].PivotCentres / 2;
            Assert.Equal(0, (front.Apply(new(-48, 0)) - middle.Apply(new(half, 0))).Length, 1e-7);
            Assert.Equal(0, (rear.Apply(new(48, 0)) - middle.Apply(new(-half, 0))).Length, 1e-7);
            var standing = turned ? WayRound.Turned(set.Bodies[1]) : set.Bodies[1];
            var ours = new StandingVehicle(track, standing).At(poses[1].LeadingChainage + (standing.LeadingWheelbase / 2))!.Value;
            Assert.Equal(0, (ours.Body.Origin - middle.Origin).Length, 1e-7);
        }
    }

    /// <summary>A hinge 30 mm from the middle of axles that stand 10 mm either side of it moves three times as far as one of them that goes aside the other
    /// way.</summary>
    [Fact]
    public void A_hinge_beyond_its_axles_counts_as_a_lever()
    {
        var vehicle = new Vehicle("hung", 100, 20, 25, [VehiclePart.Box("body", PartCarrier.Body, -50, 50, 24, 3, 40)])
        {
            LeadingPivotAhead = -30,
            TrailingPivotAhead = 20,
            Hangs = true,
            EitherWayRound = false
        };
        var form = Assert.Single(SweptForm.WaysRound(vehicle, SweptShape.Of(vehicle, RunningPlay.None, null), RunningPlay.None, halts: false));
        Assert.Equal((1, 3), (Math.Round(form.OverPoints, 9), Math.Round(form.Lever, 9)));
    }

    /// <summary>Hinges 50 mm either side of the middle, the leading one 30 mm behind the middle of axles 20 mm apart: the farthest axle stands 50 + 30 + 10 mm
    /// out, far beyond the body.</summary>
    [Fact]
    public void A_vehicle_is_as_long_as_to_its_farthest_axle()
    {
        var vehicle = new Vehicle("hung", 100, 20, 0, [VehiclePart.Box("body", PartCarrier.Body, -50, 50, 24, 3, 40)])
        {
            LeadingPivotAhead = -30,
            EitherWayRound = false
        };
        var form = Assert.Single(SweptForm.WaysRound(vehicle, SweptShape.Of(vehicle, RunningPlay.None, null), RunningPlay.None, halts: false));
        Assert.InRange(form.HalfLength, 90, 110);
    }

    // Between cars on axles a third as far apart as its hinges, their hinges up to twice as far out as the axles.
    private static Vehicle Hung(RunCase run)
    {
        double hinges = 30 + (run.Vehicle.PivotCentres / 2), axles = hinges / 3, share = run.From - Math.Floor(run.From);
        return new("hung", hinges, axles, axles * 1.2, [VehiclePart.Box("body", PartCarrier.Body, (-hinges / 2) + 3, (hinges / 2) - 3, 24, 3, 40)])
        {
            LeadingPivotAhead = -axles * (0.6 + (0.4 * share)),
            TrailingPivotAhead = axles * 0.9,
            Hangs = true,
            SetName = "tram",
        };
    }

    [Theory]
    [InlineData("hung = true\n", "", ".joined_by", "neither this body nor the one ahead is hung")]
    [InlineData("name = \"rear car\"\njoined_by = \"hinge\"", "name = \"rear car\"\njoined_by = \"coupling\"", "body[1].joined_by", "a hinge joins it")]
    [InlineData("pivots = 24", "pivots = 50\nbogie_wheelbase = 20", "body[0].hung", "axles stand in their own frames")]
    [InlineData("name = \"rear car\"\n", "name = \"rear car\"\nhung = true\n", "hung", "hang")]
    public void What_cannot_hang_is_told_by_key(string from, string to, string key, string says)
    {
        string text = Tram.ReplaceLineEndings("\n");
        Assert.Contains(from, text, StringComparison.Ordinal);
        var fault = ProjectReader.Read(Project(text.Replace(from, to, StringComparison.Ordinal)), "test.toml").Findings[0];
        Assert.Equal("PF1014", fault.Code);
        Assert.EndsWith(key, fault.Key, StringComparison.Ordinal);
        Assert.Contains(says, fault.Message, StringComparison.Ordinal);
    }
}
