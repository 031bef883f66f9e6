using PlatformForge.Exports.Drawings.Elevations.Walls;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Masonry;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>What is said of the openings, piers and downpipes of a face, a line a kind: their sizes as they are laid. Their places stand under the
/// rows.</summary>
internal static class FaceWords
{
    /// <summary>The lines; none where the face has neither.</summary>
    public static IReadOnlyList<string> Of(ElevationFace face)
    {
        var holes = face.Slices.SelectMany(WallHole.Of).GroupBy(h => (h.Kind, h.IsThrough)).Select(g => Holes(Name(g.Key.Kind), g.Key.IsThrough, [.. g]));
        WallSlice[] piers = [.. face.Slices.Where(s => s.IsPier)];
        string wide = piers.Length == 0 ? "" : Range(piers.Select(p => p.Whole.To - p.Whole.From));
        string[] lines = [.. holes, .. piers.Length > 0 ? [Invariant($"Piers ({piers.Length}): {wide} wide.")] : Array.Empty<string>(), .. Pipes(face)];
        return lines.Length == 0 ? [] : [.. lines.SkipLast(1), lines[^1] + " Under the line: their middles from the section's left end."];
    }

    private static string[] Pipes(ElevationFace face) =>
        face.Pipes.Count > 0 ? [Invariant($"Downpipes ({face.Pipes.Count}): {Figures.Mm(face.Pipes[0].Width)} wide.")] : [];

    private static string Holes(string name, bool isThrough, WallHole[] holes)
    {
        string springing = holes.Any(h => h.Crown > h.Springing) ? Invariant($"springing {Range(holes.Select(h => h.Springing))}, crown ") : "head ";
        return Invariant($"{name} ({holes.Length}{(isThrough ? ", right through" : "")}): {Range(holes.Select(h => h.Width))} wide, ")
            + Invariant($"sill {Range(holes.Select(h => h.Sill))}, {springing}{Range(holes.Select(h => h.Crown))} over the baseboard.");
    }

    private static string Name(OpeningKind kind) => kind switch
    {
        OpeningKind.Cable => "Openings for cables",
        OpeningKind.Weep => "Weep holes",
        _ => "Refuges",
    };

    private static string Range(IEnumerable<double> values) =>
        (Figures.Mm(values.Min()), Figures.Mm(values.Max())) is var (least, most) && least != most ? Invariant($"{least} to {most}") : Figures.Mm(values.Min());
}
