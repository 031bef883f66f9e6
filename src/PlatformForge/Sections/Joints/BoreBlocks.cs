using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;

namespace PlatformForge.Sections.Joints;

/// <summary>
/// A level bore as blocks: an eight-sided prism around the bore's circle, cut into strips whose lower and upper surfaces are planes, with
/// a mouth that widens at 45 degrees. A slotted bore is the same with a wider middle strip.
/// </summary>
internal static class BoreBlocks
{
    /// <summary>How far in mm the cut reaches out of the end face.</summary>
    private const double Overshoot = 0.5;

    // Half the middle strip's width, as a part of the radius: eight flat sides touch the circle, one on each quarter.
    private static readonly double Flat = Math.Tan(Math.PI / 8);

    /// <summary>Blocks that take a bore out.</summary>
    /// <param name="bore">Bore in the layout frame.</param>
    /// <param name="chamfer">Widening of its mouth on the radius and in depth, mm.</param>
    public static IEnumerable<ColumnBlock> Cut(Bore bore, double chamfer)
    {
        double radius = bore.Diameter / 2;
        foreach (var block in Strips(bore, chamfer, bore.Depth, radius, radius))
        {
            yield return block;
        }

        foreach (var block in Strips(bore, -Overshoot, chamfer, radius + chamfer + Overshoot, radius))
        {
            yield return block;
        }
    }

    /// <summary>Volume that a bore takes out of a level block of material behind a face square to it, mm³.</summary>
    public static double Volume(Bore bore, double chamfer)
    {
        // Cross-section of an eight-sided bore with inscribed radius r and slot w: 8 tan(π/8) r² + 2 r w.
        double r = bore.Diameter / 2, k = 8 * Flat;
        double Section(double radius) => (k * radius * radius) + (2 * radius * bore.Slot);

        // Simpson's rule is exact for the mouth, whose section is quadratic in depth.
        double mouth = chamfer / 6 * (Section(r) + (4 * Section(r + (chamfer / 2))) + Section(r + chamfer));
        return (Section(r) * (bore.Depth - chamfer)) + mouth;
    }

    private static IEnumerable<ColumnBlock> Strips(Bore bore, double x0, double x1, double r0, double r1)
    {
        double w = bore.Slot / 2;
        yield return Strip(bore, (x0, -w - (Flat * r0), w + (Flat * r0), r0, r0), (x1, -w - (Flat * r1), w + (Flat * r1), r1, r1));
        yield return Strip(bore, (x0, w + (Flat * r0), w + r0, r0, Flat * r0), (x1, w + (Flat * r1), w + r1, r1, Flat * r1));
        yield return Strip(bore, (x0, -w - r0, -w - (Flat * r0), Flat * r0, r0), (x1, -w - r1, -w - (Flat * r1), Flat * r1, r1));
    }

    // A strip between two cross-sections: at a depth, from one place across to another, half heights at both.
    private static ColumnBlock Strip(
        Bore bore, (double Depth, double Low, double High, double LowHalf, double HighHalf) a,
        (double Depth, double Low, double High, double LowHalf, double HighHalf) b)
    {
        Point2 mouth = new(bore.Mouth.X, bore.Mouth.Y), inward = new(bore.Inward.X, bore.Inward.Y), left = inward.Left;
        Point2 Place(double depth, double across) => mouth + (inward * depth) + (left * across);
        Point2[] ring = [Place(a.Depth, a.Low), Place(b.Depth, b.Low), Place(b.Depth, b.High), Place(a.Depth, a.High)];
        Point3 Up(int corner, double half) => new(ring[corner].X, ring[corner].Y, half);
        var half = HeightPlane.Through(Up(0, a.LowHalf), Up(1, b.LowHalf), Up(2, b.HighHalf));
        double z = bore.Mouth.Z;
        return new(ring, new(z - half.Z, -half.X, -half.Y), new(z + half.Z, half.X, half.Y), BlockAction.Remove, Paint.Wall);
    }
}
