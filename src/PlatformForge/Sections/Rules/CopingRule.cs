using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Copings;
using PlatformForge.Units;

namespace PlatformForge.Sections.Rules;

/// <summary>What of a coping's bricks and margins a printer can make.</summary>
internal static class CopingRule
{
    private const double Rounding = Tolerances.Rounding;

    public static IEnumerable<Finding> Check(PlatformPlan plan, PrinterSpec printer)
    {
        var (coping, key) = (plan.Spec.Coping, plan.Spec.Key + ".coping");
        double brick = coping.BrickPitch - coping.JointWidth, joint = coping.BrickPitch - printer.LeastWall;
        if (coping.Kind == CopingKind.Bricks && brick < printer.LeastWall - Rounding)
        {
            yield return LineFindings.CopingBricks(key, coping.BrickPitch, coping.JointWidth, (printer.Nozzle, printer.LeastWall),
                joint >= printer.Nozzle / 2 ? joint : null);
        }

        double slab = plan.CopingJoints.Length > 0 ? plan.CopingJoints.Zip(plan.CopingJoints.Skip(1), (a,
            b) => b - a).DefaultIfEmpty(coping.SlabLength).Min() : coping.Width;
        double most = (Math.Min(slab, coping.Width) - (2 * coping.JointWidth) - printer.LeastWall) / 2, least = coping.JointWidth + printer.Nozzle;
        if (coping.Margin > 0 && (coping.Margin > most + Rounding || coping.Margin < least - Rounding))
        {
            yield return LineFindings.Margin(key, coping.Margin, (least, most));
        }

        foreach (var found in MarginsUnderLines(plan))
        {
            yield return found;
        }

        if (plan.CopingJoints.Length > 0 && Math.Min(coping.JointWidth, coping.JointDepth) > 0 && CopingFronts.Depth(coping) <= 0)
        {
            yield return LineFindings.NoFrontJoints(key, coping.Thickness, CopingFronts.LeastThickness(coping));
        }
    }

    // What of margins is swallowed by white lines that are cut into the coping; paint leaves them to be seen.
    private static IEnumerable<Finding> MarginsUnderLines(PlatformPlan plan)
    {
        var spec = plan.Spec;
        if (spec.Coping.Margins is not { } margins)
        {
            yield break;
        }

        var lines = spec.Faces.Select(f => f.WhiteLine is null ? (spec.Key + ".line", spec.WhiteLine) : ($"{spec.Key}.{f.Key}.line", f.WhiteLine));
        foreach (var (key, line) in lines.Distinct())
        {
            if (line is { Form: not LineForm.Paint } && margins.Meets(line.Inset, line.Inset + line.Width))
            {
                double before = margins.Front - (margins.Behind - margins.Front) - line.Width;
                double[] clear = [margins.Behind, Math.Min(line.Inset, before), spec.Coping.Width + LineMake.LeastLand];
                bool Takes(double inset) => inset > spec.Coping.ArrisChamfer && !margins.Meets(inset, inset + line.Width);
                yield return LineFindings.OverMargin(key, line, spec.Coping.Margin, clear.Where(Takes).Select(c => (double?)c).FirstOrDefault());
            }
        }
    }
}
