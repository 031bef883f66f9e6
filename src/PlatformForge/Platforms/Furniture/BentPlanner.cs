using PlatformForge.Platforms.Plans;

namespace PlatformForge.Platforms.Furniture;

/// <summary>
/// The bents of a platform: where ribs across were set for them, at ends that have no wall, and a pair of them at each cut, so that every section stands by
/// itself.
/// </summary>
internal static class BentPlanner
{
    // A bent shorter along the platform than this, mm, is what a cut left of one.
    private const double Sliver = 0.01;

    public static PlanTrestle? Of(PlatformPlan plan, IReadOnlyList<double> cuts, RibPitch pitch)
    {
        if (plan.Spec.Trestle is not { } trestle || TrestleStretch.Of(plan.Spec, plan.Profile) is not { } stretch)
        {
            return null;
        }

        var bents = plan.Ribs.Where(r => r.Kind != RibKind.Longitudinal && stretch.Holds((r.From + r.To) / 2))
            .Select(r => (r.From, r.To, Cut: (double?)null)).ToList();
        var facets = new FacetStretch(plan.Spine, plan.Body.WallFace, plan.Body.Back);
        foreach (double cut in cuts)
        {
            double along = trestle.Post / facets.Least(cut - trestle.Post, cut + trestle.Post);
            bents.AddRange(new[] { (From: cut - along, To: cut, Cut: (double?)cut), (cut, cut + along, cut) }
                .Select(b => b with { From = Math.Max(b.From, stretch.From), To = Math.Min(b.To, stretch.To) }).Where(b => b.To - b.From > Sliver));
        }

        return new(stretch, PostRow.Of(trestle, plan.Body), [.. bents.OrderBy(b => b.From).Select((b, i) => new PlannedBent(i + 1, b.From, b.To, b.Cut))])
        {
            Pitch = pitch,
        };
    }
}
