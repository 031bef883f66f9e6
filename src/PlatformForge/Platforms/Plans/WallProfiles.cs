using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms.Plans;

/// <summary>How far a platform's walls stand out at each height, in whole courses of its facing.</summary>
public static class WallProfiles
{
    /// <summary>Of a plan with its walking surface.</summary>
    public static WallProfile Of(PlatformPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Spec.Facing is { ProfileDepth: > 0 } facing
            ? WallProfile.Of(facing, Courses(plan.Spec, plan.Site, Under(plan)), JointOf(facing)) : WallProfile.Flat;
    }

    /// <summary>Height of the deck's underside over the front's wall, mm over the baseboard: the lowest between the ramp heads, so that the first course is
    /// whole all along.</summary>
    public static double Under(PlatformPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (body, profile) = (plan.Body, plan.Profile);
        double[] stations = [profile.StartHead, .. body.Stations.Where(s => s > profile.StartHead && s < profile.EndHead), profile.EndHead];
        double top = stations.SelectMany(s => new[] { s, Math.BitDecrement(s), Math.BitIncrement(s) }).Min(s => plan.TopAt(s, body.WallLine.At(s)));
        return top - plan.Spec.Deck.Thickness;
    }

    /// <summary>The courses that a profile is counted in, from the top down, mm over the baseboard: of the front's finish or, where that has none, of another
    /// wall's; of
    /// bricks where none has.</summary>
    /// <param name="spec">The platform.</param>
    /// <param name="site">Its scale.</param>
    /// <param name="under">Height of the deck's underside.</param>
    public static IReadOnlyList<(double High, double Low)> Courses(PlatformSpec spec, PlatformSite site, double under)
    {
        ArgumentNullException.ThrowIfNull(spec);
        ArgumentNullException.ThrowIfNull(site);
        var facing = spec.Facing!;
        double joint = JointOf(facing), room = under - Coursing.Foot, brick = BrickModule.Of(facing.Gauge, site.Scale).Course;
        var laid = new[] { facing.Front, facing.Ends, facing.Back }.FirstOrDefault(w => w is WallFinish.Brick or WallFinish.Stone or WallFinish.Rubble);
        var stones = laid == WallFinish.Stone ? StonePattern.Heights(facing.StoneCourse, facing.Seed, room) : [];
        double even = Coursing.Even(laid switch { WallFinish.Stone => facing.StoneCourse, WallFinish.Rubble => facing.RubbleSize, _ => brick }, room);
        var courses = new List<(double High, double Low)>();
        for (double high = under - joint; high > Coursing.Foot + Units.Tolerances.Rounding || courses.Count < 2;)
        {
            double height = courses.Count < stones.Count ? stones[courses.Count] : even;
            courses.Add((high, high - (height - joint)));
            high -= height;
        }

        return courses;
    }

    private static double JointOf(FacingSpec facing) =>
        facing.Front == WallFinish.Plain && facing.Back == WallFinish.Plain && facing.Ends == WallFinish.Plain ? 0 : facing.Joint;
}
