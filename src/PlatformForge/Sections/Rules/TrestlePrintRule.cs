using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Rules.Findings;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Trestles;
using PlatformForge.Units;

namespace PlatformForge.Sections.Rules;

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
            ("brace", trestle.Braces == BraceForm.Web ? "web of a bent" : "brace of a bent", trestle.HasBraces ? trestle.Brace : None, 0),
            ("boards", "boarding behind its joints", trestle.Boarded == BoardedSides.None ? None : trestle.Boards, BoardBlocks.Depth),
        ];
        foreach (var (name, what, thickness, lost) in parts.Where(p => p.Thickness - p.Lost < printer.LeastWall - Tolerances.Rounding))
        {
            yield return TrestleFindings.TooThin(key + name, what, thickness, lost, printer.LeastWall);
        }
    }

    /// <summary>What cannot be of braces along a platform with the bents that its sections have: one that a curve would bring out before its posts, and how
    /// many are in the way of something.</summary>
    public static IEnumerable<Finding> Along(FacetedPlan chart)
    {
        if (chart.Plan is not { Trestle: { } trestle, Spec: { Trestle: { Longitudinal: not LongitudinalForm.None } spec, Key: var key } })
        {
            yield break;
        }

        var braces = LongitudinalBraces.Of(chart, out int leftOut);
        PostRow[] outer = [trestle.Rows[0], trestle.Rows[^1]];
        double bow = trestle.Bents.Zip(trestle.Bents.Skip(1)).Where(b => b.Second.From > b.First.To)
            .SelectMany(b => outer.Select(row => LongitudinalBraces.Bow(chart, row, b.First, b.Second))).DefaultIfEmpty(0).Max();
        double room = (spec.Post - spec.Brace) / 2;
        if (bow > room)
        {
            // What a chord stands off its curve by grows as the square of its length.
            double pitch = Math.Floor(trestle.Pitch.Greatest * Math.Sqrt(room / bow) * Steps) / Steps;
            yield return TrestleFindings.BowedBay(key, bow, room, pitch >= 2 * spec.Post ? pitch : null);
        }

        if (leftOut > 0)
        {
            yield return TrestleFindings.BracesLeftOut(key, leftOut, braces.Count);
        }
    }

    // Pitches are offered in tenths of mm.
    private const double Steps = 10;
}
