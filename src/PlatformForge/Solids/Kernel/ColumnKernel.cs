using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Levels;
using PlatformForge.Solids.Kernel.Meshing;
using PlatformForge.Solids.Kernel.Meshing.Cutting;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Solids.Kernel.Meshing.Reliefs;
using PlatformForge.Solids.Kernel.Noding;
using PlatformForge.Solids.Reliefs;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel;

/// <summary>
/// From blocks to a solid: node all outlines into one plan, find the column over each of its faces, then mesh tops, bottoms and
/// walls between shared levels.
/// </summary>
internal sealed class ColumnKernel(BlockTable blocks, IReadOnlyDictionary<string, IWallRelief>? reliefs = null)
{
    private readonly GrowingArray<(double U, double V)> extraPoints = new(4);

    public Solid Raise()
    {
        var (faces, columns, levels) = Levelled();
        var solid = Mesh(faces, columns, levels);
        columns.GiveBack();
        levels.GiveBack();
        return solid;
    }

    /// <summary>The panels of walls that reliefs would take the place of.</summary>
    public IReadOnlyList<(IWallRelief Relief, WallPanel Panel)> Panels()
    {
        var (faces, columns, levels) = Levelled();
        var relief = new ReliefMesher(blocks, faces.Plan, levels, reliefs!);
        var store = new PolygonStore(64);
        var panels = new SolidMesher(faces, columns, levels, store, relief).Panels();
        store.GiveBack();
        columns.GiveBack();
        levels.GiveBack();
        return panels;
    }

    // Plan, columns and levels in which no surfaces cross.
    private (PlanFaces Faces, FaceColumns Columns, NodeLevels Levels) Levelled()
    {
        for (int round = 0; round < KernelLimits.GreatestRounds; round++)
        {
            var faces = Subdivide();
            var columns = new FaceColumns(blocks, faces);
            var levels = new NodeLevels(blocks, faces, columns);
            var crossings = new EdgeOrder(blocks, faces, columns, levels).Restore();
            if (crossings.IsEmpty)
            {
                return (faces, columns, levels);
            }

            foreach (var point in crossings)
            {
                extraPoints.Add(point);
            }
        }

        throw new BrokenInvariantException($"Solids: surfaces still cross along an edge after {KernelLimits.GreatestRounds} rounds (law 2: "
            + "the order of surfaces is constant).");
    }

    /// <summary>The volume alone, mm³, without levels, mesh or checks of it.</summary>
    public double Volume()
    {
        var faces = Subdivide();
        var columns = new FaceColumns(blocks, faces);
        double volume = ColumnVolume.Of(blocks, faces, columns);
        columns.GiveBack();
        return volume;
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
        var store = new PolygonStore(4 * faces.EdgeCount);
        var relief = reliefs is { Count: > 0 } && blocks.FaceNames.Count > 0 ? new ReliefMesher(blocks, faces.Plan, levels, reliefs) : null;
        var places = new GrowingArray<Point3>(levels.Count);
        Place(places.Extend(levels.Count), faces.Plan, levels);
        var mesher = new SolidMesher(faces, columns, levels, store, relief);
        mesher.Mesh(places);
        double columnVolume = ColumnVolume.Of(blocks, faces, columns) + (relief?.Volume ?? 0);
        var (enclosed, over) = mesher.Enclosed();
        var mesh = ClosedFlaps.Without(ManifoldStitcher.Stitch(store, places), store, levels.Meeting, places.Count);
        double volume = mesh.Volume();
        double taken = Tolerances.GridStep * (relief?.Area ?? 0); // nodes of a taken panel's border lie off its plane by half a step
        store.GiveBack();
        places.GiveBack();
        if (Math.Abs(volume - enclosed) > (KernelLimits.VolumeAgreement * Math.Abs(enclosed)) + taken)
        {
            throw new BrokenInvariantException($"Solids: the mesh encloses {volume:R} mm³ and its polygons {enclosed:R} mm³ (law 3).");
        }

        if (Math.Abs(enclosed - columnVolume) > (KernelLimits.Straightened * columnVolume) + (KernelLimits.SameLevel * over))
        {
            throw new BrokenInvariantException($"Solids: the polygons enclose {enclosed:R} mm³ and the columns {columnVolume:R} mm³ (law 3).");
        }

        return new(mesh, columnVolume) { MeshVolume = enclosed, ReliefVolume = relief?.Volume ?? 0 };
    }

    /// <summary>Places of all levels.</summary>
    private void Place(Span<Point3> places, NodedPlan plan, NodeLevels levels)
    {
        var (p, last) = (default(Point2), -1);
        for (int level = 0; level < places.Length; level++)
        {
            int node = levels.NodeOf(level);
            (p, last) = node == last ? (p, last) : (blocks.Frame.ToPlan(plan.U[node], plan.V[node]), node);
            places[level] = new(p.X, p.Y, levels.Height(level));
        }
    }
}
