using PlatformForge.Exports.Manifests;
using PlatformForge.Geometry;
using PlatformForge.Verification.Rules;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>What is asked of a written slide gauge, with bars that lie across both rails and boxes for platforms: every figure is known without the
/// program.</summary>
public class RidingRuleTests
{
    private const double Gauge = 16.5, Head = 1.2, Top = 9, Air = 0.4;

    private static readonly ManifestProof Proof = new("halt", "gauge", "slide gauge", "g.stl", "p.3mf", 1, RigidTransform.Identity,
        new("up", 300, Head, 0.1, Air));

    [Theory]
    [InlineData(5.9, 0, null)]
    [InlineData(30, 0.015, null)]
    [InlineData(30, -0.015, null)]
    [InlineData(3.9, 0, "lies on 3.5 mm of it")]
    [InlineData(30, 0.3, "comes to 0.30 mm above rail top, and lies on 0.0 mm of it")]
    [InlineData(30, -0.04, "comes to -0.04 mm above rail top, and lies on 0.0 mm of it")]
    public void A_bar_rides_where_it_lies_on_both_rails_along_five_millimetres(double along, double raised, string? told)
    {
        for (int seed = 0; seed < 6; seed++)
        {
            // Its triangles begin anywhere and lie any way round. It is felt for every half millimetre from its middle on.
            var bar = Box(new(300.05 - (along / 2), -12, Top + raised), new(300.05 + (along / 2), 12, Top + raised + 3), seed);
            var found = Check(bar).SingleOrDefault(f => f.StartsWith("PF7520", StringComparison.Ordinal));
            Assert.True(told is null ? found is null : found?.Contains(told, StringComparison.Ordinal) == true, $"{seed}: {found}");
        }
    }

    [Fact]
    public void A_bar_that_misses_one_rail_is_told_with_its_side()
    {
        string left = Assert.Single(Check(Box(new(290, -12, Top), new(310, 5, Top + 3))));
        Assert.Contains("over the left rail it comes to", left, StringComparison.Ordinal);
        string right = Assert.Single(Check(Box(new(290, -5, Top), new(310, 12, Top + 3))));
        Assert.Contains("over the right rail it comes to", right, StringComparison.Ordinal);
    }

    /// <summary>Beside a platform it shows the stated air, within a twentieth or 0.02 mm more.</summary>
    [Theory]
    [InlineData(Air, true)]
    [InlineData(0.385, true)]
    [InlineData(0.37, false)]
    [InlineData(0.415, true)]
    [InlineData(0.43, false)]
    [InlineData(0, false)]
    [InlineData(7, false)]
    public void It_shows_the_air_that_is_said(double left, bool kept)
    {
        var found = Check(Box(new(290, -12, Top), new(310, 12, Top + 3)), Box(new(200, 12 + left, 0), new(400, 40, Top + 10)));
        Assert.Equal(kept, found.Length == 0);
        Assert.AllOrNone(found, f => Assert.StartsWith("PF7522", f, StringComparison.Ordinal));
        Assert.AllOrNone(found, f => Assert.Contains(left > 5 ? "stays over 5 mm from the platform" : FormattableString.Invariant($"comes to {left:0.00} mm ")
            + "from the platform", f, StringComparison.Ordinal));
    }

    /// <summary>A tongue between the rails reaches below rail top; what of it comes past a running face is told.</summary>
    [Theory]
    [InlineData(8.2, null)]
    [InlineData(8.25, null)]
    [InlineData(8.65, "0.40")]
    public void What_reaches_into_a_rail_is_told(double half, string? told)
    {
        var tongue = Box(new(295, -half, Top - 1), new(305, 0, Top + 1));
        var found = Check(Joined(Box(new(290, -12, Top), new(310, 12, Top + 3)), tongue)).Where(f => f.StartsWith("PF7521", StringComparison.Ordinal))
            .ToArray();
        Assert.Equal(told is null ? 0 : 1, found.Length);
        Assert.AllOrNone(found, f => Assert.Contains($"comes to {told} mm beyond", f, StringComparison.Ordinal));
    }

    /// <summary>
    /// A tongue whose sides lean outward, 8 mm from the middle at its foot and more at its head, is told by where its sides are 0.05 mm below rail top; beyond
    /// a rail's head there is no more of the rail to reach into.
    /// </summary>
    [Theory]
    [InlineData(8.4, null)]
    [InlineData(9.2, "0.32")] // 8 + 1.2 × 0.95 / 2 = 8.57, of 8.25
    [InlineData(12, "1.20")]
    public void Sides_that_lean_reach_into_a_rail_as_far_as_they_are_below_its_top(double head, string? told)
    {
        for (int seed = 0; seed < 4; seed++)
        {
            var box = Box(new(295, -8, Top - 1), new(305, 8, Top + 1), seed);
            var tongue = box with { Vertices = Array.ConvertAll(box.Vertices, v => v.Z > Top ? v with { Y = Math.Sign(v.Y) * head } : v) };
            var found = Check(Joined(Box(new(290, -12, Top), new(310, 12, Top + 3)), tongue)).Where(f => f.StartsWith("PF7521", StringComparison.Ordinal))
                .ToArray();
            Assert.Equal(told is null ? 0 : 1, found.Length);
            Assert.AllOrNone(found, f => Assert.Contains($"comes to {told} mm beyond", f, StringComparison.Ordinal));
        }
    }

    /// <summary>An underside that slopes along the track and across it: 1 in 20 along, from 10 mm before its middle; level over one rail, its height is that of
    /// the plane.</summary>
    [Fact]
    public void An_underside_that_slopes_lies_where_its_plane_is_at_rail_top()
    {
        for (int seed = 0; seed < 6; seed++)
        {
            var box = Box(new(289.9, -12, Top), new(310.1, 12, Top + 3), seed);
            var bar = box with { Vertices = Array.ConvertAll(box.Vertices, v => v with { Z = v.Z + ((v.X - 300) * 0.05) + ((v.Y + 8.85) * 0.01) }) };
            string found = Assert.Single(Check(bar), f => f.StartsWith("PF7520", StringComparison.Ordinal));
            Assert.Contains("over the right rail it comes to -0.50 mm above rail top, and lies on 0.5 mm of it", found, StringComparison.Ordinal);
        }
    }

    private static string[] Check(Mesh gauge, params Mesh[] platform) =>
        [.. new RidingRule(Pieces.Curve(600, double.PositiveInfinity), Gauge, Top).Check(Proof, gauge, platform).Select(f => $"{f.Code} {f.Message}")];

    private static Mesh Joined(Mesh a, Mesh b) => new([.. a.Vertices, .. b.Vertices], [.. a.Triangles, .. b.Triangles.Select(t => t + a.Vertices.Length)], []);

    private static Mesh Box(Point3 low, Point3 high, int seed = 0)
    {
        var random = new Random(seed);
        int[] faces = [0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7, 5];
        int[] other = [0, 2, 1, 1, 2, 3, 4, 5, 6, 5, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7, 5];
        return new(
            [.. from z in new[] { low.Z, high.Z } from y in new[] { low.Y, high.Y } from x in new[] { low.X, high.X } select new Point3(x, y, z)],
            [.. (seed % 2 == 0 ? faces : other).Chunk(3).SelectMany(t =>
            {
                int first = random.Next(3);
                return (int[])[t[first], t[(first + 1) % 3], t[(first + 2) % 3]];
            })],
            []);
    }
}
