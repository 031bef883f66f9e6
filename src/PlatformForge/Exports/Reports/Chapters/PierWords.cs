using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Chapters;

/// <summary>What the report says of piers.</summary>
internal static class PierWords
{
    /// <summary>Whether every cut lies in the angle beside a pier.</summary>
    public static bool Hides(SectionSet set) => set.Cuts.Count > 0 && set.Plan.Piers.Count > 0
        && set.Plan.Piers.GroupBy(p => p.IsFar).All(wall => set.Cuts.All(c => wall.Any(p => p.Cut == c)));

    public static void Say(DocumentBuilder to, SectionSet set)
    {
        if (set.Plan.Piers.Count == 0)
        {
            return;
        }

        var piers = set.Plan.Spec.Facing!.Piers!;
        to.Say(Invariant($"Piers {Figures.Fine(piers.Width)} mm wide stand where the smooth wall would; the panels between them are set back ")
            + Invariant($"{Figures.Fine(piers.Projection)} mm, so no clearance is lost."));
        if (WallProfiles.Of(set.Plan).PierHead is { } head)
        {
            to.Say(Invariant($"They are buttresses: their heads slope at {Figures.Short(piers.Weathering)} degrees and meet the wall ")
                + Invariant($"{Figures.Fine(head)} mm over the baseboard."));
        }

        foreach (var wall in set.Plan.Piers.GroupBy(p => p.IsFar))
        {
            double[] shown = [.. set.Cuts.Where(c => wall.All(p => p.Cut != c))];
            string joints = set.Cuts.Count == 0 ? "No section's joint lies between them."
                : shown.Length == 0 ? "Each joint between sections lies in the angle beside one, where it hardly shows."
                : Invariant($"Joints between sections show in panels at {string.Join(", ", shown.Select(c => Figures.Mm(c)))} mm.");
            to.Say(Invariant($"{(wall.Key ? "Far wall" : "Front")}: {wall.Count()} piers, their middles ")
                + Invariant($"at {string.Join(", ", wall.Select(p => Figures.Mm(p.Middle)))} mm. {joints}"));
        }
    }
}
