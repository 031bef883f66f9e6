using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Plans;

/// <summary>The stretch of a platform that stands on bents, in chainage of the spine, mm.</summary>
/// <param name="From">Where it begins: the platform's end, a ramp's head, or where a ramp is high enough.</param>
/// <param name="To">Where it ends.</param>
public sealed record TrestleStretch(double From, double To)
{
    /// <summary>Halves the difference to what is a figure in the file and what was computed from it, mm.</summary>
    private const double Same = Tolerances.SameLength;

    /// <summary>Whether a chainage lies in it.</summary>
    public bool Holds(double chainage) => chainage > From && chainage < To;

    /// <summary>The stretch of a platform; null where it stands on walls.</summary>
    public static TrestleStretch? Of(PlatformSpec spec, HeightProfile profile)
    {
        if (spec.Trestle is not { } trestle)
        {
            return null;
        }

        if (trestle.Ramps == TrestleRamps.Walls)
        {
            return new(profile.StartHead, profile.EndHead);
        }

        double least = trestle.LeastHeight + spec.Deck.Thickness + Fall(spec);
        double wall = spec.EndDepth;
        return new(
            Walled(profile.From, profile.StartHead, High(profile.From, profile.StartHead, profile.StartFoot, profile.Level, least), wall),
            Walled(profile.To, profile.EndHead, High(profile.To, profile.EndHead, profile.EndFoot, profile.Level, least), wall));
    }

    /// <summary>How much lower the deck is at its back than at the coping, mm.</summary>
    public static double Fall(PlatformSpec spec) => spec.Deck.Crossfall > 0 ? spec.Deck.Width / spec.Deck.Crossfall : 0;

    // A solid foot is as long as an end wall is thick at least: a ramp that is nearly high enough at its end has no wafer there.
    private static double Walled(double end, double head, double high, double wall) =>
        high == end || Math.Abs(high - end) >= wall ? high : end + Math.Clamp(wall * Math.Sign(head - end), -Math.Abs(head - end), Math.Abs(head - end));

    // Chainage from which a ramp is so high.
    private static double High(double end, double head, double foot, double level, double least) =>
        foot >= least - Same || level - foot < Same ? end : end + ((head - end) * Math.Min(1, (least - foot) / (level - foot)));
}

/// <summary>Bents under a deck, with the stretch that they carry.</summary>
/// <param name="Stretch">Where they stand.</param>
/// <param name="Rows">Lines of the sides of each row of posts, near to far.</param>
/// <param name="Bents">In order of chainage.</param>
public sealed record PlanTrestle(TrestleStretch Stretch, IReadOnlyList<PostRow> Rows, IReadOnlyList<PlannedBent> Bents)
{
    /// <summary>How far apart bents are.</summary>
    public RibPitch Pitch { get; init; } = new(0, 0, 0, 0, 0, 0);
}

/// <summary>A row of posts along a platform.</summary>
/// <param name="Near">Its side towards the first face's track.</param>
/// <param name="Far">Its other side.</param>
public sealed record PostRow(PlanLine Near, PlanLine Far)
{
    /// <summary>The rows under a body, spread evenly from its front to its back.</summary>
    public static IReadOnlyList<PostRow> Of(TrestleSpec trestle, BodyPlan body)
    {
        PlanLine near = body.WallLine, far = body.FarWallLine;
        double widest = near.Reach.Zip(far.Reach, (a, b) => b - a).Max() - trestle.Post;
        int count = trestle.Posts ?? Math.Max(2, 1 + (int)Math.Ceiling((widest - Slack) / trestle.Rows));
        return [.. Enumerable.Range(0, count).Select(i =>
        {
            double share = (double)i / (count - 1);
            var line = i == 0 ? near : i == count - 1 ? far.Shifted(-trestle.Post)
                : near with { Reach = [.. near.Reach.Zip(far.Reach, (a, b) => a + (share * (b - trestle.Post - a)))] };
            return new PostRow(line, line.Shifted(trestle.Post));
        })];
    }

    // A width that is a whole number of steps but for its last digits, mm.
    private const double Slack = Tolerances.SameLength;
}

/// <summary>A bent, in chainage of the spine, mm.</summary>
/// <param name="Number">From 1 along the platform.</param>
/// <param name="From">Where its posts and cap begin.</param>
/// <param name="To">Where they end.</param>
/// <param name="Cut">The cut between sections that it stands beside; null for none.</param>
public sealed record PlannedBent(int Number, double From, double To, double? Cut = null)
{
    public double Middle => (From + To) / 2;
}
