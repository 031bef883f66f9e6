using FsCheck.Xunit;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Islands;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Clearance;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Solids.Kernel;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>Islands between two random curves of either hand and direction, against a sweeper that shares nothing with the product's.</summary>
public class IslandProperties
{
    // The brute sweeper's step and spacing of stations, mm.
    private const double Step = 2, Apart = 5;

    // What carrying may lose of an edge where two stations are one, mm: a corner left out so near to another is off the chord by that distance times the turn.
    // Stations are told along a chart: an edge on the outside of its curve is longer than the chart by its stretch.
    private static double Carried(PlatformPlan plan, Point2[] edge) =>
        1e-9 + (BodyCarrier.OnePlace * Stretch(plan) * Enumerable.Range(1, edge.Length - 2).Max(i =>
        Math.Abs(Math.Atan2(Point2.Cross(edge[i] - edge[i - 1], edge[i + 1] - edge[i]), Point2.Dot(edge[i] - edge[i - 1], edge[i + 1] - edge[i])))));

    private static double Stretch(PlatformPlan plan) =>
        plan.Stations.Max(s => Math.Max(1, 1 - ((int)plan.Side * plan.Chart.At(s).Curvature * plan.Back.At(s))));

    private static readonly PlatformSite Site = new(new ModelScale(76.2), 8);

    private static readonly Vehicle Coach = new("coach", 150, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -105, 105, 33, 3, 50)]);

    private static readonly Vehicle Railcar = new("railcar", 120, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -85, 85, 34, 3, 50)]);

    /// <summary>An island of one seed: two tracks, a coach on one and a railcar on the other, a budget and a style for each face.</summary>
    private sealed record Case(Centreline Up, Centreline Down, Outcome<PlatformPlan> Plan, ClearanceBudget[] Budgets);

    private static Case Made(int seed)
    {
        var random = new Random(seed);
        double Of(double low, double high) => low + (random.NextDouble() * (high - low));
        Centreline Through(string name, Point2 middle, double heading, double curvature)
        {
            // Straight, curve and straight again, told from the place in the middle of the curve.
            double half = Of(200, 320), start = heading - (curvature * half), end = heading + (curvature * half);
            Point2 Arc(double along) => curvature == 0
                ? middle + (Point2.FromAngle(heading) * along)
                : middle + ((Point2.FromAngle(heading + (curvature * along)).Left - Point2.FromAngle(heading).Left) * (-1 / curvature));
            var (a, b) = (Arc(-half), Arc(half));
            return new(name, [new(a - (Point2.FromAngle(start) * 260), start, 260, 0, 0), new(a, start, 2 * half, curvature, curvature),
                new(b, end, 260, 0, 0)]);
        }

        double Curvature() => random.Next(5) == 0 ? 0 : (random.Next(2) == 0 ? 1 : -1) / Of(610, 2000);
        bool reversed = random.Next(2) == 0;
        var up = Through("up", new(0, 0), 0, Curvature());
        var down = Through("down", new(Of(-30, 30), Of(84, 130)), Of(-0.04, 0.04) + (reversed ? Math.PI : 0), Curvature());
        ClearanceBudget[] budgets = [ClearanceBudget.Of(Of(0.3, 1.2), 0.2), ClearanceBudget.Of(Of(0.3, 1.2), 0.1)];
        double middle = up.Locate(new(0, 0)).Chainage;
        var spec = new PlatformSpec("island", new FaceSpec("up", Side.Left, middle - Of(60, 130), middle + Of(60, 130), (EdgeStyle)random.Next(3)))
        {
            OtherFace = new FaceSpec("down", reversed ? Side.Left : Side.Right, double.NaN, double.NaN, (EdgeStyle)random.Next(3)) { Key = FaceSpec.OtherKey },
            StartRamp = random.Next(2) == 0 ? new(Length: 50, FootHeight: 5) : null,
        };
        if (spec.StartRamp is not null && random.Next(2) == 0)
        {
            // A ramp of the second face's own length: lines across lean over to its head.
            var own = new RampSpec(Length: Of(42, 58));
            spec = spec with { OtherFace = spec.OtherFace with { StartRamp = reversed ? null : own, EndRamp = reversed ? own : null } };
        }

        var specs = IslandTracks.Across(spec, up, down, Site);
        if (specs.Value is not { } both)
        {
            return new(up, down, Outcome.Fault<PlatformPlan>(specs.Findings), budgets);
        }

        TrackRun[] runs = [new(up, [Coach]), new(down, [Railcar])];
        PlatformRequest Request(PlatformSpec view, int face) => new(
            view, Site, runs[face].Ride, Sound(EnvelopeSweeper.Sweep(new(runs[face].Ride, view.Face.From, view.Face.To, [runs[face], runs[1 - face]]))),
            budgets[face]);
        return new(up, down, PlatformPlanner.PlanFaces([Request(both.First, 0), Request(both.Second, 1)]), budgets);
    }

    [SimulatedProperty(10)]
    public void An_island_is_clear_of_both_tracks_closed_and_tells_its_waist(int seed)
    {
        var made = Made(seed);
        if (made.Plan.Value is not { } plan)
        {
            // Too narrow for two copings, and said so with its place; nothing else may stand in the way.
            Assert.All(made.Plan.Findings.Where(f => f.Severity == Severity.Error), f => Assert.Contains(f.Code, (string[])["PF4120", "PF4147", "PF4148"]));
            return;
        }

        Point2[] near = Edge(plan, plan.CopingFront), far = Edge(plan, plan.Back);
        IsClear(plan, near, made.Up, Coach, made.Budgets[0]);
        IsClear(plan, far, made.Down, Railcar, made.Budgets[1]);

        // Each edge is the polyline that its face was proved with: its corners lie on the carried one.
        foreach (var (face, edge) in plan.Faces.Zip([near, far]))
        {
            Assert.All(face.Stations.Select((s, i) => face.ToLayout(s, face.CopingFront.Reach[i])).Skip(1).SkipLast(1),
                p => Assert.InRange(Distance(edge, p), 0, Carried(plan, edge)));
        }

        double narrowest = Dense(near).Min(p => Distance(far, p));
        Assert.Equal(narrowest, plan.Waist!.Width, 2e-3);
        Assert.Equal(plan.Waist.Width, (plan.Faces[0].ToLayout(plan.Waist.First, plan.Faces[0].CopingFront.At(plan.Waist.First))
            - plan.Faces[1].ToLayout(plan.Waist.Second, plan.Faces[1].CopingFront.At(plan.Waist.Second))).Length, 2e-2);
        var solid = SolidRaiser.Raise(PlatformBody.Blocks(plan).All);
        Assert.True(solid.ColumnVolume > 0);
        var report = MeshCheck.Inspect(solid.Mesh);
        Assert.True(report.IsSound, report.ToString());
        Shapes.Agree(solid, report);
    }

    /// <summary>Seeds that once failed.</summary>
    [Theory]
    [InlineData(23)]
    [InlineData(-23)]
    public void An_island_is_still_clear_of_both_tracks(int seed) => An_island_is_clear_of_both_tracks_closed_and_tells_its_waist(seed);

    [Property(MaxTest = 20)]
    public void What_is_carried_to_the_other_face_and_back_is_where_it_was(int seed)
    {
        var made = Made(seed);
        if (made.Plan.Value is not { } plan)
        {
            return;
        }

        var seen = FaceViews.Second(plan);
        Point2[] near = Edge(seen, seen.Back), far = Edge(seen, seen.CopingFront);

        // Seen from the second track the ends are square to that one, so that a corner of the first edge may lie beyond them.
        double from = seen.Stations[0], to = seen.Stations[^1];
        Assert.All(Edge(plan, plan.CopingFront).Where(p => made.Down.Locate(p).Chainage is var s && s > from && s < to),
            p => Assert.InRange(Distance(near, p), 0, Carried(seen, near)));
        Assert.All(Edge(plan, plan.Back)[1..^1], p => Assert.InRange(Distance(far, p), 0, Carried(seen, far)));
    }

    /// <summary>Ramps and level decks lie where they lay: the walking surface at a place is as high seen from one face as from the other.</summary>
    [Property(MaxTest = 20)]
    public void The_walking_surface_is_the_same_seen_from_either_face(int seed)
    {
        if (Made(seed).Plan.Value is not { } plan)
        {
            return;
        }

        var seen = FaceViews.Second(plan);
        Assert.True(seen.Surface.Breaks.Zip(seen.Surface.Breaks.Skip(1)).All(b => b.First < b.Second));
        Assert.Equal(plan.Surface.Planes.Length, seen.Surface.Planes.Length);
        for (int i = 0; i < plan.Surface.Planes.Length; i++)
        {
            // Each slope begins and ends where the line across through the same place of the spine meets the other edge.
            var (from, to) = (FaceViews.Chainage(plan, plan.Surface.Breaks[i]), FaceViews.Chainage(plan, plan.Surface.Breaks[i + 1]));
            double middle = (from + to) / 2;
            int there = Enumerable.Range(0, seen.Surface.Planes.Length).Single(k => seen.Surface.Breaks[k] < middle && middle < seen.Surface.Breaks[k + 1]);
            Assert.Equal(plan.Surface.Planes[i], seen.Surface.Planes[there]);
        }
    }

    /// <summary>
    /// Heights and places are the same whether they are told along the lines across or square to the first track, and every place of the deck is found again
    /// from the layout without a hint.
    /// </summary>
    [Property(MaxTest = 15)]
    public void Places_are_the_same_told_square_to_the_track_and_along_the_lines_across(int seed)
    {
        if (Made(seed).Plan.Value is not { } plan)
        {
            return;
        }

        double from = plan.Stations[0], to = plan.Stations[^1];
        foreach (double share in (double[])[0.02, 0.3, 0.71, 0.98])
        {
            double s = from + (share * (to - from)), t = plan.CopingFront.At(s) + (share * plan.Body.WidthAt(s));
            var place = plan.ToLayout(s, t);
            var found = plan.Spine.Locate(place);
            Assert.Equal(s, found.Chainage, 1e-4);
            Assert.Equal(t, found.Reach, 1e-4);
            var on = plan.OnTrack(new(s, t));
            Assert.Equal(plan.TopAt(s, t), plan.SquareTopAt(on.Chainage, on.Reach), 1e-4);
            Assert.Equal(0, (plan.First.ToLayout(on.Chainage, on.Reach) - place).Length, 1e-6);
        }
    }

    private static void IsClear(PlatformPlan plan, Point2[] edge, Centreline track, Vehicle vehicle, ClearanceBudget budget)
    {
        double[] stations = [.. Enumerable.Range(0, (int)(track.Length / Apart)).Select(i => i * Apart)];
        var touched = BruteSweep.Touched(track, track, vehicle, stations, Step);
        Assert.NotEmpty(touched);
        double least = touched.Min(p => Distance(edge, p));
        Assert.True(least >= budget.Margin - Carried(plan, edge), $"{track.Name}: {least} for {budget.Margin}");
    }

    private static Point2[] Edge(PlatformPlan plan, PlanLine line) => [.. plan.Stations.Select((s, i) => plan.ToLayout(s, line.Reach[i]))];

    private static IEnumerable<Point2> Dense(Point2[] line) => line.Zip(line.Skip(1))
        .SelectMany(p => Enumerable.Range(0, 11).Select(k => p.First + ((p.Second - p.First) * (k / 10.0))));

    private static double Distance(Point2[] line, Point2 p) => line.Zip(line.Skip(1)).Min(c =>
    {
        var along = c.Second - c.First;
        return (c.First + (along * Math.Clamp(Point2.Dot(p - c.First, along) / Point2.Dot(along, along), 0, 1)) - p).Length;
    });

    private static T Sound<T>(Outcome<T> outcome)
        where T : class
    {
        Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings.Select(f => f.Message)));
        return outcome.Value!;
    }
}
