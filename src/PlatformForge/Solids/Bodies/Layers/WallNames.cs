using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Solids.Bodies.Layers;

/// <summary>Names of the wall faces that a body's blocks make: the door by which a relief finds them.</summary>
public static class WallNames
{
    /// <summary>The far wall where no second face is.</summary>
    public const string Back = "back";

    /// <summary>The wall under a face's coping; faces are counted from 1.</summary>
    public static string FrontOf(int face) => FormattableString.Invariant($"front of face {face}");

    /// <summary>The walls that close the platform's two ends, or the foot of a ramp where that stands over the baseboard.</summary>
    public const string AtStart = "end wall at the start", AtEnd = "end wall at the end";

    /// <summary>The inner face of the pad behind an opening right through a wall, counted from 1 in the order of the plan.</summary>
    public static string BehindHole(int number) => FormattableString.Invariant($"behind opening {number}");

    /// <summary>The face of a retaining wall over the deck, which is a print of its own.</summary>
    public const string Retaining = "retaining wall";

    /// <summary>Names for the sides of a piece of it.</summary>
    internal static IReadOnlyList<string?> OfRetaining(FacetedPlan chart, in TopPiece piece) =>
        chart.RunsLeft ? Round(piece.Ring.Length, Retaining, null, null, null) : Round(piece.Ring.Length, null, null, Retaining, null);

    /// <summary>All names that a platform's walls have, all round it.</summary>
    public static IReadOnlyList<string> AllRound(PlatformPlan plan) => [FrontOf(1), AtEnd, plan.Spec.IsIsland ? FrontOf(2) : Back, AtStart];

    /// <summary>Names of the walls that a platform's facing goes over, with what each is faced with.</summary>
    public static IReadOnlyList<(string Wall, WallFinish Finish)> Faced(PlatformPlan plan)
    {
        return [.. All(plan).Where(w => w.Finish != WallFinish.Plain && Stands(plan, w.Wall))];
    }

    /// <summary>Names of smooth walls that have openings.</summary>
    public static IEnumerable<(string Wall, WallFinish Finish)> Smooth(PlatformPlan plan) => All(plan).Where(w => w.Finish == WallFinish.Plain
        && Stands(plan, w.Wall) && plan.Holes.Any(h => w.Wall == Of(plan, h.Place.IsFar)));

    /// <summary>What a wall shows that nothing is laid on: render where it is left smooth by choice, otherwise what walls are painted.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="face">A face of the wall, or of what stands before it.</param>
    public static Paint ShownBy(PlatformPlan plan, string face) =>
        All(plan).FirstOrDefault(w => Belongs(WholeOf(face), w.Wall)) is { Wall: { } wall } found && found.Finish == WallFinish.Plain
            && (wall != Back || plan.Spec.Facing!.HasBack) ? Paint.Render : Paint.Wall;

    private static bool Belongs(string face, string wall) => face == wall || IsFrontOf(face, wall) || IsSideOf(face, wall);

    private static IReadOnlyList<(string Wall, WallFinish Finish)> All(PlatformPlan plan)
    {
        var spec = plan.Spec;
        if (spec.Facing is not { } facing)
        {
            return [];
        }

        return
        [
            (FrontOf(1), facing.Front),
            (AtEnd, facing.Ends),
            spec.IsIsland ? (FrontOf(2), facing.Front) : (Back, facing.Back),
            (AtStart, facing.Ends),
        ];
    }

    /// <summary>Names of the walls that a platform shows: none on bents, and no back that a bank hides or that is open.</summary>
    public static IEnumerable<string> Standing(PlatformPlan plan) =>
        AllRound(plan).Where(w => Stands(plan, w) && (w != Back || plan.Spec.Back.Kind == BackKind.Wall));

    // On a trestle walls stand under walled ramps and round the solid feet of others, and nowhere else.
    private static bool Stands(PlatformPlan plan, string wall) => plan.Trestle is not { Stretch: var bents } || wall switch
    {
        AtStart => bents.From > plan.Stations[0],
        AtEnd => bents.To < plan.Stations[^1],
        _ => bents.From > plan.Stations[0] || bents.To < plan.Stations[^1],
    };

    /// <summary>Names of the faces that what steps out of a wall has: fronts, and their sides, which are returns.</summary>
    public static IReadOnlyList<(string Front, string Sides)> OfFronts(PlatformPlan plan, string wall) =>
    [
        .. plan.Fittings.Where(r => r.StepsOut).SelectMany(r => r.Places.Where(p => wall == Of(plan, p.IsFar))
            .Select(p => (Front(r, p, wall), Sides(r, p, wall)))),
    ];

    /// <summary>Whether a face is a front that steps out of a wall.</summary>
    public static bool IsFrontOf(string face, string wall) =>
        face.StartsWith(Stepped, StringComparison.Ordinal) && face.EndsWith(" of " + wall, StringComparison.Ordinal);

    /// <summary>Whether a face is a side of such a front of a wall.</summary>
    public static bool IsSideOf(string face, string wall) =>
        face.StartsWith(SidesOf, StringComparison.Ordinal) && face.EndsWith(" of " + wall, StringComparison.Ordinal);

    /// <summary>Whether a face belongs to such a front of any wall.</summary>
    public static bool IsOfFront(string face) =>
        face.StartsWith(Stepped, StringComparison.Ordinal) || face.StartsWith(SidesOf, StringComparison.Ordinal);

    /// <summary>Name of a face of a part of a wall's height that stands out: the wall's own for what lies deepest.</summary>
    public static string OfZone(string wall, in WallZone zone) => zone.IsDeepest ? wall : FormattableString.Invariant($"{Band}{zone.Number}, {wall}");

    /// <summary>Name of the wall that a face belongs to, whichever part of its height it is.</summary>
    public static string WholeOf(string face) =>
        face.StartsWith(Band, StringComparison.Ordinal) ? face[(face.IndexOf(',', StringComparison.Ordinal) + 2)..] : face;

    private const string Band = "band ";

    private const string Stepped = "the ", SidesOf = "sides of " + Stepped;

    private static string Front(FittingRow row, WallFitting front, string wall) => FormattableString.Invariant($"{Stepped}{row.Name} {front.Number} of {wall}");

    private static string Sides(FittingRow row, WallFitting front, string wall) => FormattableString.Invariant($"{SidesOf}{row.Name} {front.Number} of {wall}");

    /// <summary>Name of the near wall, or of the far one.</summary>
    public static string Of(PlatformPlan plan, bool isFar) => !isFar ? FrontOf(1) : plan.Spec.IsIsland ? FrontOf(2) : Back;

    /// <summary>Names for the sides of a piece of a front that steps out.</summary>
    internal static IReadOnlyList<string?> OfFront(
        FacetedPlan chart, (FittingRow Row, WallFitting Front) of, in TopPiece piece, in WallZone zone, (double From, double To) whole)
    {
        string wall = Of(chart.Plan, of.Front.IsFar), front = OfZone(Front(of.Row, of.Front, wall), zone), sides = OfZone(Sides(of.Row, of.Front, wall), zone);
        string? start = piece.From == whole.From ? sides : null, end = piece.To == whole.To ? sides : null;
        return of.Front.IsFar ? Round(chart, piece, null, front, start, end) : Round(chart, piece, front, null, start, end);
    }

    /// <summary>Names for the sides of a piece of a part of the walls' height that stands out.</summary>
    internal static IReadOnlyList<string?> OfZone(
        FacetedPlan chart, in WallZone zone, in TopPiece piece, (bool Near, bool Far) outer, (double From, double To) whole) => Round(
        chart, piece, outer.Near ? OfZone(FrontOf(1), zone) : null, outer.Far ? OfZone(chart.Plan.Spec.IsIsland ? FrontOf(2) : Back, zone) : null,
        piece.From == whole.From ? OfZone(AtStart, zone) : null, piece.To == whole.To ? OfZone(AtEnd, zone) : null);

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

        return Round(chart, piece, nearName, farName, start, end);
    }

    // On the right-hand side a ring runs the other way round, so its far line comes first.
    private static IReadOnlyList<string?> Round(FacetedPlan chart, in TopPiece piece, string? near, string? far, string? start, string? end) =>
        chart.RunsLeft ? Round(piece.Ring.Length, near, end, far, start) : Round(piece.Ring.Length, far, end, near, start);

    // Round a ring with as many corners along its near line as along its far one.
    private static IReadOnlyList<string?> Round(int corners, string? first, string? end, string? second, string? start) =>
        [.. Enumerable.Range(0, corners).Select(i => i == (corners / 2) - 1 ? end : i == corners - 1 ? start : i < corners / 2 ? first : second)];
}
