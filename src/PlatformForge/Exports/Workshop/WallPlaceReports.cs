using System.Text.Json.Serialization;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Exports.Workshop;

/// <summary>An opening in a wall as it is laid: its kind, the face that it is in, its section, the chainage of its middle, width, height from sill to crown
/// and height of the sill over the baseboard in mm; how deep it is in mm, nothing where it goes right through; what was asked for where that is another
/// figure.</summary>
public sealed record HoleReport(
    string Kind, string Face, int Section, double At, double Width, double Height, double Sill, bool Through,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Depth = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] AskedHole? Asked = null)
{
    internal static IReadOnlyList<HoleReport> Of(SectionSet set) => [.. LaidHole.Of(set.Plan, set.Sections).Select(o =>
    {
        var hole = o.Planned.Hole!;
        return new HoleReport(
            o.Row.Name, WallNames.Of(set.Plan, o.Planned.IsFar), o.Section, o.At, o.Width, o.Height, o.Sill, hole.IsThrough, hole.Depth, AskedHole.Of(o));
    })];
}

/// <summary>What was asked for of an opening, each figure in mm: nothing where it is laid so.</summary>
public sealed record AskedHole(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? At,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Width,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Height,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Sill)
{
    // Figures nearer to one another than this are told once, mm: less than anybody measures on a model.
    private const double Same = 0.05;

    internal static AskedHole? Of(LaidHole laid)
    {
        static double? Other(double asked, double made) => Math.Abs(asked - made) > Same ? asked : null;
        var (planned, hole) = (laid.Planned, laid.Planned.Hole!);
        var asked = new AskedHole(
            Other(planned.Middle, laid.At), Other(planned.Width, laid.Width), Other(hole.Height, laid.Height), Other(hole.Sill, laid.Sill));
        return asked == new AskedHole(null, null, null, null) ? null : asked;
    }
}

/// <summary>What stands out of a wall or before one: the face that it is in, its section, the chainages in mm between which it stands, and that of the cut in
/// the angle beside it; nothing where none is.</summary>
public sealed record FittingReport(
    string Face, int Section, double From, double To,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Cut = null)
{
    /// <summary>What of a row stands out of walls or before them, by wall and chainage.</summary>
    internal static IReadOnlyList<FittingReport> Of(SectionSet set, FittingRow row) =>
    [
        .. row.Places.Where(p => p.Hole is null).OrderBy(p => p.IsFar).ThenBy(p => p.From)
            .Select(p => new FittingReport(WallNames.Of(set.Plan, p.IsFar), SectionAt(set, p.Middle), p.From, p.To, p.Cut)),
    ];

    private static int SectionAt(SectionSet set, double chainage) => set.Sections.FirstOrDefault(s => chainage >= s.From && chainage <= s.To)?.Number ?? 0;
}

/// <summary>The same of a kind that has no list of its own in the report, with what it is.</summary>
public sealed record NamedFittingReport(
    string Kind, string Face, int Section, double From, double To,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Cut = null)
{
    internal static IEnumerable<NamedFittingReport> Of(SectionSet set, FittingRow row) =>
        FittingReport.Of(set, row).Select(r => new NamedFittingReport(row.Name, r.Face, r.Section, r.From, r.To, r.Cut));
}
