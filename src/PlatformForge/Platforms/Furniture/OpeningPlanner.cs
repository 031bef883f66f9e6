using PlatformForge.Masonry;
using PlatformForge.Platforms.Features;
using PlatformForge.Platforms.Rules;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Furniture;

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
        for (int i = 0; i < specs.Count; i++)
        {
            foreach (bool isFar in plan.Spec.IsIsland && !specs[i].IsBack ? (bool[])[false, true] : [specs[i].IsBack && !plan.Spec.IsIsland])
            {
                Place(new(plan, specs[i], isFar, (cuts, joint), all), i, specs[i].IsBack && plan.Spec.IsIsland, findings);
            }
        }

        return all;
    }

    /// <summary>Places behind openings right through walls, which ribs keep off.</summary>
    public static IEnumerable<Keepout> Pads(PlatformPlan plan, IReadOnlyList<PlannedOpening> openings) => openings.Where(o => o.Spec.IsThrough)
        .Select(o => new OpeningPad(plan, o.Spec, o.IsFar).Place(plan.Spec.Key + ".facing.opening", o.Chainage));

    private static void Place(OpeningWall wall, int index, bool noBack, List<Finding>? findings)
    {
        var (left, made) = (new List<double>(), 0);
        string key = FormattableString.Invariant($"{wall.Plan.Spec.Key}.facing.opening[{index}]");
        bool tells = !(wall.IsFar && wall.Plan.Spec.IsIsland);
        foreach (double at in noBack ? [] : wall.Wanted())
        {
            if (wall.Take(at) || (wall.Spec.At.Count == 0 && wall.Nearby(at).Any(wall.Take)))
            {
                made++;
            }
            else if (wall.Spec.At.Count > 0 && wall.InTheWay(at) is { } what)
            {
                double? free = wall.Nearby(at, wall.Plan.Stations[^1] - wall.Plan.Stations[0]).Where(wall.Fits).Select(s => (double?)s).FirstOrDefault();
                if (tells)
                {
                    findings?.Add(OpeningFindings.InTheWay(key, wall.Spec, at, what, free));
                }
            }
            else if (wall.Spec.At.Count > 0)
            {
                left.Add(at);
            }
        }

        if ((left.Count > 0 || (made == 0 && wall.Spec.At.Count == 0)) && tells)
        {
            findings?.Add(OpeningFindings.LeftOut(key, wall.Spec, left));
        }
    }

    private sealed class OpeningWall(PlatformPlan plan, OpeningSpec spec, bool isFar, (IReadOnlyList<double> Cuts, double Joint) cut, List<PlannedOpening> all)
    {
        // Steps by which an opening right through goes aside, and how far it does unasked, mm.
        private const double Step = 0.5, Aside = 12;

        private readonly PlanLine line = isFar ? plan.Body.FarWallFace : plan.Body.WallFace;

        public PlatformPlan Plan => plan;

        public OpeningSpec Spec => spec;

        public bool IsFar => isFar;

        /// <summary>What is in the way of an opening right through that would fit its wall; null where that is not so.</summary>
        public string? InTheWay(double at) => spec.IsThrough && FitsWall(at) ? Behind(at) : null;

        /// <summary>Places beside one, the nearest first: for openings right through, which ribs make room for and other things do not.</summary>
        public IEnumerable<double> Nearby(double at, double room = Aside) => !spec.IsThrough ? []
            : Enumerable.Range(1, (int)(room / Step)).SelectMany(k => new[] { at + (k * Step), at - (k * Step) });

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
        public bool Fits(double at) => FitsWall(at) && (!spec.IsThrough || Behind(at) is null);

        private bool FitsWall(double at)
        {
            double half = (spec.Width / 2) + Land(spec), reach = half / Stretch(at), least = spec.Sill + spec.Height + OpeningRule.Over(plan.Spec, spec);
            return Bays().Any(b => at - reach >= b.From && at + reach <= b.To) && Math.Min(Height(at - reach), Height(at + reach)) >= least
                && all.TrueForAll(o => o.IsFar != isFar || Math.Abs(o.Chainage - at) * Stretch(at) >= half + (o.Spec.Width / 2) + Land(o.Spec)
                    || o.Spec.Sill > least || spec.Sill > o.Spec.Sill + o.Spec.Height + OpeningRule.Over(plan.Spec, o.Spec));
        }

        private string? Behind(double at) => new OpeningPad(plan with { WallOpenings = all }, spec, isFar).InTheWay(at, cut.Cuts, cut.Joint);

        // Wall kept beside one: an arch's ring and half a brick, at least.
        private double Land(OpeningSpec of) => of.Rise > 0 ? OpeningRule.Ring(plan.Spec, of) + (of.Ratio > 0 ? 150 / of.Ratio : 0) : 150 / of.Ratio;

        private double Stretch(double at) => plan.Spine.Stretch(at, line.At(at));

        private double Height(double at) => plan.TopAt(at, line.At(at)) - plan.Spec.Deck.Thickness;

        // What lies between ends, cuts and piers.
        private IEnumerable<(double From, double To)> Bays()
        {
            double depth = plan.Spec.Facing!.Depth;
            var taken = plan.Piers.Where(p => p.IsFar == isFar).Select(p => (From: p.From - depth, To: p.To + depth))
                .Concat(cut.Cuts.Select(c => (From: c, To: c))).OrderBy(t => t.From);
            double from = plan.Stations[0];
            foreach (var (begin, end) in taken)
            {
                if (begin > from + 1)
                {
                    yield return (from, begin);
                }

                from = Math.Max(from, end);
            }

            yield return (from, plan.Stations[^1]);
        }
    }
}
