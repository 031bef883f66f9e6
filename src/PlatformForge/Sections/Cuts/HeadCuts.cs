using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Joints;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Sections.Cuts;

/// <summary>What a section that holds part of a ramp and part of the level deck can be told: which cuts let it lie flat, tried, or what is in their
/// way.</summary>
internal sealed class HeadCuts(FacetedPlan chart, PrinterSpec printer, SectionSpec spec)
{
    // A chainage that is meant to be a ramp's head is one within this, mm.
    private const double Same = Tolerances.Rounding;

    /// <summary>What is told of a section.</summary>
    /// <param name="from">Its start, mm.</param>
    /// <param name="to">Its end, mm.</param>
    public (string Words, Cure? Cure) For(double from, double to)
    {
        double[] heads = [.. chart.Plan.Profile.HeadsBetween(from, to)];
        string at = string.Join(" and ", heads.Select(h => Invariant($"{h:0.##}"))), key = $"{chart.Plan.Spec.Key}.cuts";
        if (heads.Select(InTheWay).FirstOrDefault(w => w.Length > 0) is { } way)
        {
            return (Invariant($"Cut at the ramp's head at {at:0.####} mm it would lie flat, but {way}."), null);
        }

        if (Fault(heads) is { } fault)
        {
            return (Invariant($"A cut at the ramp's head at {at:0.####} mm was tried, and does not do: {fault}"), null);
        }

        double[] cuts = [.. chart.Plan.Spec.ForcedCuts.Concat(heads).Order()];
        string value = Invariant($"[{string.Join(", ", cuts.Select(c => Invariant($"{c:0.######}")))}]");
        return ($"Cut at the ramp's head it lies flat: cuts = {value} was tried and works.", new Cure(CureAct.Set, key, value) { Tried = true });
    }

    // What the plan or the clearance of cuts keeps a head from being a place for a cut.
    private string InTheWay(double head)
    {
        var plan = chart.Plan;
        if (plan.CutCandidates.Any(c => Math.Abs(c.Chainage - head) < Same))
        {
            return "";
        }

        var near = plan.Keepouts.Where(k => k.Holds(KeptOff.Cuts)).MinBy(k => Math.Abs(k.Middle - head));
        return near is null || Math.Abs(near.Middle - head) > Beside ? "no place for a cut is there"
            : Invariant($"the {near.Name} at {near.Middle:0.#} mm is in the way: move it");
    }

    // Furniture farther from a head than this, mm, is not in its way.
    private const double Beside = 60;

    // What is wrong with the platform cut at the heads as at stated cuts; null where nothing is.
    private string? Fault(double[] heads)
    {
        var plan = chart.Plan
            with
        {
            CutCandidates =
                [.. chart.Plan.CutCandidates.Select(c => heads.Any(h => Math.Abs(c.Chainage - h) < Same) && !c.IsStated ? c with { Rank = CutRank.Forced }
                    : c)]
        };
        var chosen = new CutChooser(new FacetedPlan(plan), printer, spec).Choose();
        if (chosen.Value is not { } ends)
        {
            return chosen.Findings[0].Message;
        }

        bool Dowels(double cut) => !plan.CutCandidates.Any(p => p.Chainage == cut && p.Rank == CutRank.Baseboard);
        CutJoint?[] joints = [null, .. ends[1..^1].Select(c => new CutJoint(JointPlace.At(chart, c, spec.Joint, printer.LeastWall), Dowels(c))), null];
        return joints.OfType<CutJoint>().Where(j => j.Dowels).SelectMany(j => JointRule.Check(j.Place, spec.Joint, printer))
            .Concat(Enumerable.Range(1, ends.Length - 1)
                .SelectMany(i => JointRule.CheckRoom(chart, (ends[i - 1], joints[i - 1]), (ends[i], joints[i]), spec.Joint, printer)))
            .FirstOrDefault(f => f.Severity == Severity.Error)?.Message;
    }
}
