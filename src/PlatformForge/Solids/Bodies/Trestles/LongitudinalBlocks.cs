using PlatformForge.Geometry;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;

namespace PlatformForge.Solids.Bodies.Trestles;

/// <summary>
/// Braces along a platform as blocks: each between two planes that rise as it does, and, from where its upper side has come into the bearer, under the
/// middle of that; one more of either where the deck bends over it.
/// </summary>
internal static class LongitudinalBlocks
{
    // How far its lower side goes on within the bearer, mm; a piece shorter than this, mm, is none.
    private const double IntoBearer = 0.1, Hair = Tolerances.SameLength;

    public static void Add(FacetedPlan chart, double from, double to, List<ColumnBlock> blocks)
    {
        foreach (var brace in LongitudinalBraces.Of(chart, out _).Where(b => Math.Min(b.From, b.To) > from && Math.Max(b.From, b.To) < to))
        {
            blocks.AddRange(Of(chart, brace));
        }
    }

    private static IEnumerable<ColumnBlock> Of(FacetedPlan chart, LongitudinalBrace brace)
    {
        var spec = chart.Plan.Spec.Trestle!;
        var line = brace.Line;
        var paint = TrestleBlocks.PaintOf(spec);
        double into = BraceLine.Into(spec), deck = chart.Plan.Spec.Deck.Thickness;
        bool isFull = brace.Soffit.Met(line.Foot, line.Rise) is null || line.Run > brace.Wide - Hair;
        double end = isFull ? brace.Wide + into : line.Run + IntoBearer;
        var slope = brace.Ahead * line.Rise;
        var lower = new HeightPlane(line.Foot - Point2.Dot(slope, brace.Origin), slope.X, slope.Y);

        // The post's own length is under the planes of the bay's ends.
        double[] ends = [-into, .. brace.Soffit.Points.Skip(1).SkipLast(1).Select(p => p.Along).Where(p => p < end), end];
        for (int i = 0; i + 1 < ends.Length; i++)
        {
            double middle = brace.At((Math.Max(0, ends[i]) + Math.Min(brace.Wide, ends[i + 1])) / 2);
            var bearer = chart.Plan.Surface.At(middle).Raised(-deck - (spec.Bearer / 2));
            double grade = Point2.Dot(new(bearer.X, bearer.Y), brace.Ahead);
            double turn = Math.Clamp((bearer.At(brace.Origin) - line.Deep - line.Foot) / (line.Rise - grade), ends[i], ends[i + 1]);
            foreach (var (a, b, upper) in new[] { (ends[i], turn, lower.Raised(line.Deep)), (turn, ends[i + 1], bearer) }.Where(p => p.Item2 - p.Item1 > Hair))
            {
                yield return Layer.Added(brace.Ring(a, b, spec.Brace / 2), lower, upper, paint);
            }
        }
    }
}
