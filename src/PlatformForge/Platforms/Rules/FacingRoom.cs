using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms.Rules;

/// <summary>What of a facing is not stated yields to what else is in the wall: a plinth has more steps where the wall leans too, an opening's sill goes over
/// the plinth, its crown stays under the corbelled courses and the coping, courses are no higher than their wall. What is stated stays as it is, and is told
/// where it has no room.</summary>
internal static class FacingRoom
{
    public static PlatformRequest In(PlatformRequest request) => request with { Spec = Settled(request.Spec, request.Site) };

    /// <summary>The platform with steps of its plinth, sills and heights of its openings settled, where they are not stated.</summary>
    public static PlatformSpec Settled(PlatformSpec spec, PlatformSite site)
    {
        if (spec.Facing is not { } facing || spec.Trestle is not null)
        {
            return spec;
        }

        double wall = site.RailTop + spec.Height - spec.Deck.Thickness;
        spec = spec with { Facing = facing = Held(spec, facing, wall) };
        if (facing.Plinth is null && facing.Corbel is null && facing.Openings.Count == 0)
        {
            return spec;
        }

        var courses = WallProfiles.Courses(spec, site, wall);
        facing = ProfileRoom.Settled(facing, site, courses);
        facing = facing with { Plinth = Stepped(facing, courses) };
        var profile = facing.ProfileDepth > 0 ? WallProfile.Of(facing, courses, courses.Count > 1 ? courses[0].Low - courses[1].High : 0) : WallProfile.Flat;
        return spec with { Facing = facing with { Openings = [.. facing.Openings.Select(o => Under(spec, Over(o, profile), profile, wall))] } };
    }

    /// <summary>A plan with its walking surface whose courses, where their height is not stated, are no higher than the lowest wall that has them.</summary>
    public static PlatformPlan Held(PlatformPlan plan)
    {
        if (plan.Spec.Facing is not { } facing)
        {
            return plan;
        }

        var held = Held(plan.Spec, facing, WallProfiles.Under(plan));
        return held == facing ? plan : plan with { Spec = plan.Spec with { Facing = held } };
    }

    /// <summary>From the ground under the lowest course to the coping of the lowest wall that is laid so, mm.</summary>
    public static double HeightOf(PlatformPlan plan, WallFinish finish) => HeightOf(plan.Spec, finish, WallProfiles.Under(plan));

    private static double HeightOf(PlatformSpec spec, WallFinish finish, double wall) =>
        (finish == spec.Facing!.Front && !spec.IsIsland && spec.Back.Retaining is { } retaining
            ? Math.Min(wall, retaining.Height - retaining.Coping) : wall) - Coursing.Foot;

    private static FacingSpec Held(PlatformSpec spec, FacingSpec facing, double wall) =>
        HeightOf(spec, facing.Front, wall) is var room && room > 0 && room < facing.MostPiece ? facing with { MostPiece = room } : facing;

    // The highest course draws back most; one is left that is plain wall.
    private static PlinthSpec? Stepped(FacingSpec facing, IReadOnlyList<(double High, double Low)> courses)
    {
        int corbelled = facing.Corbel?.Courses ?? 0;
        double course = courses.Zip(courses.Skip(1), (over, under) => over.High - under.High).DefaultIfEmpty(0).Max();
        double lean = facing.Batter * course / Math.Max(courses[Math.Min(corbelled + 1, courses.Count - 1)].High, course);
        return facing.Plinth?.Leaning(lean) is { } stepped && stepped.Steps <= ProfileRule.MostSteps(facing, courses) ? stepped : facing.Plinth;
    }

    private static OpeningSpec Over(OpeningSpec opening, WallProfile profile)
    {
        double least = profile.Between.Low + ProfileRule.Land;
        return opening.States.Sill || opening.Sill >= least ? opening : opening with { Sill = least };
    }

    // No sill goes lower unasked, mm.
    private const double LeastSill = 0.3;

    private static OpeningSpec Under(PlatformSpec spec, OpeningSpec opening, WallProfile profile, double wall)
    {
        return profile.Leans ? opening : ProfileRoom.Fitted(spec, opening, Math.Max(LeastSill, profile.Between.Low + ProfileRule.Land),
            Math.Min(wall, profile.Between.High));
    }
}
