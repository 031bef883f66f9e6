using PlatformForge.Clearance;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track.Charts;

namespace PlatformForge.Tests.Clearance.Motion;

/// <summary>What a random design came to: how far off the nearest of its vehicles' true motion stays, over what the budget asks for.</summary>
/// <param name="Design">The design.</param>
/// <param name="Refused">Why it was refused, by the code of a finding; null where it was planned.</param>
/// <param name="Spare">Least distance found less the budget, mm; not a number where nothing comes.</param>
/// <param name="Nearest">How that came about.</param>
internal sealed record DesignTrial(RandomDesign Design, string? Refused, double Spare, Nearest? Nearest)
{
    /// <summary>Never nearer than the budget by more than this, mm: what files and plans are rounded to, and the envelope's own rounding.</summary>
    public const double Rounding = 0.003;

    /// <summary>A fitted edge is never farther off than it must be by more than this at its nearest place, mm.</summary>
    public const double Generous = 0.03;

    public bool IsTooNear => Spare < -Rounding;

    public bool IsTooFar => Design.Spec.Face.Edge == EdgeStyle.Fitted && Spare > Allowed;

    /// <summary>What a fitted edge may stand farther off than it must, mm.</summary>
    public double Allowed => Generous + Tapering;

    // Of a body that leans beside a coping all of a side is put as far out as the place of it that comes out most, and a cosine takes less off a narrow end
    // than off the widest place: the sweep's own bound, on the safe side, mm.
    private double Tapering
    {
        get
        {
            double most = Design.Runs.SelectMany(r => r.Vehicles).SelectMany(v => v.Parts).Select(p => p.Outline.Select(c => Math.Abs(c.Y)).ToArray())
                .Max(y => y.Max() - y.Min());
            return most * (1 - Math.Cos(Design.Budget.Play.Roll + Design.Budget.Play.Cant));
        }
    }

    public static DesignTrial Of(RandomDesign design) => Of(design, out _);

    /// <param name="design">The design.</param>
    /// <param name="plan">What was planned.</param>
    /// <param name="outward">How much farther out than it has to be the edge is drawn, mm: an error that the trial is to find.</param>
    public static DesignTrial Of(RandomDesign design, out PlatformPlan? plan, double outward = 0)
    {
        plan = null;
        var chart = KinkRounder.Chart(design.Runs[0].Ride).Line;
        var (spec, face) = (design.Spec, design.Spec.Face);
        var swept = EnvelopeSweeper.Sweep(new(chart, face.From, face.To, design.Runs)
        {
            Beyond = HeldHeights.Beyond(design.Budget),
            Play = design.Budget.Play,
            Edge = HeldHeights.Edge(spec)
        });
        if (swept.Value is not { } envelope)
        {
            return new(design, swept.Findings[0].Code, double.NaN, null);
        }

        var budget = outward == 0 ? design.Budget
            : design.Budget with { Lines = [.. design.Budget.Lines, new("error", outward, "to be found", BudgetPlacing.Wanted)] };
        var planned = PlatformPlanner.Plan(new(spec, RandomDesign.Site, chart, envelope, budget) { StartsAtBuffers = design.Runs[0].StartsAtBuffers });
        plan = planned.Value;
        if (plan is null)
        {
            return new(design, planned.Findings.First(f => f.Severity == Units.Severity.Error).Code, double.NaN, null);
        }

        var nearest = Search(design, new PlatformFace(plan), new Random(design.Seed));
        for (int again = 1; outward == 0 && again <= More && nearest is not null && nearest.Distance - design.Budget.Margin > Generous; again++)
        {
            // Chance did not find the place yet, or it is really too far off.
            nearest = Search(design, new PlatformFace(plan), new Random(design.Seed + again)) is { } other && other.Distance < nearest.Distance ? other
                : nearest;
        }

        return new(design, null, nearest is null ? double.NaN : nearest.Distance - design.Budget.Margin, nearest);
    }

    private const int More = 60;

    private static Nearest? Search(RandomDesign design, PlatformFace walls, Random random)
    {
        var face = design.Spec.Face;
        Nearest? nearest = null;
        foreach (var run in design.Runs)
        {
            var track = new OwnTrack(run.Ride);
            var search = new MotionSearch(track, walls, random);

            // Other tracks lie a few millimetres aside: chainages there differ by little.
            double slack = ReferenceEquals(run, design.Runs[0]) ? 2 : 60;
            foreach (var part in run.Vehicles.SelectMany(v => MovingPart.Of(v, design.Budget.Play)))
            {
                if (search.Of(part, face.From - slack, face.To + slack, run.StartsAtBuffers) is { } near && !(near.Distance >= nearest?.Distance))
                {
                    nearest = near;
                }
            }
        }

        return nearest;
    }
}
