using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;

namespace PlatformForge.Solids.Bodies.Trestles;

/// <summary>
/// What lies between the posts of a bent. A brace rises from the foot of a post to the cap, at 45 degrees, or steeper where the next post is nearer than that
/// takes: so printed deck down it grows from the cap, and nothing of it hangs free. Each is a block between two planes that rise as it does, and a second one
/// where its upper side has come into the cap.
/// </summary>
internal static class BraceBlocks
{
    // How far its lower side goes on within the cap, mm.
    private const double IntoCap = 0.1;

    // A run that is shorter than its bay by less, mm, is all of it.
    private const double Hair = Tolerances.SameLength;

    public static void Add(FacetedPlan chart, TopSurface top, PlannedBent bent, (double From, double To) room, List<ColumnBlock> blocks)
    {
        var spec = chart.Plan.Spec.Trestle!;
        var rows = chart.Plan.Trestle!.Rows;
        for (int i = 0; i + 1 < rows.Count && spec.Braces != BraceForm.None; i++)
        {
            var bay = new Bay(chart, top, spec, bent.Middle, rows[i], rows[i + 1]);
            bool rising = spec.Braces != BraceForm.Single || (i + bent.Number) % 2 == 0, falling = spec.Braces == BraceForm.Cross || !rising;
            foreach (var block in spec.Braces == BraceForm.Web ? bay.Web() : bay.Braces(rising, falling))
            {
                var ring = chart.Within(block.Outline, Math.Max(room.From, bent.From), Math.Min(room.To, bent.To));
                if (ring.Length > 0)
                {
                    blocks.Add(block with { Outline = ring });
                }
            }
        }
    }

    /// <summary>The clear room between two posts of a bent, in its plane.</summary>
    private sealed class Bay
    {
        private readonly Point2 origin, ahead;
        private readonly double left, right, under, half, fall;
        private readonly TrestleSpec spec;

        public Bay(FacetedPlan chart, TopSurface top, TrestleSpec spec, double middle, PostRow near, PostRow far)
        {
            this.spec = spec;
            origin = chart.On(near.Near, middle);
            Point2 to = chart.On(far.Far, middle);
            ahead = (to - origin) * (1 / (to - origin).Length);
            (left, right) = (Point2.Dot(chart.On(near.Far, middle) - origin, ahead), Point2.Dot(chart.On(far.Near, middle) - origin, ahead));
            half = spec.Brace / 2;
            var surface = top.Along(middle);
            double lowest = Ring(left, right).Min(surface.At);
            fall = Point2.Dot(new(surface.X, surface.Y), ahead);
            under = lowest - chart.Plan.Spec.Deck.Thickness - spec.Cap;
        }

        public IEnumerable<ColumnBlock> Web()
        {
            double into = BraceLine.Into(spec);
            yield return Layer.Added(Ring(left - into, right + into), Layer.Baseboard, new(under + (spec.Cap / 2)), TrestleBlocks.PaintOf(spec));
        }

        public IEnumerable<ColumnBlock> Braces(bool rising, bool falling)
        {
            if (BraceLine.Of(spec, right - left, under, fall) is not var (foot, rise, run, deep))
            {
                yield break;
            }

            double into = BraceLine.Into(spec), inCap = under + (spec.Cap / 2);

            // Measured from the post's face; the upper side comes to the middle of the cap before the lower one has come to its underside, or not at all.
            double end = run > right - left - Hair ? run + into : run + IntoCap, turn = Math.Clamp((inCap - deep - foot) / rise, -into, end);
            foreach (bool up in (bool[])[true, false])
            {
                if (!(up ? rising : falling))
                {
                    continue;
                }

                var lower = Plane(up, foot, rise);
                if (turn > -into)
                {
                    yield return Layer.Added(Along(up, -into, turn), lower, lower.Raised(deep), TrestleBlocks.PaintOf(spec));
                }

                if (end > turn)
                {
                    yield return Layer.Added(Along(up, turn, end), lower, new(inCap), TrestleBlocks.PaintOf(spec));
                }
            }
        }

        // A ring from one distance behind the face of the post that a brace rises from to another.
        private Point2[] Along(bool up, double a, double b) => up ? Ring(left + a, left + b) : Ring(right - b, right - a);

        // The plane that has a height at that face and rises away from it.
        private HeightPlane Plane(bool up, double foot, double rise)
        {
            var slope = ahead * (up ? rise : -rise);
            return new(foot - Point2.Dot(slope, Place(up ? left : right, 0)), slope.X, slope.Y);
        }

        private Point2[] Ring(double a, double b) => [Place(a, -half), Place(b, -half), Place(b, half), Place(a, half)];

        private Point2 Place(double along, double aside) => origin + (ahead * along) + (ahead.Left * aside);
    }
}
