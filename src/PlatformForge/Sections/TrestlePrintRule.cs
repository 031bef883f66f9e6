using PlatformForge.Platforms;
using PlatformForge.Platforms.Rules;
using PlatformForge.Solids.Bodies;
using PlatformForge.Units;

namespace PlatformForge.Sections;

/// <summary>What of a trestle a printer can make, and what joins its sections.</summary>
internal static class TrestlePrintRule
{
    // As thick as what is not there has to be.
    private const double None = double.PositiveInfinity;

    public static IEnumerable<Finding> Check(PlatformPlan plan, PrinterSpec printer, JointSpec joint, int cuts)
    {
        if (plan.Spec.Trestle is not { } trestle)
        {
            yield break;
        }

        if (joint.Kind == JointKind.Plate && cuts > 0)
        {
            yield return TrestlePrintFindings.NoPlates(joint.Key);
        }

        string key = plan.Spec.Key + ".trestle.";
        (string Key, string What, double Thickness, double Lost)[] parts =
        [
            ("post", "post of a bent", trestle.Post, cuts > 0 ? joint.EndTrim : 0),
            ("brace", trestle.Braces == BraceForm.Web ? "web of a bent" : "brace of a bent", trestle.Braces == BraceForm.None ? None : trestle.Brace, 0),
            ("boards", "boarding behind its joints", trestle.Boarded == BoardedSides.None ? None : trestle.Boards, BoardBlocks.Depth),
        ];
        foreach (var (name, what, thickness, lost) in parts.Where(p => p.Thickness - p.Lost < printer.LeastWall - Tolerances.Rounding))
        {
            yield return TrestleFindings.TooThin(key + name, what, thickness, lost, printer.LeastWall);
        }
    }
}
