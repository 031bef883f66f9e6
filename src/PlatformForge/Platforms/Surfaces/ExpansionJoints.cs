using PlatformForge.Platforms.Plans;

namespace PlatformForge.Platforms.Surfaces;

/// <summary>Joints across the whole deck, from coping to back, such as slabs of concrete have: each in line with a joint of the coping where that has
/// any.</summary>
public static class ExpansionJoints
{
    // Joints end a printed line before the wall at the back, mm, as those of pavings do.
    private const double Rim = 0.4;

    /// <summary>Their chainages, mm, rising: evenly from the platform's start to its end, or to a ramp's head, about as far apart as asked.</summary>
    public static IReadOnlyList<double> Of(PlatformPlan plan)
    {
        double pitch = plan.Spec.Deck.ExpansionJoints;
        if (pitch <= 0)
        {
            return [];
        }

        double[] ends = [.. new[] { plan.Stations[0], plan.Profile.StartHead, plan.Profile.EndHead, plan.Stations[^1] }.Distinct().Order()];
        var places = ends.Zip(ends.Skip(1)).SelectMany(bay =>
        {
            int bays = Math.Max(1, (int)Math.Round((bay.Second - bay.First) / pitch));
            return Enumerable.Range(1, bays - 1).Select(k => bay.First + ((bay.Second - bay.First) * k / bays));
        });
        return [.. places.Select(p => plan.CopingJoints.Length > 0 ? plan.CopingJoints.MinBy(j => Math.Abs(j - p)) : p).Distinct().Order()];
    }

    /// <summary>The lines that they lie between: the coping's inner edge, and the back or the other coping.</summary>
    public static (PlanLine Near, PlanLine Far) Between(PlatformPlan plan) =>
        (plan.Body.CopingBack, plan.Body.FarCopingBack ?? plan.Body.FarWallLine.Shifted(-Rim));
}
