using FsCheck.Xunit;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Projects;
using PlatformForge.Tests.Cli;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>Leading and trailing trucks with a pose of their own.</summary>
public class TruckTests
{
    private const double Radius = 500, Coupled = 60, Axle = 58, Pivot = 34, Half = 9, Width = 26;

    private const string Engine = """
        name = "tank engine"
        length = 150
        pivots = 60
        width = 34

        [leading_truck]
        at = 58
        pivot = 34

        [[leading_truck.part]]
        name = "truck frames"
        from = -9
        to = 9
        width = 26
        low = 1
        high = 8

        [trailing_truck]
        at = -58
        pivot = -34

        [[trailing_truck.part]]
        name = "truck frames"
        from = -9
        to = 9
        width = 26
        low = 1
        high = 8

        """;

    /// <summary>
    /// On a circle the coupled axles' middle lies √(R² − a²/4) from its centre and the pivot a stated distance ahead of it; the axle is where circles of radius
    /// R about the centre and of the arm about the pivot meet; the truck lies along the arm.
    /// </summary>
    [Fact]
    public void A_truck_on_an_arm_reaches_on_a_circle_as_far_as_geometry_says()
    {
        double middle = Math.Sqrt((Radius * Radius) - (Coupled * Coupled / 4)), arm = Axle - Pivot;
        double pivotAway = Math.Sqrt((Pivot * Pivot) + (middle * middle));
        double apart = Math.Acos(((Radius * Radius) + (pivotAway * pivotAway) - (arm * arm)) / (2 * Radius * pivotAway));

        // Centre at the origin, the engine's middle straight above it, running to the right; the curve turns right.
        var pivot = new Point2(Pivot, middle);
        double angle = Math.Atan2(Pivot, middle) + apart;
        var axle = new Point2(Radius * Math.Sin(angle), Radius * Math.Cos(angle));
        var along = (axle - pivot) * (1 / (axle - pivot).Length);
        Point2 Corner(double x, double y) => axle + (along * x) + (along.Left * y);
        double outer = Math.Max(Corner(Half, Width / 2).Length, Corner(-Half, Width / 2).Length);
        double foot = Math.Clamp(-Point2.Dot(axle, along), -Half, Half), inner = Corner(foot, -Width / 2).Length;

        var vehicles = Read(Engine);
        Assert.Equal(["tank engine", "tank engine, leading truck", "tank engine, trailing truck"], vehicles.Select(v => v.Name));
        var ring = DemoStock.Lay("ring", new CurveSpec(Radius, Hand.Right, Length: 1500));
        var envelope = EnvelopeSweeper.Sweep(new(ring, 700, 800, [new(ring, vehicles)])).Value!;
        foreach (var part in envelope.Parts.Where(p => p.Vehicle.TruckOf is not null))
        {
            Assert.InRange(part.Left[40], outer - Radius, outer - Radius + envelope.ErrorBound);
            Assert.InRange(part.Right[40], Radius - inner, Radius - inner + envelope.ErrorBound);
        }

        // Carried by the body it would reach farther out: the engine's end is thrown by a good deal more than the truck.
        Assert.True(outer < new Point2(Axle + Half, middle + (Width / 2)).Length - 2);
    }

    [Fact]
    public void A_truck_with_two_axles_finds_its_own_way_as_a_four_wheeled_vehicle_does()
    {
        const double Wheelbase = 26;
        var vehicles = Read(Engine.Replace("pivot = 34", "wheelbase = 26", StringComparison.Ordinal));
        var ring = DemoStock.Lay("ring", new CurveSpec(Radius, Hand.Right, Length: 1500));
        var envelope = EnvelopeSweeper.Sweep(new(ring, 700, 800, [new(ring, vehicles)])).Value!;
        double middle = Math.Sqrt((Radius * Radius) - (Wheelbase * Wheelbase / 4)), outer = new Point2(Half, middle + (Width / 2)).Length;
        var truck = envelope.Parts.Single(p => p.Vehicle.Name == "tank engine, leading truck");
        Assert.InRange(truck.Left[40], outer - Radius, outer - Radius + envelope.ErrorBound);
        Assert.InRange(truck.Right[40], Radius - middle + (Width / 2), Radius - middle + (Width / 2) + envelope.ErrorBound);
    }

    [Property(MaxTest = 12, Arbitrary = [typeof(RunCases)])]
    public void The_reach_of_trucks_is_never_below_the_truth_nor_above_it_by_more_than_the_bound(RunCase run) =>
        SweepProperties.AgainstBrute(run with { Vehicle = Truck(run) }, run.Smooth());

    [Property(MaxTest = 8, Arbitrary = [typeof(RunCases)])]
    public void The_same_holds_for_trucks_on_kinked_track(RunCase run) => SweepProperties.AgainstBrute(run with { Vehicle = Truck(run) }, run.Kinked());

    [Theory]
    [InlineData("pivots = 60", "pivots = 100\nbogie_wheelbase = 30", "leading_truck.at", "vehicle with bogies")]
    [InlineData("pivot = 34", "pivot = 34\nwheelbase = 20", "leading_truck.pivot", "finds its own way")]
    [InlineData("pivot = 34", "", "leading_truck.pivot", "no pivot stated")]
    [InlineData("pivot = -34", "pivot = -70", "trailing_truck.pivot", "has to lie behind it")]
    [InlineData("low = 1\nhigh = 8\n\n[trailing_truck]", "low = 1\nhigh = 8\ncarrier = \"leading bogie\"\n\n[trailing_truck]", "leading_truck.part",
        "carrier of its own")]
    public void A_truck_that_cannot_be_is_told_by_key(string from, string to, string key, string says)
    {
        using var folder = new TempFolder();
        string text = Engine.Replace(from, to, StringComparison.Ordinal);
        Assert.NotEqual(Engine, text);
        var fault = VehicleReader.Read(folder.Write("engine.toml", text), new ModelScale(76.2)).Findings[0];
        Assert.Equal(("PF1014", key), (fault.Code, fault.Key));
        Assert.True(fault.Line > 1);
        Assert.Contains(says, fault.Message, StringComparison.Ordinal);
    }

    private static IReadOnlyList<Vehicle> Read(string text)
    {
        using var folder = new TempFolder();
        var read = VehicleReader.Read(folder.Write("engine.toml", text), new ModelScale(76.2));
        Assert.True(read.Value is not null, string.Join("\n", read.Findings.Select(f => f.Message)));
        return read.Value;
    }

    // A truck of an engine whose coupled wheels stand as far apart as the case's vehicle has pivots, less a third.
    private static Vehicle Truck(RunCase run)
    {
        double coupled = run.Vehicle.PivotCentres / 1.5, share = run.From - Math.Floor(run.From), pivot = coupled * (0.25 + (0.35 * share)),
            arm = coupled * (0.6 - (0.25 * share)), axle = arm / 2;
        bool leading = (int)run.From % 2 == 0;
        VehiclePart[] parts = [VehiclePart.Box("frames", PartCarrier.Body, (leading ? axle : -axle) - 9, (leading ? axle : -axle) + 9, 22, 1, 8)];
        return leading
            ? new("leading", arm, 0, coupled, parts) { TrailingPivotAhead = pivot, TruckOf = "engine", SetName = "engine" }
            : new("trailing", arm, coupled, 0, parts) { LeadingPivotAhead = -pivot, TruckOf = "engine", SetName = "engine" };
    }
}
