using FsCheck.Xunit;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Edges;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>The faired edge against a search of every edge whose vertices lie on a fine ladder of reaches.</summary>
public class FairingOptimality
{
    // Rungs of the ladder and distance between vertices, mm. Every edge on the ladder is a true candidate, so none may beat the faired edge.
    private const double Rung = 0.04;
    private const double Step = 10;

    [Property(MaxTest = 25)]
    public void No_edge_on_a_ladder_of_reaches_is_closer_on_average_and_the_best_of_them_is_hardly_farther(int seed)
    {
        var random = new Random(seed);
        double[] stations = [.. Enumerable.Range(0, 14).Select(i => 100 + (i * Step))];
        double[] required = [.. stations.Select(_ => 18 + (random.NextDouble() * 0.3))];
        for (int peak = 0; peak < 2; peak++)
        {
            required[random.Next(required.Length)] += random.NextDouble() * 1.2;
        }

        var face = new FaceSpec("up", Side.Left, stations[0], stations[^1], EdgeStyle.Faired)
        {
            LeastRadius = 400 + (random.NextDouble() * 800),
            Taper = 15 + (random.NextDouble() * 25)
        };
        var chart = TrackLayer.Lay(new("up", new Point2(0, 0), 0, [new StraightSpec(1000)])).Value!;
        var vertices = new EdgeVertices(stations, required);

        double faired = Mean(EdgeShaper.Shape(EdgeStyle.Faired, vertices, face, face.LeastRadius!.Value, chart));
        double ladder = Search(required, EdgeShaper.UniformReach(vertices), 0.98 * Step * Step / face.LeastRadius.Value, Step / face.Taper);
        Assert.InRange(ladder - faired, -EdgeShaper.MeanGapProven, 4 * Rung);
    }

    [Fact]
    public void On_straight_track_a_single_peak_is_left_as_a_parabola_and_then_a_taper()
    {
        // By hand: a peak 2 mm over nil, radius 500, taper 1 in 25 on vertices 5 mm apart. From the peak the slope grows by h/R a step
        // (half of it at once on either side), to 1/25, until the edge is back at what is required.
        const double h = 5, bend = 0.99 / 500, taper = 1.0 / 25;
        double[] stations = [.. Enumerable.Range(0, 81).Select(i => 100 + (i * h))];
        double[] required = [.. stations.Select((_, i) => i == 40 ? 20.0 : 18)];
        var face = new FaceSpec("up", Side.Left, 100, 500, EdgeStyle.Faired) { LeastRadius = 500, Taper = 25 };
        var chart = TrackLayer.Lay(new("up", new Point2(0, 0), 0, [new StraightSpec(1000)])).Value!;
        double[] faired = EdgeShaper.Shape(EdgeStyle.Faired, new EdgeVertices(stations, required), face, face.LeastRadius!.Value, chart);
        double expected = 20, slope = bend * h / 2;
        for (int i = 39; i > 34; i--)
        {
            expected -= Math.Min(slope, taper) * h;
            slope += bend * h;
            Assert.Equal(expected, faired[i], 1e-3);
            Assert.Equal(faired[i], faired[80 - i], 1e-3);
        }

        Assert.Equal(18, faired[0], 1e-3);
    }

    private static double Mean(double[] t) => Enumerable.Range(0, t.Length - 1).Sum(i => (t[i] + t[i + 1]) / 2) / (t.Length - 1);

    // Least mean over all ladders from the first vertex to the last, by the last two vertices' rungs.
    private static double Search(double[] required, double ceiling, double bend, double taper)
    {
        int rungs = (int)((ceiling - 18) / Rung) + 1;
        double At(int rung) => ceiling - ((rungs - 1 - rung) * Rung);
        bool Allowed(int vertex, int rung) => At(rung) >= required[vertex];
        bool Gentle(int a, int b) => Math.Abs(At(a) - At(b)) <= taper;
        var best = new double[rungs, rungs];
        for (int a = 0; a < rungs; a++)
        {
            for (int b = 0; b < rungs; b++)
            {
                best[a, b] = Allowed(0, a) && Allowed(1, b) && Gentle(a, b) ? (At(a) + At(b)) / 2 : double.PositiveInfinity;
            }
        }

        for (int vertex = 2; vertex < required.Length; vertex++)
        {
            var next = new double[rungs, rungs];
            for (int b = 0; b < rungs; b++)
            {
                for (int c = 0; c < rungs; c++)
                {
                    double least = double.PositiveInfinity;
                    for (int a = 0; a < rungs && Allowed(vertex, c) && Gentle(b, c); a++)
                    {
                        if (Math.Abs(At(a) - (2 * At(b)) + At(c)) <= bend)
                        {
                            least = Math.Min(least, best[a, b] + ((At(b) + At(c)) / 2));
                        }
                    }

                    next[b, c] = least;
                }
            }

            best = next;
        }

        return best.Cast<double>().Min() / (required.Length - 1);
    }
}
