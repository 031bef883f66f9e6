using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Sections.Joints;

/// <summary>
/// Pockets for flat strips that lie across a joint, let in from underneath: for platforms too low for dowels, since a pocket needs material on one side only.
/// </summary>
internal static class PlateBlocks
{
    /// <summary>How far in mm a cut reaches out of the material.</summary>
    private const double Overshoot = 0.5;

    /// <summary>The block that takes a pocket out.</summary>
    /// <param name="mouth">Middle of its mouth in the end face.</param>
    /// <param name="inward">Unit direction into the section.</param>
    /// <param name="spec">The joint.</param>
    public static ColumnBlock Cut(Point2 mouth, Point2 inward, JointSpec spec) =>
        Layer.Removed(Ring(mouth, inward, -Overshoot, spec.BoreDepth, spec.PocketWidth / 2), new(-Overshoot), new(spec.PocketHeight), Paint.Wall);

    /// <summary>Volume of one pocket, mm³.</summary>
    public static double Volume(JointSpec spec) => spec.PocketWidth * spec.PocketHeight * spec.BoreDepth;

    /// <summary>Counter-clockwise ring of an oblong that begins and ends at a depth, mm.</summary>
    public static Point2[] Ring(Point2 mouth, Point2 inward, double from, double to, double half)
    {
        var left = inward.Left * half;
        return [mouth + (inward * from) - left, mouth + (inward * to) - left, mouth + (inward * to) + left, mouth + (inward * from) + left];
    }
}
