using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>Finds the corner of a mesh that lies where a point does.</summary>
internal sealed class CornerIndex
{
    // Cells are so much wider than the slack that a point mostly looks into its own only.
    private const double CellInSlacks = 8;

    // Corners of a sound mesh are farther apart than the slack; of others that crowd into a cell so many are looked at, and the rest is not found.
    private const int MostInCell = 64;

    private readonly Point3[] corners;
    private readonly double slack, cell;
    private readonly Dictionary<(long, long, long), List<int>> cells = [];

    /// <param name="corners">The corners, mm.</param>
    /// <param name="slack">How far off a corner may be, mm.</param>
    public CornerIndex(Point3[] corners, double slack)
    {
        (this.corners, this.slack, cell) = (corners, slack, slack * CellInSlacks);
        for (int i = 0; i < corners.Length; i++)
        {
            var key = (Cell(corners[i].X), Cell(corners[i].Y), Cell(corners[i].Z));
            if (!cells.TryGetValue(key, out var here))
            {
                cells[key] = here = [];
            }

            if (here.Count < MostInCell)
            {
                here.Add(i);
            }
        }
    }

    /// <summary>The nearest corner within the slack; -1 where there is none.</summary>
    public int At(Point3 point)
    {
        int nearest = -1;
        double least = slack;
        for (long x = Cell(point.X - slack); x <= Cell(point.X + slack); x++)
        {
            for (long y = Cell(point.Y - slack); y <= Cell(point.Y + slack); y++)
            {
                for (long z = Cell(point.Z - slack); z <= Cell(point.Z + slack); z++)
                {
                    foreach (int i in cells.GetValueOrDefault((x, y, z)) ?? [])
                    {
                        double far = (corners[i] - point).Length;
                        (nearest, least) = far <= least ? (i, far) : (nearest, least);
                    }
                }
            }
        }

        return nearest;
    }

    private long Cell(double at) => (long)Math.Floor(at / cell);
}
