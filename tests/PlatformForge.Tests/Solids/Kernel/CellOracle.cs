using PlatformForge.Geometry;
using PlatformForge.Solids;

namespace PlatformForge.Tests.Solids.Kernel;

/// <summary>
/// The volume of blocks by a way that shares nothing with the kernel: the plane-geometry library nodes all outlines together with
/// every line along which any two planes cross; in each cell the blocks are looked up by a point in the cell, and the column's
/// height at the cell's centroid, where an affine height takes its mean, is found by sampling between sorted planes.
/// </summary>
internal static class CellOracle
{
    private const double Reach = 100;

    public static double Volume(IReadOnlyList<ColumnBlock> blocks)
    {
        var lines = blocks.Select(b => (Point2[])[.. b.Outline, b.Outline[0]]).ToList();
        var planes = blocks.SelectMany(b => new[] { b.Lower, b.Upper }).Distinct().ToArray();
        for (int i = 0; i < planes.Length; i++)
        {
            for (int j = i + 1; j < planes.Length; j++)
            {
                lines.AddRange(Crossing(planes[i], planes[j]));
            }
        }

        return PlanCells.Of(lines).Sum(cell => cell.Area * Height(blocks, cell.Inside, cell.Centroid));
    }

    private static IEnumerable<Point2[]> Crossing(HeightPlane a, HeightPlane b)
    {
        Point2 slope = new(a.X - b.X, a.Y - b.Y);
        double square = Point2.Dot(slope, slope);
        if (square < 1e-12)
        {
            yield break;
        }

        var foot = slope * (-(a.Z - b.Z) / square);
        var ahead = slope.Left * (Reach / Math.Sqrt(square));
        if (foot.Length < Reach)
        {
            yield return [foot - ahead, foot + ahead];
        }
    }

    private static double Height(IReadOnlyList<ColumnBlock> blocks, Point2 inside, Point2 centroid)
    {
        var covering = blocks.Where(b => Covers(b.Outline, inside)).ToArray();
        var planes = covering.SelectMany(b => new[] { b.Lower, b.Upper }).OrderBy(p => p.At(inside)).ToArray();
        double sum = 0;
        for (int i = 0; i + 1 < planes.Length; i++)
        {
            double z = 0.5 * (planes[i].At(inside) + planes[i + 1].At(inside));
            bool solid = covering.Aggregate(false, (was, b) => z > b.Lower.At(inside) && z < b.Upper.At(inside) ? b.Action == BlockAction.Add : was);
            sum += solid ? planes[i + 1].At(centroid) - planes[i].At(centroid) : 0;
        }

        return sum;
    }

    private static bool Covers(Point2[] ring, Point2 p)
    {
        bool inside = false;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            Point2 a = ring[j], b = ring[i];
            if (a.Y > p.Y != b.Y > p.Y && p.X < a.X + ((p.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X)))
            {
                inside = !inside;
            }
        }

        return inside;
    }
}
