using PlatformForge.Platforms;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Cuts;
using PlatformForge.Sections.Joints;
using PlatformForge.Sections.Plates;
using PlatformForge.Solids.Bodies;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Sections;

/// <summary>Front door of the room: cuts a platform into printable sections with their joints and lays them on beds.</summary>
public static class SectionMaker
{
    /// <summary>
    /// The sections of a platform, or every reason why it cannot be cut for this printer. Warnings and notes ride with the product.
    /// Sections are shaped side by side on all cores; the result does not depend on how many there are.
    /// </summary>
    public static Outcome<SectionSet> Make(PlatformPlan plan, PrinterSpec printer, SectionSpec spec)
    {
        var chooser = new CutChooser(new FacetedPlan(plan), printer, spec);
        var cuts = chooser.Choose();
        if (cuts.Value is not { } ends)
        {
            return Outcome.Fault<SectionSet>(cuts.Findings);
        }

        var findings = new List<Finding>(FlatRule.Check(plan, printer, spec, ends));
        plan = plan with { Surface = HingedDeck.Of(plan, ends) };
        var chart = new FacetedPlan(plan);
        findings.AddRange(JointRule.CheckWalls(plan.Spec, spec.Joint, printer));
        findings.AddRange(HoleRule.Check(plan, printer));
        var joints = new CutJoint?[ends.Length];
        for (int i = 1; i < ends.Length - 1; i++)
        {
            double cut = ends[i];
            bool baseboard = plan.CutCandidates.Any(c => c.Chainage == cut && c.Rank == CutRank.Baseboard);
            joints[i] = new(JointPlace.At(chart, cut, spec.Joint), !baseboard);
            findings.AddRange(baseboard ? [] : JointRule.Check(joints[i]!.Place, spec.Joint, printer));
        }

        findings.AddRange(Enumerable.Range(1, ends.Length - 1).SelectMany(i => JointRule.CheckRoom(chart, (ends[i - 1], joints[i - 1]), (ends[i], joints[i]), spec.Joint, printer)));
        if (findings.Any(f => f.Severity == Severity.Error))
        {
            return Outcome.Fault<SectionSet>(findings);
        }

        var divided = PlatformPlanner.Divided(plan, ends[1..^1]);
        findings.AddRange(divided.Findings);
        if (WideRule.Check(chart, printer, spec, ends) is { } wide)
        {
            findings.Add(wide);
        }

        var sections = Shape(new(divided.Value!), printer, spec, ends, joints, findings);
        var set = new SectionSet(
            plan.Spec.Name, sections, PlatePacker.Pack(sections, printer), ends[1..^1], Dowels(spec.Joint, joints), PrintEstimate.Sum(sections.Select(s => s.Estimate), printer))
        {
            Plan = divided.Value!,
            CountReason = Reason(chooser, ends, printer),
        };
        return findings.Any(f => f.Severity == Severity.Error) ? new(null, findings) : Outcome.Of(set, findings);
    }

    private static PlatformSection[] Shape(
        FacetedPlan chart, PrinterSpec printer, SectionSpec spec, double[] ends, CutJoint?[] joints, List<Finding> findings)
    {
        var plan = chart.Plan;
        string shortName = spec.ShortName.Length > 0 ? spec.ShortName : plan.Spec.Name;
        var shaper = new SectionShaper(chart, printer, spec, new BedShape(printer), plan.Spec.Name, shortName);
        int count = ends.Length - 1;
        var shaped = new (PlatformSection Section, IReadOnlyList<Finding> Findings)[count];
        Parallel.For(0, count, i => shaped[i] = shaper.Shape(i + 1, count, joints[i], joints[i + 1], ends[i], ends[i + 1]));
        findings.AddRange(shaped.SelectMany(s => s.Findings));
        return [.. shaped.Select(s => s.Section)];
    }

    private static IReadOnlyList<DowelCut> Dowels(JointSpec joint, CutJoint?[] joints)
    {
        int count = joint.Kind == JointKind.None ? 0 : 2 * joints.Count(j => j is { Dowels: true });
        return count == 0 ? [] : joint.Kind == JointKind.Plate
            ? [new(Invariant($"plate, strip of {joint.PlateWidth:0.##} by {joint.PlateThickness:0.##} mm"), joint.PlateWidth, joint.DowelLength, count)]
            : [new(Invariant($"dowel, {joint.DowelDiameter:0.##} mm round"), joint.DowelDiameter, joint.DowelLength, count)];
    }

    private static string Reason(CutChooser chooser, double[] ends, PrinterSpec printer)
    {
        int count = ends.Length - 1, fewest = chooser.Fewest();
        double longest = ends.Zip(ends.Skip(1), (a, b) => b - a).Max();
        string bed = Invariant($"{count} sections over {ends[^1] - ends[0]:F1} mm, the longest {longest:F1} mm; a margin of {printer.Margin:F1} mm is kept on the bed");
        return count == fewest
            ? bed + "; no fewer fit."
            : Invariant($"{bed}. The bed alone would allow {fewest}, but then a section would hold part of a ramp and part of the level deck and could not lie flat.");
    }
}
