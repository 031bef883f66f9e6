using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies.Walls;

namespace PlatformForge.Sections.Marks;

/// <summary>A rectangle of plan coordinates under the deck that nothing stands on, mm.</summary>
internal sealed record Patch(double From, double To, double Near, double Far)
{
    /// <summary>Kept free between lettering and whatever stands beside it, mm.</summary>
    public const double Border = 1;

    public double Length => To - From;

    public double Width => Far - Near;

    public double Area => Length > 0 && Width > 0 ? Length * Width : 0;

    /// <summary>The largest part of this patch beside an obstacle.</summary>
    public Patch Beside(Patch obstacle)
    {
        if (obstacle.To <= From || obstacle.From >= To || obstacle.Far <= Near || obstacle.Near >= Far)
        {
            return this;
        }

        Patch[] parts = [this with { To = obstacle.From }, this with { From = obstacle.To }, this with { Far = obstacle.Near },
            this with { Near = obstacle.Far }];
        return parts.MaxBy(p => p.Area)!;
    }

    /// <summary>Clear patches under the deck between two chainages, the bays between walls and ribs less what stands in them, largest first.</summary>
    public static IReadOnlyList<Patch> Clear(PlatformPlan plan, double from, double to)
    {
        var (startToe, endToe) = WallBlocks.Toes(plan);
        (from, to) = (Math.Max(from, startToe), Math.Min(to, endToe));
        var keepouts = plan.Keepouts.Where(k => k.Holds(KeptOff.Lettering) && k.To + Border > from && k.From - Border < to).ToArray();
        var along = plan.Ribs.Where(r => r.Kind == RibKind.Longitudinal).ToArray();

        // The underside bends at a ramp's head, which parts bays like a rib.
        var across = new List<(double From, double To)> { (plan.Profile.StartHead, plan.Profile.StartHead), (plan.Profile.EndHead, plan.Profile.EndHead) };
        foreach (var rib in plan.Ribs.Where(r => r.Kind != RibKind.Longitudinal))
        {
            across.Add((rib.From, rib.To));
        }

        across.RemoveAll(r => r.To <= from || r.From >= to);
        across.Sort(static (a, b) => a.From != b.From ? a.From.CompareTo(b.From) : a.To.CompareTo(b.To));
        across.Add((to, to));
        var patches = new List<Patch>();
        double start = from;
        foreach (var (end, next) in across)
        {
            if (end - start > 2 * Border)
            {
                patches.AddRange(Bay(plan, along, keepouts, start, end));
            }

            start = Math.Max(start, next);
        }

        return [.. patches.Where(p => p.Area > 0).OrderByDescending(p => p.Area).ThenBy(p => p.From)];
    }

    private static IEnumerable<Patch> Bay(PlatformPlan plan, PlanRib[] along, Keepout[] keepouts, double start, double end)
    {
        double middle = (start + end) / 2;

        // Under the coping's back the underside has a step where the coping is thicker than the deck.
        bool stepped = plan.Spec.Coping.Thickness > plan.Spec.Deck.Thickness;
        double near = Math.Max(Most(plan.WallBack, start, end), stepped ? Most(plan.CopingBack, start, end) : 0);
        near = plan.Trestle is { Rows: var posts } ? Math.Max(near, Most(posts[0].Far, start, end)) : near;
        var ribs = along.Where(r => r.From < end && r.To > start).OrderBy(r => r.Near.At(middle));
        foreach (var rib in ribs)
        {
            yield return Free(keepouts, new(start, end, near, Least(rib.Near, start, end)));
            near = Most(rib.Far, start, end);
        }

        double far = Least(plan.BackWallFace, start, end);
        far = plan.Trestle is { Rows: var rows } ? Math.Min(far, Least(rows[^1].Near, start, end)) : far;
        yield return Free(keepouts, new(start, end, near, stepped && plan.Body.FarCopingBack is { } coping ? Math.Min(far, Least(coping, start, end)) : far));
    }

    private static Patch Free(Keepout[] keepouts, Patch patch)
    {
        foreach (var k in keepouts)
        {
            patch = patch.Beside(new(k.From - Border, k.To + Border, k.Near - Border, k.Far + Border));
        }

        return new(patch.From + Border, patch.To - Border, patch.Near + Border, patch.Far - Border);
    }

    private static double Most(PlanLine line, double from, double to) => Sampled(line, from, to).Max();

    private static double Least(PlanLine line, double from, double to) => Sampled(line, from, to).Min();

    private static IEnumerable<double> Sampled(PlanLine line, double from, double to)
    {
        // Stations increase: those between are found, not looked for one by one.
        int first = Array.BinarySearch(line.Stations, from);
        for (int i = first < 0 ? ~first : first + 1; i < line.Stations.Length && line.Stations[i] < to; i++)
        {
            yield return line.Reach[i];
        }

        yield return line.At(from);
        yield return line.At(to);
    }
}
