using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Sections.Rules;

/// <summary>What of downpipes a printer can make.</summary>
internal static class DownpipePrintRule
{
    public static IEnumerable<Finding> Check(PlatformPlan plan, PrinterSpec printer)
    {
        if (plan.Spec.Facing?.Downpipes is not { } pipes)
        {
            yield break;
        }

        string key = plan.Spec.Key + ".facing.downpipes";
        double line = printer.Nozzle, thin = FacingFit.LeastLines * line;
        if (pipes.Diameter < thin - Tolerances.Rounding)
        {
            yield return TooThin(key, pipes.Diameter, thin, line);
        }

        if (pipes.Clip > line + Tolerances.Rounding)
        {
            yield return Hangs(key, pipes.Clip, line);
        }
    }

    private static Finding TooThin(string key, double figure, double least, double nozzle) => Finding.Error(
        "PF6080",
        key + ".diameter",
        Invariant($"Downpipes {figure:0.###} mm wide are lost in the lines of a nozzle of {nozzle:0.##} mm; {least:0.###} mm show."),
        Invariant($"Give {Math.Ceiling(least * 100) / 100:0.##} mm or more."),
        FaultKind.DesignRule).Curing(Math.Ceiling(least * 100) / 100);

    private static Finding Hangs(string key, double figure, double nozzle) => Finding.Warning(
        "PF6081",
        key + ".clip",
        Invariant($"Clips and shoes that stand {figure:0.###} mm round their pipes hang free there, printed deck down or upright: ")
            + Invariant($"a line of the nozzle is {nozzle:0.##} mm wide."),
        Invariant($"Give {nozzle:0.##} mm or less.")).Curing(nozzle);
}
