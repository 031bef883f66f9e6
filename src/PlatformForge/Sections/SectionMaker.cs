using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Cuts;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Joints;
using PlatformForge.Sections.Plates;
using PlatformForge.Sections.Rules;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;
using PlatformForge.Units.Memories;
using static System.FormattableString;

namespace PlatformForge.Sections;

/// <summary>Front door of the room: cuts a platform into printable sections with their joints and lays them on beds.</summary>
public static class SectionMaker
{
    /// <summary>
    /// The sections of a platform, or every reason why it cannot be cut for this printer. Warnings and notes ride with the product.
    /// Sections are shaped side by side on all cores; the result does not depend on how many there are.
    /// </summary>
    /// <param name="plan">The platform.</param>
    /// <param name="printer">The printer.</param>
    /// <param name="spec">How it is cut.</param>
    /// <param name="memory">What earlier runs found out; nothing when null.</param>
    /// <param name="cancel">Stops between two steps of a section.</param>
    public static Outcome<SectionSet> Make(PlatformPlan plan, PrinterSpec printer, SectionSpec spec, Memory? memory = null, CancellationToken cancel = default)
    {
        printer = printer.InTrueSize();
        var divided = Divide(plan, printer, spec);
        if (divided.Value is not { } cut)
        {
            return Outcome.Fault<SectionSet>(divided.Findings);
        }

        var findings = divided.Findings.ToList();
        var shaper = Shaper(cut, printer, spec, memory, cancel);
        var accounts = Each(cut, i => shaper.Account(cut.Shape(shaper, i)), cancel);
        findings.AddRange(accounts.SelectMany(s => s.Findings));
        PlatformSection[] sections = [.. accounts.Select(s => s.Section)];
        findings.AddRange(LaidHole.Check(cut.Chart.Plan, sections));
        (sections, var plates) = BedCorrection.Baked(sections, PlatePacker.Pack(sections, printer), printer.Stretch);
        var set = new SectionSet(
            plan.Spec.Name, sections, plates, cut.Ends[1..^1], Dowels(spec.Joint, cut.Joints), PrintEstimate.Sum(sections.Select(s => s.Estimate), printer))
        {
            Plan = cut.Chart.Plan,
            Joint = spec.Joint,
            Facing = PrintedFacing.Of(cut.Chart.Plan, printer, spec.Joint),
            CountReason = cut.Reason,
            Lines = LineMaker.Of(cut.Chart, sections, printer, spec.Joint.EndTrim, memory ?? Memory.None, cancel),
        };
        return findings.Any(f => f.Severity == Severity.Error) ? new(null, findings) : Outcome.Of(set, findings);
    }

    /// <summary>
    /// The pieces alone, for whoever wants to see them at once: what a section weighs, how long it prints and what hangs free is not worked out, and what
    /// would be found on the
    /// way is not told.
    /// </summary>
    /// <inheritdoc cref="Make" path="/param"/>
    public static Outcome<IReadOnlyList<SectionPiece>> Shapes(PlatformPlan plan, PrinterSpec printer, SectionSpec spec, Memory? memory = null,
        CancellationToken cancel = default)
    {
        printer = printer.InTrueSize();
        var divided = Divide(plan, printer, spec);
        if (divided.Value is not { } cut)
        {
            return Outcome.Fault<IReadOnlyList<SectionPiece>>(divided.Findings);
        }

        var shaper = Shaper(cut, printer, spec, memory, cancel);
        return new(Each(cut, i => cut.Shape(shaper, i), cancel).Select(s => new SectionPiece(s.Number, s.From, s.To, s.Form.Raised.Shown, s.Form.ToLayout,
            s.Form.Pose, s.Form.Size)).ToArray(), divided.Findings);
    }

    // Where a platform is cut, and everything that can be told before its sections are shaped.
    private static Outcome<CutPlatform> Divide(PlatformPlan plan, PrinterSpec printer, SectionSpec spec)
    {
        if (SectionSpecKeys.Check(spec).ToArray() is { Length: > 0 } stray)
        {
            return Outcome.Fault<CutPlatform>(stray);
        }

        var chooser = new CutChooser(new FacetedPlan(plan), printer, spec);
        var cuts = chooser.Choose();
        if (cuts.Value is not { } ends)
        {
            return Outcome.Fault<CutPlatform>(cuts.Findings);
        }

        var findings = new List<Finding>(FlatRule.Check(plan, printer, spec, ends));
        plan = FacingRoom.Held(plan with { Surface = HingedDeck.Of(plan, ends) });
        var chart = new FacetedPlan(plan);
        findings.AddRange(Printable(chart, printer, spec, ends));
        var joints = Joints(chart, printer, spec, ends, findings);
        if (findings.Any(f => f.Severity == Severity.Error))
        {
            return Outcome.Fault<CutPlatform>(findings);
        }

        var divided = PlatformPlanner.Divided(plan, ends[1..^1], JointRoom.Depth(spec.Joint, printer, dowels: true));
        findings.AddRange(divided.Findings);
        var dividedChart = new FacetedPlan(divided.Value!);
        findings.AddRange(TrestlePrintRule.Along(dividedChart));
        if (WideRule.Check(chart, printer, spec, ends) is { } wide)
        {
            findings.Add(wide);
        }

        return Outcome.Of(new CutPlatform(dividedChart, ends, joints, Reason(chooser, ends, printer)), findings);
    }

    // What of a platform's parts cannot be printed.
    private static IEnumerable<Finding> Printable(FacetedPlan chart, PrinterSpec printer, SectionSpec spec, double[] ends)
    {
        var plan = chart.Plan;
        return JointRule.CheckWalls(plan.Spec, spec.Joint, printer)
            .Concat(HoleRule.Check(plan, printer))
            .Concat(FacingRule.Check(plan, printer, spec))
            .Concat(TrestlePrintRule.Check(plan, printer, spec.Joint, ends.Length - 2))
            .Concat(PavingRule.Check(plan, printer))
            .Concat(LineRule.Check(plan, printer))
            .Concat(BankPieceRule.Check(plan, chart, printer, ends))
            .Concat(CopingRule.Check(plan, printer));
    }

    // The joints at the cuts, none at the platform's ends, and what is wrong with them.
    private static CutJoint?[] Joints(FacetedPlan chart, PrinterSpec printer, SectionSpec spec, double[] ends, List<Finding> findings)
    {
        var joints = new CutJoint?[ends.Length];
        for (int i = 1; i < ends.Length - 1; i++)
        {
            double cut = ends[i];
            bool baseboard = chart.Plan.CutCandidates.Any(c => c.Chainage == cut && c.Rank == CutRank.Baseboard);
            joints[i] = new(JointPlace.At(chart, cut, spec.Joint, printer.LeastWall), !baseboard);
            findings.AddRange(baseboard ? [] : JointRule.Check(joints[i]!.Place, spec.Joint, printer));
            findings.AddRange(baseboard ? [] : SkewJointRule.Check(chart, joints[i]!.Place, spec.Joint, printer.LeastWall));
        }

        findings.AddRange(Enumerable.Range(1, ends.Length - 1).SelectMany(i => JointRule.CheckRoom(chart, (ends[i - 1], joints[i - 1]), (ends[i], joints[i]),
            spec.Joint, printer)));
        return joints;
    }

    private static SectionShaper Shaper(CutPlatform cut, PrinterSpec printer, SectionSpec spec, Memory? memory, CancellationToken cancel)
    {
        string name = cut.Chart.Plan.Spec.Name;
        return new(cut.Chart, printer, spec, new BedShape(printer), name, spec.ShortName.Length > 0 ? spec.ShortName : name,
            PrintedFacing.Of(cut.Chart.Plan, printer, spec.Joint), memory ?? Memory.None, cancel);
    }

    // Sections side by side on all cores. A run that is stopped stops as that, whatever the threads met on the way.
    private static T[] Each<T>(CutPlatform cut, Func<int, T> work, CancellationToken cancel)
    {
        var done = new T[cut.Ends.Length - 1];
        Parallel.For(0, done.Length, new ParallelOptions { CancellationToken = cancel }, i => done[i] = work(i));
        return done;
    }

    private sealed record CutPlatform(FacetedPlan Chart, double[] Ends, CutJoint?[] Joints, string Reason)
    {
        public ShapedSection Shape(SectionShaper shaper, int i) => shaper.Shape(i + 1, Ends.Length - 1, Joints[i], Joints[i + 1], Ends[i], Ends[i + 1]);
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
        string bed = Invariant($"{count} sections over {ends[^1] - ends[0]:F1} mm, the longest {longest:F1} mm; a margin of {printer.Margin:F1} mm is kept on ")
            + "the bed";
        return count == fewest
            ? bed + "; no fewer fit."
            : Invariant($"{bed}. The bed alone would allow {fewest}, but then a section would hold part of a ramp and part of the level deck and could not ")
            + "lie flat.";
    }
}

/// <summary>A printable piece, without an account of it.</summary>
/// <param name="Number">Place in the row, from 1.</param>
/// <param name="From">Lower cut or end, mm.</param>
/// <param name="To">Upper cut or end, mm.</param>
/// <param name="Solid">The piece, layout frame.</param>
/// <param name="ToLayout">From file coordinates to the layout frame.</param>
/// <param name="Pose">How it lies on the bed.</param>
/// <param name="Size">Box on the bed, mm.</param>
public sealed record SectionPiece(int Number, double From, double To, Solid Solid, RigidTransform ToLayout, PrintPose Pose, Point3 Size);
