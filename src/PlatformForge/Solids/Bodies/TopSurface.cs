using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Units;

namespace PlatformForge.Solids.Bodies;

/// <summary>A piece of the platform's plan over which the walking surface is one plane.</summary>
internal readonly record struct TopPiece(Point2[] Ring, HeightPlane Top);

/// <summary>
/// The walking surface as planes: one over the level part, one over each ramp; with a crossfall, behind the coping, one
/// or two a facet. Facets that turn out to lie in one plane are taken together, so that flat areas are few large rings.
/// </summary>
internal sealed class TopSurface
{
    /// <summary>Heights nearer than this, mm, are one plane: a tenth of what the kernel asks of neighbours.</summary>
    public const double PlaneAgreement = 1e-8;

    /// <summary>How far from the middle of the deck's thickness something that ends in it may end, as a part of the thickness.</summary>
    private const double InsideShare = 0.4;

    private readonly FacetedPlan chart;
    private readonly PlatformPlan plan;
    private readonly HeightPlane startRamp;
    private readonly HeightPlane endRamp;

    public TopSurface(FacetedPlan chart)
    {
        this.chart = chart;
        plan = chart.Plan;
        var profile = plan.Profile;
        startRamp = profile.StartHead > profile.From ? RampPlane(profile.From, profile.StartHead) : new(profile.Level);
        endRamp = profile.EndHead < profile.To ? RampPlane(profile.To, profile.EndHead) : new(profile.Level);
    }

    private bool HasCrossfall => plan.Spec.Deck.Crossfall > 0;

    /// <summary>Pieces that together cover the strip between two lines and two chainages, each under one plane.</summary>
    public IEnumerable<TopPiece> Cover(PlanLine near, PlanLine far, double from, double to)
    {
        if (from >= to)
        {
            return [];
        }

        if (!HasCrossfall)
        {
            return Merge(near, far, from, to, false);
        }

        var fold = plan.CopingBack;
        var front = Clamped(far, fold, Math.Min);
        var back = Clamped(near, fold, Math.Max);
        return (Wide(near, front) ? Merge(near, front, from, to, false) : []).Concat(Wide(back, far) ? Merge(back, far, from, to, true) : []);
    }

    /// <summary>
    /// Pieces that cover the strip like <see cref="Cover"/>, but whose planes need only lie inside the deck slab: what stands under the deck and is
    /// one with it may end anywhere in its thickness, so that a strip is one piece between the ramp heads.
    /// </summary>
    public IEnumerable<TopPiece> CoverInside(PlanLine near, PlanLine far, double from, double to)
    {
        double deck = plan.Spec.Deck.Thickness;
        var profile = plan.Profile;
        double[] ends = [from, .. new[] { profile.StartHead, profile.EndHead }.Where(s => s > from && s < to), to];
        for (int i = 0; i + 1 < ends.Length; i++)
        {
            double a = ends[i], b = ends[i + 1];
            if (a >= b)
            {
                continue;
            }

            var chainages = chart.Chainages(a, b);
            double s = (a + b) / 2, t = (near.At(s) + far.At(s)) / 2;
            var along = Along(s);
            var place = plan.ToLayout(s, t);
            HeightPlane[] planes = [along.Raised(plan.TopAt(s, t) - along.At(place)), Near(s, t)];
            if (planes.Select(p => p.Raised(-deck / 2)).Where(Inside).Take(1).ToArray() is [var plane])
            {
                yield return new(chart.Ring(near, far, chainages), plane);
                continue;
            }

            foreach (var piece in Cover(near, far, a, b))
            {
                yield return piece with { Top = piece.Top.Raised(-deck / 2) };
            }

            // Over a strip the surface bends only along the coping's back, so its corners tell.
            bool Inside(HeightPlane p)
            {
                var fold = Clamped(Clamped(plan.CopingBack, near, Math.Max), far, Math.Min);
                return chainages.All(c => new[] { near, far, fold }.All(line =>
                    Math.Abs(p.At(chart.On(line, c)) + (deck / 2) - plan.TopAt(c, line.At(c))) < deck * InsideShare));
            }
        }
    }

    /// <summary>Plane of the coping's top at a chainage: level or a ramp; at a ramp's head the level one.</summary>
    public HeightPlane Along(double chainage)
    {
        var profile = plan.Profile;
        return chainage < profile.StartHead ? startRamp : chainage > profile.EndHead ? endRamp : new(profile.Level);
    }

    /// <summary>Plane that touches the walking surface at a place of the plan.</summary>
    public HeightPlane Near(double chainage, double reach)
    {
        var along = Along(chainage);
        if (!HasCrossfall || reach <= plan.CopingBack.At(chainage))
        {
            return along;
        }

        var away = chart.CrossLine(chainage).Across;
        var place = plan.ToLayout(chainage, reach);
        double fall = 1 / (plan.Spec.Deck.Crossfall * away.Length), gx = along.X - (away.X / away.Length * fall), gy = along.Y - (away.Y / away.Length * fall);
        return new(plan.TopAt(chainage, reach) - (gx * place.X) - (gy * place.Y), gx, gy);
    }

    private static PlanLine Clamped(PlanLine line, PlanLine fold, Func<double, double, double> choose) =>
        new(line.Stations, [.. line.Reach.Select((t, i) => choose(t, fold.Reach[i]))]);

    private static bool Wide(PlanLine near, PlanLine far) => near.Reach.Zip(far.Reach).Any(w => w.Second - w.First > Tolerances.GridStep);

    private HeightPlane RampPlane(double foot, double head)
    {
        double t = plan.CopingFront.At(head);
        Point3 Top(double s, double reach)
        {
            var p = plan.ToLayout(s, reach);
            return new(p.X, p.Y, s == head ? plan.Profile.Level : plan.TopAt(s, reach));
        }

        return HeightPlane.Through(Top(head, t), Top(head, t / 2), Top(foot, plan.CopingFront.At(foot)));
    }

    // Goes along the facets and holds back a run of them for as long as the next one lies in the same plane.
    private IEnumerable<TopPiece> Merge(PlanLine near, PlanLine far, double from, double to, bool behindCoping)
    {
        var chainages = chart.Chainages(from, to);
        int first = 0;
        HeightPlane? run = null;
        for (int i = 0; i + 1 < chainages.Length; i++)
        {
            double a = chainages[i], b = chainages[i + 1];
            var ring = chart.Ring(near, far, [a, b]);
            if (run is { } held && Follows(ring, a, b, behindCoping, held))
            {
                continue;
            }

            if (run is { } ended)
            {
                yield return new(chart.Ring(near, far, chainages[first..(i + 1)]), ended);
            }

            first = i;
            run = null;
            var planes = Planes(a, b, behindCoping);
            if (planes.Length == 1)
            {
                run = planes[0].Top;
                continue;
            }

            foreach (var half in planes)
            {
                var part = ConvexRing.LeftOf(ring, half.Ring[0], half.Ring[1]);
                if (part.Length > 0)
                {
                    yield return new(part, half.Top);
                }
            }

            first = i + 1;
        }

        if (run is { } last)
        {
            yield return new(chart.Ring(near, far, chainages[first..]), last);
        }
    }

    private bool Follows(Point2[] ring, double a, double b, bool behindCoping, HeightPlane run)
    {
        var planes = Planes(a, b, behindCoping);
        return planes.Length == 1 && ring.All(p => Math.Abs(planes[0].Top.At(p) - run.At(p)) < PlaneAgreement);
    }

    // The plane over a facet; behind the coping two, to the left of one and the other direction of the facet's diagonal, where the four corners are not in one.
    private TopPiece[] Planes(double a, double b, bool behindCoping)
    {
        var along = Along((a + b) / 2);
        if (!behindCoping)
        {
            return [new([], along)];
        }

        int i = chart.FacetAt((a + b) / 2);
        double n = plan.Spec.Deck.Crossfall, s0 = chart.Stations[i], s1 = chart.Stations[i + 1];
        Point3 Corner(PlanLine line, double s, int station)
        {
            var p = chart.On(line, s);
            return new(p.X, p.Y, along.At(p) - ((line.Reach[station] - plan.CopingBack.Reach[station]) / n));
        }

        Point3 near0 = Corner(plan.CopingBack, s0, i), near1 = Corner(plan.CopingBack, s1, i + 1), far0 = Corner(plan.Back, s0, i), far1 = Corner(plan.Back, s1, i + 1);
        var whole = HeightPlane.Through(near0, near1, far1);
        if (Math.Abs(whole.At(new(far0.X, far0.Y)) - far0.Z) < PlaneAgreement)
        {
            return [new([], whole)];
        }

        Point2 start = new(near0.X, near0.Y), end = new(far1.X, far1.Y);
        var (first, second) = chart.RunsLeft ? (end, start) : (start, end);
        return [new([first, second], whole), new([second, first], HeightPlane.Through(near0, far1, far0))];
    }
}
