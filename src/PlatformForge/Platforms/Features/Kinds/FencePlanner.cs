using PlatformForge.Geometry;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>
/// Sets fence posts. Gates are as wide as asked at the fence itself; each run between ends and gates has a post at both ends and is divided by
/// <see cref="FenceRun"/>.
/// </summary>
internal sealed class FencePlanner(FeatureSite site, FenceSpec fence)
{
    // Widths are found to far below this, mm.
    private const double Grain = Tolerances.Rounding;

    // A width halved so often is far below the plan grid.
    private const int Halvings = 60;

    private readonly PlatformSpec spec = site.Spec;
    private readonly List<Finding> findings = [];
    private readonly string key = site.Key;
    private readonly double hole = fence.PinDiameter + fence.Fit;

    /// <summary>What was found out of the way.</summary>
    public IReadOnlyList<Finding> Findings => findings;

    /// <summary>Its posts and what stands between them; null where it has no place.</summary>
    public PlanFence? Plan()
    {
        double first = fence.From ?? spec.Face.From + fence.EndInset, last = fence.To ?? spec.Face.To - fence.EndInset;
        var gates = fence.Gaps.Select(g => Gate(g, first, last)).ToArray();
        if (!Fits(first, last, gates))
        {
            return null;
        }

        var posts = new List<double>();
        var bays = new List<FenceBay>();
        double from = first;
        for (int i = 0; i <= gates.Length; i++)
        {
            double to = i < gates.Length ? gates[i].From : last;
            if (i > 0)
            {
                bays.Add(new(FenceBayKind.Gate, Distance(gates[i - 1].From, gates[i - 1].To), fence.Gaps[i - 1].Width));
            }

            Run(from, to, startsAtGate: i > 0, endsAtGate: i < gates.Length, posts, bays);
            from = i < gates.Length ? gates[i].To : last;
        }

        RoundHole[] holes = [.. posts.Select(s => new RoundHole(
            "fence post",
            new(s, site.Lines.Back.At(s) - fence.Inset),
            hole,
            fence.Depth,
            FeatureSite.Boss(spec, fence.Depth)))];
        findings.AddRange(RoundHole.TooDeep($"{key}.depth", holes, site));
        return new(holes, bays);
    }

    private void Run(double from, double to, bool startsAtGate, bool endsAtGate, List<double> posts, List<FenceBay> bays)
    {
        if (to - from <= Grain)
        {
            // A gate at the fence's very end, or two side by side: the post that both share.
            posts.Add(from);
            return;
        }

        var run = new FenceRun(
            fence,
            hole,
            Math.Max(FeatureSite.LeastLand, FeatureSite.Boss(spec, fence.Depth)),
            Place,
            site.Slabs.Breaks[1..^1],
            site.Slabs.Joints);
        var (places, odd) = fence.Panels == FencePanels.Even ? (run.Even(from, to), []) : Whole(run, from, to, startsAtGate, endsAtGate);
        posts.AddRange(places);
        for (int i = 0; i + 1 < places.Length; i++)
        {
            bool isOdd = odd.Contains(i);
            bays.Add(new(isOdd ? FenceBayKind.Odd : FenceBayKind.Panel, Distance(places[i], places[i + 1]), isOdd ? null : fence.Pitch));
        }
    }

    private (double[] Places, IReadOnlyList<int> Odd) Whole(FenceRun run, double from, double to, bool startsAtGate, bool endsAtGate)
    {
        // A run between a gate and an end has the odd panel where it is asked for, any other at its end.
        bool atStart = startsAtGate != endsAtGate && startsAtGate == (fence.Odd == OddPanel.Gates);
        var (places, odd) = run.Whole(from, to, atStart);
        int wanted = atStart ? 0 : places.Length - 2;
        if (odd.Count == 2)
        {
            double length = Distance(places[odd[0]], places[odd[0] + 1]);
            findings.Add(PlatformFindings.OddPanelShared($"{key}.pitch", from, to, (2 * length) - fence.Pitch, length));
        }

        if (odd.Count > 0 && !odd.Contains(wanted))
        {
            findings.Add(PlatformFindings.OddPanelMoved(
                $"{key}.odd",
                places[odd[0]],
                places[odd[^1] + 1],
                atStart ? from : to,
                "there a post would stand where the platform is to be cut"));
        }

        return (places, odd);
    }

    // Chainages of a gate's posts: as far to either side of its middle as makes it as wide as asked, straight across.
    private (double From, double To) Gate(FenceGapSpec gap, double first, double last)
    {
        double half = gap.Width / 2, most = Math.Min(gap.Middle - first, last - gap.Middle);
        if (!(half > 0) || !(most >= half * LeastShare))
        {
            return (gap.From, gap.To);
        }

        double low = 0, high = gap.Width / LeastStretch;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Distance(gap.Middle - middle, gap.Middle + middle) < gap.Width ? (middle, high) : (low, middle);
        }

        // A gate that is asked for to end where the fence does ends there.
        return gap.From == first ? (first, AtDistance(
            first,
            gap.Width)) : gap.To == last ? (AtDistance(last, -gap.Width), last) : (gap.Middle - high, gap.Middle + high);
    }

    // No fence is shorter than this share of its track: platforms reach no nearer to a curve's centre.
    private const double LeastStretch = 0.1;

    // A gate whose middle is nearer to an end than this share of half its width is off the fence on any curve.
    private const double LeastShare = 0.5;

    private double AtDistance(double s, double width)
    {
        double low = 0, high = Math.Abs(width) / LeastStretch;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Distance(s, s + (Math.Sign(width) * middle)) < Math.Abs(width) ? (middle, high) : (low, middle);
        }

        return s + (Math.Sign(width) * high);
    }

    private bool Fits(double first, double last, (double From, double To)[] gates)
    {
        int faults = findings.Count;
        double margin = FeatureSite.LeastLand + (hole / 2);
        HoldOnFace(first, last, margin);
        HoldOnDeck(margin);
        if (last - first < 2 * hole)
        {
            findings.Add(PlatformFindings.FenceTooShort(key, first, last, 2 * hole, (fence.From is not null, fence.To is not null)));
        }

        HoldGates(first, last, gates);
        return findings.Count == faults;
    }

    private void HoldOnFace(double first, double last, double margin)
    {
        double least = spec.Face.From + margin, most = spec.Face.To - margin;
        if (first < least || last > most)
        {
            bool start = first < least;
            findings.Add(PlatformFindings.OffTheEnds(start ? $"{key}.from" : $"{key}.to", "fence", start ? first : last, least, most));
        }
    }

    // Its holes lie between the deck's back and the coping.
    private void HoldOnDeck(double margin)
    {
        double deepest = spec.Deck.Width - spec.Coping.Width - (hole / 2);
        if (deepest < margin - Grain)
        {
            findings.Add(PlatformFindings.DeckTooNarrowFor(
                $"{key}.inset",
                "fence",
                spec.Deck.Width,
                spec.Coping.Width + (hole / 2) + Math.Max(margin, fence.Inset),
                $"{spec.Key}.deck.width"));
        }
        else if (fence.Inset < margin - Grain)
        {
            findings.Add(PlatformFindings.OffTheDeck($"{key}.inset", "fence", margin - fence.Inset, margin, true));
        }
        else if (fence.Inset > deepest + Grain)
        {
            findings.Add(PlatformFindings.ThroughCoping($"{key}.inset", "fence", fence.Inset - deepest, deepest, false));
        }
    }

    // Gates lie in order, with room for two holes between them.
    private void HoldGates(double first, double last, (double From, double To)[] gates)
    {
        double at = first;
        for (int i = 0; i < gates.Length; i++)
        {
            var (from, to) = gates[i];
            bool touches = from > at && from - at < 2 * hole;
            if (!(from >= at && fence.Gaps[i].Width >= 2 * hole && to <= last) || touches)
            {
                findings.Add(FenceFindings.FenceGap(PlatformFindings.Indexed(key, "gap", i), fence.Gaps[i], at, last, 2 * hole));
            }

            at = to;
        }
    }

    private double Distance(double a, double b) => (Place(b) - Place(a)).Length;

    private Point2 Place(double s) => site.ToLayout(new(s, site.Lines.Back.At(s) - fence.Inset));
}
