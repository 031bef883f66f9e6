using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Verification;
using PlatformForge.Verification.Distances;
using PlatformForge.Verification.Poses;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>The quick distances against slow and plain ones.</summary>
public class DistanceProperties
{
    private const double Rounding = 1e-9;

    [Property(MaxTest = 100)]
    public void Nearest_in_the_tree_is_nearest_of_all(int seed)
    {
        var random = new Random(seed);
        var outline = RandomOutline(random);
        var segments = Enumerable.Range(0, 100).Select(_ => RandomSegment(random)).ToArray();
        var pose = new CarrierPose(new(Of(random, -30, 30), Of(random, -30, 30)), Point2.FromAngle(Of(random, -4, 4)));
        double bound = double.PositiveInfinity;
        Point3 nearest = default;
        int section = new SegmentTree([.. segments]).Nearest(outline, pose, ref bound, ref nearest);
        double slow = segments.Min(s => outline.Least(Local(pose, s.A), Local(pose, s.B), out _));
        Assert.InRange(bound, slow, slow + 2e-7);
        Assert.Equal(bound, outline.At(Local(pose, nearest)), Rounding);
        Assert.True(section >= 0);
    }

    /// <summary>Of a box 20 by 10 what runs through its middle is 5 deep, what cuts off a corner by 4 and 4 is as deep as the square cut into it, what passes
    /// is apart.</summary>
    [Fact]
    public void What_runs_through_an_outline_from_outside_to_outside_is_as_deep_as_it_runs()
    {
        var box = new OutlineDistance(VehiclePart.Box("body", PartCarrier.Body, -10, 10, 10, 0, 10).Outline);
        Assert.Equal(-5, box.Least(new(-30, 0), new(30, 0), out _), 1e-6);
        Assert.Equal(-2, box.Least(new(16, -5), new(0, 11), out _), 1e-6);
        Assert.Equal(Math.Sqrt(2), box.Least(new(26, -9), new(0, 17), out double place), 1e-9);
        Assert.Equal(0, (new Point2(26, -9) + (new Point2(-26, 26) * place) - new Point2(11, 6)).Length, 1e-9);
    }

    /// <summary>Segments that crowd towards one place: half of what is left is one segment, again and again.</summary>
    [Fact]
    public void Segments_that_crowd_are_searched_as_others_are()
    {
        var outline = new OutlineDistance(VehiclePart.Box("body", PartCarrier.Body, -10, 10, 10, 0, 10).Outline);
        PlanSegment[] segments = [.. Enumerable.Range(0, 60).Select(i => Math.Pow(0.7, i) * 1000).Select((x, i) =>
            new PlanSegment(new(x, 9 + (i % 3), 0), new(x * 1.01, 9 + (i % 3), 0), i))];
        foreach (double x in new[] { 900.0, 300, 60, 20, 7 })
        {
            double bound = double.PositiveInfinity;
            Point3 nearest = default;
            new SegmentTree([.. segments]).Nearest(outline, new(new(x, 0), new(1, 0)), ref bound, ref nearest);
            double slow = segments.Min(s => outline.Least(new(s.A.X - x, s.A.Y), new(s.B.X - x, s.B.Y), out _));
            Assert.InRange(bound, slow, slow + 2e-7);
        }
    }

    [Property(MaxTest = 100)]
    public void Least_along_a_segment_is_the_least_of_many_points(int seed)
    {
        var random = new Random(seed);
        var outline = RandomOutline(random);
        var (a3, b3, _) = RandomSegment(random);
        Point2 a = new(a3.X, a3.Y), b = new(b3.X, b3.Y);
        const int Points = 1000;
        double least = Enumerable.Range(0, Points + 1).Min(i => outline.At(a + ((b - a) * ((double)i / Points))));
        double quick = outline.Least(a, b, out double place);
        Assert.InRange(quick, least - ((b - a).Length / Points), least + Rounding);
        Assert.Equal(quick, outline.At(a + ((b - a) * place)), Rounding);
    }

    [Property(MaxTest = 100)]
    public void What_is_passed_over_is_as_far_off_as_that(int seed)
    {
        var random = new Random(seed);
        var outline = RandomOutline(random);
        var pose = new CarrierPose(new(Of(random, -30, 30), Of(random, -30, 30)), Point2.FromAngle(Of(random, -4, 4)));
        var sides = new HullSide[outline.Sides];
        outline.Stand(pose, sides);
        var centre = new Point2(Of(random, -60, 60), Of(random, -60, 60));
        var along = Point2.FromAngle(Of(random, -4, 4));
        double length = Of(random, 0, 30), width = Of(random, 0, 10);

        // The greatest distance that is told surely; beyond every distance below it, and none above.
        double low = -200, high = 200;
        while (high - low > 1e-9)
        {
            double middle = (low + high) / 2;
            (low, high) = HullSide.AreBeyond(sides, centre, along, length, width, middle) ? (middle, high) : (low, middle);
        }

        for (int i = 0; i < 200; i++)
        {
            Point2 p = centre + (along * Of(random, -length, length)) + (along.Left * Of(random, -width, width)),
                q = centre + (along * Of(random, -length, length));
            double distance = outline.At(Local(pose, new(p.X, p.Y, 0)));
            Assert.True(low <= distance + 1e-8, $"{low} {distance}");
            Assert.False(HullSide.AreBeyond(sides, new Point3(p.X, p.Y, 0), new(q.X, q.Y, 3), distance + 1e-8));
        }

        // Beside a long side it is told as it is.
        Assert.False(HullSide.AreBeyond(sides, centre, along, length, width, outline.At(Local(pose, new(centre.X, centre.Y, 0))) + 1e-8));
        var (n, first) = (new Point2(sides[0].X, sides[0].Y), new Point2(sides[0].X, sides[0].Y) * sides[0].Reach);
        Assert.True(HullSide.AreBeyond(sides, first + (n * 2), n.Left, 1, 0.5, 1.5 - 1e-8));
    }

    [Property(MaxTest = 100)]
    public void A_slab_keeps_just_what_of_a_triangle_lies_in_it(int seed)
    {
        var random = new Random(seed);
        Point3 P() => new(Of(random, -20, 20), Of(random, -20, 20), Of(random, -20, 20));
        Point3 a = P(), b = P(), c = P();
        var slab = new Slab(Of(random, -15, 0), Of(random, 0, 15));
        Span<Point3> corners = stackalloc Point3[Slab.MostCorners];
        int count = slab.Cut(a, b, c, corners);
        double kept = 0;
        for (int i = 2; i < count; i++)
        {
            kept += Point3.Cross(corners[i - 1] - corners[0], corners[i] - corners[0]).Length / 2;
        }

        // Sweeping the level, the width of the triangle at a height is linear between its corners: the area in the slab by strips.
        const int Strips = 2000;
        double area = 0, lowest = Math.Max(slab.Low, Math.Min(a.Z, Math.Min(b.Z, c.Z))), highest = Math.Min(slab.High, Math.Max(a.Z, Math.Max(b.Z, c.Z)));
        double whole = Point3.Cross(b - a, c - a).Length / 2;
        var z = new[] { a.Z, b.Z, c.Z }.Order().ToArray();
        for (int i = 0; i < Strips && highest > lowest; i++)
        {
            double h = lowest + ((i + 0.5) * (highest - lowest) / Strips);
            double share = h < z[1] ? (h - z[0]) / (z[1] - z[0]) : (z[2] - h) / (z[2] - z[1]);
            area += 2 * whole / (z[2] - z[0]) * share * (highest - lowest) / Strips;
        }

        Assert.Equal(area, kept, 1e-3 * (1 + whole));
    }

    // On straight track a vehicle sweeps a strip, so the answer is the least distance from the middle line, less half the width.
    [Property(MaxTest = 20)]
    public void Beside_straight_track_the_verifier_agrees_with_the_strip_swept(int seed)
    {
        var random = new Random(seed);
        var track = Pieces.Straight(1500);
        double width = Of(random, 20, 40), low = Of(random, 0, 10), high = low + Of(random, 1, 20);
        var vehicle = new Vehicle("van", 60, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -50, 50, width, low, high)]);
        var corners = Enumerable.Range(0, 4).Select(_ => new Point3(Of(random, 600, 900), Of(random, 10, 60), Of(random, 0, 45))).ToArray();
        var mesh = new Mesh(corners, [0, 1, 2, 0, 2, 3, 0, 3, 1, 1, 3, 2], []);
        var verdict = SectionsVerifier.Verify([Pieces.Section(mesh)], Pieces.Facts(track, vehicle));

        double least = double.PositiveInfinity;
        foreach (var (i, j) in new[] { (0, 1), (0, 2), (0, 3), (1, 2), (1, 3), (2, 3) })
        {
            var (p, q) = corners[i].Z < corners[j].Z ? (corners[i], corners[j]) : (corners[j], corners[i]);
            double from = Math.Max(p.Z, low + Pieces.RailTop), to = Math.Min(q.Z, Slab.Under(low, high + Pieces.RailTop).High);
            double Offset(double z) => p.Y + ((q.Y - p.Y) * (z - p.Z) / (q.Z - p.Z));
            least = from <= to ? Math.Min(least, Math.Min(Offset(from), Offset(to))) : least;
        }

        Assert.Equal(double.IsFinite(least), verdict.Closest is not null);
        Assert.Equal(double.IsFinite(least) ? least - (width / 2) : 0, verdict.Closest?.Clearance ?? 0, 1e-5);
    }

    [Property(MaxTest = 60)]
    public void A_standing_vehicle_has_its_axles_on_the_track_and_its_bogies_apart_as_drawn(int seed)
    {
        var random = new Random(seed);
        double first = 1 / Of(random, 300, 2000), second = -1 / Of(random, 300, 2000);
        var elements = new List<CentrelineElement> { new(default, 0.3, 300, 0, first) };
        elements.Add(Next(elements[^1], 200, first, first));
        elements.Add(Next(elements[^1], 400, first, second));
        elements.Add(Next(elements[^1], 200, second, second));
        var track = new Centreline("up", elements);
        double wheelbase = Of(random, 0, 1) < 0.3 ? 0 : Of(random, 10, 45), pivots = Of(random, 60, 200);
        var vehicle = new Vehicle("coach", pivots, wheelbase, wheelbase, []);
        double front = Of(random, pivots + 60, track.Length);
        var pose = new StandingVehicle(track, vehicle).At(front)!.Value;

        Assert.Equal(pivots, (pose.LeadingBogie.Origin - pose.TrailingBogie.Origin).Length, 1e-8);
        Assert.Equal(1, pose.Body.Forward.Length, 1e-8);
        foreach (var bogie in new[] { pose.LeadingBogie, pose.TrailingBogie })
        {
            foreach (double x in new[] { wheelbase / 2, -wheelbase / 2 })
            {
                Assert.Equal(0, track.Locate(bogie.Apply(new(x, 0))).Offset, 1e-6);
            }
        }

        Assert.Equal(front, track.Locate(pose.LeadingBogie.Apply(new(wheelbase / 2, 0))).Chainage, 1e-6);
    }

    // Two ways to the same pose that share nothing but the track, on track with transitions, a reverse curve and a kink.
    [Property(MaxTest = 60)]
    public void A_vehicle_stands_where_the_clearance_room_stands_it(int seed)
    {
        var random = new Random(seed);
        double first = 1 / Of(random, 300, 2000), second = -1 / Of(random, 300, 2000);
        var elements = new List<CentrelineElement> { new(default, 0.3, 300, 0, first) };
        elements.Add(Next(elements[^1], 300, first, first));
        elements.Add(Next(elements[^1], 300, first, second));
        var last = Next(elements[^1], 300, second, second);
        elements.Add(new(last.Start, last.Heading + Of(random, -0.01, 0.01), last.Length, second, second));
        var track = new Centreline("up", elements);
        double pivots = Of(random, 60, 200);
        var vehicle = new Vehicle("engine", pivots, Of(random, 10, 45), random.Next(2) == 0 ? 0 : Of(random, 10, 45), []);
        vehicle = random.Next(3) > 0 ? vehicle : Truck(random);
        double chainage = Of(random, pivots + 160, track.Length - 130);

        Assert.True(PoseSolver.TryPlace(track, vehicle, chainage, out var theirs));
        var ours = new StandingVehicle(track, vehicle).At(chainage + (vehicle.LeadingWheelbase / 2))!.Value;
        foreach (var carrier in new[] { PartCarrier.Body, PartCarrier.LeadingBogie, PartCarrier.TrailingBogie })
        {
            var (one, other) = (ours.Of(carrier), theirs.Of(carrier));
            Assert.Equal(0, (one.Origin - other.Origin).Length, 1e-7);
            Assert.Equal(0, (one.Forward - other.Forward).Length, 1e-7);
        }
    }

    // A truck on an arm, ahead of its engine's coupled wheels or behind them.
    private static Vehicle Truck(Random random)
    {
        double coupled = Of(random, 30, 90), pivot = Of(random, 0.4, 1.2) * coupled / 2, arm = Of(random, 0.3, 0.8) * coupled;
        return random.Next(2) == 0
            ? new("leading", arm, 0, coupled, []) { TrailingPivotAhead = pivot, TruckOf = "engine" }
            : new("trailing", arm, coupled, 0, []) { LeadingPivotAhead = -pivot, TruckOf = "engine" };
    }

    private static CentrelineElement Next(CentrelineElement last, double length, double from, double to) =>
        new(last.At(last.Length).Position, last.HeadingAt(last.Length), length, from, to);

    private static double Of(Random random, double low, double high) => low + (random.NextDouble() * (high - low));

    private static Point2 Local(CarrierPose pose, Point3 p)
    {
        var off = new Point2(p.X, p.Y) - pose.Origin;
        return new(Point2.Dot(pose.Forward, off), Point2.Cross(pose.Forward, off));
    }

    // A box, or one that bulges beyond two stations as a vehicle's play makes it.
    private static OutlineDistance RandomOutline(Random random)
    {
        var part = VehiclePart.Box("body", PartCarrier.Body, -Of(random, 20, 60), Of(random, 20, 60), Of(random, 10, 40), 0, 10);
        return new(random.Next(2) == 0 ? part.Outline : new Leaning(part, new(0, Roll: 0.1)).Between(part.ZLow, part.ZHigh)!);
    }

    private static PlanSegment RandomSegment(Random random)
    {
        var a = new Point3(Of(random, -90, 90), Of(random, -90, 90), 0);
        double reach = random.Next(2) == 0 ? 3 : 60;
        return new(a, a + new Point3(Of(random, -reach, reach), Of(random, -reach, reach), 0), random.Next(3));
    }
}
