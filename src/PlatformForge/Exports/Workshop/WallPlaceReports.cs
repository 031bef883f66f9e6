using System.Text.Json.Serialization;
using PlatformForge.Masonry;
using PlatformForge.Sections;
using PlatformForge.Solids.Bodies;

namespace PlatformForge.Exports.Workshop;

/// <summary>An opening in a wall: its kind, the face that it is in, its section, the chainage of its middle, width, height from sill to crown and height of
/// the sill over the baseboard in mm, as asked for; how deep it is in mm, nothing where it goes right through.</summary>
public sealed record WallOpeningReport(
    string Kind, string Face, int Section, double At, double Width, double Height, double Sill, bool Through,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Depth = null)
{
    internal static IReadOnlyList<WallOpeningReport> Of(SectionSet set) =>
        [.. set.Plan.WallOpenings.OrderBy(o => o.IsFar).ThenBy(o => o.Chainage).Select(o => new WallOpeningReport(
        OpeningSpec.Name(o.Spec.Kind), PierReport.FaceOf(set, o.IsFar), PierReport.SectionAt(set, o.Chainage), o.Chainage, o.Spec.Width, o.Spec.Height,
        o.Spec.Sill, o.Spec.IsThrough, o.Spec.IsThrough ? null : o.Spec.Depth))];
}

/// <summary>A pier in a wall, or a downpipe before one: the face that it is in, its section, the chainages in mm between which it stands, and that of
/// the cut in the angle beside it; nothing where none is.</summary>
public sealed record PierReport(
    string Face, int Section, double From, double To,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Cut = null)
{
    internal static IReadOnlyList<PierReport> Of(SectionSet set) => [.. set.Plan.Piers.OrderBy(p => p.IsFar).ThenBy(p => p.From)
        .Select(p => new PierReport(FaceOf(set, p.IsFar), SectionAt(set, p.Middle), p.From, p.To, p.Cut))];

    /// <summary>Of downpipes, as of piers.</summary>
    internal static IReadOnlyList<PierReport> OfDownpipes(SectionSet set) => [.. set.Plan.Downpipes.OrderBy(p => p.IsFar).ThenBy(p => p.From)
        .Select(p => new PierReport(FaceOf(set, p.IsFar), SectionAt(set, p.Middle), p.From, p.To, p.Cut))];

    internal static string FaceOf(SectionSet set, bool isFar) => !isFar ? WallNames.FrontOf(1) : set.Plan.Spec.IsIsland ? WallNames.FrontOf(2) : WallNames.Back;

    internal static int SectionAt(SectionSet set, double chainage) => set.Sections.FirstOrDefault(s => chainage >= s.From && chainage <= s.To)?.Number ?? 0;
}
