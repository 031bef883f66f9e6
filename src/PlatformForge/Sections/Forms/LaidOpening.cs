using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Sections.Forms;

/// <summary>An opening as it was laid in its section's wall: drawn to bricks and courses, where a pattern has them.</summary>
/// <param name="Planned">What was asked for.</param>
/// <param name="Section">Number of its section.</param>
/// <param name="At">Chainage of its middle along the first face's track, mm.</param>
/// <param name="Width">Its width along the wall, mm.</param>
/// <param name="Height">From its sill to its crown, mm.</param>
/// <param name="Sill">Height of its sill over the baseboard, mm.</param>
public sealed record LaidOpening(PlannedOpening Planned, int Section, double At, double Width, double Height, double Sill)
{
    /// <summary>The openings of a platform's walls, by wall and chainage.</summary>
    /// <param name="plan">The plan that has them.</param>
    /// <param name="sections">Its sections.</param>
    public static IReadOnlyList<LaidOpening> Of(PlatformPlan plan, IEnumerable<PlatformSection> sections)
    {
        var laid = sections.SelectMany(s => s.Faced.SelectMany(w => w.Regions.Where(r => r.Opening > 0).Select(r => Of(plan, s, w, r))));
        return [.. laid.OrderBy(o => o.Planned.IsFar).ThenBy(o => o.At)];
    }

    /// <summary>What is told of openings that no wall has taken: drawn to whole courses they would reach its upper edge, or another opening.</summary>
    /// <inheritdoc cref="Of(PlatformPlan, IEnumerable{PlatformSection})" path="/param"/>
    internal static IEnumerable<Finding> Check(PlatformPlan plan, IEnumerable<PlatformSection> sections)
    {
        var laid = Of(plan, sections).Select(o => o.Planned).ToHashSet(ReferenceEqualityComparer.Instance);
        var openings = plan.Spec.Facing?.Openings ?? [];
        for (int i = 0; i < openings.Count; i++)
        {
            PlannedOpening[] all = [.. plan.WallOpenings.Where(o => ReferenceEquals(o.Spec, openings[i]))], missing = [.. all.Where(o => !laid.Contains(o))];
            if (missing.Length > 0)
            {
                yield return Told(Invariant($"{plan.Spec.Key}.facing.opening[{i}]"), openings[i], missing, [.. all.Except(missing).Select(o => o.Chainage)]);
            }
        }
    }

    private static Finding Told(string key, Masonry.OpeningSpec spec, PlannedOpening[] missing, double[] made)
    {
        string message = Invariant($"No opening is laid at {Row(missing.Select(o => o.Chainage))} mm: drawn to whole courses, ")
            + Invariant($"one {spec.Height:0.##} mm high would reach another one, or the wall's edge.");
        double height = Math.Floor(100 * Math.Max(spec.Height / 2, spec.Rise * 1.1)) / 100;
        string places = Invariant($"[{Row(made)}]");
        bool any = made.Length > 0;
        return Finding.Warning("PF6082", key + (any ? ".at" : ".height"), message,
            any ? $"Give the places at which it fits, at = {places}, or another height or sill."
                : Invariant($"Give a height of {height:0.##} mm, or another sill."))
            .Curing(any ? new Cure(CureAct.Set, key + ".at", places) : Cure.Set(key + ".height", height));
    }

    private static string Row(IEnumerable<double> places) => string.Join(", ", places.Distinct().Order().Select(s => Invariant($"{s:0.##}")));

    private static LaidOpening Of(PlatformPlan plan, PlatformSection section, PlatformForge.Solids.Bodies.Walls.FacedWall wall, Masonry.WallRegion region)
    {
        var planned = plan.WallOpenings[region.Opening - 1];
        double left = region.Outline.Min(p => p.X), right = region.Outline.Max(p => p.X), sill = region.Outline.Min(p => p.Y);
        Point2 middle = wall.Place((left + right) / 2);
        return new(planned, section.Number, plan.Chart.Locate(middle, planned.Chainage).Chainage, right - left, region.Outline.Max(p => p.Y) - sill, sill);
    }
}
