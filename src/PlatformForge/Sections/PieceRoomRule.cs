using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Rules;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Units;

namespace PlatformForge.Sections;

/// <summary>
/// Whether what is laid on walls has room there: a course higher than its wall is cut to the wall's height everywhere or not laid at all, and the report would
/// tell of pieces that nobody sees.
/// </summary>
internal static class PieceRoomRule
{
    /// <summary>Figures of a finish that are more than its wall has, each with the most that there is room for.</summary>
    /// <param name="plan">The platform.</param>
    /// <param name="finish">The finish.</param>
    /// <param name="leasts">The least that a printer shows, mm, by the keys of the finish's figures.</param>
    public static IEnumerable<Finding> Check(PlatformPlan plan, WallFinish finish, IReadOnlyDictionary<string, double> leasts)
    {
        var (facing, key) = (plan.Spec.Facing!, plan.Spec.Key + ".facing");
        double height = FacingRoom.HeightOf(plan, finish), length = LengthOf(plan, finish);
        foreach (var (name, what, figure, most) in High(finish, facing, height)
            .Where(p => p.Figure > p.Most + Tolerances.Rounding || !FacingFindings.HasRoom(p.Most, leasts[p.Key])))
        {
            yield return FacingFindings.PieceTooHigh(key, name, what, (figure, height), most, leasts[name]);
        }

        var unasked = FacingSpec.For(plan.Site.Scale);
        foreach (var (name, what, of) in Long(finish))
        {
            // What is laid unasked is cut by a short wall, and nobody was promised a length.
            if (of(facing) > length + Tolerances.Rounding && of(facing) != of(unasked))
            {
                yield return FacingFindings.PieceTooLong(key, name, what, (of(facing), length), leasts[name]);
            }
        }

        bool standsUpright = finish == WallFinish.Stone && facing.StoneLength < facing.StoneCourse - Tolerances.Rounding;
        if (standsUpright && facing.StoneCourse <= (height / FacingSpec.HighestStone) + Tolerances.Rounding && facing.StoneLength >= leasts["stone_length"])
        {
            yield return FacingFindings.StonesOnEnd(key, facing.StoneLength, facing.StoneCourse);
        }
    }

    /// <summary>Whether a wall has room for a figure that a printer shows; where it has not, that is told and not that the figure is small.</summary>
    /// <param name="plan">The platform.</param>
    /// <param name="finish">The finish.</param>
    /// <param name="name">Key of the figure.</param>
    /// <param name="least">The least that a printer shows, mm.</param>
    public static bool HasRoom(PlatformPlan plan, WallFinish finish, string name, double least) =>
        High(finish, plan.Spec.Facing!, FacingRoom.HeightOf(plan, finish)).All(p => p.Key != name || FacingFindings.HasRoom(p.Most, least));

    private static (string Key, string What, double Figure, double Most)[] High(WallFinish finish, FacingSpec facing, double height) => finish switch
    {
        WallFinish.Stone => [("stone_course", "The highest courses of stone", facing.StoneCourse, height / FacingSpec.HighestStone)],
        WallFinish.Rubble => [("rubble_size", "Stones of rubble", facing.RubbleSize, height)],
        WallFinish.Planks => [("plank_width", "Planks", facing.PlankWidth, height)],
        WallFinish.Sleepers => [("sleeper_width", "Sleepers", facing.SleeperWidth, height)],
        WallFinish.Panels => [("panel_height", "Panels", facing.PanelHeight, height)],
        _ => [],
    };

    private static (string Key, string What, Func<FacingSpec, double> Of)[] Long(WallFinish finish) => finish switch
    {
        WallFinish.Stone => [("stone_length", "Stones", f => f.StoneLength)],
        WallFinish.Planks => [("plank_length", "Planks", f => f.PlankLength)],
        WallFinish.UprightPlanks => [("plank_width", "Planks", f => f.PlankWidth)],
        WallFinish.Sleepers => [("sleeper_length", "Sleepers", f => f.SleeperLength)],
        WallFinish.Panels => [("bay", "Bays", f => f.Bay)],
        _ => [],
    };

    // Of the longest wall that is laid so.
    private static double LengthOf(PlatformPlan plan, WallFinish finish) =>
        plan.Spec.Facing!.Front == finish || plan.Spec.Facing.Back == finish ? plan.Profile.To - plan.Profile.From
            : Math.Abs(plan.Back.Reach[0] - plan.WallFace.Reach[0]);
}
