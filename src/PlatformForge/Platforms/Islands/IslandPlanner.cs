using PlatformForge.Platforms.Furniture;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Islands;

/// <summary>
/// Plans a platform with a face on either side. Each face is planned on its own track as that of a side platform is. The ends of the second, and its
/// ramp heads,
/// lie straight across from those of the first, found on its own edge; the body between both is told on the chart of the first.
/// </summary>
internal static class IslandPlanner
{
    // The second face's ends move with its edge, and its edge with its ends: each round brings them a hundred times nearer.
    private const int Rounds = 3;

    /// <param name="first">The platform by its first face.</param>
    /// <param name="second">The same by its second face, its ends where they are about.</param>
    /// <param name="shaped">The plan, if it came so far, with whatever fault is left in it.</param>
    public static Outcome<PlatformPlan> Plan(PlatformRequest first, PlatformRequest second, out PlatformPlan? shaped)
    {
        shaped = null;
        var findings = new List<Finding>();
        var (near, far) = Faces(first, second, findings);
        if (near is null || far is null)
        {
            return Outcome.Fault<PlatformPlan>(findings);
        }

        var spec = first.Spec with { OtherFace = far.Spec };
        if (BodyCarrier.Overtaken(near, far) is { } turned)
        {
            findings.Add(IslandFindings.Overtaken(second.Spec.FaceKey, turned, far.Spec.Track));
            return Outcome.Fault<PlatformPlan>(findings);
        }

        var body = BodyCarrier.Carry(near, far);
        var waist = WaistFinder.Of(near, far, body);
        spec = WidthRule.Check(spec, first.Site, waist, findings);
        if (PlatformPlanner.HasErrors(findings))
        {
            return Outcome.Fault<PlatformPlan>(findings);
        }

        var placed = first with { Spec = FacePlacing.OnSpine(spec, near, far, body, findings) };
        var furniture = FurniturePlanner.Plan(placed, near, body, findings);
        StandingRule.Check(second, near, far, furniture, findings);
        if (PlatformPlanner.HasErrors(findings))
        {
            return Outcome.Fault<PlatformPlan>(findings);
        }

        var plan = PlatformPlanner.Assembled(placed.Spec, first.Site, [near, far], body, furniture);
        plan = plan with { Surface = HingedDeck.Uncut(plan), Waist = waist };
        shaped = plan;
        RampRules.Feet(plan, findings);
        return PlatformPlanner.HasErrors(findings) ? Outcome.Fault<PlatformPlan>(findings) : Outcome.Of(plan, findings);
    }

    private static (FacePlan? Near, FacePlan? Far) Faces(PlatformRequest first, PlatformRequest second, List<Finding> findings)
    {
        var profile = RampRules.Profile(first.Spec, first.Site, []);
        if (FacePlanner.Plan(first, profile, findings) is not { } near)
        {
            return default;
        }

        FacePlan? far = null;
        for (int round = 0; round < Rounds; round++)
        {
            var told = new List<Finding>();
            Func<double, double> reach = far is null ? _ => first.Budget.Margin + Widest(second) : far.CopingFront.At;
            if (Across(first, second, near, reach) is not { } across)
            {
                findings.Add(IslandFindings.NoMeeting(second.Spec.FaceKey, first.Spec.Face, second.Spec.Face));
                return default;
            }

            var there = second with { Spec = second.Spec with { Face = second.Spec.Face with { From = across.From, To = across.To } } };
            far = FacePlanner.Plan(there, across, told);
            if (far is null || round == Rounds - 1)
            {
                findings.AddRange(told);
            }

            if (far is null)
            {
                return default;
            }
        }

        return (near, far);
    }

    // A first guess of the second edge: as far out as anything on its track reaches.
    private static double Widest(PlatformRequest second) =>
        second.Envelope.Parts.Where(p => p.IsFaced).Select(p => p.Towards(second.Spec.Face.Side).Max()).DefaultIfEmpty(0).Max();

    /// <summary>Heights along the second face: its ends and heads where the lines across at those of the first meet it, at the heights that the
    /// ramps' planes have there.</summary>
    private static HeightProfile? Across(PlatformRequest first, PlatformRequest second, FacePlan near, Func<double, double> reach)
    {
        var (spec, profile) = (first.Spec, near.Profile);
        var side = PlatformPlanner.Assembled(spec, first.Site, [near], PlanLines.Of(spec, near.CopingFront), PlannedFurniture.None);
        var surface = HingedDeck.Uncut(side);
        var places = new List<(double Chainage, double Height)>();
        foreach (double s in new[] { profile.From, profile.StartHead, profile.EndHead, profile.To })
        {
            var line = CrossLine.At(near.Chart, near.Side, s);
            double guess = second.Chart.Locate(line.Origin + (line.Away * near.CopingFront.At(s))).Chainage;
            if (line.Meet(second.Chart, second.Spec.Face.Side, reach, guess) is not { } met)
            {
                return null;
            }

            var plane = s >= profile.StartHead && s <= profile.EndHead ? null
                : (Geometry.HeightPlane?)surface.At(s == profile.To ? (s + profile.EndHead) / 2 : s);
            places.Add((met, plane?.At(second.Chart.PointAt(met, second.Spec.Face.Side.Outward(reach(met)))) ?? profile.Level));
        }

        if (places[0].Chainage > places[^1].Chainage)
        {
            places.Reverse();
        }

        return places[0].Chainage < places[1].Chainage + Tolerances.Rounding && places[2].Chainage < places[3].Chainage + Tolerances.Rounding
            && places[1].Chainage <= places[2].Chainage + Tolerances.Rounding
            ? new(places[0].Chainage, places[1].Chainage, places[2].Chainage, places[3].Chainage, places[0].Height, profile.Level, places[3].Height)
            : null;
    }
}
