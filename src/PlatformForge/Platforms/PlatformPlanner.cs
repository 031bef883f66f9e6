using PlatformForge.Clearance;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Platforms.Faces;
using PlatformForge.Platforms.Features;
using PlatformForge.Platforms.Furniture;
using PlatformForge.Platforms.Islands;
using PlatformForge.Platforms.OwnTrack;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Platforms.Values;
using PlatformForge.Platforms.WallFittings;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms;

/// <summary>
/// Front door of the room: plans platforms. A pure function of its request; equal requests give equal plans, and a request mirrored left to right gives the
/// same plan, since all is told in chainage and reach.
/// </summary>
public static class PlatformPlanner
{
    /// <summary>
    /// All faults that can be told before anything is swept: figures out of range, ramps, widths, and the track at both ends.
    /// </summary>
    /// <param name="spec">What is asked for.</param>
    /// <param name="site">What it stands on.</param>
    /// <param name="chart">The faced track.</param>
    /// <param name="vehicles">What runs on it; the longest needs its own length of track beyond both ends.</param>
    /// <param name="startsAtBuffers">The track begins at buffer stops.</param>
    /// <param name="endsAtBuffers">The track ends at buffer stops.</param>
    public static IReadOnlyList<Finding> Check(
        PlatformSpec spec,
        PlatformSite site,
        Centreline chart,
        IEnumerable<Vehicle> vehicles,
        bool startsAtBuffers = false,
        bool endsAtBuffers = false)
    {
        var findings = new List<Finding>();
        ValueRules.Check(spec, site, findings);
        if (findings.Count > 0)
        {
            // What follows computes with the figures, so these have to be figures first.
            return findings;
        }

        spec = FacingRoom.Settled(RampRules.Settled(spec, site), site);
        var longest = vehicles.MaxBy(v => v.Length);
        if (spec.IsIsland)
        {
            IslandRules.Check(spec, chart, longest, (startsAtBuffers, endsAtBuffers), findings);
        }

        if (spec.Face.Key == FaceSpec.FirstKey)
        {
            PlatformRules.Face(spec, chart, longest?.Name ?? "", longest?.Length ?? 0, startsAtBuffers, endsAtBuffers, findings);
        }

        PlatformRules.Body(spec, site, findings);
        findings.AddRange(FeaturePlanner.Keyed(spec).SelectMany(f => f.Feature.Early(spec, site, f.Key)));
        RampRules.Profile(spec, site, findings);
        return findings;
    }

    /// <summary>
    /// The plan of a platform, or every fault found in what was asked. Warnings (a published minimum missed) and notes (ribs that
    /// stepped aside) ride with the plan.
    /// </summary>
    public static Outcome<PlatformPlan> Plan(PlatformRequest request) =>
        OwnTrackRule.Held(Laid(request), [request], spec => Laid(request with { Spec = spec }).Value);

    // A plan by what is swept beside its face alone.
    private static Outcome<PlatformPlan> Laid(PlatformRequest request)
    {
        request = FacingRoom.In(request);
        var outcome = Planned(request with { Spec = RampRules.Settled(request.Spec, request.Site) }, out var shaped);
        if (shaped is not null && RampRules.Raised(request.Spec, shaped) is { } raised)
        {
            outcome = Planned(request with { Spec = raised }, out shaped);
        }

        return shaped is not null && BankAngleRule.Steepened(shaped) is { } steepened ? Planned(request with { Spec = steepened }, out _) : outcome;
    }

    /// <summary>The plan of a platform by all its faces: one request a face, each telling of the whole platform with its own face first.</summary>
    public static Outcome<PlatformPlan> PlanFaces(IReadOnlyList<PlatformRequest> faces)
    {
        if (faces is not [var first, var second])
        {
            return Plan(faces[0]);
        }

        var checks = faces
            .SelectMany(f => Check(
                f.Spec,
                f.Site,
                f.Chart,
                f.Envelope.Parts.Where(p => p.IsFaced).Select(p => p.Vehicle).Distinct(),
                f.StartsAtBuffers,
                f.EndsAtBuffers))
            .DistinctBy(f => (f.Code, f.Key, f.Message)).ToList();
        if (PlanAssembly.HasErrors(checks))
        {
            return Outcome.Fault<PlatformPlan>(checks);
        }

        var outcome = OwnTrackRule.Held(Laid(first, second), faces, spec => Across(first, second, spec) is var (one, other) ? Laid(one, other).Value : null);
        return outcome with { Findings = [.. checks, .. outcome.Findings] };
    }

    // An island of another stretch by both its faces.
    private static (PlatformRequest First, PlatformRequest Second)? Across(PlatformRequest first, PlatformRequest second, PlatformSpec spec) =>
        IslandTracks.Across(spec, first.Chart, second.Chart, first.Site, second.Site).Value is { } found
            ? (first with { Spec = found.First }, second with { Spec = found.Second }) : null;

    private static Outcome<PlatformPlan> Laid(PlatformRequest first, PlatformRequest second)
    {
        (first, second) = (FacingRoom.In(first), FacingRoom.In(second));
        PlatformRequest Settled(PlatformRequest request) => request with { Spec = RampRules.Settled(request.Spec, request.Site) };
        var outcome = IslandPlanner.Plan(Settled(first), Settled(second), out var shaped);
        for (int round = 0; round < Raisings && shaped is not null && RampRules.Raised(first.Spec, shaped) is { } raised; round++)
        {
            // The second face has its ramps from the first one's planes.
            outcome = IslandPlanner.Plan(first with { Spec = first.Spec with { StartRamp = raised.StartRamp, EndRamp = raised.EndRamp } },
                Settled(second), out shaped);
        }

        return outcome;
    }

    // A foot that is raised at one edge moves what the plane comes to at the other.
    private const int Raisings = 4;

    // Shaped: the plan, if it came so far, with whatever fault is left in it.
    private static Outcome<PlatformPlan> Planned(PlatformRequest request, out PlatformPlan? shaped)
    {
        shaped = null;
        var (spec, envelope) = (request.Spec, request.Envelope);
        var vehicles = envelope.Parts.Where(p => p.IsFaced).Select(p => p.Vehicle).Distinct();
        var findings = Check(spec, request.Site, request.Chart, vehicles, request.StartsAtBuffers, request.EndsAtBuffers).ToList();
        if (!PlanAssembly.HasErrors(findings))
        {
            Allowance(request, findings);
        }

        if (PlanAssembly.HasErrors(findings))
        {
            return Outcome.Fault<PlatformPlan>(findings);
        }

        if (FacePlanner.Plan(request, RampRules.Profile(spec, request.Site, []), findings) is not { } face)
        {
            return Outcome.Fault<PlatformPlan>(findings);
        }

        var square = PlanLines.Of(spec, face.CopingFront);
        var lines = SkewCarrier.Of(spec, face, square);
        var furniture = FurniturePlanner.Plan(request, face, lines, findings);
        BackRule.Check(request, square, face.Requirement, findings);
        if (PlanAssembly.HasErrors(findings))
        {
            return Outcome.Fault<PlatformPlan>(findings);
        }

        var plan = PlanAssembly.Assembled(spec, request.Site, [face], lines, furniture);
        plan = PlanAssembly.OnBents(FacingRoom.Held(plan with { Surface = HingedDeck.Uncut(plan) }), furniture.Ribs.Bents, [.. spec.StatedCuts]);
        plan = plan with { Piers = PierPlanner.Of(plan, []), Downpipes = DownpipePlanner.Of(plan, []) };
        plan = plan with { WallOpenings = OpeningPlanner.Of(plan, []) };
        plan = plan with { Fittings = FittingKinds.Of(plan, [], []) };
        shaped = plan;
        RampRules.Feet(plan, findings);
        TrestleRule.Feet(plan, findings);
        BankAngleRule.Check(plan, findings);
        return PlanAssembly.HasErrors(findings) ? Outcome.Fault<PlatformPlan>(findings) : Outcome.Of(plan, findings);
    }

    /// <summary>
    /// The same platform with its ribs divided between its cuts, where sections have walls of their own. The findings of its ribs take the place of those
    /// that came with the plan.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="cuts">Chainages of its cuts, mm.</param>
    /// <param name="joint">How far what joins sections reaches from a cut, mm: openings right through walls keep off it.</param>
    public static Outcome<PlatformPlan> Divided(PlatformPlan plan, IReadOnlyList<double> cuts, double joint = 0)
    {
        List<Finding> findings = [], ofPiers = [], ofOpenings = [];
        plan = plan with { Piers = PierPlanner.Of(plan, cuts, ofPiers), Downpipes = DownpipePlanner.Of(plan, cuts, ofPiers) };
        var openings = OpeningPlanner.Of(plan, cuts, ofOpenings, joint);
        var ribs = FurniturePlanner.Divided(plan, cuts, findings, OpeningPlanner.Pads(plan, openings));
        findings.AddRange(ofPiers);
        plan = PlanAssembly.OnBents(plan with { WallOpenings = openings, Ribs = ribs.Ribs }, ribs.Bents, cuts);
        return Outcome.Of(
            plan with
            {
                RibPitch = ribs.Pitch,
                Features = FeaturePlanner.AmongRibs(plan, ribs.Ribs, cuts, findings),
                Fittings = FittingKinds.Of(plan, cuts, findings),
            },
            [.. findings, .. ofOpenings]);
    }

    /// <summary>Whether a finding speaks of where a plan's ribs stand, so that <see cref="Divided"/> has its own in place of it.</summary>
    public static bool IsOfRibs(PlatformSpec spec, Finding finding) =>
        finding.Severity != Severity.Error && (finding.Key.StartsWith($"{spec.Key}.ribs", StringComparison.Ordinal)
            || (finding.Code == "PF4100" && finding.Key.StartsWith($"{spec.Key}.trestle", StringComparison.Ordinal)));

    // Allowances as large as the platform leave a gap that nobody could step over: a slip of unit or comma.
    private static void Allowance(PlatformRequest request, List<Finding> findings)
    {
        double margin = request.Budget.Margin, width = request.Spec.Deck.Width;
        if (margin >= width)
        {
            var largest = request.Budget.Lines.Where(l => l.Placing != BudgetPlacing.Swept).MaxBy(l => l.AmountMm)!;
            findings.Add(PlatformFindings.AllowanceTooLarge(
                "clearance",
                margin,
                request.Spec.Name,
                width,
                largest.Name,
                width - (margin - largest.AmountMm),
                EntryKey(largest.Name)));
        }
    }

    // The key of an entry of the budget.
    private static string? EntryKey(string entry) => entry switch
    {
        "running clearance" => "clearance.running",
        "print tolerance" => "clearance.print",
        "fitting of the sections" => "clearance.fitting",
        "track laying" => "clearance.laying",
        "survey residual" => "clearance.survey",
        _ => null,
    };
}
