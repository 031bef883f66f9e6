using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Rules.Findings;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Rules;

/// <summary>What of a wall's profile can be told before anything is planned: plinth, corbelled courses and openings have to find room over one
/// another.</summary>
internal static class ProfileRule
{
    public static void Check(PlatformSpec spec, PlatformSite site, List<Finding> findings)
    {
        if (spec.Facing is not { ProfileDepth: > 0 } facing)
        {
            return;
        }

        double wall = site.RailTop + spec.Height - spec.Deck.Thickness;
        if ((OnTrestle(spec, facing) ?? TooSteep(spec, facing, wall)) is { } none)
        {
            findings.Add(none);
            return;
        }

        // Whole courses in the wall; of one too low for a second the baseboard cuts it.
        var courses = WallProfiles.Courses(spec, site, wall);
        int whole = courses.Count(c => c.Low > 0);
        if ((TooMany(spec, facing, wall, courses, whole)
            ?? Plinth(spec, facing, wall, courses, whole)
            ?? Head(spec, facing, wall, courses, whole)) is { } fault)
        {
            findings.Add(fault);
            return;
        }

        Openings(spec, facing, WallProfile.Of(facing, courses, courses.Count > 1 ? courses[0].Low - courses[1].High : 0), findings);
    }

    private static Finding? OnTrestle(PlatformSpec spec, FacingSpec facing)
    {
        if (spec.Trestle is null)
        {
            return null;
        }

        string part = facing.Plinth is not null ? "plinth" : facing.Corbel is not null ? "corbel" : facing.Batter > 0 ? "batter" : "piers.height";
        return ProfileFindings.OnTrestle(Invariant($"{spec.Key}.facing.{part}"));
    }

    private static Finding? TooSteep(PlatformSpec spec, FacingSpec facing, double wall)
    {
        double lean = wall / Steepest;
        return facing.Batter > lean + Tolerances.Rounding ? ProfileFindings.LeansTooFar(spec.Key, facing.Batter, lean) : null;
    }

    // One course between corbelled ones and steps is plain wall.
    private static Finding? TooMany(PlatformSpec spec, FacingSpec facing, double wall, IReadOnlyList<(double High, double Low)> courses, int whole)
    {
        int corbelled = facing.Corbel?.Courses ?? 0, steps = facing.Plinth?.Steps ?? 0;
        return corbelled + steps + 1 <= whole ? null
            : corbelled > 0 && corbelled + 1 > whole - Math.Min(steps, 1)
                ? ProfileFindings.TooManyCorbelled(spec.Key, corbelled, wall, whole - 1 - steps)
                : ProfileFindings.TooManySteps(spec.Key, steps, wall, MostSteps(facing, courses),
                    facing.Plinth is { StatesSteps: false } plinth ? Math.Floor(MostSteps(facing, courses) * plinth.UnaskedStep * 100) / 100 : null);
    }

    // A stated height goes to the nearest course that leaves room for what is over it.
    private static Finding? Plinth(PlatformSpec spec, FacingSpec facing, double wall, IReadOnlyList<(double High, double Low)> courses, int whole)
    {
        if (facing.Plinth is not { StatesHeight: true } plinth)
        {
            return null;
        }

        int corbelled = facing.Corbel?.Courses ?? 0, steps = plinth.Steps;
        double least = courses[whole - steps].High, most = courses[corbelled + 1].High;
        double under = courses[Math.Min(courses.Count - 1, whole - steps + 1)].High, over = courses[corbelled].High;
        return plinth.Height < (least + under) / 2 || plinth.Height > (most + over) / 2
            ? ProfileFindings.PlinthHeight(spec.Key, plinth.Height, (least, most), wall) : null;
    }

    // A course over the head of a pier is plain wall, and one of the front stands under it, over the plinth.
    private static Finding? Head(PlatformSpec spec, FacingSpec facing, double wall, IReadOnlyList<(double High, double Low)> courses, int whole)
    {
        if (facing.Piers is not { Height: { } height } piers)
        {
            return null;
        }

        double course = courses[0].High - courses[1].High;
        double plinths = facing.Plinth is null ? 0 : courses[Math.Max(0, whole - facing.Plinth.Steps)].High;
        double least = piers.HeadRise + plinths + course, most = courses[(facing.Corbel?.Courses ?? 0) + 1].High;
        return height < least || height > most ? ProfileFindings.HeadHeight(spec.Key, height, (least, most), wall) : null;
    }

    /// <summary>Steps that a plinth may have: a course each, with one over them that is plain wall.</summary>
    public static int MostSteps(PlatformSpec spec, PlatformSite site) =>
        MostSteps(spec.Facing!, WallProfiles.Courses(spec, site, site.RailTop + spec.Height - spec.Deck.Thickness));

    /// <inheritdoc cref="MostSteps(PlatformSpec, PlatformSite)"/>
    public static int MostSteps(FacingSpec facing, IReadOnlyList<(double High, double Low)> courses) =>
        courses.Count(c => c.Low > 0) - 1 - (facing.Corbel?.Courses ?? 0);

    // Openings lie in the part between plinth and corbelled courses, a course's half off either; in one course of a wall that leans.
    private static void Openings(PlatformSpec spec, FacingSpec facing, WallProfile profile, List<Finding> findings)
    {
        var between = profile.Between;
        for (int i = 0; i < facing.Openings.Count; i++)
        {
            var opening = facing.Openings[i];
            string key = Invariant($"{spec.Key}.facing.opening[{i}]");
            if (opening.Sill < between.Low + Land)
            {
                findings.Add(ProfileFindings.OpeningInPlinth(key, opening.Sill, between.Low + Land));
            }
            else if (profile.Leans)
            {
                Leaning(key, spec, opening, profile, findings);
            }
            else if (opening.Sill + opening.Height + OpeningRule.Over(spec, opening) > between.High)
            {
                findings.Add(ProfileFindings.OpeningInCorbel(key, opening, between.High - opening.Sill - OpeningRule.Over(spec, opening)));
            }
        }
    }

    // Parts of a wall that leans are a course high each, and rubble has none.
    private static void Leaning(string key, PlatformSpec spec, OpeningSpec opening, WallProfile profile, List<Finding> findings)
    {
        double course = profile.Zones.Where(z => double.IsFinite(z.High - z.Low)).Select(z => z.High - z.Low).DefaultIfEmpty(0).Max();
        bool isRubble = (opening.IsBack ? spec.Facing!.Back : spec.Facing!.Front) == WallFinish.Rubble;
        if (isRubble || opening.Rise > 0 || profile.Taking(opening.Sill, opening.Height) is null)
        {
            findings.Add(ProfileFindings.OpeningLeans(key, spec.Key + ".facing.batter", opening, isRubble ? 0 : course));
        }
    }

    // Walls lean by one in this at most: common practice, no source.
    private const double Steepest = 4;

    // Wall kept between a plinth's head and a sill, mm: a bed at least, to which a sill goes.
    internal const double Land = 0.4;
}
