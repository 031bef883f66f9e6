using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Surfaces;

/// <summary>
/// Where the joints of a paving lie, in the spine's chainage and in shares of the way from coping to back: so they turn with every curve and draw in with a
/// waist.
/// Pieces are drawn out or in a little, so that whole ones lie between coping and back and between the platform's ends, its ramps' heads and stated cuts.
/// </summary>
/// <param name="Joints">The joints, each with the middles of where it begins and ends: along (its shares are one) or across (its chainages are one).</param>
/// <param name="Near">Where paving begins: the coping's inner edge.</param>
/// <param name="Far">Where it ends: the back, or the other coping.</param>
/// <param name="Length">Mean length of a piece along its course, with its joint, mm.</param>
/// <param name="Width">Mean width, mm.</param>
public sealed record PavingLayout(IReadOnlyList<PavingJoint> Joints, PlanLine Near, PlanLine Far, double Length, double Width)
{
    /// <summary>Of a plan; null where its deck is plain.</summary>
    public static PavingLayout? Of(PlatformPlan plan) => plan.Spec.Deck.Paving is { } paving ? Of(paving, plan) : null;

    /// <summary>The line at a share of the way from coping to back, moved by a distance, mm.</summary>
    public PlanLine At(double share, double by = 0) => new(Near.Stations, [.. Near.Reach.Zip(Far.Reach, (a, b) => a + ((b - a) * share) + by)]);

    /// <summary>Deck between coping and back where it is widest, mm.</summary>
    public static double Room(PlatformPlan plan) => plan.Body.CopingBack.Reach.Zip(End(plan).Reach, (a, b) => b - a).Max();

    // Joints end a printed line before the walls at back and ends, mm, so that the deck's rim and the walls' faces are whole: common practice, no source.
    private const double Rim = 0.4;

    private static PlanLine End(PlatformPlan plan) => plan.Body.FarCopingBack ?? plan.Body.FarWallLine.Shifted(-Rim);

    private static PavingLayout Of(PavingSpec paving, PlatformPlan plan)
    {
        bool isAcross = paving.Courses == PavingCourses.Across;
        var (along, over) = isAcross ? (paving.Width, paving.Length) : (paving.Length, paving.Width);
        double room = Room(plan);
        int rows = paving.Kind == PavingKind.Planks && isAcross ? 1 : Math.Max(1, (int)Math.Round(room / over));
        double[] places = Places(plan, along);
        var joints = new List<PavingJoint>();
        void Across(double at, double from, double to) => joints.Add(new(at, at, from, to));
        void Along(double share, double from, double to) => joints.Add(new(from, to, share, share));
        if (isAcross)
        {
            // Joints of every second course lie in the middles of those beside it.
            Array.ForEach(places[1..^1], p => Across(p, 0, 1));
            for (int i = 0; i + 1 < places.Length; i++)
            {
                foreach (double share in Shares(rows, i))
                {
                    Along(share, places[i], places[i + 1]);
                }
            }
        }
        else
        {
            for (int r = 0; r < rows; r++)
            {
                var own = r % 2 == 0 ? places[1..^1] : places.Zip(places.Skip(1), (a, b) => (a + b) / 2);
                foreach (double at in own)
                {
                    Across(at, (double)r / rows, (r + 1.0) / rows);
                }
            }

            foreach (double share in Shares(rows, 0))
            {
                Along(share, places[0], places[^1]);
            }
        }

        double mean = (places[^1] - places[0]) / (places.Length - 1);
        return new(joints, plan.Body.CopingBack, End(plan), isAcross ? room / rows : mean, isAcross ? mean : room / rows);
    }

    private static IEnumerable<double> Shares(int rows, int course) => course % 2 == 0
        ? Enumerable.Range(1, rows - 1).Select(k => (double)k / rows) : Enumerable.Range(0, rows).Select(k => (k + 0.5) / rows).Where(_ => rows > 1);

    // Even places between all at which something ends: the platform, a ramp, the slabs of the coping, where it has any that are longer than a piece.
    private static double[] Places(PlatformPlan plan, double pitch)
    {
        var (from, to) = CopingReturn.Within(plan, plan.Body.WallsFrom + Rim, plan.Body.WallsTo - Rim);
        double[] slabs = [from, .. plan.CopingJoints.Where(j => j > from && j < to), to];
        double[] breaks = slabs.Length > 2 && (slabs[^1] - slabs[0]) / (slabs.Length - 1) >= pitch * LeastSlab
            ? slabs : [from, .. new[] { plan.Profile.StartHead, plan.Profile.EndHead }.Where(h => h > from + Tolerances.GridStep
                && h < to - Tolerances.GridStep).Distinct(), to];
        return [.. breaks.Zip(breaks.Skip(1)).SelectMany((b, bay) =>
        {
            // The first and the last bay have as many as one of their length without the rim.
            double length = b.Second - b.First + (bay == 0 && !IsReturned(false) ? from - plan.Stations[0] : 0)
                + (bay == breaks.Length - 2 && !IsReturned(true) ? plan.Stations[^1] - to : 0);
            int pieces = Math.Max(1, (int)Math.Round(length / pitch, MidpointRounding.AwayFromZero));
            return Enumerable.Range(0, pieces).Select(k => b.First + ((b.Second - b.First) * k / pieces));
        }), to];

        bool IsReturned(bool atEnd) => plan.Spec.Coping.IsReturned(atEnd);
    }

    // Slabs shorter than this share of a piece do not part it.
    private const double LeastSlab = 0.75;
}

/// <summary>A joint of a paving.</summary>
/// <param name="From">Chainage at which it begins, mm.</param>
/// <param name="To">Chainage at which it ends; the same for one across.</param>
/// <param name="Near">Share of the way from coping to back at which it begins.</param>
/// <param name="Far">Share at which it ends; the same for one along.</param>
public readonly record struct PavingJoint(double From, double To, double Near, double Far)
{
    /// <summary>Whether it lies across the platform.</summary>
    public bool IsAcross => From == To;
}
