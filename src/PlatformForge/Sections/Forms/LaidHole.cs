using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Sections.Forms;

/// <summary>What is open in a section's wall as it was laid: drawn to bricks and courses, where a pattern has them.</summary>
/// <param name="Row">What was asked for.</param>
/// <param name="Planned">Where, and how large.</param>
/// <param name="Section">Number of its section.</param>
/// <param name="At">Chainage of its middle along the first face's track, mm.</param>
/// <param name="Width">Its width along the wall, mm.</param>
/// <param name="Height">From its sill to its crown, mm.</param>
/// <param name="Sill">Height of its sill over the baseboard, mm.</param>
public sealed record LaidHole(FittingRow Row, WallFitting Planned, int Section, double At, double Width, double Height, double Sill)
{
    /// <summary>What is open in a platform's walls, by wall and chainage.</summary>
    /// <param name="plan">The plan that has it.</param>
    /// <param name="sections">Its sections.</param>
    public static IReadOnlyList<LaidHole> Of(PlatformPlan plan, IEnumerable<PlatformSection> sections)
    {
        var holes = plan.Holes.ToDictionary(h => h.Place.Number);
        var laid = sections.SelectMany(s => s.Faced.SelectMany(w => w.Regions.Where(r => r.Opening > 0).Select(r => Of(plan, holes[r.Opening], s, w, r))));
        return [.. laid.OrderBy(o => o.Planned.IsFar).ThenBy(o => o.At)];
    }

    /// <summary>What is told of those that no wall has taken: drawn to whole courses they would reach its upper edge, or another one.</summary>
    /// <inheritdoc cref="Of(PlatformPlan, IEnumerable{PlatformSection})" path="/param"/>
    internal static IEnumerable<Finding> Check(PlatformPlan plan, IEnumerable<PlatformSection> sections)
    {
        var laid = Of(plan, sections).Select(o => o.Planned).ToHashSet(ReferenceEqualityComparer.Instance);
        foreach (var row in plan.Fittings)
        {
            WallFitting[] missing = [.. row.Places.Where(p => p.Hole is not null && !laid.Contains(p))];
            bool told = missing.Length > 0 && WallProfiles.Of(plan).IsParted(missing[0].Hole!.Sill, missing[0].Hole!.Height);
            if (missing.Length > 0 && !told)
            {
                yield return Told(row.Key, missing, [.. row.Places.Except(missing).Select(o => o.Middle)]);
            }
        }
    }

    private static Finding Told(string key, WallFitting[] missing, double[] made)
    {
        var hole = missing[0].Hole!;
        string message = Invariant($"No opening is laid at {Row(missing.Select(o => o.Middle))} mm: drawn to whole courses, ")
            + Invariant($"one {hole.Height:0.##} mm high would reach another one, or the wall's edge.");
        double height = Math.Floor(100 * Math.Max(hole.Height / 2, hole.Rise * 1.1)) / 100;
        string places = Invariant($"[{Row(made)}]");
        bool any = made.Length > 0, shows = height >= hole.Least;
        return Finding.Warning("PF6082", key + (any ? ".at" : ".height"), message,
            any ? $"Give the places at which it fits, at = {places}, or another height or sill."
                : shows ? Invariant($"Give a height of {height:0.##} mm, or another sill.") : "Give another sill, or leave it out.")
            .Curing(any ? new Cure(CureAct.Set, key + ".at", places) : shows ? Cure.Set(key + ".height", height) : Cure.LeaveOut(key));

        static string Row(IEnumerable<double> places) => string.Join(", ", places.Distinct().Order().Select(s => Invariant($"{s:0.##}")));
    }

    private static LaidHole Of(PlatformPlan plan, (FittingRow Row, WallFitting Place) hole, PlatformSection section, FacedWall wall, WallRegion region)
    {
        double left = region.Outline.Min(p => p.X), right = region.Outline.Max(p => p.X), sill = region.Outline.Min(p => p.Y);
        Point2 middle = wall.Place((left + right) / 2);
        double at = plan.Chart.Locate(middle, hole.Place.Middle).Chainage;
        return new(hole.Row, hole.Place, section.Number, at, right - left, region.Outline.Max(p => p.Y) - sill, sill);
    }
}
