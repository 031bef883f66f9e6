using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PlatformForge.Geometry;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Track;

/// <summary>The core of the track room against closed forms and a quadrature of its own.</summary>
[Properties(Arbitrary = [typeof(Elements)], QuietOnSuccess = true)]
public class CentrelineTests
{
    public sealed record ElementCase(double X, double Y, double Heading, double Length, double StartCurvature, double EndCurvature)
    {
        public CentrelineElement Element => new(new(X, Y), Heading, Length, StartCurvature, EndCurvature);
    }

    public static class Elements
    {
        public static Arbitrary<ElementCase> Case() => (
            from x in Number(-3000, 3000)
            from y in Number(-3000, 3000)
            from heading in Number(-3, 3)
            from length in Number(1, 900)
            from a in Number(-1.0 / 200, 1.0 / 200)
            from b in Number(-1.0 / 200, 1.0 / 200)
            from kind in Gen.Choose(0, 3)
            select new ElementCase(x, y, heading, length, kind == 0 ? 0 : a, kind switch { 0 => 0, 1 => a, 2 => a + (b * 1e-4), _ => b })).ToArbitrary();

        private static Gen<double> Number(double low, double high) => Gen.Choose(0, 100000).Select(i => low + ((high - low) * i / 100000));
    }

    /// <summary>Composite Gauss rule of 5 points on 4 mm panels: error far below a millionth of a millionth on radii of 200 mm and more.</summary>
    [Property(MaxTest = 200)]
    public void Position_heading_and_curvature_agree_with_quadrature(ElementCase c)
    {
        foreach (double share in new[] { 0, 0.013, 0.35, 0.5, 0.77, 1 })
        {
            double s = share * c.Length;
            var frame = c.Element.At(s);
            var expected = new Point2(c.X, c.Y) + Integrate(c, s);
            Assert.True((frame.Position - expected).Length < 1e-9, $"{(frame.Position - expected).Length} at {s} of {c}");
            Assert.Equal(0, (frame.Tangent - Point2.FromAngle(Heading(c, s))).Length, 1e-12);
            Assert.Equal(c.StartCurvature + ((c.EndCurvature - c.StartCurvature) * share), frame.Curvature, 1e-15);
        }
    }

    [Fact]
    public void A_circle_closes_and_its_points_are_its_own()
    {
        var circle = new CentrelineElement(new(5, -3), 0.4, 2 * Math.PI * 300, 1.0 / 300, 1.0 / 300);
        var centre = new Point2(5, -3) + (Point2.FromAngle(0.4 + (Math.PI / 2)) * 300);
        Assert.Equal(0, (circle.At(circle.Length).Position - circle.Start).Length, 1e-9);
        Assert.All(Enumerable.Range(0, 50), i => Assert.Equal(300, (circle.At(i * circle.Length / 50).Position - centre).Length, 1e-9));
    }

    /// <summary>Shift of a circular curve eased by a clothoid: L²/24R (from memory), with the next term of the series −L⁴/2688R³.</summary>
    [Theory]
    [InlineData(150, 610)]
    [InlineData(260, 760)]
    [InlineData(60, 900)]
    public void A_transition_shifts_its_curve_by_the_published_amount(double length, double radius)
    {
        var end = new CentrelineElement(default, 0, length, 0, 1 / radius).At(length);
        double shift = (end.Position + (end.Tangent.Left * radius)).Y - radius;
        Assert.Equal(length * length / (24 * radius), shift, length * length / (24 * radius) * 0.002);
        Assert.Equal((length * length / (24 * radius)) - (Math.Pow(length, 4) / (2688 * Math.Pow(radius, 3))), shift, 1e-4);
        Assert.Equal(length / (2 * radius), Math.Atan2(end.Tangent.Y, end.Tangent.X), 1e-12);
    }

    [Property(MaxTest = 100)]
    public void Joints_are_continuous_in_place_and_direction_and_headings_never_jump(ElementCase a, ElementCase b)
    {
        var line = TrackLayer.Lay(new("t", new(a.X, a.Y), a.Heading, [
            new StraightSpec(a.Length), new TransitionSpec(b.Length, 300 + Math.Abs(b.X), Hand.Left),
            new CurveSpec(400 + Math.Abs(a.X), Hand.Right, Length: a.Length), new TransitionSpec(b.Length, null, Hand.Right)])).Value!;
        Assert.Empty(line.Kinks);
        for (int i = 1; i < line.Elements.Count; i++)
        {
            double s = line.StartOf(i);
            var (before, after) = (line.At(s - 1e-9), line.At(s));
            Assert.True((before.Position - after.Position).Length < 2e-9);
            Assert.True((before.Tangent - after.Tangent).Length < 1e-10);
            Assert.Equal(i, line.ElementAt(s));
        }
    }

    [Property(MaxTest = 100)]
    public void A_place_told_by_chainage_and_offset_is_found_again(ElementCase a, ElementCase b)
    {
        var line = TrackLayer.Lay(new("t", new(a.X, a.Y), a.Heading, [
            new StraightSpec(50 + a.Length), new TransitionSpec(50 + b.Length, 300 + Math.Abs(b.X), Hand.Left),
            new CurveSpec(400 + Math.Abs(b.Y), Hand.Left, Angle: 0.5)])).Value!;
        double chainage = 0.01 * line.Length * (Math.Abs(a.Y) / 30), offset = a.X / 30;
        var place = line.Locate(line.PointAt(chainage, offset), chainage + (b.X / 100));
        Assert.Equal(chainage, place.Chainage, 1e-8);
        Assert.Equal(offset, place.Offset, 1e-9);
        var blind = line.Locate(line.PointAt(chainage, offset));
        Assert.Equal(chainage, blind.Chainage, 1e-8);
    }

    [Fact]
    public void Beyond_its_ends_a_track_runs_on_straight()
    {
        var line = TrackLayer.Lay(new("t", new(10, 20), 0, [new CurveSpec(500, Hand.Left, Length: 100)])).Value!;
        Assert.Equal(new Point2(-20, 20), line.At(-30).Position);
        var last = line.At(100);
        Assert.Equal(0, (line.At(150).Position - last.Position - (last.Tangent * 50)).Length, 1e-12);
        Assert.Equal(0, line.At(150).Curvature);
    }

    private static double Heading(ElementCase c, double s) =>
        c.Heading + (c.StartCurvature * s) + ((c.EndCurvature - c.StartCurvature) * s * s / (2 * c.Length));

    private static Point2 Integrate(ElementCase c, double to)
    {
        double[] nodes = [0, 0.5384693101056831, -0.5384693101056831, 0.9061798459386640, -0.9061798459386640];
        double[] weights = [0.5688888888888889, 0.4786286704993665, 0.4786286704993665, 0.2369268850561891, 0.2369268850561891];
        int panels = Math.Max(1, (int)Math.Ceiling(to / 4));
        double half = to / panels / 2, x = 0, y = 0;
        for (int p = 0; p < panels; p++)
        {
            for (int i = 0; i < nodes.Length; i++)
            {
                double heading = Heading(c, ((2 * p) + 1 + nodes[i]) * half);
                x += weights[i] * half * Math.Cos(heading);
                y += weights[i] * half * Math.Sin(heading);
            }
        }

        return new(x, y);
    }
}
