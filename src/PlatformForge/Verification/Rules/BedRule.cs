using PlatformForge.Geometry;
using PlatformForge.Sections;
using PlatformForge.Units;
using PlatformForge.Verification.Distances;
using static System.FormattableString;

namespace PlatformForge.Verification.Rules;

/// <summary>What a plate's file prints lies on the bed, keeps its margin, is not too tall, and nothing lies in anything else.</summary>
internal static class BedRule
{
    /// <summary>What a place on the bed may be off by, mm: numbers in the file are rounded.</summary>
    private const double Slack = 0.001;

    /// <param name="file">Name of the file.</param>
    /// <param name="names">Name of each thing on the plate.</param>
    /// <param name="placed">Its mesh in the bed's coordinates.</param>
    /// <param name="printer">The printer.</param>
    /// <param name="isOneBed">Whether all of it lies on one bed; where beds lie side by side only what lies on what is asked.</param>
    public static IEnumerable<Finding> Check(string file, IReadOnlyList<string> names, IReadOnlyList<Mesh> placed, PrinterSpec printer, bool isOneBed = true)
    {
        var bed = new OutlineDistance(printer.Bed);
        var hulls = placed.Select(m => PlanHull.Of(m.Vertices.Select(v => new Point2(v.X, v.Y)))).ToArray();
        for (int i = 0; i < placed.Count; i++)
        {
            var (low, high) = placed[i].Box();
            double outermost = placed[i].Vertices.Select(v => bed.At(new(v.X, v.Y))).DefaultIfEmpty(double.NegativeInfinity).Max();
            if (isOneBed && outermost > -printer.Margin + Slack)
            {
                yield return Fault("PF8013", Invariant($"{names[i]} in '{file}' comes to {-outermost:F2} mm from the edge of the bed (below 0 is beyond it), and {printer.Margin:F1} mm is to be kept."), "Build the folder again for this bed, or give a smaller margin.");
            }

            if ((isOneBed && high.Z > printer.Height + Slack) || Math.Abs(low.Z) > Slack)
            {
                yield return Fault("PF8014", Invariant($"{names[i]} in '{file}' reaches from {low.Z:F2} to {high.Z:F2} mm above the bed; the printer has {printer.Height:F0} mm."), "Prints begin at 0: build the folder again for this printer.");
            }

            for (int k = 0; k < i; k++)
            {
                if (!PlanHull.AreApart(hulls[i], hulls[k]))
                {
                    yield return Fault("PF8015", Invariant($"{names[i]} and {names[k]} in '{file}' lie into each other."), "Build the folder again.");
                }
            }
        }
    }

    private static Finding Fault(string code, string what, string remedy) => Finding.Error(code, "", what, remedy, FaultKind.DesignRule);
}
