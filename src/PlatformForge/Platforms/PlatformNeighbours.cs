using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms;

/// <summary>Holds the finished plans of a layout against one another: no two platforms may stand in the same place (PF4027).</summary>
public static class PlatformNeighbours
{
    // Platforms are compared at places this far apart along their outlines, mm, and at every corner.
    private const double Step = 1;

    // Kept back from a width that is offered, mm, for what lies between those places.
    private const double KeptBack = 0.05;

    /// <summary>An error for every two platforms that overlap in plan, with the largest width that would keep them apart.</summary>
    public static IReadOnlyList<Finding> Check(IReadOnlyList<PlatformPlan> plans)
    {
        var findings = new List<Finding>();
        Point2[][] outlines = [.. plans.Select(Outline)];
        var boxes = Array.ConvertAll(outlines, Box);
        for (int i = 0; i < plans.Count; i++)
        {
            for (int j = i + 1; j < plans.Count; j++)
            {
                if (!Meet(boxes[i], boxes[j]))
                {
                    findings.AddRange(Turned(i, j));
                    continue;
                }

                var first = Intrusion.Of(plans[i], outlines[i], outlines[j]);
                var second = Intrusion.Of(plans[j], outlines[j], outlines[i]);
                if ((first ?? second) is { } told)
                {
                    var (plan, other) = first is null ? (plans[j], plans[i]) : (plans[i], plans[j]);
                    var (sentence, cure) = Remedy(told, plan, second is not null && first is not null ? second : null, other);
                    findings.Add(PlatformFindings.Collide(
                        $"{plan.Spec.Key}.deck.width",
                        plan.Spec.Name,
                        other.Spec.Name,
                        told.Chainage,
                        told.Depth,
                        sentence,
                        cure));
                }
                else
                {
                    findings.AddRange(Turned(i, j));
                }
            }
        }

        return findings;

        IEnumerable<Finding> Turned(int i, int j) => ReturnNeighbours.Check(plans[i], plans[j], (outlines[i], outlines[j])) is { } told ? [told] : [];
    }

    private static (string Sentence, Cure? Cure) Remedy(Intrusion own, PlatformPlan plan, Intrusion? theirs, PlatformPlan other)
    {
        var ways = new List<string>();
        Cure? cure = null;
        foreach (var (intrusion, of) in new[] { (own, plan), (theirs, other) })
        {
            if (intrusion is { } it && it.Width - KeptBack >= Rules.LeastDeck.Of(of.Spec).Width)
            {
                double width = Math.Floor((it.Width - KeptBack) * 100) / 100;
                ways.Add(Invariant($"give {of.Spec.Name} a width of {width:0.##} mm or less"));
                cure ??= Cure.Set($"{of.Spec.Key}.deck.width", width);
            }
        }

        var face = plan.Spec.Face;
        if (ways.Count == 0 && own.From - Step <= face.From && own.To + Step >= face.To)
        {
            return (Invariant($"All of {plan.Spec.Name} lies there: leave it out, or give it another side, another track or another stretch."), null);
        }

        bool atEnd = own.From - face.From > face.To - own.To;
        ways.Add(atEnd
            ? Invariant($"end {plan.Spec.Name} at chainage {Math.Floor(own.From - Step):0}")
            : Invariant($"begin {plan.Spec.Name} at chainage {Math.Ceiling(own.To + Step):0}"));
        cure ??= atEnd ? Cure.Set(
            $"{plan.Spec.Key}.face.to",
            Math.Floor(own.From - Step)) : Cure.Set($"{plan.Spec.Key}.face.from", Math.Ceiling(own.To + Step));
        string all = string.Join(", or ", ways);
        return (char.ToUpperInvariant(all[0]) + all[1..] + ".", cure);
    }

    private static Point2[] Outline(PlatformPlan plan)
    {
        IEnumerable<Point2> Along(PlanLine line) => plan.Stations.Select((s, i) => plan.ToLayout(s, line.Reach[i]));
        return [.. Along(plan.CopingFront), .. Along(plan.Outer).Reverse()];
    }

    private static (Point2 Low, Point2 High) Box(Point2[] ring) => (new(ring.Min(p => p.X), ring.Min(p => p.Y)), new(ring.Max(p => p.X), ring.Max(p => p.Y)));

    private static bool Meet((Point2 Low, Point2 High) a, (Point2 Low, Point2 High) b) =>
        a.Low.X < b.High.X && b.Low.X < a.High.X && a.Low.Y < b.High.Y && b.Low.Y < a.High.Y;

    // Crossings of a ray to the right; places on the outline itself may fall either way, which touching platforms can bear.
    internal static bool Inside(Point2[] ring, Point2 p)
    {
        bool inside = false;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            Point2 a = ring[i], b = ring[j];
            if (a.Y > p.Y != b.Y > p.Y && p.X < a.X + ((b.X - a.X) * (p.Y - a.Y) / (b.Y - a.Y)))
            {
                inside = !inside;
            }
        }

        return inside;
    }

    /// <summary>Where another outline lies inside a plan, in the plan's coordinates.</summary>
    private sealed record Intrusion(double Chainage, double Depth, double Width, double From, double To)
    {
        public static Intrusion? Of(PlatformPlan plan, Point2[] own, Point2[] other)
        {
            // A second platform on the very outline of the first has no place of its own outline inside, but its middle; no width would part them.
            return Among(plan, own, Places(other)) ?? (Among(plan, own, Middle(other)) is { } middle ? middle with { Width = 0 } : null);
        }

        private static Intrusion? Among(PlatformPlan plan, Point2[] own, IEnumerable<Point2> places)
        {
            var (low, high) = Box(own);
            Intrusion? found = null;
            foreach (var place in places)
            {
                if (place.X <= low.X || place.Y <= low.Y || place.X >= high.X || place.Y >= high.Y || !Inside(own, place))
                {
                    continue;
                }

                var at = plan.Spine.Locate(place, Guess(plan, place));
                double reach = at.Reach, depth = plan.Back.At(at.Chainage) - reach, width = reach - plan.CopingFront.At(at.Chainage);
                found = found is null ? new(at.Chainage, depth, width, at.Chainage, at.Chainage) : new(
                    depth > found.Depth ? at.Chainage : found.Chainage, Math.Max(
                        depth,
                        found.Depth), Math.Min(width, found.Width), Math.Min(found.From, at.Chainage), Math.Max(found.To, at.Chainage));
            }

            return found;
        }

        private static double Guess(PlatformPlan plan, Point2 place) =>
            plan.Stations.MinBy(s => (plan.ToLayout(s, plan.CopingFront.At(s)) - place).Length);

        private static IEnumerable<Point2> Places(Point2[] ring) => Along([.. ring, ring[0]]);

        private static IEnumerable<Point2> Along(Point2[] line)
        {
            for (int i = 0; i + 1 < line.Length; i++)
            {
                Point2 a = line[i], b = line[i + 1];
                int steps = Math.Max(1, (int)Math.Ceiling((b - a).Length / Step));
                for (int k = 0; k < steps; k++)
                {
                    yield return a + ((b - a) * ((double)k / steps));
                }
            }
        }

        // Half-way between front and back, of an outline that runs along both: from end to end, not round. Straight from its last place to its first a long
        // curve's middle would run through whatever stands inside the curve.
        private static IEnumerable<Point2> Middle(Point2[] outline) =>
            Along([.. outline.Take(outline.Length / 2).Select((p, i) => (p + outline[^(i + 1)]) * 0.5)]);
    }
}
