using PlatformForge.Clearance;
using PlatformForge.Exports.Files;
using static System.FormattableString;

namespace PlatformForge.Cli.Answers;

/// <summary>A designed platform in a few lines.</summary>
internal static class DesignText
{
    public static void Platform(TextWriter o, PlatformDossier platform)
    {
        var (plan, sections) = (platform.Plan, platform.Sections);
        o.WriteLine(Invariant($"{platform.Name}: chainage {plan.Spec.Face.From:0} to {plan.Spec.Face.To:0} mm ")
            + Invariant($"of {plan.Spec.Face.Track}, {Counted(sections.Sections.Count, "section")} ")
            + Invariant($"on {Counted(sections.Plates.Count, "bed")}, {sections.Estimate.Grams:0} g, about {sections.Estimate.Hours:0.0} h of printing (an ")
            + "estimate; the slicer decides)");
        if (plan.Waist is { } waist)
        {
            o.WriteLine(Invariant($"  an island, narrowest at chainage {waist.First:0} mm of {plan.Faces[0].Spec.Track} and {waist.Second:0} mm ")
                + Invariant($"of {plan.Faces[1].Spec.Track}: {waist.Width:0.0} mm from edge to edge"));
        }

        foreach (var face in platform.Faces)
        {
            Face(o, face);
        }
    }

    private static void Face(TextWriter o, PlatformDossier platform)
    {
        var plan = platform.Plan;
        string on = plan.Spec.IsIsland ? Invariant($" on {platform.Track}") : "";
        foreach (var row in plan.Gaps.Rows.Where(r => r.Style == plan.Spec.Face.Edge))
        {
            o.WriteLine(Invariant($"  gap to {row.Vehicle}{on}: {row.Least:0.0} to {row.Largest:0.0} mm, mean {row.Mean:0.0} mm; full ")
                + Invariant($"size {row.Largest * row.Ratio:0} mm at most{(plan.Profile.HasRamps ? " (ramps left out)" : "")}"));
        }

        var budget = platform.Budget;
        string Named(bool swept) => string.Join(swept ? ", " : " + ", budget.Lines.Where(l => l.Placing == BudgetPlacing.Swept == swept)
            .Select(l => Invariant($"{l.Name} {l.AmountMm:0.##}")));
        bool play = budget.Lines.Any(l => l.Placing == BudgetPlacing.Swept);
        o.WriteLine(Invariant($"  budget{on}: ") + Named(false) + Invariant($" = {budget.Sum:0.##} mm (root of squares {budget.RootOfSquares:0.##} mm)") + (play
            ? "; swept with the vehicles: " + Named(true) + " mm" : ""));
    }

    private static string Counted(int count, string what) => Invariant($"{count} {what}{(count == 1 ? "" : "s")}");
}
