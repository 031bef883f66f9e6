using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Workshop;
using PlatformForge.Masonry;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Chapters;

/// <summary>What the report says of openings in walls.</summary>
internal static class OpeningWords
{
    public static void Say(DocumentBuilder to, SectionSet set)
    {
        foreach (var kind in LaidOpening.Of(set.Plan, set.Sections).GroupBy(o => (o.Planned.Spec, o.Planned.IsFar)))
        {
            var spec = kind.Key.Spec;
            bool ring = set.Facing!.Openings.Any(o => o.Shape.Kind == spec.Kind && o.Shape.Ring > 0);
            string head = spec.Rise <= 0 ? "" : ring ? ", under an arch of voussoirs" : ", under an arch whose voussoirs the nozzle would not show";
            string wall = kind.Key.IsFar ? "far wall" : "front", what = spec.IsThrough ? "holes" : "recesses";
            string deep = spec.IsThrough ? "right through into the hollow" : Invariant($"{Figures.Fine(spec.Depth)} mm deep behind the faces");
            string wide = Range(kind.Select(o => o.Width)), high = Range(kind.Select(o => o.Height)), sill = Range(kind.Select(o => o.Sill));
            to.Say(Invariant($"{Name(spec.Kind)}, {wall}: {kind.Count()} {what}, as laid {wide} mm wide and {high} high, their sills {sill} over the baseboard")
                + Invariant($"{head}, {deep}, their middles at {string.Join(", ", kind.Select(o => Figures.Mm(o.At)))} mm. ")
                + Asked(kind.Select(AskedOpening.Of), spec)
                + (spec.IsThrough ? "A pad behind each makes good what it takes off the wall, and ribs keep off it."
                    : "Paint their floors black, and they read as holes."));
        }
    }

    // One figure, or the least and the greatest of them.
    private static string Range(IEnumerable<double> figures)
    {
        string least = Figures.Fine(figures.Min()), most = Figures.Fine(figures.Max());
        return least == most ? least : Invariant($"{least} to {most}");
    }

    private static string Asked(IEnumerable<AskedOpening?> asked, OpeningSpec spec) =>
        asked.Any(a => a is { Width: not null } or { Height: not null } or { Sill: not null })
        ? Invariant($"Asked for were {Figures.Fine(spec.Width)} wide, {Figures.Fine(spec.Height)} high, sills at {Figures.Fine(spec.Sill)}: ")
            + "sides go to where pieces end, sills and heads to beds. "
        : "";

    private static string Name(OpeningKind kind) => kind switch
    {
        OpeningKind.Cable => "Openings for cables",
        OpeningKind.Weep => "Weep holes",
        _ => "Refuges",
    };
}
