using PlatformForge.Platforms.Rules;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Furniture;

/// <summary>What stands on and under a deck.</summary>
internal sealed record PlannedFurniture(IReadOnlyList<PlanSocket> Sockets, IReadOnlyList<PlanHole> Posts, PlanFence? Fence, PlannedRibs Ribs, IReadOnlyList<CutCandidate> Cuts);

/// <summary>Plans furniture first, then the cuts that keep off it and the ribs that divide what is left.</summary>
internal static class FurniturePlanner
{
    /// <summary>What stands on a body, told along its first face.</summary>
    public static PlannedFurniture Plan(PlatformRequest request, FacePlan face, BodyPlan lines, List<Finding> findings)
    {
        var (spec, chart, profile, trace) = (request.Spec, request.Chart, face.Profile, face.Requirement);
        var slabs = SlabLayout.Of(spec, profile);
        var sockets = SocketPlanner.Plan(spec, request.Site, lines, profile, findings);
        var fence = spec.Fence is { } asked ? new FencePlanner(request, asked, lines, profile, slabs, findings).Plan() : null;
        var posts = fence?.Posts ?? [];
        var single = HolePlanner.Plan(spec, request.Site, lines, profile, findings);
        var places = Places(request, sockets, posts, single);
        Overlaps(spec.Face, places, findings);
        Fouls(request, lines, trace, places, findings);
        var ribs = new RibPlanner(spec, lines, chart, [.. spec.StatedCuts], findings).Plan(places);
        var cuts = CutPlanner.Plan(spec, profile, slabs, ribs.Ribs, places, findings);
        return new([.. sockets.Select(s => s.Socket)], [.. posts, .. single.Select(h => h.Hole)], fence, ribs, cuts);
    }

    /// <summary>The ribs of a plan that is cut into sections.</summary>
    public static PlannedRibs Divided(PlatformPlan plan, IReadOnlyList<double> cuts, List<Finding> findings)
    {
        var (spec, chart) = (plan.Spec, plan.Chart);
        Keepout[] places =
        [
            .. plan.Sockets.Select(s => SocketPlanner.Keepout(s, "", chart, spec.Face.Side)),
            .. plan.PostHoles.Select(h => HolePlanner.Keepout(h, "", chart, spec)),
        ];
        return new RibPlanner(spec, plan.Body, chart, cuts, findings).Plan(places);
    }

    private static List<Keepout> Places(PlatformRequest request, IReadOnlyList<(PlanSocket Socket, string Key)> sockets, IReadOnlyList<PlanHole> posts, IReadOnlyList<(PlanHole Hole, string Key)> single)
    {
        var (spec, chart) = (request.Spec, request.Chart);
        return
        [
            .. sockets.Select(s => SocketPlanner.Keepout(s.Socket, s.Key, chart, spec.Face.Side) with { Inset = Inset(s.Key), Place = s.Key + ".chainage" }),
            .. posts.Select(p => HolePlanner.Keepout(p, $"{spec.Key}.fence.pitch", chart, spec) with { Inset = ($"{spec.Key}.fence.inset", spec.Fence!.Inset, InsetFrom.Back) }),
            .. single.Select(h => HolePlanner.Keepout(h.Hole, h.Key, chart, spec) with { Inset = Inset(h.Key), Place = h.Key + ".chainage" }),
        ];

        (string, double, InsetFrom) Inset(string key)
        {
            int socket = Enumerable.Range(0, spec.Sockets.Count).FirstOrDefault(i => PlatformFindings.Indexed(spec.Key, "sockets", i) == key, -1);
            int hole = Enumerable.Range(0, spec.Holes.Count).FirstOrDefault(i => PlatformFindings.Indexed(spec.Key, "holes", i) == key, -1);
            return socket >= 0 ? (key + ".inset", spec.Sockets[socket].Inset, spec.Sockets[socket].From) : (key + ".inset", spec.Holes[hole].Inset, spec.Holes[hole].From);
        }
    }

    private static void Overlaps(FaceSpec face, List<Keepout> places, List<Finding> findings)
    {
        var order = places.OrderBy(p => p.From).ToArray();
        for (int i = 0; i < order.Length; i++)
        {
            for (int j = i + 1; j < order.Length && order[j].From < order[i].To; j++)
            {
                if (order[i].Overlaps(order[j]))
                {
                    findings.Add(PlatformFindings.Overlap(order[i].Key, order[i].Name, order[j].Name, order[j].From, Free(face, places, order[i], order[j])));
                }
            }
        }
    }

    // The nearest place along the platform at which one of two stands clear of everything; the nearer of theirs.
    private static (string Name, string Key, double Chainage)? Free(FaceSpec face, List<Keepout> places, params Keepout[] two)
    {
        var free = new List<(double Far, string Name, string Key, double Chainage)>();
        foreach (var one in two.Where(o => o.Place is not null))
        {
            double half = (one.To - one.From) / 2;
            (double, double)[] taken = [.. places.Where(p => p != one && one.Near < p.Far && p.Near < one.Far).Select(p => (p.From - half, p.To + half))];
            if (FreePlace.Nearest(one.Middle, taken, face.From + half + SocketPlanner.LeastLand, face.To - half - SocketPlanner.LeastLand) is { } place)
            {
                free.Add((Math.Abs(place - one.Middle), one.Name, one.Place!, place));
            }
        }

        return free.Count == 0 ? null : free.MinBy(f => f.Far) is var (_, name, key, chainage) ? (name, key, chainage) : null;
    }

    // What stands on the deck is held to vehicles at all heights, whatever may pass over the coping; the back to what runs behind it.
    private static void Fouls(PlatformRequest request, BodyPlan lines, RequirementTrace trace, List<Keepout> places, List<Finding> findings)
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
                findings.Add(PlatformFindings.FurnitureFouls(place.Key, place.Name, place.Middle, needed - standing, Farther(place, needed - standing)));
            }
        }

        // What runs past a second face is that face's matter.
        if (!request.Spec.IsIsland)
        {
            BackRule.Check(request, lines, trace, findings);
        }
    }

    // The inset, to a thousandth, at which something stands so much farther from the edge; null beyond the back.
    private static Cure? Farther(Keepout place, double by) =>
        place.Inset is not { } inset ? null
        : inset.From == InsetFrom.Edge ? Cure.Set(inset.Key, Math.Ceiling((inset.Mm + by) * 1000) / 1000)
        : inset.Mm - by >= 0 ? Cure.Set(inset.Key, Math.Floor((inset.Mm - by) * 1000) / 1000) : null;
}
