using PlatformForge.Clearance.Rules;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Rules;

/// <summary>Holds finished plans to the published rules a project names. Its findings are warnings and one note, never errors.</summary>
public static class PublishedRules
{
    /// <summary>A warning for every published figure that a plan misses, then a note that says how many it was held to.</summary>
    /// <param name="name">Name of the set of rules; empty where a project names none.</param>
    /// <param name="gauge">Gauge of the model, mm.</param>
    /// <param name="plan">The finished plan.</param>
    public static IReadOnlyList<Finding> Hold(string name, double gauge, PlatformPlan plan) =>
        NationalRules.Find(name) is { } rules ? rules.HoldAndCount(Subject(gauge, plan)) : [];

    /// <summary>A plan as published rules look at it.</summary>
    public static RuleSubject Subject(double gauge, PlatformPlan plan)
    {
        var profile = plan.Profile;
        return new(plan.Site.Scale, gauge, plan.Spec.Height, [.. plan.Requirement.Stations.Where(s => s >= profile.From && s <= profile.To)
            .Select(s => new EdgePlace(s, plan.CopingFront.At(s), plan.Side.Bend(plan.Chart.At(s).Curvature)))])
        {
            Width = plan.Stations.Min(s => plan.Back.At(s) - plan.CopingFront.At(s)),
            RampGradient = Gradient(profile),
            Crossfall = plan.Spec.Deck.Crossfall > 0 ? 1 / plan.Spec.Deck.Crossfall : 0,
            Overhang = plan.Spec.Coping.Overhang,
            Standing = [.. plan.Openings.Select(o => Thing(o.Name, o.Middle.Chainage, o.Middle.Reach - (o.Across / 2)))],
            Key = plan.Spec.Key,
        };

        StandingThing Thing(string name, double s, double near)
        {
            double edge = plan.CopingFront.At(s);
            return new(name, new(s, edge, plan.Side.Bend(plan.Chart.At(s).Curvature)), near - edge);
        }
    }

    /// <summary>The steeper of the two ramps, rise over run.</summary>
    private static double? Gradient(HeightProfile profile)
    {
        double start = profile.StartHead > profile.From ? (profile.Level - profile.StartFoot) / (profile.StartHead - profile.From) : 0;
        double end = profile.EndHead < profile.To ? (profile.Level - profile.EndFoot) / (profile.To - profile.EndHead) : 0;
        double steepest = Math.Max(start, end);
        return steepest > 0 ? steepest : null;
    }
}
