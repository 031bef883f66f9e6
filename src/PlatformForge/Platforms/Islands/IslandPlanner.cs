using PlatformForge.Platforms.Faces;
using PlatformForge.Platforms.Furniture;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Islands;

/// <summary>
/// Plans a platform with a face on either side. Each face is planned on its own track as that of a side platform is. The ends of the second
/// lie straight across from those of the first, and so do its ramp heads where it states none of its own; the body between both is laid on the lines across.
/// </summary>
internal static class IslandPlanner
{
    // The second face's ramps move with its edge, and its edge with its ramps: each round brings them a hundred times nearer.
    private const int Rounds = 3;

    /// <param name="first">The platform by its first face.</param>
    /// <param name="second">The same by its second face, its ends where they are about.</param>
    /// <param name="shaped">The plan, if it came so far, with whatever fault is left in it.</param>
    public static Outcome<PlatformPlan> Plan(PlatformRequest first, PlatformRequest second, out PlatformPlan? shaped)
    {
        shaped = null;
        var findings = new List<Finding>();
        if (Faces(first, second, findings) is not var (near, far, across))
        {
            return Outcome.Fault<PlatformPlan>(findings);
        }

        var spec = first.Spec with { OtherFace = far.Spec };
        if (Body(first, second, (near, far, across), findings) is not { } body)
        {
            return Outcome.Fault<PlatformPlan>(findings);
        }

        var waist = WaistFinder.Of(near, far, body);
        spec = WidthRule.Check(spec, first.Site, waist, findings);
        if (PlanAssembly.HasErrors(findings))
        {
            return Outcome.Fault<PlatformPlan>(findings);
        }

        var placed = first with { Spec = FacePlacing.OnSpine(spec, near, far, body, findings) };
        var furniture = FurniturePlanner.Plan(placed, near, body, findings);
        StandingRule.Check(second, near, far, new(near.Chart, near.Side, body.Across), furniture, findings);
        if (PlanAssembly.HasErrors(findings))
        {
            return Outcome.Fault<PlatformPlan>(findings);
        }

        var plan = PlanAssembly.Assembled(placed.Spec, first.Site, [near, far], body, furniture);
        plan = PlanAssembly.OnBents(FacingRoom.Held(plan with { Surface = HingedDeck.Uncut(plan), Waist = waist }), furniture.Ribs.Bents,
            [.. plan.Spec.StatedCuts]);
        shaped = plan;
        RampRules.Feet(plan, findings);
        TrestleRule.Feet(plan, findings);
        return PlanAssembly.HasErrors(findings) ? Outcome.Fault<PlatformPlan>(findings) : Outcome.Of(plan, findings);
    }

    // What carries coordinates between both faces, unless one overtakes the other.
    private static BodyPlan? Body(
        PlatformRequest first, PlatformRequest second, (FacePlan Near, FacePlan Far, CrossLadder Across) faces, List<Finding> findings)
    {
        var (body, turned) = BodyCarrier.Carry(faces.Near, faces.Far, faces.Across);
        if (body is null)
        {
            findings.Add(IslandFindings.Overtaken(second.Spec.FaceKey, turned, faces.Far.Spec.Track));
        }
        else if (second.Site.RailTop != first.Site.RailTop)
        {
            findings.Add(IslandFindings.Heights(first.Spec with { OtherFace = faces.Far.Spec }, first.Site, second.Spec.Height));
        }

        return body;
    }

    private static (FacePlan Near, FacePlan Far, CrossLadder Across)? Faces(PlatformRequest first, PlatformRequest second, List<Finding> findings)
    {
        var profile = RampRules.Profile(first.Spec, first.Site, []);
        if (FacePlanner.Plan(first, profile, findings) is not { } near)
        {
            return null;
        }

        double widest = first.Budget.Margin + Widest(second);
        FacePlan? far = null;
        FarHeights? heights = null;
        for (int round = 0; round < Rounds; round++)
        {
            var told = new List<Finding>();
            heights = new FarRamps(first, second, near, far is null ? _ => widest : far.CopingFront.At, told).Find();
            far = heights is null ? null : FacePlanner.Plan(second, heights.Profile, told);
            if (far is null || round == Rounds - 1)
            {
                findings.AddRange(told);
            }

            if (far is null)
            {
                return null;
            }
        }

        return (near, far!, IslandTracks.Ladder(first.Spec.Face, first.Chart, second.Spec.Face, second.Chart, first.Site, heights!.Pins));
    }

    // A first guess of the second edge: as far out as anything on its track reaches.
    private static double Widest(PlatformRequest second) =>
        second.Envelope.Parts.Where(p => p.IsFaced).Select(p => p.Towards(second.Spec.Face.Side).Max()).DefaultIfEmpty(0).Max();
}
