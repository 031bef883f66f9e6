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
        IReadOnlyList<PlanHole> posts = spec.Fence is { } fence ? new FencePlanner(spec, fence, lines, chart, slabs.Breaks[1..^1], findings).Plan() : [];
        var single = HolePlanner.Plan(spec, lines, findings);
        var places = Places(request, sockets, posts, single);
        Overlaps(places, findings);
        Fouls(request, lines, trace, places, findings);
        var ribs = new RibPlanner(spec, lines, slabs, chart, findings).Plan(places);
        var cuts = CutPlanner.Plan(spec, profile, slabs, ribs, places, findings);
        return new([.. sockets.Select(s => s.Socket)], [.. posts, .. single.Select(h => h.Hole)], ribs, cuts, Line(spec, profile, lines));
    }

    private static List<Keepout> Places(PlatformRequest request, IReadOnlyList<(PlanSocket Socket, string Key)> sockets, IReadOnlyList<PlanHole> posts, IReadOnlyList<(PlanHole Hole, string Key)> single)
    {
        var (spec, chart) = (request.Spec, request.Chart);
        return
        [
            .. sockets.Select(s => SocketPlanner.Keepout(s.Socket, s.Key, chart, spec.Face.Side)),
            .. posts.Select(p => HolePlanner.Keepout(p, $"{spec.Key}.fence.pitch", chart, spec)),
            .. single.Select(h => HolePlanner.Keepout(h.Hole, h.Key, chart, spec)),
        ];
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
        double[] full = Edges.CopingRequirement.FullHeight(request, trace);
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

        Back(request, lines, trace, findings);
    }

    private static void Back(PlatformRequest request, PlanLines lines, RequirementTrace trace, List<Finding> findings)
    {
        var (behind, vehicles) = Edges.CopingRequirement.Behind(request, trace);
        double[] over = [.. trace.Stations.Select((s, i) => lines.Back.At(s) + request.Budget.Margin - behind[i])];
        int worst = Array.IndexOf(over, over.Max());
        if (over[worst] <= 0)
        {
            return;
        }

        var deck = request.Spec.Deck;
        double width = deck.Width - over[worst], least = request.Spec.Coping.Width + LeastWidth;
        string key = $"{request.Spec.Key}.deck.width";
        findings.Add(width >= least
            ? PlatformFindings.BackFouls(key, trace.Stations[worst], over[worst], vehicles[worst], width)
            : PlatformFindings.NoRoomBehind(
                key, trace.Stations[worst], over[worst], vehicles[worst], trace.Stations[Array.FindIndex(over, o => deck.Width - o < least)], trace.Stations[Array.FindLastIndex(over, o => deck.Width - o < least)]));
    }

    // Behind the coping a deck needs room for its back wall and a rib at least, mm.
    private const double LeastWidth = 5;

    private static WhiteLineBand? Line(PlatformSpec spec, HeightProfile profile, PlanLines lines) =>
        spec.WhiteLine is { } line && profile.EndHead > profile.StartHead
            ? new(profile.StartHead, profile.EndHead, lines.CopingFront.Shifted(line.Inset), lines.CopingFront.Shifted(line.Inset + line.Width), line.GrooveDepth)
            : null;
}
