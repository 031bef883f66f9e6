using PlatformForge.Exports.Files;
using PlatformForge.Verification.Written;

namespace PlatformForge.Projects.Runs;

/// <summary>The few figures by which designs are compared. Lengths in mm of the model.</summary>
/// <param name="MeanGap">Mean gap from coping to door sills, of the vehicle where it is largest; null when no vehicle has a sill.</param>
/// <param name="LargestGap">Largest gap of any door at any place.</param>
/// <param name="LargestGapFullSize">The same at full size.</param>
/// <param name="Sections">Printed pieces.</param>
/// <param name="Plates">Beds full.</param>
/// <param name="Grams">Filament.</param>
/// <param name="Hours">Printing time.</param>
/// <param name="Closest">Where a vehicle standing true comes nearest.</param>
public sealed record DesignFigures(
    double? MeanGap, double? LargestGap, double? LargestGapFullSize, int Sections, int Plates, double Grams, double Hours, Nearness? Closest)
{
    public static DesignFigures Of(Dossier dossier, Verdict verdict)
    {
        var rows = dossier.Platforms.SelectMany(p => p.Faces).SelectMany(p => p.Plan.Gaps.Rows.Where(r => r.Style == p.Plan.Spec.Face.Edge)).ToArray();
        var sets = dossier.Platforms.Select(p => p.Sections).ToArray();
        return new(
            rows.Length == 0 ? null : rows.Max(r => r.Mean),
            rows.Length == 0 ? null : rows.Max(r => r.Largest),
            rows.Length == 0 ? null : rows.Max(r => r.Largest * r.Ratio),
            sets.Sum(s => s.Sections.Count),
            sets.Sum(s => s.Plates.Count),
            sets.Sum(s => s.Estimate.Grams),
            sets.Sum(s => s.Estimate.Hours),
            verdict.Closest);
    }
}
