using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>
/// Divides a run of fence between two posts, measured at the fence itself and not along the track: evenly, or by whole panels of the pitch and an odd
/// one. Where a post would stand at a ramp's head or at a cut that is asked for, even runs have a panel more or fewer, and the odd panel of others
/// stands elsewhere; so too where posts would stand at most of the joints between coping slabs, and leave no place for other cuts.
/// </summary>
/// <param name="fence">The fence.</param>
/// <param name="hole">Diameter of its holes, mm.</param>
/// <param name="land">Material that each needs round it, mm.</param>
/// <param name="place">Where the fence is in the layout at a chainage.</param>
/// <param name="cuts">Chainages in mm at which the platform is best cut: ramp heads and the cuts asked for.</param>
/// <param name="joints">Chainages in mm at which it may be cut: all joints between coping slabs.</param>
internal sealed class FenceRun(FenceSpec fence, double hole, double land, Func<double, Point2> place, IReadOnlyList<double> cuts, IReadOnlyList<double> joints)
{
    // A post keeps this far from a cut, mm: what a cut keeps of its own, and what sections may ask for on top.
    private const double ClearOfCuts = Keepout.UsualCutClear + 2;

    // Posts that leave this share of the joints are well placed.
    private const double FreeShare = 0.3;

    // Panels are made longer or shorter by at most this share to keep clear of a cut.
    private const double MostStretch = 0.25;

    // A rest of less than this, mm, is none: panels are not made so exactly.
    private const double NoRest = 0.01;

    // A step halved so often is far below the plan grid.
    private const int Halvings = 50;

    // Room that the holes of two posts need at least: no odd panel is shorter, mm.
    private readonly double leastOdd = hole + (2 * land);
    private readonly double ownRoom = (hole / 2) + land;

    /// <summary>Chainages of posts that divide a run evenly, by the number of panels nearest to the pitch that keeps clear of cuts.</summary>
    public double[] Even(double from, double to)
    {
        var length = new LineLength(from, to, (a, b) => (place(b) - place(a)).Length);
        double wanted = length.Total / fence.Pitch;
        int usual = Math.Max(1, (int)Math.Round(wanted, MidpointRounding.AwayFromZero));
        int least = Math.Max(1, (int)Math.Ceiling(wanted * (1 - MostStretch))), most = (int)Math.Floor(wanted * (1 + MostStretch));
        var choices = Enumerable.Range(least, Math.Max(0, most - least + 1)).OrderBy(n => Math.Abs(n - wanted)).Prepend(usual).Select(Posts);
        return choices.FirstOrDefault(c => ClearsCuts(c) && LeavesJoints(c)) ?? choices.FirstOrDefault(ClearsCuts) ?? Posts(usual);

        double[] Posts(int panels) =>
            [.. Enumerable.Range(0, panels + 1).Select(p => p == 0 ? from : p == panels ? to : length.At(length.Total * p / panels))];
    }

    /// <summary>Chainages of posts a whole panel apart, and which bays are odd: none, one, or two that share what is too little for one.</summary>
    /// <param name="from">First post.</param>
    /// <param name="to">Last post.</param>
    /// <param name="oddAtStart">Whether the odd panel is wanted at the start; else at the end.</param>
    public (double[] Posts, IReadOnlyList<int> Odd) Whole(double from, double to, bool oddAtStart)
    {
        double[] ahead = Chain(from, to), back = Chain(to, from);
        if (ahead.Length == 1)
        {
            // No whole one goes in.
            return ([from, to], Math.Abs(Rest(from, to) - fence.Pitch) < NoRest ? [] : [0]);
        }

        int whole = ahead.Length - 1;
        if (Rest(ahead[^1], to) < NoRest)
        {
            return ([.. ahead[..^1], to], []);
        }

        int[] order = [oddAtStart ? 0 : whole, oddAtStart ? whole : 0, .. Enumerable.Range(1, Math.Max(0, whole - 1))];
        var choices = order.Distinct().Select(With);
        var clear = choices.Where(c => ClearsCuts(c.Posts));
        return clear.Where(c => LeavesJoints(c.Posts)).Concat(clear).Append(With(order[0])).First();

        // So many whole panels, the odd one, and whole ones again.
        (double[] Posts, IReadOnlyList<int> Odd) With(int before)
        {
            int after = Math.Min(whole - before, back.Length - 1);
            double[] rest = [.. back.Take(after + 1).Reverse()];
            if (Rest(ahead[before], rest[0]) >= leastOdd)
            {
                return ([.. ahead.Take(before + 1), .. rest], [before]);
            }

            // Too little for a panel: two odd ones take it with a whole one, the last before or the first after.
            int a = before > 0 ? before - 1 : 0;
            double[] tail = before > 0 ? rest : rest[1..];
            return ([.. ahead.Take(a + 1), Halfway(ahead[a], tail[0]), .. tail], [a, a + 1]);
        }
    }

    private double Rest(double a, double b) => (place(b) - place(a)).Length;

    // Posts a whole panel apart from one end towards the other, as many as go in.
    private double[] Chain(double from, double to)
    {
        var posts = new List<double> { from };
        while (Rest(posts[^1], to) > fence.Pitch - NoRest && Next(posts[^1], to) is { } next)
        {
            posts.Add(next);
        }

        return [.. posts];
    }

    // The chainage a panel's length from a post towards an end.
    private double? Next(double post, double end)
    {
        double near = post, far = end;
        if (Rest(post, end) <= fence.Pitch)
        {
            return Math.Abs(post - end) < ownRoom ? null : end;
        }

        for (int i = 0; i < Halvings; i++)
        {
            double middle = (near + far) / 2;
            (near, far) = Rest(post, middle) < fence.Pitch ? (middle, far) : (near, middle);
        }

        return far;
    }

    private double Halfway(double a, double b)
    {
        double low = a, high = b;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Rest(a, middle) < Rest(middle, b) ? (middle, high) : (low, middle);
        }

        return high;
    }

    private bool LeavesJoints(double[] posts)
    {
        double[] own = [.. joints.Where(j => j > posts[0] && j < posts[^1])];
        return own.Count(j => posts.All(p => Math.Abs(p - j) > (hole / 2) + Keepout.UsualCutClear)) >= own.Length * FreeShare;
    }

    private bool ClearsCuts(double[] posts) =>
        !posts.Any(post => cuts.Any(cut => Math.Abs(post - cut) < (hole / 2) + ClearOfCuts));
}
