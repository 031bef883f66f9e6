using PlatformForge.Geometry;

namespace PlatformForge.Solids.Bodies.Layers;

/// <summary>Short ways to state blocks that lie a distance under or over a plane.</summary>
internal static class Layer
{
    /// <summary>Height in mm that is above everything within a removed block's reach.</summary>
    public const double Above = 5;

    public static HeightPlane Baseboard { get; } = new(0);

    /// <summary>The plane a distance in mm higher.</summary>
    public static HeightPlane Raised(this HeightPlane plane, double by) => plane with { Z = plane.Z + by };

    public static ColumnBlock Added(Point2[] ring, HeightPlane lower, HeightPlane upper, Paint paint) => new(ring, lower, upper, BlockAction.Add, paint);

    public static ColumnBlock Removed(Point2[] ring, HeightPlane lower, HeightPlane upper, Paint paint) => new(ring, lower, upper, BlockAction.Remove, paint);
}
