using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Furniture;

/// <summary>
/// Sets fence posts: each run between ends and gaps has a post at both ends and whole panels of even length, measured along
/// the fence itself and not along the track.
/// </summary>
internal sealed class FencePlanner(PlatformSpec spec, FenceSpec fence, PlanLines lines, Centreline chart, List<Finding> findings)
{
    // The fence's own length is summed over steps of this many mm of chainage.
    private const double Step = 1;

    // A step halved so often is a thousandth of a thousandth of a millimetre.
    private const int Halvings = 20;

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
            findings.Add(PlatformFindings.DeckTooNarrowFor($"{key}.inset", "fence", spec.Deck.Width, spec.Coping.Width + (hole / 2) + Math.Max(margin, fence.Inset)));
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
            findings.Add(PlatformFindings.FenceTooShort($"{key}.from", first, last, 2 * hole));
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

    private IEnumerable<double> Run(double from, double to)
    {
        int steps = Math.Max(2, (int)Math.Ceiling((to - from) / Step));
        var chainage = new double[steps + 1];
        var along = new double[steps + 1];
        for (int i = 0; i <= steps; i++)
        {
            chainage[i] = i == steps ? to : from + ((to - from) * i / steps);
            along[i] = i == 0 ? 0 : along[i - 1] + (Place(chainage[i]) - Place(chainage[i - 1])).Length;
        }

        int panels = Math.Max(1, (int)Math.Round(along[^1] / fence.Pitch, MidpointRounding.AwayFromZero));
        yield return from;
        for (int p = 1, i = 1; p < panels; p++)
        {
            double wanted = along[^1] * p / panels;
            while (along[i] < wanted)
            {
                i++;
            }

            yield return Beyond(chainage[i - 1], chainage[i], wanted - along[i - 1]);
        }

        yield return to;
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
