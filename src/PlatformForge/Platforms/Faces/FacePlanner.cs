using PlatformForge.Clearance.Requests;
using PlatformForge.Platforms.Accounts;
using PlatformForge.Platforms.Edges;
using PlatformForge.Platforms.Furniture;
using PlatformForge.Platforms.Gaps;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Faces;

/// <summary>Plans one face: chart, requirement, facets, edge, and what goes along it. Knows nothing of what lies behind.</summary>
internal static class FacePlanner
{
    // A platform may reach no nearer to a curve's centre than this share of the radius, so that facets keep their shape.
    private const double LeastStretch = 0.2;

    // A width given back as a remedy is taken although its stretch rounds below the least.
    private const double Rounding = Tolerances.Rounding;

    /// <summary>The face, or null with the faults among the findings.</summary>
    /// <param name="request">The platform, its spec's first face being the one that is planned.</param>
    /// <param name="profile">Heights along it.</param>
    /// <param name="findings">Takes what is wrong or to be known.</param>
    public static FacePlan? Plan(PlatformRequest request, HeightProfile profile, List<Finding> findings)
    {
        var spec = request.Spec;
        var trace = CopingRequirement.Trace(request, profile);
        Reachable(request, profile, trace, findings);
        PassingRule.Check(request, profile, findings);
        WallRule.Check(request, profile, trace, findings);
        if (PlanAssembly.HasErrors(findings))
        {
            return null;
        }

        var slabs = SlabLayout.Of(spec, profile);
        var vertices = Vertices(request, slabs, trace);
        StatedReachRule.Check(request, trace, EdgeShaper.UniformReach(vertices), findings);
        FairingRule.Check(request, trace, findings);
        return PlanAssembly.HasErrors(findings) ? null : Face(request, profile, trace, slabs, vertices);
    }

    private static FacePlan Face(PlatformRequest request, HeightProfile profile, RequirementTrace trace, SlabLayout slabs, EdgeVertices vertices)
    {
        var spec = request.Spec;
        PlanLine[] alternatives = [.. Enum.GetValues<EdgeStyle>().Select(style => Edge(request, vertices, style))];
        var front = alternatives[(int)spec.Face.Edge];
        return new()
        {
            Spec = spec.Face,
            Chart = request.Chart,
            RailTop = request.Site.RailTop,
            Stations = vertices.Stations,
            CopingFront = front,
            CopingBack = front.Shifted(spec.Coping.Width),
            WallFace = front.Shifted(spec.Coping.Overhang),
            WallBack = front.Shifted(spec.Coping.Overhang + spec.FrontDepth),
            Profile = profile,
            CopingJoints = spec.Coping.SlabLength > 0 ? [.. slabs.Joints.Where(j => !IsInCorner(spec, j))] : [],
            WhiteLine = spec.EdgeLine is { } line ? Band(request, profile, front, (line.Inset, line.Width), line.Make) : null,
            Tactile = spec.Tactile is { } tactile ? Band(request, profile, front, (tactile.Inset, tactile.Width), tactile.Make) : null,
            Requirement = trace with { Allowances = AllowanceCosts.Of(request, profile, trace) },
            Alternatives = alternatives,
            Gaps = GapMeasurer.Measure(request, profile, alternatives),
        };
    }

    // The slab at a corner round which the coping goes is whole, and longer than the coping is wide: a shorter one is one with its neighbour.
    private static bool IsInCorner(PlatformSpec spec, double joint)
    {
        double least = (LeastCorner * spec.Coping.Width) + spec.Coping.JointWidth;
        return (spec.Coping.IsReturned(false) && joint < spec.Face.From + least) || (spec.Coping.IsReturned(true) && joint > spec.Face.To - least);
    }

    // Length of the slab at a corner over the coping's width, at least: chainages run faster or slower than the coping on curves.
    private const double LeastCorner = 1.25;

    // Lines and strips stop at the ramps' tops, and behind the coping where this turns a corner.
    private static LineBand? Band(PlatformRequest request, HeightProfile profile, PlanLine front, (double Inset, double Width) at, LineMake make)
    {
        var coping = request.Spec.Coping;
        double Back(bool atEnd, double end) => !coping.IsReturned(atEnd) || at.Inset < coping.Width ? 0
            : coping.Width / (1 - (request.Spec.Face.Side.Bend(request.Chart.CurvatureAt(end)) * (front.At(end) + at.Inset)));
        double from = profile.StartHead + Back(false, profile.StartHead), to = profile.EndHead - Back(true, profile.EndHead);
        return to > from ? new(from, to, front.Shifted(at.Inset), front.Shifted(at.Inset + at.Width), make) : null;
    }

    /// <summary>The long lines that a request without fault comes to, and what they were made for: for trying out a remedy.</summary>
    internal static (BodyPlan Lines, RequirementTrace Trace) LinesOf(PlatformRequest request)
    {
        var profile = RampRules.Profile(request.Spec, request.Site, []);
        var trace = CopingRequirement.Trace(request, profile);
        return (PlanLines.Of(request.Spec, Edge(request, Vertices(request, SlabLayout.Of(request.Spec, profile), trace), request.Spec.Face.Edge)), trace);
    }

    private static EdgeVertices Vertices(PlatformRequest request, SlabLayout slabs, RequirementTrace trace) =>
        new FacetLayout(
            request.Chart,
            request.Spec.Face.Side,
            trace,
            request.Spec.Deck.Width).Choose(Breaks(request.Spec, [.. slabs.Breaks.Concat(slabs.Joints).Distinct().Order()]));

    // Where lines across begin and end to turn is a station too, unless one is as near as makes no facet.
    private static double[] Breaks(PlatformSpec spec, double[] breaks) =>
        [.. breaks.Concat(SkewSpec.Bends(spec).Where(b => !breaks.Any(s => Math.Abs(s - b) < LeastFacet))).Order()];

    private const double LeastFacet = 0.5; // mm

    private static PlanLine Edge(PlatformRequest request, EdgeVertices vertices, EdgeStyle style) =>
        new(vertices.Stations, EdgeShaper.Shape(
            style,
            vertices,
            request.Spec.Face,
            request.Spec.Face.LeastRadius ?? request.Site.Scale.ToModel(FaceSpec.FullSizeLeastRadius),
            request.Chart));

    // The edge needs a vehicle at every chainage, and a curve whose centre lies beyond the platform's back.
    private static void Reachable(PlatformRequest request, HeightProfile profile, RequirementTrace trace, List<Finding> findings)
    {
        var spec = request.Spec;
        double least = 1, at = 0, reach = 0, most = Math.Max(trace.Swept.Max() + trace.Budget, spec.Face.Reach ?? 0);
        for (int i = 0; i < trace.Stations.Length; i++)
        {
            if (!double.IsFinite(trace.Swept[i]) || trace.Swept[i] + trace.Budget <= 0)
            {
                findings.Add(TooHigh(request, profile, trace) ?? PlatformFindings.NothingRuns(spec.FaceKey, trace.Stations[i]));
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
            ? PlatformFindings.NothingSoLow(
                request.Spec.FaceKey,
                chainage,
                $"{part.Part.Name} of {part.Vehicle.Name}",
                part.ZLow,
                gap,
                OnRamp(request, profile, chainage, part.ZLow))
            : null;
    }

    // The foot of the ramp that a chainage is on, and how high it has to be for a part to count at the gap stated.
    private static (string Key, double Foot)? OnRamp(PlatformRequest request, HeightProfile profile, double s, double low)
    {
        var spec = request.Spec;
        double wanted = low + LeastOver - spec.Face.VerticalGap;
        foreach (var (on, end, foot, head) in new[] { (s < profile.StartHead, "start", profile.From, profile.StartHead), (s > profile.EndHead, "end",
            profile.To, profile.EndHead) })
        {
            double share = on ? (s - foot) / (head - foot) : 0;
            if (on && (wanted - (share * spec.Height)) / (1 - share) is var height && height < spec.Height)
            {
                return ($"{spec.Key}.ramps.{end}.foot", height);
            }
        }

        return null;
    }

    // A part counts when it is lower than the limit by anything, mm.
    private const double LeastOver = 0.01;
}
