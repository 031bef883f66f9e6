using PlatformForge.Geometry;

namespace PlatformForge.Exports.Stock;

/// <summary>
/// When a strip needs relief slots to be bent to a wall's line, and how many. A strip of thickness t bent to a radius R is stretched on its outside and
/// squeezed
/// on its inside by t / 2R of its length (bending of a flat beam; any handbook of strength of materials). Up to <see cref="Strain"/> it is bent as it is.
/// Beyond,
/// slots are cut into the inner face: turning through an angle a makes that face shorter or longer by a·t, which slots of width w take up where there are
/// a·t / w of them. Slots are hinges, and what is between two of them stays flat: there are so many that the line rises over no flat by more than a versine.
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
    /// <param name="versine">How far the line may leave the flats between slots, mm.</param>
    /// <returns>So many that they take up the turn and that no flat leaves the line by more than the versine, as far as they keep off one another.</returns>
    public static int Slots(IReadOnlyList<Point2> line, double thickness, double slot, double versine)
    {
        if (thickness / 2 * Sharpest(line) <= Strain)
        {
            return 0;
        }

        int slots = (int)Math.Ceiling(Turn(line) * thickness / slot), most = Most(line, slot);
        while (slots < most && OffLine(line, slots) > versine)
        {
            slots++;
        }

        return slots;
    }

    /// <summary>Most slots that leave land as wide as themselves between them.</summary>
    public static int Most(IReadOnlyList<Point2> line, double slot) => Math.Max(1, (int)Math.Floor(Length(line) / (2 * slot)));

    /// <summary>How far the line leaves the flats between so many evenly spaced slots, mm: it is on them at slots and ends.</summary>
    public static double OffLine(IReadOnlyList<Point2> line, int slots)
    {
        double[] along = Along(line);
        double[] knots = [0, .. Enumerable.Range(0, slots).Select(i => along[^1] * (i + 0.5) / slots), along[^1]];
        Point2[] corners = [.. knots.Select(k => At(line, along, k))];
        double most = 0;
        for (int i = 0, flat = 0; i < line.Count; i++)
        {
            while (flat + 2 < knots.Length && along[i] > knots[flat + 1])
            {
                flat++;
            }

            var chord = corners[flat + 1] - corners[flat];
            most = chord.Length > 0 ? Math.Max(most, Math.Abs(Point2.Cross(chord, line[i] - corners[flat])) / chord.Length) : most;
        }

        return most;
    }

    private static double Length(IReadOnlyList<Point2> line) => Along(line)[^1];

    private static double[] Along(IReadOnlyList<Point2> line)
    {
        double[] along = new double[line.Count];
        for (int i = 1; i < along.Length; i++)
        {
            along[i] = along[i - 1] + (line[i] - line[i - 1]).Length;
        }

        return along;
    }

    private static Point2 At(IReadOnlyList<Point2> line, double[] along, double at)
    {
        int next = Math.Clamp(Array.FindIndex(along, l => l >= at), 1, along.Length - 1);
        return line[next - 1] + ((line[next] - line[next - 1]) * ((at - along[next - 1]) / (along[next] - along[next - 1])));
    }

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
