using PlatformForge.Exports.Pictures.Bodies;
using PlatformForge.Exports.Pictures.Light;
using PlatformForge.Geometry;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>Shade in pictures from near by, by where shadows fall: z over the ground, at an angle of the light, is z over its tangent off.</summary>
public class NearShadeTests
{
    // A plate 10 by 10 and 1 thick, 20 over the ground, in light that comes at 45 degrees from greater x: on the ground its shadow lies from 21 to 10 before
    // nil.
    private static readonly SceneBody Plate = new(Blocks.Prism([new(0, 0), new(10, 0), new(10, 10), new(0, 10)], 20, 21), [new(0, 0, 0)]);

    private static readonly Point3 Toward = new(1, 0, 1), Level = new(0, 1, 0), Up = new(0, 0, 1);

    // A box on the ground about that shadow, in which the plate itself is not.
    private static readonly Point3[] Seen = [.. from x in new[] { -30.0, 0 } from y in new[] { -5.0, 15 } from z in new[] { 0.0, 1 }
        select new Point3(x, y, z)];

    [Theory]
    [InlineData(-22, 5, 1)]
    [InlineData(-20, 5, 0)]
    [InlineData(-11, 5, 0)]
    [InlineData(-9, 5, 1)]
    [InlineData(-15, -1, 1)]
    [InlineData(-15, 11, 1)]
    public void What_stands_outside_what_is_seen_throws_its_shadow_in(double x, double y, double share)
    {
        var map = new ShadowMap([Plate], Toward, Level, 40_000, Seen);
        Assert.Equal(share, map.Share(new(x, y, 0), Up), 1e-9);
        var on = map.View.Project(new(x, y, 0));
        Assert.Equal(share, map.Soft(on.X, on.Y, on.Z), 1e-9);
    }

    /// <summary>From dark to light over three cells, never back, and half of it where the edge is.</summary>
    [Fact]
    public void Its_edge_is_soft_and_lies_where_it_falls()
    {
        var map = new ShadowMap([Plate], Toward, Level, 40_000, Seen);
        double cell = map.Bias / 1.5, last = 0, half = double.NaN;
        for (double x = -12; x < -8; x += 0.01)
        {
            var on = map.View.Project(new(x, 5, 0));
            double share = map.Soft(on.X, on.Y, on.Z);
            Assert.InRange(share, last - 1e-9, last + 0.05);
            half = double.IsNaN(half) && share > 0.5 ? x : half;
            last = share;
        }

        Assert.Equal(1, last);
        Assert.Equal(-10, half, 2 * cell); // looked for a little nearer to the light than it lies
    }
}
