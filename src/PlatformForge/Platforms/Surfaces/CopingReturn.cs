
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms.Surfaces;

/// <summary>
/// A coping that goes on round the corner and along a platform's end, to its back or to the coping of its other face. The slab at the corner is whole: it is
/// the first one of the edge, and those of the return begin behind it. All of it lies within the platform's outline.
/// </summary>
/// <param name="IsAtEnd">Whether it lies at the platform's end, and not at its start.</param>
/// <param name="End">Chainage of the platform's end there, mm.</param>
/// <param name="Inner">Chainage of its inner edge, mm: where deck and paving begin. It is nowhere narrower than the coping.</param>
/// <param name="Bounds">What lies between its slabs: the coping's inner edge first, then the middles of its joints, and where it ends.</param>
public sealed record CopingReturn(bool IsAtEnd, double End, double Inner, IReadOnlyList<PlanLine> Bounds)
{
    /// <summary>Those of a plan.</summary>
    public static IReadOnlyList<CopingReturn> Of(PlatformPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return [.. plan.Spec.Coping.ReturnedEnds.Select(atEnd => At(plan, atEnd))];
    }

    /// <summary>Chainages between which deck and paving lie, mm: a plan's own, or the inner edges of its returns.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="from">Where they begin at an end without a return, mm.</param>
    /// <param name="to">Where they end at one without, mm.</param>
    public static (double From, double To) Within(PlatformPlan plan, double from, double to)
    {
        foreach (var turn in Of(plan))
        {
            (from, to) = turn.IsAtEnd ? (from, turn.Inner) : (turn.Inner, to);
        }

        return (from, to);
    }

    /// <summary>Whether its last slab ends at the platform's back, where nothing stands and no other coping begins.</summary>
    public bool EndsFree { get; init; }

    /// <summary>Lesser of the chainages of its sides, mm.</summary>
    public double From => Math.Min(End, Inner);

    /// <summary>Greater of the chainages of its sides, mm.</summary>
    public double To => Math.Max(End, Inner);

    /// <summary>The place of what lies so far behind its front, mm, as a chainage; less than nothing lies beyond the platform.</summary>
    public double Behind(CopingSpec coping, double behind) => End + ((Inner - End) * behind / coping.Width);

    /// <summary>Its grooves: joints of slabs and of bricks, and the lines beside tooled margins.</summary>
    public IEnumerable<ReturnGroove> Grooves(CopingSpec coping, bool meetsCoping)
    {
        double half = coping.JointWidth / 2, margin = coping.Margin;
        for (int i = 0; i < Bounds.Count; i++)
        {
            // The joint beside the corner's slab lies within the coping, as the seam does that goes on from it.
            bool isLast = i == Bounds.Count - 1;
            if (coping.SlabLength > 0 && half > 0 && coping.JointDepth > 0 && (!isLast || meetsCoping))
            {
                double by = i == 0 ? -half : isLast ? half : 0;
                yield return Across(Bounds[i].Shifted(by), half, coping.JointDepth);
            }

            if (isLast)
            {
                continue;
            }

            PlanLine a = Bounds[i], b = Bounds[i + 1];
            double length = b.Reach[IsAtEnd ? ^1 : 0] - a.Reach[IsAtEnd ? ^1 : 0];
            if (coping.Kind == CopingKind.Bricks && half > 0 && coping.JointDepth > 0)
            {
                int bricks = Math.Max(1, (int)Math.Round(length / coping.BrickPitch));
                foreach (int k in Enumerable.Range(1, bricks - 1))
                {
                    yield return Across(Between(a, b, (double)k / bricks), half, coping.JointDepth);
                }
            }
            else if (margin > 0 && half > 0 && Math.Min(length, coping.Width) > 2 * (margin + half))
            {
                PlanLine first = a.Shifted(margin), last = b.Shifted(-margin);
                double near = Behind(coping, margin), far = Behind(coping, coping.Width - margin), wide = (Inner - End) * half / coping.Width;
                yield return new(first.Shifted(-half), first.Shifted(half), near - wide, far + wide, coping.MarginDepth, false);
                yield return new(last.Shifted(-half), last.Shifted(half), near - wide, far + wide, coping.MarginDepth, false);
                yield return new(first.Shifted(half), last.Shifted(-half), near - wide, near + wide, coping.MarginDepth, false);
                yield return new(first.Shifted(half), last.Shifted(-half), far - wide, far + wide, coping.MarginDepth, false);
            }
        }

        ReturnGroove Across(PlanLine middle, double half, double depth) =>
            new(middle.Shifted(-half), middle.Shifted(half), Behind(coping, -Overshoot), Inner, depth, true);
    }

    // How far in mm a joint reaches out of the coping, so that no two boundaries coincide.
    private const double Overshoot = 0.5;

    // What a piece of a slab has to be longer than, mm, or the coping runs on to its end whole.
    private const double LeastPiece = 1;

    private static CopingReturn At(PlatformPlan plan, bool atEnd)
    {
        var (body, coping) = (plan.Body, plan.Spec.Coping);
        double end = body.Stations[atEnd ? ^1 : 0];
        double stretch = Math.Min(plan.Spine.Stretch(end, body.CopingFront.At(end)), plan.Spine.Stretch(end, body.Back.At(end)));
        double inner = end + ((atEnd ? -1 : 1) * coping.Width / stretch);
        PlanLine near = body.CopingBack, far = body.FarCopingBack ?? body.Back;
        foreach (var strip in body.Lines.Where(l => l.From <= Math.Max(end, inner) && l.To >= Math.Min(end, inner) && l.Made.StandsAtBack))
        {
            far = strip.Near;
        }

        double room = far.At(end) - near.At(end);
        int slabs = coping.SlabLength > 0 && room > LeastPiece ? Math.Max(1, (int)Math.Round(room / coping.SlabLength)) : 1;
        return new(atEnd, end, inner, [near, .. Enumerable.Range(1, slabs - 1).Select(k => Between(near, far, (double)k / slabs)), far])
        {
            EndsFree = far == body.Back,
        };
    }

    private static PlanLine Between(PlanLine a, PlanLine b, double share) => new(a.Stations, [.. a.Reach.Zip(b.Reach, (n, f) => n + ((f - n) * share))]);
}

/// <summary>A groove in the return of a coping.</summary>
/// <param name="Near">Its side towards the first face's track.</param>
/// <param name="Far">Its other side.</param>
/// <param name="First">Chainage of its end nearer to the platform's, mm; beyond that for a joint.</param>
/// <param name="Last">Chainage of its other end, mm.</param>
/// <param name="Depth">Depth, mm.</param>
/// <param name="IsJoint">Whether it goes on down the front.</param>
public readonly record struct ReturnGroove(PlanLine Near, PlanLine Far, double First, double Last, double Depth, bool IsJoint)
{
    /// <summary>Lesser of its chainages, mm.</summary>
    public double From => Math.Min(First, Last);

    /// <summary>Greater of its chainages, mm.</summary>
    public double To => Math.Max(First, Last);
}
