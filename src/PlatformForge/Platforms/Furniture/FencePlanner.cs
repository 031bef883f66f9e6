using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Furniture;

/// <summary>
/// Sets fence posts: each run between ends and gaps has a post at both ends and whole panels of even length, measured along
/// the fence itself and not along the track. Where a post would stand at a ramp's head or at a cut that is asked for, the run has a panel more or fewer.
/// </summary>
internal sealed class FencePlanner(PlatformSpec spec, FenceSpec fence, PlanLines lines, Centreline chart, IReadOnlyList<double> cuts, List<Finding> findings)
{
    // The fence's own length is summed over steps of this many mm of chainage.
    private const double Step = 1;

    // A step halved so often is a thousandth of a thousandth of a millimetre.
    private const int Halvings = 20;

    // A post keeps this far from a cut, mm: what a cut keeps of its own, and what sections may ask for on top.
    private const double ClearOfCuts = CutPlanner.Clear + 2;

    // Panels are made longer or shorter by at most this share to keep clear of a cut.
    private const double MostStretch = 0.25;

    // Sums of stated lengths that differ by less than this, mm, are equal.
    private const double Grain = 1e-9;

    private readonly string key = $"{spec.Key}.fence";
    private readonly double hole = fence.PinDiameter + fence.Fit;

    public IReadOnlyList<PlanHole> Plan()
    {
        double first = fence.From ?? spec.Face.From + fence.EndInset, last = fence.To ?? spec.Face.To - fence.EndInset;
        if (!Fits(first, last))
        {
            return [];
        }

        var holes = new List<PlanHole>();
        double from = first;
        for (int i = 0; i <= fence.Gaps.Count; i++)
        {
            double to = i < fence.Gaps.Count ? fence.Gaps[i].From : last;
            if (to > from)
            {
                holes.AddRange(Run(from, to).Select(s => new PlanHole("fence post", s, lines.Back.At(s) - fence.Inset, hole, fence.Depth)));
            }

            from = i < fence.Gaps.Count ? fence.Gaps[i].To : last;
        }

        return holes;
    }

    private bool Fits(double first, double last)
    {
        int faults = findings.Count;
        double margin = SocketPlanner.LeastLand + (hole / 2);
        double least = spec.Face.From + margin, most = spec.Face.To - margin;
        if (first < least || last > most)
        {
            bool start = first < least;
            findings.Add(PlatformFindings.OffTheEnds(start ? $"{key}.from" : $"{key}.to", "fence", start ? first : last, least, most));
        }

        double deepest = spec.Deck.Width - spec.Coping.Width - (hole / 2);
        if (deepest < margin - Grain)
        {
            findings.Add(PlatformFindings.DeckTooNarrowFor($"{key}.inset", "fence", spec.Deck.Width, spec.Coping.Width + (hole / 2) + Math.Max(margin, fence.Inset), $"{spec.Key}.deck.width"));
        }
        else if (fence.Inset < margin - Grain)
        {
            findings.Add(PlatformFindings.OffTheDeck($"{key}.inset", "fence", margin - fence.Inset, margin, true));
        }
        else if (fence.Inset > deepest + Grain)
        {
            findings.Add(PlatformFindings.ThroughCoping($"{key}.inset", "fence", fence.Inset - deepest, deepest, false));
        }

        if (last - first < 2 * hole)
        {
            findings.Add(PlatformFindings.FenceTooShort(key, first, last, 2 * hole, (fence.From is not null, fence.To is not null)));
        }

        double at = first;
        for (int i = 0; i < fence.Gaps.Count; i++)
        {
            var gap = fence.Gaps[i];
            bool touches = gap.From > at && gap.From - at < 2 * hole;
            if (!(gap.From >= at && gap.To - gap.From >= 2 * hole && gap.To <= last) || touches)
            {
                findings.Add(PlatformFindings.FenceGap(PlatformFindings.Indexed(key, "gaps", i), gap, at, last, 2 * hole));
            }

            at = gap.To;
        }

        return findings.Count == faults;
    }

    private double[] Run(double from, double to)
    {
        int steps = Math.Max(2, (int)Math.Ceiling((to - from) / Step));
        var chainage = new double[steps + 1];
        var along = new double[steps + 1];
        for (int i = 0; i <= steps; i++)
        {
            chainage[i] = i == steps ? to : from + ((to - from) * i / steps);
            along[i] = i == 0 ? 0 : along[i - 1] + (Place(chainage[i]) - Place(chainage[i - 1])).Length;
        }

        // Panel counts from the one nearest to the pitch outwards; that one where no other keeps clear.
        double wanted = along[^1] / fence.Pitch;
        int usual = Math.Max(1, (int)Math.Round(wanted, MidpointRounding.AwayFromZero));
        int least = Math.Max(1, (int)Math.Ceiling(wanted * (1 - MostStretch))), most = (int)Math.Floor(wanted * (1 + MostStretch));
        return Enumerable.Range(least, Math.Max(0, most - least + 1)).OrderBy(n => Math.Abs(n - wanted)).Prepend(usual)
            .Select(panels => Posts(chainage, along, panels)).FirstOrDefault(ClearsCuts) ?? Posts(chainage, along, usual);
    }

    // Cuts: chainages in mm at which the platform is best cut, its ramp heads and the cuts asked for.
    private bool ClearsCuts(double[] posts) =>
        !posts.Any(post => cuts.Any(cut => Math.Abs(post - cut) < (hole / 2) + ClearOfCuts));

    private double[] Posts(double[] chainage, double[] along, int panels)
    {
        var posts = new double[panels + 1];
        (posts[0], posts[panels]) = (chainage[0], chainage[^1]);
        for (int p = 1, i = 1; p < panels; p++)
        {
            double wanted = along[^1] * p / panels;
            while (along[i] < wanted)
            {
                i++;
            }

            posts[p] = Beyond(chainage[i - 1], chainage[i], wanted - along[i - 1]);
        }

        return posts;
    }

    // Chainage at a straight distance from the fence's place at a, before b: by halves, since the track may begin to curve anywhere between.
    private double Beyond(double a, double b, double distance)
    {
        var start = Place(a);
        for (int half = 0; half < Halvings; half++)
        {
            double middle = (a + b) / 2;
            (a, b) = (Place(middle) - start).Length < distance ? (middle, b) : (a, middle);
        }

        return (a + b) / 2;
    }

    private Point2 Place(double s) => chart.PointAt(s, (int)spec.Face.Side * (lines.Back.At(s) - fence.Inset));
}
