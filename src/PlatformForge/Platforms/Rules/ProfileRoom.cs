using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Rules;

/// <summary>How plinths, corbelled courses and openings that are not stated in full yield to the courses that a wall has: those of stone are three times as
/// high as those of bricks, and steps are counted in courses.</summary>
internal static class ProfileRoom
{
    // Courses so much higher than bricks are stones.
    private const double Stones = 1.5;

    // An opening is made no narrower unasked than this share of its usual width: less is no refuge any more, and another head is tried.
    private const double Narrowest = 0.6;

    // An arched opening keeps sides of a quarter of its rise at least.
    private const double LeastSides = 0.25;

    /// <summary>The facing with its corbelled courses and its plinth settled.</summary>
    /// <param name="facing">What is asked for.</param>
    /// <param name="site">Its scale.</param>
    /// <param name="courses">The courses of the front, from the top down, mm over the baseboard.</param>
    public static FacingSpec Settled(FacingSpec facing, PlatformSite site, IReadOnlyList<(double High, double Low)> courses)
    {
        int whole = courses.Count(c => c.Low > 0);
        double course = courses.Count > 1 ? (courses[0].High - courses[^1].High) / (courses.Count - 1) : 0;
        bool areStones = course > Stones * BrickModule.Of(facing.Gauge, site.Scale).Course;
        if (facing.Corbel is { StatesCourses: false } corbel)
        {
            // A course of stone is as high as what is corbelled of bricks, and more.
            int most = whole - 1 - (facing.Plinth is null ? 0 : 1);
            facing = facing with { Corbel = corbel with { UnaskedCourses = Math.Max(1, Math.Min(areStones ? 1 : corbel.Courses, most)) } };
        }

        if (facing.Plinth is not { StatesSteps: false, StatesProjection: false } plinth || course <= 0)
        {
            return facing;
        }

        int usual = areStones ? Math.Max(1, (int)Math.Round(plinth.Height / course)) : plinth.Steps;
        return facing with { Plinth = Narrowed(plinth, usual, ProfileRule.MostSteps(facing, courses)) };
    }

    // As many steps as its height has courses, and no more than find room, each as wide as one may be.
    private static PlinthSpec Narrowed(PlinthSpec plinth, int usual, int room)
    {
        int steps = Math.Max(1, Math.Min(usual, room));
        return steps < plinth.Steps ? plinth with { UnaskedProjection = steps * plinth.UnaskedStep } : plinth;
    }

    /// <summary>An opening under what lies over it: as it is, or lower, or under a level head with a lower sill, or else narrower, or
    /// under a flatter head, as far as that is not stated.</summary>
    /// <param name="spec">The platform.</param>
    /// <param name="opening">The opening.</param>
    /// <param name="over">The lowest that its sill may be, mm over the baseboard.</param>
    /// <param name="under">Height of what it has to stay under, mm over the baseboard.</param>
    public static OpeningSpec Fitted(PlatformSpec spec, OpeningSpec opening, double over, double under)
    {
        foreach (var tried in Tried(opening))
        {
            double room = under - tried.Sill - OpeningRule.Over(spec, tried), least = Math.Max(tried.Rise * (1 + LeastSides), tried.LeastSize);
            if (tried.Height <= room + Tolerances.Rounding)
            {
                return tried;
            }

            if (!opening.States.Height && room > 0 && room >= least)
            {
                return tried with { Height = Math.Floor(room * 1000) / 1000 };
            }

            double high = opening.States.Height ? tried.Height : Math.Min(tried.Height, least), sill = tried.Sill - (high - room);
            if (!opening.States.Sill && tried.Rise <= 0 && high > 0 && sill >= over)
            {
                return tried with { Sill = Math.Floor(sill * 1000) / 1000, Height = high };
            }

            if (opening.States.Height || room <= 0)
            {
                continue;
            }

            double width = Math.Floor(tried.Width * room / least * 100) / 100;
            if (!tried.StatesWidth && tried.Rise > 0 && width >= Narrowest * tried.Width)
            {
                return tried with { Width = width, Height = Math.Floor(room * 1000) / 1000 };
            }
        }

        return opening;
    }

    private static OpeningSpec[] Tried(OpeningSpec opening) => opening.StatesHead || opening.Rise <= 0 ? [opening]
        : [opening, opening with { Head = OpeningHead.Segmental }, opening with { Head = OpeningHead.Flat }];
}
