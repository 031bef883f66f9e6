using FsCheck.Xunit;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Edges;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;

namespace PlatformForge.Tests.Platforms;

/// <summary>
/// The faired edge on curved track against a search of every edge on a ladder of reaches, whose bend is measured in the layout as the circle through three
/// places and not in the plan coordinates that the program works in.
/// </summary>
public class FairingOnCurves
{
    // Rungs of the ladder and distance between vertices, mm, and how many vertices.
    private const double Rung = 0.02, Step = 10;
    private const int Count = 14;

    // Share of 1/radius: a line concentric with the track is on the limit itself.
    private const double Rounding = 1e-6;

    [Property(MaxTest = 15)]
    public void No_admissible_edge_on_a_ladder_is_closer_on_average_than_what_the_program_keeps_back(int seed)
    {
        var random = new Random(seed);
        var c = new Case(random);
        double[] faired = EdgeShaper.Shape(EdgeStyle.Faired, c.Vertices, c.Face, c.Face.LeastRadius!.Value, c.Chart);
        double ladder = c.Search(), best = Mean(faired);
        Assert.InRange(ladder, Mean([.. c.Vertices.Required]) - 1e-9, c.Uniform + 1e-9);

        // If an edge T is admissible, so is any mixture λT + (1−λ)U with the uniform edge U, with λ times its bends. What the program keeps back of a bend is
        // 1 − λ of it, so the faired edge is at most (1−λ)(U − mean T) farther than the best on the ladder.
        Assert.True(best - ladder <= ((1 - c.Kept) * (c.Uniform - ladder)) + EdgeShaper.MeanGapProven, $"{best - ladder} over {c.Kept}");

        // Setting an edge to rungs changes its second differences by two rungs and its steps by one: with that much kept back of both, the faired
        // edge has a neighbour on the ladder no farther than a rung.
        double share = Math.Max(2 * Rung / (Step * Step * c.LeastBend), Rung / (Step / c.Face.Taper));
        Assert.True(share >= 1 || ladder - best <= (share * (c.Uniform - best)) + Rung, $"{ladder - best} over {share}");
    }

    [Property(MaxTest = 40)]
    public void The_faired_edge_bends_no_tighter_than_its_radius_or_the_track_itself_measured_in_the_layout(int seed)
    {
        var c = new Case(new Random(seed));
        double[] faired = EdgeShaper.Shape(EdgeStyle.Faired, c.Vertices, c.Face, c.Face.LeastRadius!.Value, c.Chart);
        for (int j = 1; j + 1 < Count; j++)
        {
            // A hundredth of 1/radius over a concentric line is allowed everywhere, so that a constant reach is strictly inside.
            double bend = Bend(c.Place(j - 1, faired[j - 1]), c.Place(j, faired[j]), c.Place(j + 1, faired[j + 1]));
            Assert.True(c.Admits(bend, faired[j], spare: 0.011), $"{1 / bend} at {j}");
            Assert.True(Math.Abs(faired[j] - faired[j - 1]) <= (Step / c.Face.Taper) + 1e-9);
        }
    }

    private static double Mean(double[] t) => Enumerable.Range(0, t.Length - 1).Sum(i => (t[i] + t[i + 1]) / 2) / (t.Length - 1);

    // Signed curvature of the circle through three places, left positive: four times the area over the product of the sides.
    private static double Bend(Point2 a, Point2 b, Point2 c) => 2 * Point2.Cross(b - a, c - b) / ((b - a).Length * (c - b).Length * (c - a).Length);

    /// <summary>A circular track with a bumpy requirement beside it.</summary>
    private sealed class Case
    {
        private readonly double curvature;

        public Case(Random random)
        {
            double radius = 450 + (random.NextDouble() * 1500);
            var hand = random.Next(2) == 0 ? Hand.Left : Hand.Right;
            curvature = (hand == Hand.Left ? 1 : -1) / radius;
            Chart = TrackLayer.Lay(new("up", new Point2(0, 0), 0.3, [new CurveSpec(radius, hand, Length: 340)])).Value!;
            double[] stations = [.. Enumerable.Range(0, Count).Select(i => 100 + (i * Step))];
            double[] required = [.. stations.Select(_ => 18 + (random.NextDouble() * 0.3))];
            for (int peak = 0; peak < 2; peak++)
            {
                required[random.Next(required.Length)] += random.NextDouble() * 1.2;
            }

            Face = new("up", random.Next(2) == 0 ? Side.Left : Side.Right, stations[0], stations[^1],
                EdgeStyle.Faired)
            { LeastRadius = 400 + (random.NextDouble() * 500), Taper = 15 + (random.NextDouble() * 25) };
            Vertices = new(stations, required);
            Uniform = EdgeShaper.UniformReach(Vertices);
        }

        public Centreline Chart { get; }

        public FaceSpec Face { get; }

        public EdgeVertices Vertices { get; }

        public double Uniform { get; }

        // The track's curvature, positive where its centre lies on the platform's side.
        private double Inward => (int)Face.Side * curvature;

        /// <summary>Share of every bend that an admissible edge may have that the program leaves to it.</summary>
        public double Kept => Ways().Min(w => Math.Min(1, w.Left / w.All));

        /// <summary>Least second derivative in plan coordinates that is left either way, 1/mm.</summary>
        public double LeastBend => Ways().Min(w => w.Left);

        public Point2 Place(int vertex, double reach) => Chart.PointAt(Vertices.Stations[vertex], (int)Face.Side * reach);

        /// <summary>Whether a bend in the layout is within 1/radius, or within that of a line concentric with the track.</summary>
        public bool Admits(double bend, double reach, double spare = Rounding)
        {
            double limit = 1 / Face.LeastRadius!.Value, own = Concentric(reach), inward = (int)Face.Side * bend;
            return inward >= Math.Min(-limit, own) - (spare * limit) && inward <= Math.Max(limit, own) + (spare * limit);
        }

        /// <summary>Least mean of all admissible edges on the ladder, by dynamic programming over the last two vertices' rungs.</summary>
        public double Search()
        {
            int rungs = (int)((Uniform - 18) / Rung) + 1, reachable = (int)(Step / Face.Taper / Rung);
            double At(int rung) => Uniform - ((rungs - 1 - rung) * Rung);
            var places = new Point2[Count, rungs];
            for (int i = 0; i < Count * rungs; i++)
            {
                places[i / rungs, i % rungs] = Place(i / rungs, At(i % rungs));
            }

            double[,] best = new double[rungs, rungs];
            for (int vertex = 1; vertex < Count; vertex++)
            {
                var next = new double[rungs, rungs];
                for (int b = 0; b < rungs; b++)
                {
                    for (int c = 0; c < rungs; c++)
                    {
                        double least = double.PositiveInfinity;
                        bool allowed = At(b) >= Vertices.Required[vertex - 1] && At(c) >= Vertices.Required[vertex] && Math.Abs(b - c) <= reachable;
                        for (int a = Math.Max(0, b - reachable); allowed && a <= Math.Min(rungs - 1, b + reachable); a++)
                        {
                            if (vertex == 1 || (best[a, b] < least && Admits(Bend(places[vertex - 2, a], places[vertex - 1, b], places[vertex, c]), At(b))))
                            {
                                least = vertex == 1 ? 0 : best[a, b];
                            }
                        }

                        next[b, c] = least + ((At(b) + At(c)) / 2);
                    }
                }

                best = next;
            }

            return best.Cast<double>().Min() / (Count - 1);
        }

        private double Concentric(double reach) => Inward / (1 - (Inward * reach));

        // Second derivatives either way that the program leaves, and all that an admissible edge may have. At offset d the curvature is κ/(1−κd) + d″/(1−κd)² +
        // 2κd′²/(1−κd)³ on a circle. The program keeps back 2 % of 1/radius less the 1 % spare (decision 0020), and the last term at the most that the taper
        // lets it be; an edge may have that term in its favour, 1.5·d′² of its curvature for its slant, and (hκ)² for the chords.
        private IEnumerable<(double Left, double All)> Ways()
        {
            double limit = 1 / Face.LeastRadius!.Value, slope = 1 / Face.Taper;
            foreach (double reach in (double[])[18, Uniform])
            {
                double stretch = 1 - (Inward * reach), far = 1 - (Inward * Uniform),
                    slanted = 2 * Math.Abs(Inward) * slope * slope / (stretch * stretch * stretch);
                double more = 1 + (1.5 * slope * slope) + (Step * Step * Inward * Inward);
                foreach (int way in (int[])[-1, 1])
                {
                    double own = way * Inward / far;
                    double left = (Math.Max((0.98 * limit) - slanted - own, 0) + (0.01 * limit)) * far * far;
                    double all = Math.Max((more * Math.Max(limit, own)) - own + slanted, 0) * stretch * stretch;
                    yield return (left, all);
                }
            }
        }
    }
}
