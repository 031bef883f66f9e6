using PlatformForge.Geometry;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel;

/// <summary>
/// From blocks to a solid: node all outlines into one plan, find the column over each of its faces, then mesh tops, bottoms and
/// walls between shared levels.
/// </summary>
internal sealed class ColumnKernel(BlockTable blocks)
{
    private readonly GrowingArray<(double U, double V)> extraPoints = new(4);

    public Solid Raise()
    {
        for (int round = 0; round < KernelLimits.GreatestRounds; round++)
        {
            var faces = Subdivide();
            var columns = new FaceColumns(blocks, faces);
            var levels = new NodeLevels(blocks, faces, columns);
            var crossings = new EdgeOrder(blocks, faces, columns, levels).Restore();
            if (crossings.IsEmpty || round == KernelLimits.GreatestRounds - 1)
            {
                return Mesh(faces, columns, levels);
            }

            foreach (var point in crossings)
            {
                extraPoints.Add(point);
            }
        }

        throw new BrokenInvariantException("Solids: unreachable.");
    }

    private PlanFaces Subdivide()
    {
        var noder = new PlanNoder(blocks.U.Length);
        for (int block = 0; block < blocks.Count; block++)
        {
            noder.AddRing(blocks, block);
        }

        SurfaceCrossings.Enter(blocks, noder);
        foreach (var (u, v) in extraPoints.Span)
        {
            noder.AddPoint(u, v);
        }

        for (int round = 0; round < KernelLimits.GreatestRounds; round++)
        {
            var plan = noder.Node();
            if (MonotoneSweep.Diagonals(plan) is { } diagonals)
            {
                return new(plan, diagonals);
            }

            // Rounding brought a node onto an edge or made two edges cross: the rounded plan is noded once more.
            noder = new(plan.EdgeCount);
            for (int edge = 0; edge < plan.EdgeCount; edge++)
            {
                noder.AddEdge(plan, edge);
            }
        }

        throw new BrokenInvariantException($"Solids: the plan is still not planar after {KernelLimits.GreatestRounds} rounds of snapping.");
    }

    private Solid Mesh(PlanFaces faces, FaceColumns columns, NodeLevels levels)
    {
        var triangles = new GrowingArray<LevelTriangle>(8 * faces.EdgeCount);
        double columnVolume = new SurfaceMesher(faces, columns, levels, triangles).Mesh() * Tolerances.GridStep * Tolerances.GridStep;
        new WallMesher(faces, columns, levels, triangles).Mesh();
        var nodeOf = NodeOfLevel(faces, levels);
        var mesh = ManifoldStitcher.Stitch(triangles.Span.ToArray(), levels.Count, Place);
        double volume = mesh.Volume();
        if (Math.Abs(volume - columnVolume) > KernelLimits.VolumeAgreement * Math.Abs(columnVolume))
        {
            throw new BrokenInvariantException($"Solids: the mesh encloses {volume:R} mm³ and its columns {columnVolume:R} mm³ (law 3).");
        }

        return new(mesh, columnVolume);

        Point3 Place(int level)
        {
            var p = blocks.Frame.ToPlan(faces.Plan.U[nodeOf[level]], faces.Plan.V[nodeOf[level]]);
            return new(p.X, p.Y, levels.Height(level));
        }
    }

    private static int[] NodeOfLevel(PlanFaces faces, NodeLevels levels)
    {
        var nodeOf = new int[levels.Count];
        for (int node = 0; node < faces.Plan.NodeCount; node++)
        {
            for (int i = faces.AroundStart[node]; i < faces.AroundStart[node + 1]; i++)
            {
                foreach (int level in levels.Of(faces.Around[i]))
                {
                    nodeOf[level] = node;
                }
            }
        }

        return nodeOf;
    }
}
