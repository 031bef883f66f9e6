using FsCheck.Xunit;
using NetTopologySuite.Geometries;
using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>
/// Platforms round tight curves, told to stand in one another exactly where polygons of their outlines do: those by the circle's own formula from what the
/// plans say of reach, held against one another by NetTopologySuite.
/// </summary>
public class NeighboursOnCurves
{
    private const double Lead = 150;

    // Shared area below which a rim is too thin to be met by places 1 mm apart, mm².
    private const double LeastShared = 5;

    /// <summary>A track straight to x = 150 and then round a centre straight above that, to the left.</summary>
    private sealed record Bend(double Radius, double Turn, double Off)
    {
        private Centreline Chart =>
            TrackLayer.Lay(new("up", new Point2(0, Off), 0,
                [new StraightSpec(Lead), new CurveSpec(Radius, Hand.Left, Length: Radius * Turn), new StraightSpec(Lead)])).Value!;

        /// <summary>A platform within the curve, from a share of its length to another.</summary>
        public PlatformPlan Plan(string key, Side side, double width, (double From, double To) shares)
        {
            var track = Chart;
            var request = Bench.Straight(s => s with
            {
                Name = key,
                Key = key,
                Face = s.Face with { Side = side, From = Lead + (shares.From * Radius * Turn), To = Lead + (shares.To * Radius * Turn) },
                Deck = s.Deck with { Width = width },
            });
            return Bench.Plan(request with { Chart = track, Envelope = Bench.Envelope(track, side, _ => 18) });
        }

        /// <summary>Its outline, by the formula of a circle.</summary>
        public Polygon Outline(PlatformPlan plan)
        {
            Coordinate Of(double s, double reach)
            {
                double turn = (s - Lead) / Radius, away = Radius - ((int)plan.Side * reach);
                return new(Lead + (away * Math.Sin(turn)), Off + Radius - (away * Math.Cos(turn)));
            }

            var front = plan.Stations.Select(s => Of(s, plan.CopingFront.At(s)));
            var back = plan.Stations.Reverse().Select(s => Of(s, plan.Back.At(s)));
            Coordinate[] ring = [.. front, .. back];
            return new(new LinearRing([.. ring, ring[0]]));
        }
    }

    private static bool AreTold(PlatformPlan a, PlatformPlan b)
    {
        bool told = PlatformNeighbours.Check([a, b]) is [{ Code: "PF4027" }];
        Assert.Equal(told, PlatformNeighbours.Check([b, a]) is [{ Code: "PF4027" }]);
        return told;
    }

    /// <summary>One inside and one outside of one curve, up to most of a circle: never in one another, whatever a chord between their ends runs
    /// through.</summary>
    [Property(MaxTest = 30)]
    public void Platforms_on_both_sides_of_one_curve_are_left_alone(int seed)
    {
        var random = new Random(seed);
        double Of(double low, double high) => low + (random.NextDouble() * (high - low));
        var bend = new Bend(Of(120, 400), Of(1, 5), 0);
        var inner = bend.Plan("platform[0]", Side.Left, Of(24, Math.Min(60, bend.Radius - 60)), (Of(0, 0.3), Of(0.6, 1)));
        var outer = bend.Plan("platform[1]", Side.Right, Of(24, 60), (Of(0, 0.3), Of(0.6, 1)));
        Assert.InRange(bend.Outline(inner).Distance(bend.Outline(outer)), 36, 100);
        Assert.False(AreTold(inner, outer));
    }

    /// <summary>One inside a curve, and one on the outside of another curve within it: told where their outlines share an area, and nowhere else.</summary>
    [SimulatedProperty(40)]
    public void Platforms_between_two_tracks_round_one_centre_are_told_where_their_outlines_overlap(int seed)
    {
        var random = new Random(seed);
        double Of(double low, double high) => low + (random.NextDouble() * (high - low));
        double radius = Of(220, 500), apart = Of(90, 120), turn = Of(1, 5);
        Bend outside = new(radius, turn, 0), within = new(radius - apart, turn, apart);
        var one = outside.Plan("platform[0]", Side.Left, Of(20, 50), (Of(0, 0.6), Of(0.7, 1)));
        var two = within.Plan("platform[1]", Side.Right, Of(20, 50), (Of(0, 0.6), Of(0.7, 1)));
        Polygon first = outside.Outline(one), second = within.Outline(two);
        double shared = first.Intersection(second).Area;
        if (shared == 0 || shared > LeastShared)
        {
            Assert.Equal(shared > 0, AreTold(one, two));
        }
    }

    /// <summary>Two that do: 34 mm between edges, once side by side and once with only their ends past one another.</summary>
    [Theory]
    [InlineData(0, 1)]
    [InlineData(0.88, 1)]
    public void Platforms_that_do_overlap_on_a_tight_curve_are_told(double from, double to)
    {
        Bend outside = new(200, 2.2, 0), within = new(130, 2.2, 70);
        var one = outside.Plan("platform[0]", Side.Left, 24, (0, 0.9));
        var two = within.Plan("platform[1]", Side.Right, 24, (from, to));
        Assert.True(outside.Outline(one).Intersection(within.Outline(two)).Area > LeastShared);
        Assert.True(AreTold(one, two));
    }
}
