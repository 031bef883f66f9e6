using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Chapters;

/// <summary>What the report says of walls whose face is not one plane.</summary>
internal static class ProfileWords
{
    public static void Say(DocumentBuilder to, SectionSet set)
    {
        if (set.Plan.Spec.Facing is not { IsProfiled: true } facing)
        {
            return;
        }

        var profile = WallProfiles.Of(set.Plan);
        var words = new List<string>();
        if (facing.Plinth is not null)
        {
            words.Add(Invariant($"A plinth {Figures.Fine(HeadOf(set.Plan))} mm high goes round the walls; its foot stands ")
                + Invariant($"{Figures.Fine(facing.Plinth!.Projection)} mm before what is over it")
                + (facing.Plinth.Steps > 1 ? Invariant($", drawn back in {facing.Plinth.Steps} steps, a course each.") : "."));
        }

        if (facing.Batter > 0)
        {
            words.Add(Invariant($"The walls lean back {Figures.Fine(facing.Batter)} mm from foot to coping, about one in ")
                + Invariant($"{Figures.Short(WallProfiles.Under(set.Plan) / facing.Batter)}, a little each course."));
        }

        int corbelled = profile.Zones.Count(z => !z.IsFoot && !z.IsDeepest);
        if (corbelled > 0)
        {
            words.Add(Invariant($"Under the coping {corbelled} corbelled ")
                + Invariant($"course{(corbelled > 1 ? "s stand out, each" : " stands out,")} {Figures.Fine(facing.Corbel!.Projection)} mm before ")
                + "what is under it; "
                + "on ramps they stay level and the slope cuts them.");
        }

        to.Say(string.Join(" ", words) + Invariant($" What stands out most stands where the smooth wall would; the wall between is set back ")
            + Invariant($"{Figures.Fine(facing.ProfileDepth)} mm, so no clearance is lost."));
    }

    // Height of a plinth's head over the baseboard, mm: where what stands out at the foot of an upright wall ends.
    private static double HeadOf(PlatformPlan plan)
    {
        var upright = plan.Spec with { Facing = plan.Spec.Facing!.Upright };
        return WallProfiles.Of(plan with { Spec = upright }).Zones.Last(z => z.IsFoot).High;
    }
}
