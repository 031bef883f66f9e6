using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>A fence as pictures show it: rails, pales and posts, and its gates open. Sizes at full size, from memory; nothing is made from them.</summary>
internal static class FenceLooks
{
    public static IReadOnlyList<ShownBody> Of(PlanFence fence, FeatureSite site)
    {
        double M(double fullSize) => site.Ground.Scale.ToModel(fullSize);
        var bays = fence.Bays.Select((bay, i) => new Stretch(bay.Kind, fence.Posts[i].Place, fence.Posts[i + 1].Place)).ToArray();
        var panels = bays.Where(b => b.Kind != FenceBayKind.Gate).ToArray();
        var shown = new List<ShownBody>();
        if (panels.Length > 0)
        {
            var posts = new List<PlanPlace>();
            foreach (var panel in panels)
            {
                // A panel begins where the one before it ends, unless a gate stands between them.
                if (posts.Count == 0 || posts[^1] != panel.From)
                {
                    posts.Add(panel.From);
                }

                posts.Add(panel.To);
            }

            shown.Add(new(Finish.Timber, [.. panels.SelectMany(p => Panel(site, p.From, p.To))]));
            shown.Add(new(Finish.Timber, [.. posts.ConvertAll(p => Upright(p, FeatureSite.Oblong(site.ToLayout(p), new(1, 0), M(130), M(130)), 0, M(1350)))]));
        }

        // A gate stands open: what is between its posts is free.
        foreach (var (_, from, to) in bays.Where(b => b.Kind == FenceBayKind.Gate))
        {
            var inward = new PlanPlace(from.Chainage, from.Reach - (site.ToLayout(to) - site.ToLayout(from)).Length);
            shown.Add(new(Finish.Cream, [.. new[] { 150.0, 600, 1050 }.Select(up => new ShownBeam(from, inward, M(up), M(60), M(80)))]) { Name = "gate" });
        }

        return shown;
    }

    // From one post to the next.
    private sealed record Stretch(FenceBayKind Kind, PlanPlace From, PlanPlace To);

    private static IEnumerable<ShownShape> Panel(FeatureSite site, PlanPlace from, PlanPlace to)
    {
        double M(double fullSize) => site.Ground.Scale.ToModel(fullSize);
        foreach (double up in (double[])[300, 950])
        {
            yield return new ShownBeam(from, to, M(up), M(50), M(90));
        }

        var way = site.ToLayout(to) - site.ToLayout(from);
        var along = way * (1 / way.Length);
        int pales = Math.Max(1, (int)(way.Length / M(150)));
        for (int i = 1; i < pales; i++)
        {
            double share = (double)i / pales;
            yield return Upright(new(from, to, share), FeatureSite.Oblong(site.ToLayout(from) + (way * share), along, M(80), M(24)), M(80), M(1200));
        }
    }

    private static ShownLoft Upright(ShownFoot foot, Point2[] ring, double low, double high) => new(foot, ring, low, ring, high);
}
