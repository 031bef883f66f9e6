using PlatformForge.Clearance;
using PlatformForge.Platforms.Accounts;
using PlatformForge.Platforms.Edges;
using PlatformForge.Platforms.Furniture;
using PlatformForge.Platforms.Gaps;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms;

/// <summary>
/// Front door of the room: plans platforms. A pure function of its request; equal requests give equal plans, and a request mirrored left to right gives the
/// same plan, since all is told in chainage and reach.
/// </summary>
public static class PlatformPlanner
{
    // A platform may reach no nearer to a curve's centre than this share of the radius, so that facets keep their shape.
    private const double LeastStretch = 0.2;

    // A width given back as a remedy is taken although its stretch rounds below the least.
    private const double Rounding = 1e-9;

    /// <summary>
    /// All faults that can be told before anything is swept: figures out of range, ramps, widths, and the track at both ends.
    /// </summary>
    /// <param name="spec">What is asked for.</param>
    /// <param name="site">What it stands on.</param>
    /// <param name="chart">The faced track.</param>
    /// <param name="vehicles">What runs on it; the longest needs its own length of track beyond both ends.</param>
    /// <param name="startsAtBuffers">The track begins at buffer stops.</param>
    /// <param name="endsAtBuffers">The track ends at buffer stops.</param>
    public static IReadOnlyList<Finding> Check(PlatformSpec spec, PlatformSite site, Centreline chart, IEnumerable<Vehicle> vehicles, bool startsAtBuffers = false, bool endsAtBuffers = false)
    {
        var findings = new List<Finding>();
        ValueRules.Check(spec, site, findings);
        if (findings.Count > 0)
        {
            // What follows computes with the figures, so these have to be figures first.
            return findings;
        }

        spec = RampRules.Settled(spec, site);
        var longest = vehicles.MaxBy(v => v.Length);
        PlatformRules.Face(spec, chart, longest?.Name ?? "", longest?.Length ?? 0, startsAtBuffers, endsAtBuffers, findings);
        PlatformRules.Body(spec, site, findings);
        PlatformRules.ClearWidth(spec, site, findings);
        RampRules.Profile(spec, site, findings);
        return findings;
    }

    /// <summary>
    /// The plan of a platform, or every fault found in what was asked. Warnings (a published minimum missed) and notes (ribs that
    /// stepped aside) ride with the plan.
    /// </summary>
    public static Outcome<PlatformPlan> Plan(PlatformRequest request)
    {
        var outcome = Planned(request with { Spec = RampRules.Settled(request.Spec, request.Site) }, out var shaped);
        return shaped is not null && RampRules.Raised(request.Spec, shaped) is { } raised ? Planned(request with { Spec = raised }, out _) : outcome;
    }

    // Shaped: the plan, if it came so far, with whatever fault is left in it.
    private static Outcome<PlatformPlan> Planned(PlatformRequest request, out PlatformPlan? shaped)
    {
        shaped = null;
        var (spec, envelope) = (request.Spec, request.Envelope);
        var vehicles = envelope.Parts.Where(p => p.IsFaced).Select(p => p.Vehicle).Distinct();
        var findings = Check(spec, request.Site, request.Chart, vehicles, request.StartsAtBuffers, request.EndsAtBuffers).ToList();
        if (!HasErrors(findings))
        {
            Allowance(request, findings);
        }

        if (HasErrors(findings))
        {
            return Outcome.Fault<PlatformPlan>(findings);
        }

        var profile = RampRules.Profile(spec, request.Site, []);
        var trace = CopingRequirement.Trace(request, profile);
        Reachable(request, profile, trace, findings);
        PassingRule.Check(request, profile, findings);
        WallRule.Check(request, profile, trace, findings);
        if (HasErrors(findings))
        {
            return Outcome.Fault<PlatformPlan>(findings);
        }

        var slabs = SlabLayout.Of(spec, profile);
        var vertices = Vertices(request, slabs, trace);
        StatedReachRule.Check(request, trace, EdgeShaper.UniformReach(vertices), findings);
        FairingRule.Check(request, trace, findings);
        if (HasErrors(findings))
        {
            return Outcome.Fault<PlatformPlan>(findings);
        }

        PlanLine[] alternatives = [.. Enum.GetValues<EdgeStyle>().Select(style => Edge(request, vertices, style))];
        var lines = PlanLines.Of(spec, alternatives[(int)spec.Face.Edge]);
        var furniture = FurniturePlanner.Plan(request, profile, lines, slabs, trace, findings);
        if (HasErrors(findings))
        {
            return Outcome.Fault<PlatformPlan>(findings);
        }

        var face = new FacePlan
        {
            Spec = spec.Face,
            Chart = request.Chart,
            Stations = vertices.Stations,
            CopingFront = lines.CopingFront,
            CopingBack = lines.CopingBack,
            WallFace = lines.WallFace,
            WallBack = lines.WallBack,
            Profile = profile,
            CopingJoints = spec.Coping.SlabLength > 0 ? slabs.Joints : [],
            WhiteLine = furniture.Line,
            Requirement = trace with { Allowances = AllowanceCosts.Of(request, profile, trace) },
            Alternatives = alternatives,
            Gaps = GapMeasurer.Measure(request, profile, alternatives),
        };
        var plan = new PlatformPlan
        {
            Spec = spec,
            Site = request.Site,
            Faces = [face],
            Body = lines.Body,
            Ribs = furniture.Ribs.Ribs,
            RibPitch = furniture.Ribs.Pitch,
            Sockets = furniture.Sockets,
            PostHoles = furniture.Posts,
            Fence = furniture.Fence,
            CutCandidates = furniture.Cuts,
        };
        plan = plan with { Surface = HingedDeck.Uncut(plan) };
        shaped = plan;
        RampRules.Feet(plan, findings);
        return HasErrors(findings) ? Outcome.Fault<PlatformPlan>(findings) : Outcome.Of(plan, findings);
    }

    /// <summary>
    /// The same platform with its ribs divided between its cuts, where sections have walls of their own. The findings of its ribs take the place of those
    /// that came with the plan.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="cuts">Chainages of its cuts, mm.</param>
    public static Outcome<PlatformPlan> Divided(PlatformPlan plan, IReadOnlyList<double> cuts)
    {
        var findings = new List<Finding>();
        var ribs = FurniturePlanner.Divided(plan, cuts, findings);
        return Outcome.Of(plan with { Ribs = ribs.Ribs, RibPitch = ribs.Pitch }, findings);
    }

    /// <summary>Whether a finding speaks of where a plan's ribs stand, so that <see cref="Divided"/> has its own in place of it.</summary>
    public static bool IsOfRibs(PlatformSpec spec, Finding finding) =>
        finding.Severity != Severity.Error && finding.Key.StartsWith($"{spec.Key}.ribs", StringComparison.Ordinal);

    /// <summary>The long lines that a request without fault comes to, and what they were made for: for trying out a remedy.</summary>
    internal static (PlanLines Lines, RequirementTrace Trace) LinesOf(PlatformRequest request)
    {
        var profile = RampRules.Profile(request.Spec, request.Site, []);
        var trace = CopingRequirement.Trace(request, profile);
        return (PlanLines.Of(request.Spec, Edge(request, Vertices(request, SlabLayout.Of(request.Spec, profile), trace), request.Spec.Face.Edge)), trace);
    }

    private static EdgeVertices Vertices(PlatformRequest request, SlabLayout slabs, RequirementTrace trace) =>
        new FacetLayout(request.Chart, request.Spec.Face.Side, trace, request.Spec.Deck.Width).Choose([.. slabs.Breaks.Concat(slabs.Joints).Distinct().Order()]);

    private static PlanLine Edge(PlatformRequest request, EdgeVertices vertices, EdgeStyle style) =>
        new(vertices.Stations, EdgeShaper.Shape(style, vertices, request.Spec.Face, request.Spec.Face.LeastRadius ?? request.Site.Scale.ToModel(FaceSpec.FullSizeLeastRadius), request.Chart));

    // Allowances as large as the platform leave a gap that nobody could step over: a slip of unit or comma.
    private static void Allowance(PlatformRequest request, List<Finding> findings)
    {
        double margin = request.Budget.Margin, width = request.Spec.Deck.Width;
        if (margin >= width)
        {
            var largest = request.Budget.Lines.Where(l => l.Placing != BudgetPlacing.Swept).MaxBy(l => l.AmountMm)!;
            findings.Add(PlatformFindings.AllowanceTooLarge("clearance", margin, request.Spec.Name, width, largest.Name, width - (margin - largest.AmountMm), EntryKey(largest.Name)));
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

    // The edge needs a vehicle at every chainage, and a curve whose centre lies beyond the platform's back.
    private static void Reachable(PlatformRequest request, HeightProfile profile, RequirementTrace trace, List<Finding> findings)
    {
        var spec = request.Spec;
        double least = 1, at = 0, reach = 0, most = Math.Max(trace.Swept.Max() + trace.Budget, spec.Face.Reach ?? 0);
        for (int i = 0; i < trace.Stations.Length; i++)
        {
            if (!double.IsFinite(trace.Swept[i]) || trace.Swept[i] + trace.Budget <= 0)
            {
                findings.Add(TooHigh(request, profile, trace) ?? PlatformFindings.NothingRuns($"{spec.Key}.face", trace.Stations[i]));
                return;
            }

            double curvature = spec.Face.Side.Bend(request.Chart.CurvatureAt(trace.Stations[i]));
            if (1 - (curvature * (most + spec.Deck.Width)) < least)
            {
                (least, at, reach) = (1 - (curvature * (most + spec.Deck.Width)), trace.Stations[i], 1 / curvature);
            }
        }

        if (least < LeastStretch - Rounding)
        {
            findings.Add(PlatformFindings.TightCurve($"{spec.Key}.deck.width", at, reach, spec.Deck.Width, (reach * (1 - LeastStretch)) - most));
        }
    }

    // Where bodies may pass over the coping, parts may come past and all be too high to count: told at the place where the gap has to be largest.
    private static Finding? TooHigh(PlatformRequest request, HeightProfile profile, RequirementTrace trace)
    {
        var (envelope, face) = (request.Envelope, request.Spec.Face);
        var places = new List<(double Gap, double Chainage, PartReach Part)>();
        foreach (double s in trace.Stations.Where((_, i) => double.IsNegativeInfinity(trace.Swept[i])))
        {
            int at = (int)Math.Round((s - envelope.From) / envelope.Spacing);
            if (envelope.Parts.Where(p => p.IsFaced && double.IsFinite(p.Towards(face.Side)[at])).MinBy(p => p.Lowest) is { } lowest)
            {
                places.Add((lowest.Lowest - (profile.At(s) - request.Site.RailTop) + LeastOver, s, lowest));
            }
        }

        return face.BodiesPassOver && places.Count > 0 && places.MaxBy(p => p.Gap) is var (gap, chainage, part)
            ? PlatformFindings.NothingSoLow($"{request.Spec.Key}.face", chainage, $"{part.Part.Name} of {part.Vehicle.Name}", part.ZLow, gap, OnRamp(request, profile, chainage, part.ZLow))
            : null;
    }

    // The foot of the ramp that a chainage is on, and how high it has to be for a part to count at the gap stated.
    private static (string Key, double Foot)? OnRamp(PlatformRequest request, HeightProfile profile, double s, double low)
    {
        var spec = request.Spec;
        double wanted = low + LeastOver - spec.Face.VerticalGap;
        foreach (var (on, end, foot, head) in new[] { (s < profile.StartHead, "start", profile.From, profile.StartHead), (s > profile.EndHead, "end", profile.To, profile.EndHead) })
        {
            double share = on ? (s - foot) / (head - foot) : 0;
            if (on && (wanted - (share * spec.Height)) / (1 - share) is var height && height < spec.Height)
            {
                return ($"{spec.Key}.ramps.{end}.foot_height", height);
            }
        }

        return null;
    }

    // A part counts when it is lower than the limit by anything, mm.
    private const double LeastOver = 0.01;

    private static bool HasErrors(List<Finding> findings) => findings.Exists(f => f.Severity == Severity.Error);
}
