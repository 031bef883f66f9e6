using PlatformForge.Geometry;

namespace PlatformForge.Exports.Stock;

/// <summary>
/// When a strip needs relief slots to be bent to a wall's line, and how many. A strip of thickness t bent to a radius R is stretched on its outside and
/// squeezed
/// on its inside by t / 2R of its length (bending of a flat beam; any handbook of strength of materials). Up to <see cref="Strain"/> it is bent as it is.
/// Beyond,
/// slots are cut into the inner face: turning through an angle a makes that face shorter or longer by a·t, which slots of width w take up where there are
/// a·t / w of them.
/// </summary>
internal static class BendRule
{
    /// <summary>Half a hundredth: what card and plastic sheet take without a crease (common practice, no source).</summary>
    public const double Strain = 0.005;

    // Radii are told over so much of a strip, mm: it does not feel a corner of a facet.
    private const double Reach = 40;

    /// <summary>How many slots, evenly spaced; 0 where none is needed.</summary>
    /// <param name="line">The line that the strip is bent to.</param>
    /// <param name="thickness">Of the strip, mm.</param>
    /// <param name="slot">Width of a slot, mm.</param>
    public static int Slots(IReadOnlyList<Point2> line, double thickness, double slot) =>
        thickness / 2 * Sharpest(line) <= Strain ? 0 : (int)Math.Ceiling(Turn(line) * thickness / slot);

    /// <summary>How far the line turns in all, radians, either way counted.</summary>
    public static double Turn(IReadOnlyList<Point2> line) => Angles(line).Sum(a => Math.Abs(a.Angle));

    /// <summary>Greatest curvature over a reach, 1/mm.</summary>
    public static double Sharpest(IReadOnlyList<Point2> line)
    {
        var angles = Angles(line).ToArray();
        return angles.Select(a => Math.Abs(angles.Where(b => Math.Abs(b.At - a.At) <= Reach / 2).Sum(b => b.Angle)) / Reach).DefaultIfEmpty(0).Max();
    }

    private static IEnumerable<(double At, double Angle)> Angles(IReadOnlyList<Point2> line)
    {
        double at = 0;
        for (int i = 1; i + 1 < line.Count; i++)
        {
            Point2 before = line[i] - line[i - 1], after = line[i + 1] - line[i];
            at += before.Length;
            yield return (at, Math.Atan2((before.X * after.Y) - (before.Y * after.X), Point2.Dot(before, after)));
        }
    }
}
