using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Workshop;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Chapters;

/// <summary>What the report says of things in and before walls.</summary>
internal static class FittingSentences
{
    /// <summary>What stands so that every cut lies beside one of it, on each wall that has any; null where nothing does.</summary>
    public static FittingRow? Hiding(SectionSet set) => set.Cuts.Count == 0 ? null : set.Plan.Fittings.FirstOrDefault(row => row.Places.Count > 0
        && row.Places.GroupBy(p => p.IsFar).All(wall => set.Cuts.All(c => wall.Any(p => p.Cut == c))));

    /// <summary>What stands before the walls.</summary>
    public static void Say(DocumentBuilder to, SectionSet set)
    {
        foreach (var (row, words) in set.Plan.Fittings.Where(r => r.Words is not null).Select(r => (r, r.Words!)))
        {
            foreach (string sentence in row.Places.Count > 0 ? words.Made : words.NoneMade is { } none ? [none] : [])
            {
                to.Say(sentence);
            }

            foreach (var wall in row.Places.GroupBy(p => p.IsFar))
            {
                double[] shown = [.. set.Cuts.Where(c => wall.All(p => p.Cut != c))];
                string joints = set.Cuts.Count == 0 ? "No section's joint lies between them."
                    : shown.Length == 0 ? words.AllBeside
                    : words.Shown.Replace("{0}", string.Join(", ", shown.Select(Figures.Mm)), StringComparison.Ordinal);
                to.Say(Invariant($"{(wall.Key ? "Far wall" : "Front")}: {wall.Count()}{words.Counted}, their middles ")
                    + Invariant($"at {string.Join(", ", wall.Select(p => Figures.Mm(p.Middle)))} mm. {joints}"));
            }
        }
    }

    /// <summary>What is open in faced walls, as it is laid.</summary>
    public static void SayHoles(DocumentBuilder to, SectionSet set)
    {
        foreach (var kind in LaidHole.Of(set.Plan, set.Sections).GroupBy(o => (o.Row, o.Planned.IsFar)))
        {
            var (row, isFar) = kind.Key;
            var hole = kind.First().Planned.Hole!;
            int[] alike = [.. set.Plan.Holes.Where(h => h.Row.Plural == row.Plural).Select(h => h.Place.Number)];
            bool ring = set.Facing!.Openings.Any(o => alike.Contains(o.Shape.Number) && o.Shape.Ring > 0);
            bool isSmooth = (isFar && !set.Plan.Spec.IsIsland ? set.Plan.Spec.Facing!.Back : set.Plan.Spec.Facing!.Front) == WallFinish.Plain;
            bool lintel = set.Facing!.Openings.Any(o => alike.Contains(o.Shape.Number) && o.Shape.Bearing > 0 && o.Shape.Rise <= 0);
            string head = hole.Rise <= 0 ? lintel && HasLintels(set, isFar) ? Lintel(hole.Bearing) : "" : isSmooth ? ", under an arch"
                : ring ? ", under an arch of voussoirs" : ", under an arch whose voussoirs the nozzle would not show";
            string wall = isFar ? "far wall" : "front", what = hole.IsThrough ? "holes" : "recesses";
            string deep = hole.Depth is { } depth ? Invariant($"{Figures.Fine(depth)} mm deep behind the faces") : "right through into the hollow";
            string wide = Range(kind.Select(o => o.Width)), high = Range(kind.Select(o => o.Height)), sill = Range(kind.Select(o => o.Sill));
            to.Say(Invariant($"{row.Title}, {wall}: {kind.Count()} {what}, as laid {wide} mm wide and {high} high, their sills {sill} over the baseboard")
                + Invariant($"{head}, {deep}, their middles at {string.Join(", ", kind.Select(o => Figures.Mm(o.At)))} mm. ")
                + Asked(kind.Select(AskedHole.Of), kind.First().Planned)
                + (hole.IsThrough ? "A pad behind each makes good what it takes off the wall, and ribs keep off it."
                    : "Paint their floors black, and they read as holes."));
        }
    }

    private static bool HasLintels(SectionSet set, bool isFar) =>
        (isFar && !set.Plan.Spec.IsIsland ? set.Plan.Spec.Facing!.Back : set.Plan.Spec.Facing!.Front) is WallFinish.Brick or WallFinish.Stone;

    private static string Lintel(double bearing) =>
        Invariant($", under a lintel a course high that lies about {Figures.Fine(bearing)} mm on the wall on either side");

    // One figure, or the least and the greatest of them.
    private static string Range(IEnumerable<double> figures)
    {
        string least = Figures.Fine(figures.Min()), most = Figures.Fine(figures.Max());
        return least == most ? least : Invariant($"{least} to {most}");
    }

    private static string Asked(IEnumerable<AskedHole?> asked, WallFitting planned) =>
        asked.Any(a => a is { Width: not null } or { Height: not null } or { Sill: not null })
        ? Invariant($"Asked for were {Figures.Fine(planned.Width)} wide, {Figures.Fine(planned.Hole!.Height)} high, sills at ")
            + Invariant($"{Figures.Fine(planned.Hole.Sill)}: sides go to where pieces end, sills and heads to beds. ")
        : "";
}
