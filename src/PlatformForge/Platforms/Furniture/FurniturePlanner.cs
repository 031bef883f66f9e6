using PlatformForge.Platforms.Features;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Furniture;

/// <summary>What stands on and under a deck.</summary>
internal sealed record PlannedFurniture(IReadOnlyList<PlannedFeature> Features, PlannedRibs Ribs, IReadOnlyList<CutCandidate> Cuts);

/// <summary>Plans features first, then the cuts that keep off them and the ribs that divide what is left.</summary>
internal static class FurniturePlanner
{
    /// <summary>What stands on a body, told along its first face.</summary>
    public static PlannedFurniture Plan(PlatformRequest request, FacePlan face, BodyPlan lines, List<Finding> findings)
    {
        var (spec, slabs) = (request.Spec, SlabLayout.Of(request.Spec, face.Profile));
        var features = FeaturePlanner.Plan(request, face, lines, slabs, findings);
        Keepout[] keepouts = [.. features.SelectMany(f => f.Keepouts)];
        var ribs = new RibPlanner(spec, lines, new(request.Chart, spec.Face.Side, lines.Across), [.. spec.StatedCuts], findings,
            TrestleStretch.Of(spec, face.Profile)).Plan(keepouts);
        Keepout[] uncut = [.. keepouts.Where(k => k.Holds(KeptOff.Cuts)).Select(k => OffBents(spec, k))];
        var cuts = CutPlanner.Plan(spec, face.Profile, slabs, ribs.Ribs, uncut, findings);
        return new(features, ribs, cuts);
    }

    // Beside a cut on a trestle stands a bent, which keeps off what ribs keep off.
    private static Keepout OffBents(PlatformSpec spec, Keepout keepout) =>
        spec.Trestle is { } trestle && keepout.Holds(KeptOff.RibsAcross) && !keepout.IsFloored
            ? keepout with { CutClear = Math.Max(keepout.CutClear, OnCurves * trestle.Post) } : keepout;

    // A post's length along the track on the inside of a curve, where chainage is shortest, to its length.
    private const double OnCurves = 1.2;

    /// <summary>The ribs of a plan that is cut into sections.</summary>
    public static PlannedRibs Divided(PlatformPlan plan, IReadOnlyList<double> cuts, List<Finding> findings, IEnumerable<Keepout> others) =>
        new RibPlanner(plan.Spec, plan.Body, plan.Spine, cuts, findings, TrestleStretch.Of(plan.Spec, plan.Profile)).Plan([.. plan.Keepouts, .. others]);
}
