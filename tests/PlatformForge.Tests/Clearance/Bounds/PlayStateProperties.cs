using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Clearance.Bounds;

/// <summary>
/// The few ways off the middle in which a vehicle is swept stand for all: on a circle, where geometry tells in closed form where a body stands whose
/// guided points are off by anything, no corner
/// reaches farther in any way than in one that is swept and looks at that corner.
/// </summary>
[Properties(Arbitrary = [typeof(LooseCases)], QuietOnSuccess = true)]
public class PlayStateProperties
{
    private const double Rounding = 1e-9;

    // By how much, as a share of a guided point's play, another way has to reach farther for one to be passed over.
    private const double Clearly = 0.1;

    [Property(MaxTest = 40)]
    public void Nothing_reaches_farther_between_the_states_than_is_added_for_it(LooseCase own)
    {
        var (form, bounds) = own.Bounds();
        var states = bounds.States.Select(s => own.Reaches(form, s.Leading, s.Trailing)).ToArray();
        double[] most = [.. Enumerable.Range(0, states[0].Length).Select(at => states.Max(s => s[at]))];
        for (int i = 0; i <= 10; i++)
        {
            for (int k = 0; k <= 10; k++)
            {
                double[] between = own.Reaches(form, (i / 5.0) - 1, (k / 5.0) - 1);
                double farther = between.Zip(most, (reach, known) => reach - known).Max();
                Assert.True(farther <= bounds.Between + Rounding, $"{i} {k}: {farther} farther, {bounds.Between} added");
            }
        }
    }

    /// <summary>More states are taken until what is between them is a fifth of the tolerance, up to sixteen.</summary>
    [Property(MaxTest = 40)]
    public void So_many_states_are_taken_as_the_tolerance_asks_for(LooseCase own)
    {
        var (form, bounds) = own.Bounds();
        Assert.True(form.Points.Leading.Most > 0 && form.Points.Trailing.Most > 0);
        int steps = bounds.States.Count / 4; // of each side of a square
        Assert.True(bounds.Between <= 0.2 * BoundCase.Tolerance || steps == 4);
        Assert.True(steps == 1 || bounds.Between * steps * steps / ((steps - 1) * (steps - 1)) > 0.2 * BoundCase.Tolerance);
        Assert.Equal(bounds.States.Count, bounds.States.Distinct().Count());
        Assert.All(bounds.States, s => Assert.Equal(1, Math.Max(Math.Abs(s.Leading), Math.Abs(s.Trailing))));
        double[] places = [.. bounds.States.SelectMany(s => new[] { s.Leading, s.Trailing }).Select(share => (share + 1) * steps / 2)];
        Assert.All(places, place => Assert.Equal(Math.Round(place), place, Rounding));
    }

    /// <summary>
    /// To first order a place is pressed outward by what the foremost point is off times ½ + lever and the rear one times ½ − lever. The states that
    /// press it farthest for any lever in a range are never
    /// passed over; one that is not passed over is, for some lever in the range, within a fifth of a point's play of the farthest.
    /// </summary>
    [Property(MaxTest = 200)]
    public void A_state_that_can_press_a_place_farthest_is_looked_at_and_hardly_any_other(LooseCase own)
    {
        var points = own.Points;
        foreach (var state in PlayState.Of(points, own.Steps))
        {
            foreach (int side in new[] { 1, -1 })
            {
                // The loss is what the best share would give more: |gain| less what this one gives.
                double Loss(double share, double gain) => Math.Abs(gain) - (share * side * gain);
                double[] levers = [.. Enumerable.Range(0, 41).Select(i => own.Lever + (own.About * ((i / 20.0) - 1)))];
                bool looked = state.CanBeFarthest(side, own.Lever, own.About, points);
                double lead = points.Leading.Most == 0 ? 0 : 1, trail = points.Trailing.Most == 0 ? 0 : 1;
                bool farthest = levers.Any(l => lead * Loss(state.Leading, 0.5 + l) <= Rounding && trail * Loss(state.Trailing, 0.5 - l) <= Rounding);
                double little = (2 * Clearly) + (own.About / 10); // levers are tried at twentieths of the range
                bool near = levers.Any(l => lead * Loss(state.Leading, 0.5 + l) <= little) && levers.Any(l => trail * Loss(state.Trailing, 0.5 - l) <= little);
                Assert.True(looked || !farthest, $"passed over: {state} {side}");
                Assert.True(near || !looked, $"looked at for nothing: {state} {side}");
            }
        }
    }

    /// <summary>A corner may be farthest in any direction within 45° of square to the vehicle, a place of an edge in the edge's own.</summary>
    [Property(MaxTest = 40)]
    public void Corners_and_edges_that_are_pressed_farthest_in_a_state_are_kept_in_it(LooseCase own)
    {
        var (form, _) = own.Bounds();
        var states = PlayState.Of(own.Points, own.Steps);
        var kept = states.ToDictionary(s => s, s => FormCorner.Deciding(form.Corners, s, own.Points));
        foreach (var corner in form.Corners)
        {
            var next = form.Corners[corner.Next];
            var from = new Point2(corner.X, corner.Y);
            foreach (int side in new[] { 1, -1 }.Where(s => corner.CornerSide == s || corner.CornerSide == 2))
            {
                foreach (double aslant in new[] { -0.95, -0.4, 0, 0.4, 0.95 })
                {
                    foreach (var s in Farthest(from, new(aslant, side)))
                    {
                        Assert.Contains(kept[s], c => Same(c, corner) && (c.CornerSide == side || c.CornerSide == 2));
                    }
                }
            }

            var edge = new Point2(next.X - corner.X, next.Y - corner.Y);
            foreach (double share in corner.EdgeSide == 0 ? [] : new[] { 0, 0.35, 0.7, 1 })
            {
                foreach (var s in Farthest(from + (edge * share), new(edge.Y, -edge.X)))
                {
                    var drawn = Assert.Single(kept[s], c => Same(c, corner) && c.EdgeSide == corner.EdgeSide);
                    Assert.True(Same(kept[s][drawn.Next], next));
                }
            }
        }

        static bool Same(FormCorner a, FormCorner b) => (a.X, a.Y, a.Outline) == (b.X, b.Y, b.Outline);

        IEnumerable<PlayState> Farthest(Point2 place, Point2 way)
        {
            double Pressed(PlayState s)
            {
                double lead = s.Leading * own.Points.Leading.Most, trail = s.Trailing * own.Points.Trailing.Most, yaw = (lead - trail) / own.Points.Apart;
                return (way.X * -place.Y * yaw) + (way.Y * (((lead + trail) / 2) + (place.X * yaw)));
            }

            double most = states.Max(Pressed);
            return states.Where(s => Pressed(s) >= most - Rounding);
        }
    }

    /// <summary>An edge whose ends lie a billionth of its length apart along the vehicle runs square to it, whatever its length.</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(20)]
    [InlineData(300)]
    public void What_runs_square_to_the_vehicle_is_told_by_its_angle(double length)
    {
        int[] Sides(double sine)
        {
            var corners = new List<FormCorner>();
            FormCorner.AddRing(corners, [new(0, 0), new(10, 0), new(10 + (sine * length), length), new(0, length)], PartCarrier.Body, 0);
            return [.. corners.Select(c => c.EdgeSide)];
        }

        Assert.Equal([-1, 0, 1, 0], Sides(0.4e-9));
        Assert.Equal([-1, 0, 1, 0], Sides(-0.4e-9));
        Assert.Equal([-1, -1, 1, 0], Sides(3e-9));
        Assert.Equal([-1, 1, 1, 0], Sides(-3e-9));
    }
}

/// <summary>A body on two axles or two bogies on a circle to the left, its guided points off the middle.</summary>
public sealed record LooseCase(
    double Radius, double Pivots, double Wheelbase, double Wheelset, double Pivot, double Overhang, double Width, int Steps, double Lever, double About)
{
    private double Nose => (Pivots * Overhang) + 3;

    private Vehicle Vehicle => new("loose", Pivots, Wheelbase, Wheelbase, [
        VehiclePart.Box("body", PartCarrier.Body, -Pivots * Overhang, Pivots * Overhang * 0.9, Width, 4, 50),
        new VehiclePart("nose", PartCarrier.Body, [new(Pivots * 0.3, -Width * 0.5), new(Nose, -4), new(Nose, 2), new(Pivots * 0.2, Width * 0.55)], 3, 10)])
    { EitherWayRound = false };

    internal GuidedPoints Points => GuidedPoints.Of(Vehicle, PartCarrier.Body, new(Wheelset, Pivot));

    internal (SweptForm Form, SweepBounds Bounds) Bounds()
    {
        var play = new RunningPlay(Wheelset, Pivot);
        var form = SweptForm.WaysRound(Vehicle, SweptShape.Of(Vehicle, play, null), play, halts: false).First(f => !f.IsBogie);
        var circle = DemoStock.Lay("circle", new CurveSpec(Radius, Hand.Left, Angle: 6));
        var span = new RunSpan(new(circle, [Vehicle]), circle, 3 * Radius, (3 * Radius) + 50, SweepBounds.Margin(form));
        return (form, new(span, form, BoundCase.Tolerance));
    }

    /// <summary>
    /// Reach of every corner to the left, then to the right, with the guided points off by shares of the most. Axles off by q are R − q from the
    /// centre; a pivot midway between axles b apart is
    /// √((R − q)² − b²/4), less the pivot's own play; two pivots a apart at such distances from the centre fix the body.
    /// </summary>
    internal double[] Reaches(SweptForm form, double leading, double trailing)
    {
        double FromCentre(double share)
        {
            double axle = Radius - (share * Wheelset);
            return Math.Sqrt((axle * axle) - (Wheelbase * Wheelbase / 4)) - (Wheelbase > 0 ? share * Pivot : 0);
        }

        double lead = FromCentre(leading), trail = FromCentre(trailing), between = ((lead * lead) + (trail * trail) - (Pivots * Pivots)) / (2 * lead * trail);
        Point2 rear = new(0, -trail), front = new(lead * Math.Sqrt(1 - (between * between)), -lead * between), along = (front - rear) * (1 / Pivots);
        var distances = form.Corners.Select(c => (((rear + front) * 0.5) + (along * c.X) + (new Point2(-along.Y, along.X) * c.Y)).Length).ToArray();
        return [.. distances.Select(d => Radius - d), .. distances.Select(d => d - Radius)];
    }
}

/// <summary>Generators.</summary>
public static class LooseCases
{
    public static Arbitrary<LooseCase> LooseCase()
    {
        var gen =
            from radius in RunCases.Number(280, 1200)
            from pivots in RunCases.Number(30, 190)
            from bogies in Gen.Choose(0, 1)
            from wheelset in RunCases.Number(0.05, 0.6)
            from pivot in RunCases.Number(0, 0.4)
            from overhang in RunCases.Number(0.55, 1)
            from width in RunCases.Number(18, 36)
            from steps in Gen.Choose(1, 4)
            from lever in RunCases.Number(-1.3, 1.3)
            from about in RunCases.Number(0, 0.4)
            select new LooseCase(radius, pivots, bogies * pivots / 5, wheelset, pivot, overhang, width, steps, lever, about);
        return gen.ToArbitrary();
    }
}
