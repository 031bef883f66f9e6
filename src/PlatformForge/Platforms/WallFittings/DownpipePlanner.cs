using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Platforms.Rules.Findings;
using PlatformForge.Units;

namespace PlatformForge.Platforms.WallFittings;

/// <summary>
/// Places downpipes before walls: one beside each joint between sections, and at stated places. None stands across a cut, and none where the wall is too
/// low for its parts.
/// </summary>
internal static class DownpipePlanner
{
    /// <summary>The downpipes of a plan.</summary>
    /// <param name="plan">The plan, with its walking surface.</param>
    /// <param name="cuts">Chainages of its cuts, mm.</param>
    /// <param name="findings">Takes what is told of those that were moved or left out.</param>
    public static IReadOnlyList<PlannedDownpipe> Of(PlatformPlan plan, IReadOnlyList<double> cuts, List<Finding>? findings = null)
    {
        if (plan.Spec.Facing?.Downpipes is not { } pipes)
        {
            return [];
        }

        var all = new List<PlannedDownpipe>();
        foreach (bool isFar in (bool[])[false, true])
        {
            bool isBack = isFar && !plan.Spec.IsIsland;
            if (pipes.Has(isBack) && !(isBack && !plan.Spec.Back.ShowsWall))
            {
                all.AddRange(new PipeWall(plan, pipes, isFar).Place([.. cuts.Order()], isFar && plan.Spec.IsIsland ? null : findings));
            }
        }

        return all;
    }

    /// <summary>One wall with its downpipes.</summary>
    private sealed class PipeWall(PlatformPlan plan, DownpipeSpec pipes, bool isFar)
    {
        // Walls that differ by less, mm, are as high: a deck's fall is told in planes that meet at cuts.
        private const double Alike = 0.1;

        private readonly PlanLine line = isFar ? plan.Body.FarWallFace : plan.Body.WallFace;

        public IEnumerable<PlannedDownpipe> Place(double[] cuts, List<Finding>? findings)
        {
            var places = new SortedDictionary<double, double?>();
            foreach (double cut in pipes.Joints == PierJoints.Beside ? cuts : [])
            {
                // After the cut, as piers stand; before it where a ramp begins there.
                double after = cut + Room(cut), before = cut - Room(cut), at = Height(after) >= Height(before) - Alike ? after : before;
                if (Holds(at) && Array.TrueForAll(cuts, c => Math.Abs(c - at) >= Room(c) - Tolerances.Rounding))
                {
                    places[at] = cut;
                }
            }

            foreach (double at in pipes.At.Order())
            {
                Stated(at, cuts, places, findings);
            }

            return places.Select((p, i) => Pipe(i + 1, p.Key, p.Value));
        }

        // At its place, or beside a cut that would go through it; what stands there already is not made twice.
        private void Stated(double at, double[] cuts, SortedDictionary<double, double?> places, List<Finding>? findings)
        {
            double room = Room(at), moved = cuts.Where(c => Math.Abs(c - at) < room).Select(c => at < c ? c - room : c + room).FirstOrDefault(at);
            double? cut = moved == at ? null : cuts.MinBy(c => Math.Abs(c - at));
            double apart = 2 * pipes.HalfWidth / Stretch(at);
            if (places.Keys.Any(p => Math.Abs(p - moved) < apart))
            {
                double taken = places.Keys.MinBy(p => Math.Abs(p - moved));
                findings?.Add(DownpipeFindings.Taken(plan.Spec.Key, at, taken));
            }
            else if (!Holds(moved) || cuts.Any(c => Math.Abs(c - moved) < Room(c) - Tolerances.Rounding))
            {
                findings?.Add(DownpipeFindings.LeftOut(plan.Spec.Key, at, HighEnough()));
            }
            else
            {
                places[moved] = cut;
                if (moved != at)
                {
                    findings?.Add(DownpipeFindings.Moved(plan.Spec.Key, at, moved));
                }
            }
        }

        private PlannedDownpipe Pipe(int number, double at, double? cut)
        {
            double half = pipes.HalfWidth / Stretch(at);
            return new(number, isFar, at, at - half, at + half, Under(at), cut);
        }

        // From a cut to the middle of a pipe beside it: what belongs to it ends a joint from the cut, and the least piece that is laid lies between.
        private double Room(double at)
        {
            var facing = plan.Spec.Facing!;
            double piece = (pipes.Diameter / 2) + Least(facing) + facing.Joint;
            return Math.Max(pipes.HalfWidth + facing.Joint, piece) / Stretch(at);
        }

        // A closer, or the least that is laid of stones beside an opening.
        private double Least(FacingSpec facing) => (isFar && !plan.Spec.IsIsland ? facing.Back : facing.Front) switch
        {
            WallFinish.Brick => BrickModule.Of(facing.Gauge, plan.Site.Scale).Header / 2,
            WallFinish.Stone => StoneworkSpec.LeastStone / 2 * facing.StoneLength,
            WallFinish.Rubble => StoneworkSpec.LeastStone / 2 * facing.RubbleSize,
            _ => 0,
        };

        private double Stretch(double at) => plan.Spine.Stretch(at, line.At(at));

        // The underside that a pipe ends under: of the coping, or at a back of the deck.
        private double Under(double at) =>
            plan.TopAt(at, line.At(at)) - (isFar && !plan.Spec.IsIsland ? plan.Spec.Deck.Thickness : plan.Spec.Coping.Thickness);

        private double Height(double at) => at < plan.Stations[0] || at > plan.Stations[^1] ? 0 : Under(at);

        private bool Holds(double at)
        {
            double half = pipes.HalfWidth / Stretch(at);
            return at - half >= plan.Stations[0] && at + half <= plan.Stations[^1] && Math.Min(Height(at - half), Height(at + half)) >= pipes.LeastHeight;
        }

        // Between these walls are high enough, as near as a step of the plan's facets tells it.
        private (double From, double To)? HighEnough()
        {
            double[] high = [.. plan.Stations.SelectMany(s => (double[])[s, s + (pipes.HalfWidth / Stretch(s)), s - (pipes.HalfWidth / Stretch(s))])
                .Where(Holds)];
            return high.Length == 0 ? null : (high.Min(), high.Max());
        }
    }
}
