using PlatformForge.Geometry;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>
/// The numeric frame of one solid: grid steps (u, v) from a corner that lies on the grid. Where the solid is longer in y than in
/// x the frame is turned by a quarter, so that the plane sweep runs along the solid and meets few edges at a time. Grid points
/// have the same place whatever the origin, so neighbouring solids share them.
/// </summary>
internal readonly struct GridFrame
{
    /// <summary>Steps that a solid may extend: below 2^30, so that areas of plan triangles stay exact in 64 bits: 32 m.</summary>
    private const double GreatestExtent = 1 << 30;

    private readonly bool turned;
    private readonly double originX, originY;

    public GridFrame(Point2 low, Point2 high)
    {
        const double step = Tolerances.GridStep;
        turned = high.Y - low.Y > high.X - low.X;
        originX = Math.Floor(low.X / step);
        originY = Math.Floor(low.Y / step);
        double extent = Math.Max(high.X - low.X, high.Y - low.Y) / step;
        if (!(extent < GreatestExtent) || !double.IsFinite(originX) || !double.IsFinite(originY))
        {
            throw new BrokenInvariantException("Solids: the blocks' outlines must be finite and extend over less than 32 m.");
        }
    }

    /// <summary>Grid coordinates, not rounded. In the turned frame u = y, v = −x, which keeps left on the left.</summary>
    public (double U, double V) ToGrid(Point2 p)
    {
        double x = (p.X / Tolerances.GridStep) - originX, y = (p.Y / Tolerances.GridStep) - originY;
        return turned ? (y, -x) : (x, y);
    }

    /// <summary>The plan point of a grid node; exact as long as a coordinate has fewer than 53 bits.</summary>
    public Point2 ToPlan(int u, int v)
    {
        double x = turned ? -v : u, y = turned ? u : v;
        return new((originX + x) * Tolerances.GridStep, (originY + y) * Tolerances.GridStep);
    }

    /// <summary>A height plane over the grid coordinates.</summary>
    public GridPlane ToGrid(HeightPlane plane)
    {
        const double step = Tolerances.GridStep;
        double z = plane.At(new(originX * step, originY * step));
        return turned ? new(z, plane.Y * step, -plane.X * step) : new(z, plane.X * step, plane.Y * step);
    }
}
