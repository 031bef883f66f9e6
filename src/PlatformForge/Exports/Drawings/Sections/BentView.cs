using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids.Bodies.Trestles;

namespace PlatformForge.Exports.Drawings.Sections;

/// <summary>A bent as seen along the platform: reach, and height over the baseboard, mm.</summary>
internal static class BentView
{
    /// <summary>Outlines of its parts, those behind first: braces or webs, posts, sill, pads, cap.</summary>
    /// <param name="plan">The platform.</param>
    /// <param name="s">Chainage, mm.</param>
    public static IEnumerable<Point2[]> Of(PlatformPlan plan, double s)
    {
        var spec = plan.Spec.Trestle!;
        var rows = plan.Trestle!.Rows.Select(r => (Near: plan.SquareReach(r.Near, s), Far: plan.SquareReach(r.Far, s))).ToArray();
        double deck = plan.Spec.Deck.Thickness, first = rows[0].Near, last = rows[^1].Far;
        double Under(double t) => plan.SquareTopAt(s, t) - deck;
        for (int i = 0; i + 1 < rows.Length; i++)
        {
            double one = Under(rows[i].Far), next = Under(rows[i + 1].Near), fall = (next - one) / (rows[i + 1].Near - rows[i].Far);
            foreach (var part in Between(spec, rows[i].Far, rows[i + 1].Near, Math.Min(one, next) - spec.Cap, fall))
            {
                yield return part;
            }
        }

        foreach (var (near, far) in rows)
        {
            yield return [new(near, 0), new(far, 0), new(far, Under(far)), new(near, Under(near))];
            if (spec.Pad > 0)
            {
                double a = near == first ? near : near - spec.Pad, b = far == last ? far : far + spec.Pad;
                yield return [new(a, 0), new(b, 0), new(b, spec.PadHeight), new(a, spec.PadHeight)];
            }
        }

        if (spec.Sill > 0)
        {
            yield return [new(first, 0), new(last, 0), new(last, spec.Sill), new(first, spec.Sill)];
        }

        yield return [new(first, Under(first) - spec.Cap), new(last, Under(last) - spec.Cap), new(last, Under(last)), new(first, Under(first))];
    }

    /// <summary>What stands under the deck in plan, between its walls: ribs, or caps and bearers, and filled the posts of bents.</summary>
    public static IEnumerable<(PlanLine Near, PlanLine Far, double From, double To, Fill? Fill)> Below(PlatformPlan plan) =>
        plan.Ribs.Select(r => (r.Near, r.Far, r.From, r.To, (Fill?)null)).Concat(
            from bent in plan.Trestle?.Bents ?? []
            from row in plan.Trestle!.Rows
            select (row.Near, row.Far, bent.From, bent.To, (Fill?)new Fill(HouseStyle.Quiet, 0.5)));

    // What lies between two posts, to the underside of the cap.
    private static IEnumerable<Point2[]> Between(TrestleSpec spec, double left, double right, double under, double fall)
    {
        if (spec.Braces == BraceForm.Web)
        {
            yield return [new(left, 0), new(right, 0), new(right, under), new(left, under)];
        }

        if (spec.Braces is BraceForm.Cross or BraceForm.Single && BraceLine.Of(spec, right - left, under, fall) is var (foot, rise, run, deep))
        {
            double upper = Math.Max(0, (under - foot - deep) / rise);
            Point2[] brace = [new(0, foot), new(run, under), new(upper, under), new(0, Math.Min(under, foot + deep))];
            yield return Array.ConvertAll(brace, p => new Point2(left + p.X, p.Y));
            if (spec.Braces == BraceForm.Cross)
            {
                yield return Array.ConvertAll(brace, p => new Point2(right - p.X, p.Y));
            }
        }
    }
}
