using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>
/// A horizontal slab of space in mm above the baseboard, the upper face included. What rises to the lower face and no further lies below it: a body may pass
/// over
/// a coping with exactly the gap that is kept.
/// </summary>
internal readonly record struct Slab(double Low, double High)
{
    /// <summary>
    /// What may be missing from the budget before it counts as broken, mm: files hold 32-bit floats (0.00006 mm at
    /// 500 mm), plan points lie on a grid, and motions are rounded.
    /// </summary>
    public const double Rounding = 0.001;

    /// <summary>A slab below something: what begins at its upper face lies above it. Files round heights.</summary>
    public static Slab Under(double low, double high) => new(low, high - (2 * Rounding));

    /// <summary>Most corners that a triangle has after both faces have cut it.</summary>
    public const int MostCorners = 5;

    /// <summary>The slab without what lies above everything: it cuts the same out of what rises to no more than a height.</summary>
    public Slab Below(double top) => High > top ? this with { High = top } : this;

    /// <summary>Whether a height lies in the slab.</summary>
    public bool Holds(double z) => z > Low + Rounding && z <= High;

    /// <summary>Whether nothing of a triangle with corners at these heights lies in the slab. Files round heights.</summary>
    public bool Misses(double a, double b, double c) => Math.Max(a, Math.Max(b, c)) <= Low + Rounding || Math.Min(a, Math.Min(b, c)) > High;

    /// <summary>
    /// The corners of what a triangle leaves in the slab, in order: none, or up to <see cref="MostCorners"/>; a triangle that
    /// only touches the upper face leaves a point or an edge.
    /// </summary>
    public int Cut(Point3 a, Point3 b, Point3 c, Span<Point3> corners)
    {
        if (Misses(a.Z, b.Z, c.Z))
        {
            return 0;
        }

        Span<Point3> above = stackalloc Point3[MostCorners];
        (corners[0], corners[1], corners[2]) = (a, b, c);
        int count = Half(corners[..3], Low, 1, above);
        return Half(above[..count], High, -1, corners);
    }

    // Keeps what lies on one side of a level: above it for way = 1, below for -1.
    private static int Half(ReadOnlySpan<Point3> ring, double level, int way, Span<Point3> kept)
    {
        int count = 0;
        for (int i = 0; i < ring.Length; i++)
        {
            Point3 p = ring[i], q = ring[(i + 1) % ring.Length];
            double hp = way * (p.Z - level), hq = way * (q.Z - level);
            if (hp >= 0)
            {
                kept[count++] = p;
            }

            if ((hp > 0 && hq < 0) || (hp < 0 && hq > 0))
            {
                var cut = p + ((q - p) * (hp / (hp - hq)));
                kept[count++] = cut with { Z = level };
            }
        }

        return count;
    }
}
