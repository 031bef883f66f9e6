using PlatformForge.Exports.Workshop;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Backs;

/// <summary>What walls and kerbs along the back add to the paint, by closed formulae and by rays on the written pieces.</summary>
public class StripPaintTests
{
    private static readonly RetainingSpec Wall = new() { Height = 16, Thickness = 2.5, Oversail = 0.375, Coping = 1, Plinth = 3, Depth = 0.75, Fit = 0.125 };

    [Fact]
    public void A_smooth_wall_adds_its_face_its_ledges_and_its_ends_and_covers_its_rebate()
    {
        double[] bare = Told(new()), told = Told(new() { Retaining = Wall });
        double length = 150 - (2 * Wall.Fit), high = Wall.Height - Wall.Plinth - Wall.Coping, back = Wall.Thickness - Wall.Oversail;
        double wall = (length * (high + Wall.Plinth + Wall.Oversail)) + (2 * ((back * high) + (Wall.Thickness * Wall.Plinth)));
        Assert.Equal(wall, told[(int)Paint.Wall] - bare[(int)Paint.Wall], 0.5);
        double coping = (length * (Wall.Coping + Wall.Thickness)) + (2 * Wall.Thickness * Wall.Coping);
        Assert.Equal(coping, told[(int)Paint.Coping] - bare[(int)Paint.Coping], 0.5);
        // The rebate is open at both ends of the deck.
        Assert.Equal(-Wall.Taken * (150 + (2 * Wall.Depth)), told[(int)Paint.Deck] - bare[(int)Paint.Deck], 0.5);
    }

    [Fact]
    public void A_kerb_adds_its_top_and_both_its_sides()
    {
        var kerb = new KerbSpec();
        double[] bare = Told(new()), told = Told(new() { Kerb = kerb });
        double length = 150 - (2 * kerb.Fit);
        double seen = (length * (kerb.Width + (2 * kerb.Height))) + (2 * kerb.Width * kerb.Height);
        Assert.Equal(seen, told[(int)Paint.Concrete] - bare[(int)Paint.Concrete], 0.5);
    }

    /// <summary>Against rays, with ramps, at both sides of the track and on a curve.</summary>
    [Theory]
    [InlineData(WallFinish.Brick, RampWall.Level, false)]
    [InlineData(WallFinish.Stone, RampWall.Sloped, false)]
    [InlineData(WallFinish.Brick, RampWall.None, true)]
    public void A_faced_wall_is_painted_where_it_is_seen(WallFinish finish, RampWall ramps, bool isCurved)
    {
        PlatformSpec Faced(PlatformSpec s) => s with
        {
            Back = new() { Retaining = Wall with { Ramps = ramps } },
            Facing = FacingSpec.For(new(76.2)) with { Front = finish },
            Features = [],
            Deck = s.Deck with { Crossfall = 0 },
        };
        var plan = isCurved ? Workbench.PendlewickAs(Faced) : Workbench.Straight(260, Side.Right,
            s => Faced(s) with { StartRamp = new(Gradient: 8, FootHeight: 2) });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        var outward = Outward(set.Plan);
        double[] told = SurfaceAreas.Of(set), seen = new SeenSurfaces(set, withStrips: true)
        {
            Buried = (p, way) => outward(p) is var (off, top) && (off.X * way.X) + (off.Y * way.Y) > 0.9 && p.Z > top,
        }.Areas(p => outward(p).Away);

        // The plinth's ledge lies under the coping, where no ray from above comes; its front is one face down to the floor of its rebate, whose part under the
        // deck wants no paint.
        Paint body = finish == WallFinish.Stone ? Paint.Stone : Paint.Wall;
        double length = set.Plan.Body.Lines.Where(l => l.Made.Wall is not null).Sum(l => Length(set.Plan, l));
        told[(int)body] -= length * (Wall.Oversail + set.Plan.Spec.Facing!.Depth);
        seen[(int)body] -= length * Wall.Depth;
        Assert.All([Paint.Wall, Paint.Stone, Paint.Mortar, Paint.Coping, Paint.Deck], p => Assert.True(
            Math.Abs(told[(int)p] - seen[(int)p]) <= (0.01 * seen[(int)p]) + 10, $"{p}: {told[(int)p]:0.0} mm² told, {seen[(int)p]:0.0} seen"));
    }

    private static double[] Told(BackSpec back) =>
        SurfaceAreas.Of(Workbench.Made(Workbench.Straight(150, Side.Left, s => s with { Back = back }), Workbench.Printer, new()));

    private static double Length(PlatformPlan plan, LineBand band)
    {
        double[] stations = [band.From, .. plan.Stations.Where(s => s > band.From && s < band.To), band.To];
        Point2[] along = [.. stations.Select(s => plan.ToLayout(s, band.Near.At(s)))];
        return along.Zip(along.Skip(1), (a, b) => (b - a).Length).Sum();
    }

    // Away from the track, and the height of the deck, at the station that is nearest in plan.
    private static Func<Point3, (Point2 Away, double Top)> Outward(PlatformPlan plan)
    {
        var across = plan.Body.Stations.Select(s => (At: plan.ToLayout(s, plan.CopingFront.At(s)), To: plan.ToLayout(s, plan.Back.At(s)), Chainage: s))
            .ToArray();
        return p =>
        {
            var q = new Point2(p.X, p.Y);
            var (at, to, chainage) = across.MinBy(a => (q - ((a.At + a.To) * 0.5)).Length);
            return ((to - at) * (1 / (to - at).Length), plan.Surface.At(chainage).At(q));
        };
    }
}
