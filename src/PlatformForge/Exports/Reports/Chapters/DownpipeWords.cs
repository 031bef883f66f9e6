using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Masonry;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Chapters;

/// <summary>What the report says of downpipes.</summary>
internal static class DownpipeWords
{
    /// <summary>Whether every cut lies beside a downpipe, on each wall that has any.</summary>
    public static bool Hides(SectionSet set) => set.Cuts.Count > 0 && set.Plan.Downpipes.Count > 0
        && set.Plan.Downpipes.GroupBy(p => p.IsFar).All(wall => set.Cuts.All(c => wall.Any(p => p.Cut == c)));

    public static void Say(DocumentBuilder to, SectionSet set)
    {
        if (set.Plan.Spec.Facing?.Downpipes is not { } pipes)
        {
            return;
        }

        string what = Invariant($"{(pipes.Shape == PipeShape.Round ? "Downpipes" : "Square downpipes")} {Figures.Fine(pipes.Diameter)} mm wide");
        if (set.Plan.Downpipes.Count == 0)
        {
            to.Say(what + " are asked for, and none is made: no joint between sections lies where the wall is high enough, "
                + "and no place is stated.");
            return;
        }

        string hopper = pipes.Hopper ? "with hopper heads" : "without hopper heads";
        to.Say(what + Invariant($" stand before the walls, {hopper}, clips{(pipes.Shoe ? " and shoes" : "")}. ")
            + Invariant($"What stands out most stands where the smooth wall would; the walls behind are set back {Figures.Fine(pipes.Projection)} mm, ")
            + "so no clearance is lost.");
        foreach (var wall in set.Plan.Downpipes.GroupBy(p => p.IsFar))
        {
            double[] shown = [.. set.Cuts.Where(c => wall.All(p => p.Cut != c))];
            string joints = set.Cuts.Count == 0 ? "No section's joint lies between them."
                : shown.Length == 0 ? "Each joint between sections lies beside one, where it hardly shows."
                : Invariant($"Joints between sections show at {string.Join(", ", shown.Select(c => Figures.Mm(c)))} mm; the others lie beside one.");
            to.Say(Invariant($"{(wall.Key ? "Far wall" : "Front")}: {wall.Count()}, their middles at ")
                + Invariant($"{string.Join(", ", wall.Select(p => Figures.Mm(p.Middle)))} mm. {joints}"));
        }
    }
}
