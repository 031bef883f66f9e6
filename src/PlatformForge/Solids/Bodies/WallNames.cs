using PlatformForge.Masonry;
using PlatformForge.Platforms;

namespace PlatformForge.Solids.Bodies;

/// <summary>Names of the wall faces that a body's blocks make: the door by which a relief finds them.</summary>
public static class WallNames
{
    /// <summary>The far wall where no second face is.</summary>
    public const string Back = "back";

    /// <summary>The wall under a face's coping; faces are counted from 1.</summary>
    public static string FrontOf(int face) => FormattableString.Invariant($"front of face {face}");

    /// <summary>The walls that close the platform's two ends, or the foot of a ramp where that stands over the baseboard.</summary>
    public const string AtStart = "end wall at the start", AtEnd = "end wall at the end";

    /// <summary>All names that a platform's walls have, all round it.</summary>
    public static IReadOnlyList<string> AllRound(PlatformPlan plan) => [FrontOf(1), AtEnd, plan.Spec.IsIsland ? FrontOf(2) : Back, AtStart];

    /// <summary>Names of the walls that a platform's facing goes over, with what each is faced with.</summary>
    public static IReadOnlyList<(string Wall, WallFinish Finish)> Faced(PlatformPlan plan)
    {
        var spec = plan.Spec;
        if (spec.Facing is not { } facing)
        {
            return [];
        }

        (string Wall, WallFinish Finish)[] all =
        [
            (FrontOf(1), facing.Front),
            (AtEnd, facing.Ends),
            spec.IsIsland ? (FrontOf(2), facing.Front) : (Back, facing.Back),
            (AtStart, facing.Ends),
        ];
        return [.. all.Where(w => w.Finish != WallFinish.Plain)];
    }

    /// <summary>Names for the sides of a piece of a strip: as many along its near line as along its far one, an end between them.</summary>
    internal static IReadOnlyList<string?> Of(FacetedPlan chart, PlanLine near, PlanLine far, in TopPiece piece)
    {
        var body = chart.Plan.Body;
        string? nearName = ReferenceEquals(near, body.WallLine) ? FrontOf(1) : null;
        string? farName = ReferenceEquals(far, body.FarWallLine) ? body.FarCopingBack is null ? Back : FrontOf(2) : null;

        // What ends at a cut has no face there: another section stands against it.
        string? start = piece.From == body.WallsFrom ? AtStart : null, end = piece.To == body.WallsTo ? AtEnd : null;
        if (nearName is null && farName is null && start is null && end is null)
        {
            return [];
        }

        // On the right-hand side the ring runs the other way round, so its far line comes first.
        var (first, second) = chart.RunsLeft ? (nearName, farName) : (farName, nearName);
        int corners = piece.Ring.Length, half = corners / 2;
        return [.. Enumerable.Range(0, corners).Select(i => i == half - 1 ? end : i == corners - 1 ? start : i < half ? first : second)];
    }
}
