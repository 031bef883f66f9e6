using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Edges;

/// <summary>
/// Gives the coping front of each style on the same vertices. Laws: 1. no edge is anywhere nearer than required; 2. fitted ≤ faired ≤ uniform at
/// every vertex; 3. the faired edge keeps its radius and taper; 4. no edge that keeps them has a mean reach less than the faired one's by more than
/// <see cref="MeanGapProven"/>. See docs/decisions/0020-edge-styles.md.
/// </summary>
internal static class EdgeShaper
{
    /// <summary>A uniform edge is stated in steps of this, mm, so that it can be written on paper.</summary>
    public const double UniformStep = 0.01;

    /// <summary>How far in mm the mean reach of a faired edge may lie over the least possible.</summary>
    public const double MeanGapProven = 1e-4;

    // The search stops at this, mm.
    private const double MeanGapWanted = 1e-7;

    // The uniform edge keeps at least this over the largest requirement, mm, so that a faired edge has room under it.
    private const double UniformSpare = 0.002;

    // The bound on bending in plan coordinates leaves out products of small slopes; this share of 1/radius is kept back for them.
    private const double BendKeptBack = 0.02;

    // A constant reach is always allowed to bend by this share of 1/radius more than the track, which keeps the program's inside from being empty.
    private const double BendSpare = 0.01;

    public static double[] Shape(EdgeStyle style, EdgeVertices vertices, FaceSpec face, double leastRadius, Centreline chart) => style switch
    {
        EdgeStyle.Fitted => [.. vertices.Required],
        EdgeStyle.Uniform => Enumerable.Repeat(face.Reach ?? UniformReach(vertices), vertices.Stations.Length).ToArray(),
        _ => Faired(vertices, face, leastRadius, chart),
    };

    public static double UniformReach(EdgeVertices vertices) =>
        Math.Ceiling((vertices.Required.Max() + UniformSpare) / UniformStep) * UniformStep;

    private static double[] Faired(EdgeVertices vertices, FaceSpec face, double leastRadius, Centreline chart)
    {
        var (s, required) = (vertices.Stations, vertices.Required);
        int n = s.Length;
        double uniform = UniformReach(vertices), datum = required.Max();
        var program = new BandedProgram(Mean(s));
        BoundReach(program, required, datum, uniform);
        BoundTaper(program, s, face.Taper);
        BoundBend(program, s, (j, k, l) => Bends(chart, s[j], s[k], s[l], face, leastRadius, uniform));
        double[] reach = Enumerable.Repeat((uniform - datum) / 2, n).ToArray();
        double gap = program.Minimise(reach, uniform - required.Min(), MeanGapWanted);
        if (!(gap <= MeanGapProven))
        {
            throw new BrokenInvariantException(Invariant($"Platforms: a faired edge of {n} vertices is proven only within {gap:0.####} mm of the closest."));
        }

        // Adding the datum back may round below the bounds by a last digit.
        return [.. reach.Select((t, j) => Math.Clamp(t + datum, required[j], uniform))];
    }

    // What each vertex has of the mean reach.
    private static double[] Mean(double[] s)
    {
        double length = s[^1] - s[0];
        var cost = new double[s.Length];
        for (int j = 0; j + 1 < s.Length; j++)
        {
            double half = (s[j + 1] - s[j]) / 2 / length;
            cost[j] += half;
            cost[j + 1] += half;
        }

        return cost;
    }

    // Unknowns are told from the largest requirement, which keeps their rounding small.
    private static void BoundReach(BandedProgram program, double[] required, double datum, double uniform)
    {
        for (int j = 0; j < required.Length; j++)
        {
            program.AtLeast(j, 1, 0, 0, required[j] - datum);
            program.AtLeast(j, -1, 0, 0, datum - uniform);
        }
    }

    private static void BoundTaper(BandedProgram program, double[] s, double taper)
    {
        for (int j = 0; j + 1 < s.Length; j++)
        {
            double change = (s[j + 1] - s[j]) / taper;
            program.AtLeast(j, -1, 1, 0, -change);
            program.AtLeast(j, 1, -1, 0, -change);
        }
    }

    private static void BoundBend(BandedProgram program, double[] s, Func<int, int, int, (double Least, double Greatest)> bends)
    {
        for (int j = 1; j + 1 < s.Length; j++)
        {
            // (T₊−T)/h₊ − (T−T₋)/h₋ over the mean step is the second difference; the row is multiplied by the mean step squared to be in mm.
            double before = s[j] - s[j - 1], after = s[j + 1] - s[j], mean = (before + after) / 2;
            double a = mean / before, c = mean / after;
            var (least, greatest) = bends(j - 1, j, j + 1);
            program.AtLeast(j - 1, a, -(a + c), c, least * mean * mean);
            program.AtLeast(j - 1, -a, a + c, -c, -greatest * mean * mean);
        }
    }

    /// <summary>
    /// Bounds on the second derivative of the reach by chainage, 1/mm, that keep an edge's own curvature within
    /// 1/radius, or within the curvature of a line concentric with the track where that is tighter. At offset d the curvature is
    /// κ/(1−κd) + d″/(1−κd)² + d′(κ′d + 2κd′)/(1−κd)³, to first order in the square of d′. The last term is not linear in the unknowns; it is held off the
    /// bound
    /// at the most that the taper lets it be. Where the track's curvature changes between the neighbouring vertices, the two chords see a mean of
    /// it: the least of it limits bending one way, the greatest the other.
    /// </summary>
    private static (double Least, double Greatest) Bends(
        Centreline chart,
        double before,
        double at,
        double after,
        FaceSpec face,
        double leastRadius,
        double reach)
    {
        double curvature = face.Side.Bend(chart.CurvatureAt(at)), slope = 1 / face.Taper;
        double first = face.Side.Bend(chart.CurvatureAt(before)), last = face.Side.Bend(chart.CurvatureAt(after));
        double low = Math.Min(curvature, Math.Min(first, last)), high = Math.Max(curvature, Math.Max(first, last));
        double growth = (high - low) / (after - before), stretch = 1 - (curvature * reach);
        double slanted = slope * ((growth * reach) + (2 * Math.Abs(curvature) * slope)) / (stretch * stretch * stretch);
        double allowed = ((1 - BendKeptBack) / leastRadius) - slanted, spare = BendSpare / leastRadius;
        double least = Math.Min(-allowed - (low / (1 - (low * reach))), 0) - spare;
        double greatest = Math.Max(allowed - (high / (1 - (high * reach))), 0) + spare;
        return (least * stretch * stretch, greatest * stretch * stretch);
    }
}
