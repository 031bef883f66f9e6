using PlatformForge.Geometry;

namespace PlatformForge.Track;

/// <summary>A side of a track, seen along increasing chainage. The number is the sign of layout offsets on that side.</summary>
public enum Side
{
    Left = 1,
    Right = -1,
}

/// <summary>What lies on a side of a track, told without signs: nobody outside this file multiplies by a side.</summary>
public static class Sides
{
    /// <summary>The layout offset of a reach, mm: left positive.</summary>
    public static double Outward(this Side side, double reach) => (int)side * reach;

    /// <summary>The direction away from a track on this side.</summary>
    /// <param name="side">The side.</param>
    /// <param name="tangent">Direction of increasing chainage.</param>
    public static Point2 Outward(this Side side, Point2 tangent) => tangent.Left * (int)side;

    /// <summary>The reach of a layout offset on this side, mm; negative on the other side.</summary>
    public static double Reach(this Side side, double offset) => (int)side * offset;

    /// <summary>A track's curvature as seen from this side, 1/mm: positive where the side is inside the curve.</summary>
    public static double Bend(this Side side, double curvature) => (int)side * curvature;

    /// <summary>What belongs to this side, of what belongs to the left and to the right.</summary>
    public static T Of<T>(this Side side, T left, T right) => side == Side.Left ? left : right;

    /// <summary>The other side.</summary>
    public static Side Opposite(this Side side) => side == Side.Left ? Side.Right : Side.Left;
}
