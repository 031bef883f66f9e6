using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using static System.FormattableString;

namespace PlatformForge.Sections.Poses;

/// <summary>What of a platform is at a place, in words, for remarks on how a section prints.</summary>
internal static class Cause
{
    // What belongs to a feature or a fitting lies within so much of it, mm.
    private const double Near = 1.5;

    /// <summary>The feature or fitting at a place; null where there is none.</summary>
    /// <param name="plan">The platform.</param>
    /// <param name="at">The place, layout frame.</param>
    /// <param name="chainage">A chainage near it, mm.</param>
    public static string? At(PlatformPlan plan, Point2 at, double chainage)
    {
        var place = plan.Spine.Locate(at, chainage);
        double s = place.Chainage, t = place.Reach;
        bool isFar = t > (plan.CopingFront.At(s) + plan.Back.At(s)) / 2;
        if (plan.Keepouts.FirstOrDefault(k => k.From - Near < s && s < k.To + Near && k.Near - Near < t && t < k.Far + Near) is { } feature)
        {
            return Invariant($"{feature.Name} at chainage {feature.Middle:0} mm");
        }

        var fittings = from row in plan.Fittings
                       from one in row.Places
                       where one.IsFar == isFar && one.From - Near < s && s < one.To + Near
                       orderby one.To - one.From
                       select Invariant($"{row.Name} at chainage {one.Middle:0} mm");
        return fittings.FirstOrDefault() ?? (IsBank(plan, s, t) ? "bank" : null);
    }

    /// <summary>What keeps most of a section's walking surface off the bed: what stands highest over it, or else what is let into most of it; null where
    /// that is no one thing.</summary>
    /// <param name="plan">The platform.</param>
    /// <param name="planes">Planes of its walking surface.</param>
    /// <param name="mesh">The section, layout frame.</param>
    /// <param name="chainage">A chainage of it, mm.</param>
    public static string? OfTurning(PlatformPlan plan, IReadOnlyList<HeightPlane> planes, Mesh mesh, double chainage)
    {
        double Over(Point3 v) => planes.Min(p => v.Z - p.At(new(v.X, v.Y)));
        var highest = mesh.Vertices.MaxBy(Over);
        double over = Over(highest);
        if (over > Stands)
        {
            return Invariant($"{At(plan, new(highest.X, highest.Y), chainage) ?? "what is built there"}, {over:0.0} mm over the deck");
        }

        var sunk = new Dictionary<string, double>(StringComparer.Ordinal);
        for (int i = 0; i + 2 < mesh.Triangles.Length; i += 3)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[i]], b = mesh.Vertices[mesh.Triangles[i + 1]], c = mesh.Vertices[mesh.Triangles[i + 2]];
            var (normal, middle) = (Point3.Cross(b - a, c - a), (a + b + c) * (1 / 3.0));
            if (normal.Z > LooksUp * normal.Length && Over(middle) is < -Stands and > -Deepest
                && At(plan, new(middle.X, middle.Y), chainage) is { } what)
            {
                sunk[what] = sunk.GetValueOrDefault(what) + (normal.Z / 2);
            }
        }

        return sunk.Count == 0 ? null : sunk.MaxBy(s => s.Value).Key;
    }

    // Less than this over or under the deck, mm, is a layer at most; what lies deeper than that is under it.
    private const double Stands = 0.05, Deepest = 10;

    // Cosine of what is floor.
    private const double LooksUp = 0.9;

    private static bool IsBank(PlatformPlan plan, double s, double t) => plan.Bank is not null && t > plan.Back.At(s);
}
