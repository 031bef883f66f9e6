using FsCheck.Xunit;
using PlatformForge.Geometry;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
using PlatformForge.Solids.Reliefs;
using PlatformForge.Tests.Meshes;
using PlatformForge.Units;

namespace PlatformForge.Tests.Solids.Kernel;

/// <summary>Pieces of wall so short that the grid's rounding alone gives them a direction, as where something crosses a wall right beside one of its
/// stations.</summary>
public class ShortPieceTests
{
    private const string Front = "front of face 2";

    /// <summary>Two facets that turn towards whoever stands before them, or away, with a piece of a few grid steps between: what stands out runs over all
    /// three. Its volume is that of two trapezia mitred at the turn.</summary>
    [Property(MaxTest = 200)]
    public void A_course_runs_over_a_piece_of_a_few_grid_steps_whatever_its_direction(int seed)
    {
        var random = new Random(seed);
        double turn = (random.NextDouble() - 0.5) * 0.02, depth = 0.05 + (random.NextDouble() * 1.2);
        Point2 corner = new(30, 0), beside = corner + (new Point2(1 + random.Next(8), random.Next(-5, 6)) * Tolerances.GridStep);
        ColumnBlock wall = new([new(0, 0), corner, beside, new(60, 30 * Math.Tan(turn)), new(60, 10), new(0, 10)], new(0), new(12), BlockAction.Add, Paint.Wall)
        {
            WallFaces = [Front, Front, Front, null, null, null],
        };
        double plain = SolidRaiser.Raise([wall]).ColumnVolume;
        var solid = SolidRaiser.Raise([wall], new Dictionary<string, IWallRelief> { [Front] = new Courses(depth) });
        var report = MeshCheck.Inspect(solid.Mesh);
        Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, report.ToString());
        double expected = 3 * 2 * depth * (40 + (depth * Math.Tan(turn / 2)));
        Assert.Equal(expected, report.Volume - plain, 12 * 2 * depth * 10 * Tolerances.GridStep);
        Assert.Equal(solid.ColumnVolume, report.Volume, 1e-3);
    }

    private sealed class Courses(double depth) : IWallRelief
    {
        public IEnumerable<ReliefField> Fields(WallPanel panel) => Enumerable.Range(0, 3).Select(i => new ReliefField(10, 50, 1 + (3 * i), 3 + (3 * i), depth));
    }
}
