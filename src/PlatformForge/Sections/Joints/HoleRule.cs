using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;

namespace PlatformForge.Sections.Joints;

/// <summary>Openings in the walking surface that the nozzle leaves open.</summary>
internal static class HoleRule
{
    /// <summary>Least width of an opening in widths of the nozzle: narrower ones close while they are printed. Common practice, no source.</summary>
    public const double LeastLines = 2;

    /// <summary>An opening of exactly the least width is wide enough, however its figure was rounded, mm.</summary>
    private const double Rounding = Tolerances.Rounding;

    public static IEnumerable<Finding> Check(PlatformPlan plan, PrinterSpec printer)
    {
        double least = LeastLines * printer.Nozzle;
        return plan.Openings.DistinctBy(o => o.Narrowest.Key).Where(o => Math.Min(o.Along, o.Across) < least - Rounding)
            .Select(o => (Size: Math.Min(o.Along, o.Across), o.Narrowest))
            .Select(o => SectionFindings.OpeningTooNarrow(o.Narrowest.Key, o.Narrowest.Told, o.Size, least, least - o.Narrowest.Fit, o.Size / LeastLines));
    }
}
