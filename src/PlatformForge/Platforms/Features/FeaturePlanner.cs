using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Features;

/// <summary>Plans all features of a platform and holds them against one another and against what runs.</summary>
internal static class FeaturePlanner
{
    /// <summary>Features with their keys: one of a kind by its word, several numbered in the order asked.</summary>
    public static IEnumerable<(FeatureSpec Feature, string Key)> Keyed(PlatformSpec spec)
    {
        var counted = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var feature in spec.Features)
        {
            int index = counted.GetValueOrDefault(feature.Word);
            counted[feature.Word] = index + 1;
            yield return (feature, feature.IsSingle ? $"{spec.Key}.{feature.Word}" : PlatformFindings.Indexed(spec.Key, feature.Word, index));
        }
    }

    /// <summary>All of them, in the order asked; whatever is wrong with them goes into the findings.</summary>
    public static IReadOnlyList<PlannedFeature> Plan(PlatformRequest request, FacePlan face, BodyPlan lines, SlabLayout slabs, List<Finding> findings)
    {
        PlannedFeature[] planned = [.. Keyed(request.Spec).Select(f => f.Feature.Plan(new(
            request.Spec,
            request.Site,
            new(request.Chart, request.Spec.Face.Side, lines.Across),
            lines,
            face.Profile,
            slabs,
            f.Key)))];
        findings.AddRange(planned.SelectMany(p => p.Findings));
        Overlaps(request.Spec.Face, [.. planned.SelectMany(p => p.Keepouts).Where(k => k.Holds(KeptOff.Features))], findings);
        Fouls(request, lines, face.Requirement, planned, findings);
        return planned;
    }

    /// <summary>The features of a plan, once its ribs stand between its cuts.</summary>
    public static IReadOnlyList<PlannedFeature> AmongRibs(PlatformPlan plan, IReadOnlyList<PlanRib> ribs, IReadOnlyList<double> cuts, List<Finding> findings)
    {
        var (spec, slabs) = (plan.Spec, SlabLayout.Of(plan.Spec, plan.Profile));
        PlannedFeature[] planned =
        [
            .. Keyed(spec).Zip(
                plan.Features,
                (f, before) => f.Feature.AmongRibs(before, new(spec, plan.Site, plan.Spine, plan.Body, plan.Profile, slabs, f.Key), ribs, cuts)),
        ];
        findings.AddRange(planned.Zip(plan.Features, (now, before) => now.Findings.Except(before.Findings)).SelectMany(f => f));
        return planned;
    }

    private static void Overlaps(FaceSpec face, IReadOnlyList<Keepout> places, List<Finding> findings)
    {
        // Two features that meet in several places are told once.
        var order = places.OrderBy(p => p.From).ToArray();
        var told = new HashSet<(string, string)>();
        for (int i = 0; i < order.Length; i++)
        {
            for (int j = i + 1; j < order.Length && order[j].From < order[i].To; j++)
            {
                if (order[i].Overlaps(order[j]) && order[i].Key != order[j].Key && !(order[i].MayMeet && order[j].MayMeet)
                    && told.Add((order[i].Key, order[j].Key)) && told.Add((order[j].Key, order[i].Key)))
                {
                    findings.Add(PlaceFindings.Overlap(order[i], order[j], Free(face, places, order[i], order[j])));
                }
            }
        }
    }

    // The nearest place along the platform at which one of two stands clear of everything; the nearer of theirs.
    private static (Keepout Which, double Chainage)? Free(FaceSpec face, IReadOnlyList<Keepout> places, params Keepout[] two)
    {
        var free = new List<(double Far, Keepout Which, double Chainage)>();
        foreach (var one in two.Where(o => o.Place is not null))
        {
            double half = (one.To - one.From) / 2;
            (double, double)[] taken = [.. places.Where(p => p != one && one.Near < p.Far && p.Near < one.Far).Select(p => (p.From - half, p.To + half))];
            if (FreePlace.Nearest(one.Middle, taken, face.From + half + FeatureSite.LeastLand, face.To - half - FeatureSite.LeastLand) is { } place)
            {
                free.Add((Math.Abs(place - one.Middle), one, place));
            }
        }

        return free.Count == 0 ? null : free.MinBy(f => f.Far) is var (_, which, chainage) ? (which, chainage) : null;
    }

    // What stands on the deck is held to vehicles at all heights, whatever may pass over the coping.
    private static void Fouls(PlatformRequest request, BodyPlan lines, RequirementTrace trace, IEnumerable<PlannedFeature> planned, List<Finding> findings)
    {
        double[] full = Edges.CopingRequirement.FullHeight(request, trace);
        double spacing = trace.Stations[1] - trace.Stations[0], margin = request.Budget.Margin;
        foreach (var stands in planned.SelectMany(p => p.Stands))
        {
            int first = Math.Clamp((int)Math.Floor((stands.From - trace.Stations[0]) / spacing), 0, full.Length - 1);
            int last = Math.Clamp((int)Math.Ceiling((stands.To - trace.Stations[0]) / spacing), first, full.Length - 1);
            double needed = full.AsSpan(first, last - first + 1).ToArray().Max() + margin;
            bool told = findings.Exists(f => f.Severity == Severity.Error && f.Key.StartsWith(stands.Key, StringComparison.Ordinal));
            if (stands.Near < needed && !told)
            {
                findings.Add(PlatformFindings.FurnitureFouls(
                    stands.Key,
                    stands.Name,
                    stands.Middle,
                    needed - stands.Near,
                    Farther(stands, needed - stands.Near)));
            }
        }
    }

    // The inset, to a thousandth, at which something stands so much farther from the edge; null beyond the back.
    private static Cure? Farther(Standing stands, double by) =>
        stands.Inset is not { } inset ? null
        : inset.From == InsetFrom.Edge ? Cure.Set(inset.Key, Math.Ceiling((inset.Mm + by) * 1000) / 1000)
        : inset.Mm - by >= 0 ? Cure.Set(inset.Key, Math.Floor((inset.Mm - by) * 1000) / 1000) : null;
}
