using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings;
using PlatformForge.Masonry;
using PlatformForge.Sections;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports;

/// <summary>What the report says of openings in walls.</summary>
internal static class OpeningWords
{
    public static void Say(DocumentBuilder to, SectionSet set)
    {
        foreach (var kind in set.Plan.WallOpenings.GroupBy(o => (o.Spec, o.IsFar)))
        {
            var spec = kind.Key.Spec;
            bool ring = set.Facing!.Openings.Any(o => o.Shape.Kind == spec.Kind && o.Shape.Ring > 0);
            string head = spec.Rise <= 0 ? "" : ring ? ", under an arch of voussoirs" : ", under an arch whose voussoirs the nozzle would not show";
            string wall = kind.Key.IsFar ? "far wall" : "front", what = spec.IsThrough ? "holes" : "recesses";
            string deep = spec.IsThrough ? "right through into the hollow" : Invariant($"{Figures.Fine(spec.Depth)} mm deep behind the faces");
            to.Say(Invariant($"{Name(spec.Kind)}, {wall}: {kind.Count()} {what} about {Figures.Fine(spec.Width)} mm wide and {Figures.Fine(spec.Height)} high")
                + Invariant($"{head}, {deep}, their middles at {string.Join(", ", kind.Select(o => Figures.Mm(o.Chainage)))} mm. ")
                + (spec.IsThrough ? "A pad behind each makes good what it takes off the wall, and ribs keep off it."
                    : "Paint their floors black, and they read as holes."));
        }
    }

    private static string Name(OpeningKind kind) => kind switch
    {
        OpeningKind.Cable => "Openings for cables",
        OpeningKind.Weep => "Weep holes",
        _ => "Refuges",
    };
}
