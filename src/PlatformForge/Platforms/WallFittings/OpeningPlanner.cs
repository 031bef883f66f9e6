using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Rules.Findings;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.WallFittings;

/// <summary>Places openings in faced walls: at stated places, or spread over the bays between ends, cuts and piers. None comes near one of these, near
/// another opening, or where the wall is too low for it.</summary>
internal static class OpeningPlanner
{
    /// <summary>The openings of a plan that has its piers.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="cuts">Chainages of its cuts, mm.</param>
    /// <param name="findings">Takes what is told of openings that were left out.</param>
    /// <param name="joint">How far what joins sections reaches from a cut, mm: openings right through keep off it.</param>
    public static IReadOnlyList<PlannedOpening> Of(PlatformPlan plan, IReadOnlyList<double> cuts, List<Finding>? findings = null, double joint = 0)
    {
        var all = new List<PlannedOpening>();
        var specs = plan.Spec.Facing?.Openings ?? [];

        // Stated places first, then the widest: what is narrow finds room beside what is wide.
        foreach (int i in Enumerable.Range(0, specs.Count).OrderByDescending(i => specs[i].At.Count > 0 ? double.PositiveInfinity : specs[i].Width))
        {
            foreach (bool isFar in Walls(plan.Spec, specs[i].IsBack))
            {
                Place(new(plan, specs[i], isFar, (cuts, joint), all), i, findings);
            }
        }

        return [.. all.OrderBy(o => specs.TakeWhile(s => !ReferenceEquals(s, o.Spec)).Count())];
    }

    // Whether it is made in the front, in the back, or under both edges; nowhere in a back that there is not, which is told elsewhere.
    private static bool[] Walls(PlatformSpec spec, bool isBack) => spec.IsIsland ? isBack ? [] : [false, true] : isBack && !spec.Back.ShowsWall ? [] : [isBack];

    /// <summary>Places behind openings right through walls, which ribs keep off.</summary>
    public static IEnumerable<Keepout> Pads(PlatformPlan plan, IReadOnlyList<PlannedOpening> openings) => openings.Where(o => o.Spec.IsThrough)
        .Select(o => new OpeningPad(plan, o.Spec, o.IsFar).Place(plan.Spec.Key + ".facing.opening", o.Chainage));

    private static void Place(OpeningWall wall, int index, List<Finding>? findings)
    {
        string key = FormattableString.Invariant($"{wall.Plan.Spec.Key}.facing.opening[{index}]");
        var told = wall.IsFar && wall.Plan.Spec.IsIsland ? null : findings;
        bool spread = wall.Spec.At.Count == 0, made = false;
        foreach (double at in wall.Wanted())
        {
            bool taken = wall.Take(at) || (spread && wall.Aside(at).Any(wall.Take));
            if (!taken && !spread)
            {
                double? free = OpeningWall.Nearby(at, wall.Plan.Stations[^1] - wall.Plan.Stations[0]).Where(wall.Fits).Select(s => (double?)s).FirstOrDefault();
                told?.Add(wall.InTheWay(at) is { } what ? OpeningFindings.InTheWay(key, wall.Spec, at, what, free)
                    : OpeningFindings.LeftOut(key, wall.Spec, at, wall.Against(at)!, free));
            }

            made |= taken;
        }

        if (spread && !made)
        {
            told?.Add(OpeningFindings.NoPlace(key, wall.Spec));
        }
    }

    private sealed class OpeningWall(PlatformPlan plan, OpeningSpec spec, bool isFar, (IReadOnlyList<double> Cuts, double Joint) cut, List<PlannedOpening> all)
    {
        // Steps by which an opening goes aside, and how far one right through does unasked, mm.
        private const double Step = 0.5, ThroughAside = 12;

        private const string AnotherOpening = "another opening";

        private readonly PlanLine line = isFar ? plan.Body.FarWallFace : plan.Body.WallFace;

        public PlatformPlan Plan => plan;

        public OpeningSpec Spec => spec;

        public bool IsFar => isFar;

        /// <summary>What is in the way of an opening right through that would fit its wall; null where that is not so.</summary>
        public string? InTheWay(double at) => spec.IsThrough && Against(at) is null ? Behind(at) : null;

        /// <summary>Places to which one goes unasked, the nearest first: off another opening, and one right through off what stands behind the wall.</summary>
        public IEnumerable<double> Aside(double at) => spec.IsThrough ? Nearby(at, ThroughAside)
            : Against(at) == AnotherOpening ? Nearby(at, Math.Max(spec.Pitch / 2, ThroughAside)) : [];

        /// <summary>Places beside one, the nearest first.</summary>
        public static IEnumerable<double> Nearby(double at, double room) =>
            Enumerable.Range(1, (int)(room / Step)).SelectMany(k => new[] { at + (k * Step), at - (k * Step) });

        public IEnumerable<double> Wanted()
        {
            if (spec.At.Count > 0)
            {
                return spec.At.Order();
            }

            return Bays().SelectMany(bay =>
            {
                int count = Math.Max(1, (int)Math.Round((bay.To - bay.From) * Stretch((bay.From + bay.To) / 2) / spec.Pitch));
                return Enumerable.Range(0, count).Select(k => bay.From + ((bay.To - bay.From) * (k + 0.5) / count));
            });
        }

        /// <summary>Places one, if it fits there.</summary>
        public bool Take(double at)
        {
            bool fits = Fits(at);
            if (fits)
            {
                all.Add(new(spec, isFar, at));
            }

            return fits;
        }

        /// <summary>Whether one fits its wall at a place, and what is behind it.</summary>
        public bool Fits(double at) => Against(at) is null && (!spec.IsThrough || Behind(at) is null);

        /// <summary>What of its wall keeps one off a place; null where there is room for it.</summary>
        public string? Against(double at)
        {
            double half = (spec.Width / 2) + Land(spec), reach = half / Stretch(at), least = spec.Sill + spec.Height + OpeningRule.Over(plan.Spec, spec);
            if (at - reach < plan.Stations[0] || at + reach > plan.Stations[^1])
            {
                return "the wall's end";
            }

            if (Taken().Any(t => t.From < at + reach && t.To > at - reach) || !Bays().Any(b => at - reach >= b.From && at + reach <= b.To))
            {
                return cut.Cuts.Any(c => Math.Abs(c - at) <= reach) ? "a joint between sections" : "a pier";
            }

            return Math.Min(Height(at - reach), Height(at + reach)) < least ? "the deck, where the wall is too low,"
                : all.Exists(o => o.IsFar == isFar && Meets(o, at, half, least)) ? AnotherOpening : null;
        }

        private bool Meets(PlannedOpening other, double at, double half, double least) =>
            Math.Abs(other.Chainage - at) * Stretch(at) < half + (other.Spec.Width / 2) + Land(other.Spec)
            && other.Spec.Sill <= least && spec.Sill <= other.Spec.Sill + other.Spec.Height + OpeningRule.Over(plan.Spec, other.Spec);

        private string? Behind(double at) => new OpeningPad(plan with { WallOpenings = all }, spec, isFar).InTheWay(at, cut.Cuts, cut.Joint);

        // Wall kept beside one: an arch's ring and half a brick, at least.
        private double Land(OpeningSpec of) => of.Rise > 0 ? OpeningRule.Ring(plan.Spec, of) + (of.Ratio > 0 ? 150 / of.Ratio : 0) : 150 / of.Ratio;

        private double Stretch(double at) => plan.Spine.Stretch(at, line.At(at));

        private double Height(double at) => plan.TopAt(at, line.At(at)) - plan.Spec.Deck.Thickness;

        // What lies between ends, cuts and piers.
        private IEnumerable<(double From, double To)> Bays()
        {
            double from = plan.Stations[0];
            foreach (var (begin, end) in Taken().OrderBy(t => t.From))
            {
                if (begin > from + 1)
                {
                    yield return (from, begin);
                }

                from = Math.Max(from, end);
            }

            yield return (from, plan.Stations[^1]);
        }

        // Piers with the joints beside them, and cuts.
        private IEnumerable<(double From, double To)> Taken()
        {
            double depth = plan.Spec.Facing!.Depth;
            return plan.Piers.Where(p => p.IsFar == isFar).Select(p => (p.From - depth, p.To + depth))
                .Concat(plan.Downpipes.Where(p => p.IsFar == isFar).Select(p => (p.From, p.To))).Concat(cut.Cuts.Select(c => (c, c)));
        }
    }
}
