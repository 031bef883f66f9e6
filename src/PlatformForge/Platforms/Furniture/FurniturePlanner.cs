using PlatformForge.Units;

namespace PlatformForge.Platforms.Furniture;

/// <summary>What stands on and under a deck.</summary>
internal sealed record PlannedFurniture(IReadOnlyList<PlanSocket> Sockets, IReadOnlyList<PlanHole> Posts, IReadOnlyList<PlanRib> Ribs, IReadOnlyList<CutCandidate> Cuts, WhiteLineBand? Line);

/// <summary>Plans furniture first, then the ribs and cuts that keep off it.</summary>
internal static class FurniturePlanner
{
    public static PlannedFurniture Plan(PlatformRequest request, HeightProfile profile, PlanLines lines, SlabLayout slabs, RequirementTrace trace, List<Finding> findings)
    {
        var (spec, chart) = (request.Spec, request.Chart);
        var sockets = SocketPlanner.Plan(spec, request.Site, lines, profile, findings);
        IReadOnlyList<PlanHole> posts = spec.Fence is { } fence ? new FencePlanner(spec, fence, lines, chart, findings).Plan() : [];
        var places = Places(request, sockets, posts);
        Overlaps(places, findings);
        Fouls(request, lines, trace, places, findings);
        var ribs = new RibPlanner(spec, lines, slabs, chart, findings).Plan(places);
        var cuts = CutPlanner.Plan(spec, profile, slabs, ribs, places, findings);
        return new(sockets, posts, ribs, cuts, Line(spec, profile, lines));
    }

    private static List<Keepout> Places(PlatformRequest request, IReadOnlyList<PlanSocket> sockets, IReadOnlyList<PlanHole> posts)
    {
        var (spec, chart) = (request.Spec, request.Chart);
        var places = new List<Keepout>();
        for (int i = 0; i < sockets.Count; i++)
        {
            places.Add(SocketPlanner.Keepout(sockets[i], PlatformFindings.Indexed(spec.Key, "sockets", i), chart, spec.Face.Side));
        }

        foreach (var post in posts)
        {
            double radius = post.Diameter / 2, along = radius / SocketPlanner.Stretch(chart, spec.Face.Side, post.Chainage, post.Reach);
            places.Add(new(post.Name, $"{spec.Key}.fence.pitch", post.Chainage - along, post.Chainage + along, post.Reach - radius, post.Reach + radius));
        }

        return places;
    }

    private static void Overlaps(List<Keepout> places, List<Finding> findings)
    {
        var order = places.OrderBy(p => p.From).ToArray();
        for (int i = 0; i < order.Length; i++)
        {
            for (int j = i + 1; j < order.Length && order[j].From < order[i].To; j++)
            {
                if (order[i].Overlaps(order[j]))
                {
                    findings.Add(PlatformFindings.Overlap(order[i].Key, order[i].Name, order[j].Name, order[j].From, order[i].To - order[j].From));
                }
            }
        }
    }

    // What stands on the deck is held to vehicles at all heights, whatever may pass over the coping; the back to what runs behind it.
    private static void Fouls(PlatformRequest request, PlanLines lines, RequirementTrace trace, List<Keepout> places, List<Finding> findings)
    {
        double[] full = Edges.CopingRequirement.FullHeight(request, trace), behind = Edges.CopingRequirement.Behind(request, trace);
        double spacing = trace.Stations[1] - trace.Stations[0], margin = request.Budget.Margin;
        foreach (var place in places)
        {
            int first = Math.Clamp((int)Math.Floor((place.From - trace.Stations[0]) / spacing), 0, full.Length - 1);
            int last = Math.Clamp((int)Math.Ceiling((place.To - trace.Stations[0]) / spacing), first, full.Length - 1);
            double needed = full.AsSpan(first, last - first + 1).ToArray().Max() + margin;
            bool told = findings.Exists(f => f.Severity == Severity.Error && f.Key.StartsWith(place.Key, StringComparison.Ordinal));
            double standing = place.Near + place.Below;
            if (standing < needed && !told)
            {
                findings.Add(PlatformFindings.FurnitureFouls(place.Key, place.Name, place.Middle, needed - standing));
            }
        }

        double worst = 0, worstAt = 0;
        for (int i = 0; i < behind.Length; i++)
        {
            double over = lines.Back.At(trace.Stations[i]) + margin - behind[i];
            if (over > worst)
            {
                (worst, worstAt) = (over, trace.Stations[i]);
            }
        }

        if (worst > 0)
        {
            findings.Add(PlatformFindings.BackFouls($"{request.Spec.Key}.deck.width", worstAt, worst, request.Spec.Deck.Width - worst));
        }
    }

    private static WhiteLineBand? Line(PlatformSpec spec, HeightProfile profile, PlanLines lines) =>
        spec.WhiteLine is { } line && profile.EndHead > profile.StartHead
            ? new(profile.StartHead, profile.EndHead, lines.CopingFront.Shifted(line.Inset), lines.CopingFront.Shifted(line.Inset + line.Width), line.GrooveDepth)
            : null;
}
