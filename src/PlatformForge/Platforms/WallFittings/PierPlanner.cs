using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Platforms.Rules.Findings;
using PlatformForge.Units;

namespace PlatformForge.Platforms.WallFittings;

/// <summary>
/// Places piers in walls: at stated places, or spread evenly between the platform's ends and its cuts. None stands across a cut, and none where the wall
/// is lower than a pier is wide.
/// </summary>
internal static class PierPlanner
{
    // Halvings that find where a ramp is high enough, far finer than anything printed.
    private const int Halvings = 30;

    /// <summary>The piers of a plan.</summary>
    /// <param name="plan">The plan, with its walking surface.</param>
    /// <param name="cuts">Chainages of its cuts, mm.</param>
    /// <param name="findings">Takes what is told of piers that were moved or left out.</param>
    public static IReadOnlyList<PlannedPier> Of(PlatformPlan plan, IReadOnlyList<double> cuts, List<Finding>? findings = null)
    {
        if (plan.Spec.Facing?.Piers is not { } piers)
        {
            return [];
        }

        var all = new List<PlannedPier>();
        foreach (bool isFar in (bool[])[false, true])
        {
            if (piers.Has(isFar && !plan.Spec.IsIsland) && (!isFar || plan.Spec.IsIsland || plan.Spec.Back.ShowsWall))
            {
                all.AddRange(new PierWall(plan, piers, isFar).Place(cuts, findings));
            }
        }

        return all;
    }

    /// <summary>One wall with its piers.</summary>
    private sealed class PierWall(PlatformPlan plan, PierSpec piers, bool isFar)
    {
        private readonly PlanLine line = isFar ? plan.Body.FarWallFace : plan.Body.WallFace;
        private readonly double depth = plan.Spec.Facing!.FaceDepth(isFar && !plan.Spec.IsIsland);
        private readonly bool tells = !isFar || !plan.Spec.IsIsland;

        public IEnumerable<PlannedPier> Place(IReadOnlyList<double> cuts, List<Finding>? findings)
        {
            var (from, to) = HighEnough();
            double[] within = [.. cuts.Where(c => c > from + Room(c) && c < to - Room(c)).Order()];
            var middles = piers.At.Count > 0 ? Stated(from, to, within, findings) : Spread(from, to, within);
            return middles.Select((m, i) => Pier(i + 1, m, within));
        }

        private PlannedPier Pier(int number, double middle, double[] cuts)
        {
            double half = ((piers.Width / 2) - depth) / Stretch(middle);
            double? beside = cuts.Length == 0 ? null : cuts.MinBy(c => Math.Abs(c - middle));
            return new(number, isFar, middle - half, middle + half, beside is { } c && Math.Abs(c - middle) < 1.01 * Room(c) ? c : null);
        }

        // From a cut to the middle of a pier beside it: its facing ends a joint from the cut, or, where a profile leaves more than that beside some
        // of its parts, the least piece beside the one that stands out farthest, so that none shows bare mortar.
        private double Room(double at) => ((piers.Width / 2) + Profile + Land) / Stretch(at);

        private double Profile => plan.Spec.Facing!.ProfileDepth;

        private double Land => Profile <= 2 * WallProfile.Hair ? plan.Spec.Facing!.Joint : Math.Max(plan.Spec.Facing!.Joint, Least(plan.Spec.Facing!));

        // A closer, or the least that is laid of stones beside an opening, with its joint.
        private double Least(FacingSpec facing) => (isFar && !plan.Spec.IsIsland ? facing.Back : facing.Front) switch
        {
            WallFinish.Brick => BrickModule.Of(facing.Gauge, plan.Site.Scale).Header / 2,
            WallFinish.Stone => StoneworkSpec.LeastStone / 2 * facing.StoneLength,
            WallFinish.Rubble => StoneworkSpec.LeastStone / 2 * facing.RubbleSize,
            _ => 0,
        };

        private double Stretch(double at) => plan.Spine.Stretch(at, line.At(at));

        private double Height(double at) => plan.TopAt(at, line.At(at)) - plan.Spec.Deck.Thickness;

        // Between these a pier is no lower than wide, all of it.
        private (double From, double To) HighEnough()
        {
            var profile = plan.Profile;
            double half = piers.Width / 2;
            double from = First(profile.From, profile.StartHead), to = First(profile.To, profile.EndHead);
            return (from > profile.From ? from + (half / Stretch(from)) : from, to < profile.To ? to - (half / Stretch(to)) : to);
        }

        private double First(double end, double head)
        {
            if (Height(end) >= piers.Width)
            {
                return end;
            }

            double low = end, high = head;
            for (int i = 0; i < Halvings; i++)
            {
                double middle = (low + high) / 2;
                (low, high) = Height(middle) < piers.Width ? (middle, high) : (low, middle);
            }

            return high;
        }

        private IEnumerable<double> Spread(double from, double to, double[] cuts)
        {
            bool beside = piers.Joints == PierJoints.Beside;
            double[] nodes = [from, .. cuts.Select(c => beside ? c + Room(c) : c), to];
            for (int i = 0; i + 1 < nodes.Length; i++)
            {
                if (beside && i > 0)
                {
                    yield return nodes[i];
                }

                // A panel is as long at a cut, half on either side, as between any two piers.
                double left = i > 0 && !beside ? 0.5 : 1, right = i + 2 < nodes.Length && !beside ? 0.5 : 1, room = nodes[i + 1] - nodes[i];
                double pitch = piers.Pitch / Stretch((nodes[i] + nodes[i + 1]) / 2);
                int count = Math.Max(0, (int)Math.Round((room / pitch) - left - right + 1));
                double apart = room / (left + right + count - 1);
                for (int k = 0; k < count; k++)
                {
                    yield return nodes[i] + ((left + k) * apart);
                }
            }
        }

        private List<double> Stated(double from, double to, double[] cuts, List<Finding>? findings)
        {
            var middles = new List<double>();
            foreach (double at in piers.At.Order())
            {
                double half = piers.Width / 2 / Stretch(at), first = plan.Stations[0], last = plan.Stations[^1];
                bool low = at < from || at > to || at - half < first || at + half > last;
                double moved = cuts.Where(c => Math.Abs(c - at) < Room(c)).Select(c => at < c ? c - Room(c) : c + Room(c)).FirstOrDefault(at);
                if (low)
                {
                    Tell(findings, PierFindings.LeftOut(plan.Spec.Key, at, (from, to)));
                    continue;
                }

                if (moved != at)
                {
                    Tell(findings, PierFindings.Moved(plan.Spec.Key, at, moved, IndexOf(at)));
                }

                middles.Add(moved);
            }

            return middles;
        }

        private int IndexOf(double at) => piers.At.Select((a, i) => (a, i)).First(p => p.a == at).i;

        private void Tell(List<Finding>? findings, Finding finding)
        {
            if (tells)
            {
                findings?.Add(finding);
            }
        }
    }
}
