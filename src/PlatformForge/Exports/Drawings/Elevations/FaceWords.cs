using PlatformForge.Exports.Drawings.Elevations.Walls;
using PlatformForge.Exports.Drawings.Ink;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>What is said of what is in and before the walls of a face, a line a kind: their sizes as they are laid. Their places stand under the
/// rows.</summary>
internal static class FaceWords
{
    /// <summary>The lines; none where the face has neither.</summary>
    public static IReadOnlyList<string> Of(ElevationFace face)
    {
        var holes = face.Slices.SelectMany(WallHole.Of).GroupBy(h => (Title: face.RowOf(h)?.Title ?? "Openings", h.IsThrough))
            .Select(g => Holes(g.Key.Title, g.Key.IsThrough, [.. g]));
        WallSlice[] fronts = [.. face.Slices.Where(s => s.IsFront)];
        string wide = fronts.Length == 0 ? "" : Range(fronts.Select(p => p.Whole.To - p.Whole.From));
        string stepped = string.Join(", ", face.Fitted.Where(r => r.StepsOut).Select(r => r.Title));
        string[] lines = [.. holes, .. fronts.Length > 0 ? [Invariant($"{stepped} ({fronts.Length}): {wide} wide.")] : Array.Empty<string>(), .. Before(face)];
        return lines.Length == 0 ? [] : [.. lines.SkipLast(1), lines[^1] + " Under the line: their middles from the section's left end."];
    }

    private static IEnumerable<string> Before(ElevationFace face) => face.Fittings.GroupBy(f => f.Row, ReferenceEqualityComparer.Instance)
        .Select(g => Invariant($"{g.First().Row.Title} ({g.Count()}): {Figures.Mm(g.First().Width)} wide."));

    private static string Holes(string name, bool isThrough, WallHole[] holes)
    {
        string springing = holes.Any(h => h.Crown > h.Springing) ? Invariant($"springing {Range(holes.Select(h => h.Springing))}, crown ") : "head ";
        return Invariant($"{name} ({holes.Length}{(isThrough ? ", right through" : "")}): {Range(holes.Select(h => h.Width))} wide, ")
            + Invariant($"sill {Range(holes.Select(h => h.Sill))}, {springing}{Range(holes.Select(h => h.Crown))} over the baseboard.");
    }

    private static string Range(IEnumerable<double> values) =>
        (Figures.Mm(values.Min()), Figures.Mm(values.Max())) is var (least, most) && least != most ? Invariant($"{least} to {most}") : Figures.Mm(values.Min());
}
