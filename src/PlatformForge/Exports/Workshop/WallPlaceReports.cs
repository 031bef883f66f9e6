using System.Text.Json.Serialization;
using PlatformForge.Masonry;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Exports.Workshop;

/// <summary>An opening in a wall as it is laid: its kind, the face that it is in, its section, the chainage of its middle, width, height from sill to crown
/// and height of the sill over the baseboard in mm; how deep it is in mm, nothing where it goes right through; what was asked for where that is another
/// figure.</summary>
public sealed record WallOpeningReport(
    string Kind, string Face, int Section, double At, double Width, double Height, double Sill, bool Through,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Depth = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] AskedOpening? Asked = null)
{
    internal static IReadOnlyList<WallOpeningReport> Of(SectionSet set) => [.. LaidOpening.Of(set.Plan, set.Sections).Select(o =>
    {
        var spec = o.Planned.Spec;
        return new WallOpeningReport(OpeningSpec.Name(spec.Kind), PierReport.FaceOf(set, o.Planned.IsFar), o.Section, o.At, o.Width, o.Height, o.Sill,
            spec.IsThrough, spec.IsThrough ? null : spec.Depth, AskedOpening.Of(o));
    })];
}

/// <summary>What was asked for of an opening, each figure in mm: nothing where it is laid so.</summary>
public sealed record AskedOpening(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? At,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Width,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Height,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Sill)
{
    // Figures nearer to one another than this are told once, mm: less than anybody measures on a model.
    private const double Same = 0.05;

    internal static AskedOpening? Of(LaidOpening laid)
    {
        static double? Other(double asked, double made) => Math.Abs(asked - made) > Same ? asked : null;
        var spec = laid.Planned.Spec;
        var asked = new AskedOpening(
            Other(laid.Planned.Chainage, laid.At), Other(spec.Width, laid.Width), Other(spec.Height, laid.Height), Other(spec.Sill, laid.Sill));
        return asked == new AskedOpening(null, null, null, null) ? null : asked;
    }
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
