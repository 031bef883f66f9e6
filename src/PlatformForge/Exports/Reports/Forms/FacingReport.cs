using System.Text.Json.Serialization;
using PlatformForge.Exports.Workshop;
using PlatformForge.Masonry;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Walls;

namespace PlatformForge.Exports.Reports.Forms;

/// <summary>What a platform's walls are faced with: finishes by their names in the project file; joints and depth in mm of the model; sizes of bricks with
/// their
/// joints where there is brickwork; each stretch of wall between two stops.</summary>
public sealed record FacingReport(
    IReadOnlyList<string> Finishes, double Joint, double Depth, IReadOnlyList<FacedWallReport> Walls,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] BrickworkReport? Brickwork = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<HoleReport>? Openings = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<FittingReport>? Piers = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<FittingReport>? Downpipes = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<NamedFittingReport>? Fittings = null)
{
    internal static FacingReport? Of(SectionSet set) => set.Facing is not { } facing ? null : new(
        [.. facing.Finishes.Select(f => FacingSpec.Name(f.Work.Finish))], facing.Finishes.Max(f => f.Work.Laying.Joint),
        facing.Finishes.Max(f => f.Work.Laying.Depth),
        [.. set.Sections.SelectMany(FacedWallReport.Of)],
        facing.Brickwork is { } b ? new(FacingSpec.Name(b.Bond), b.Module.Stretcher, b.Module.Header, b.Course, b.Perpends) : null,
        Any(HoleReport.Of(set)), Any(Named(set, "pier")), Any(Named(set, "downpipe")),
        Any([.. set.Plan.Fittings.Where(r => r.Name is not ("pier" or "downpipe")).SelectMany(r => NamedFittingReport.Of(set, r))]));

    // Lists that other programs read already have their kind's name; what is new is told together.
    private static IReadOnlyList<FittingReport> Named(SectionSet set, string kind) =>
        [.. set.Plan.Fittings.Where(r => r.Name == kind).SelectMany(r => FittingReport.Of(set, r))];

    private static IReadOnlyList<T>? Any<T>(IReadOnlyList<T> all) => all.Count > 0 ? all : null;
}

/// <summary>Brickwork: its bond, and bricks with their joints, mm of the model.</summary>
public sealed record BrickworkReport(string Bond, double Stretcher, double Header, double Course, bool Perpends);

/// <summary>A faced wall of a section: its finish, the faces that it runs over, its length laid flat in mm, its courses, the pieces that stand out, how much
/// longer
/// than asked for these are at most (a share), and what they cover in mm².</summary>
public sealed record FacedWallReport(
    int Section, string Finish, IReadOnlyList<string> Faces, double Length, int Courses, int Pieces, double Draw, double Area)
{
    // Courses that differ by less than this, mm, in the height of their tops are one, cut or not.
    private const int Decimals = 3;

    // What stands out along a part of a wall's height is told with what lies behind it, where that runs over the same faces.
    internal static IEnumerable<FacedWallReport> Of(PlatformSection section)
    {
        FacedWall[] faced = [.. section.Faced.Where(w => w.Finish != WallFinish.Plain)];
        List<FacedWallReport> rows = [.. faced.Where(w => w.Zone.IsDeepest).Select(w => Of(section.Number, w))];
        foreach (var part in faced.Where(w => !w.Zone.IsDeepest).Select(w => Of(section.Number, w)))
        {
            int with = rows.FindIndex(r => r.Finish == part.Finish
                && r.Faces.Order(StringComparer.Ordinal).SequenceEqual(part.Faces.Order(StringComparer.Ordinal)));
            if (with < 0)
            {
                rows.Add(part);
                continue;
            }

            var row = rows[with];
            rows[with] = row with
            {
                Courses = row.Courses + part.Courses,
                Pieces = row.Pieces + part.Pieces,
                Draw = Math.Max(row.Draw, part.Draw),
                Area = row.Area + part.Area,
            };
        }

        return rows;
    }

    // Stones without courses, and what stands upright, have none.
    internal static FacedWallReport Of(int section, FacedWall wall) => new(
        section, FacingSpec.Name(wall.Finish), [.. wall.Stretches.Select(s => s.Face).Where(f => !WallNames.IsOfFront(f)).Distinct()], wall.Wall.Length,
        wall.Finish is WallFinish.Rubble or WallFinish.UprightPlanks ? 0
            : wall.Regions.Where(r => r.Out > 0 && r.Outline.Length == 4).Select(r => Math.Round(r.Outline.Min(p => p.Y), Decimals)).Distinct().Count(),
        wall.Regions.Count(r => r.Out > 0), wall.Draw, wall.Area);
}
