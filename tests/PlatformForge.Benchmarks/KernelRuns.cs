using System.Diagnostics;
using PlatformForge.Exports.Stl;
using PlatformForge.Geometry;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Levels;
using PlatformForge.Solids.Kernel.Meshing;
using PlatformForge.Solids.Kernel.Meshing.Cutting;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Benchmarks;

/// <summary>Where a solid's time goes: the steps of the kernel one after another, each with the tenth percentile of its time, ms.</summary>
internal static class KernelRuns
{
    public static void Report(int repeats)
    {
        foreach (bool brick in new[] { false, true })
        {
            var blocks = ReferenceSection.Blocks(brick);
            var phases = new Phases();
            for (int i = 0; i < repeats + 50; i++)
            {
                phases.Keep = i >= 50;
                Once(blocks, phases);
            }

            Console.WriteLine(brick ? "B2" : "B1");
            phases.Report();
            Whole(blocks, repeats);
            Console.WriteLine();
        }
    }

    /// <summary>All steps as one call, which is what the goals are about, and what it leaves to the collector.</summary>
    private static void Whole(IReadOnlyList<ColumnBlock> blocks, int repeats)
    {
        var timing = Timing.Of(() => SolidRaiser.Raise(blocks), repeats);
        long before = GC.GetTotalAllocatedBytes();
        int collections = GC.CollectionCount(0);
        for (int i = 0; i < repeats; i++)
        {
            SolidRaiser.Raise(blocks);
        }

        double kilobytes = (GC.GetTotalAllocatedBytes() - before) / 1024.0 / repeats;
        Console.WriteLine($"one call: median {timing.Median:F3}  least {timing.Least:F3}  least of processor {timing.Processor:F3} ms; " +
            $"{kilobytes:F0} kB new, {GC.CollectionCount(0) - collections} collections in {repeats}");
    }

    private static void Once(IReadOnlyList<ColumnBlock> blocks, Phases phases)
    {
        phases.Begin();
        var table = new BlockTable(blocks);
        phases.Lap("table");
        var noder = new PlanNoder(table.U.Length);
        for (int block = 0; block < table.Count; block++)
        {
            noder.AddRing(table, block);
        }

        phases.Lap("rings");
        SurfaceCrossings.Enter(table, noder);
        phases.Lap("crossings");
        int segments = noder.SegmentCount;
        var plan = noder.Node();
        phases.Lap("node");
        var diagonals = MonotoneSweep.Diagonals(plan)!;
        phases.Lap("sweep");
        var faces = new PlanFaces(plan, diagonals);
        phases.Lap("faces");
        var columns = new FaceColumns(table, faces);
        phases.Lap("columns");
        var levels = new NodeLevels(table, faces, columns);
        phases.Lap("levels");
        new EdgeOrder(table, faces, columns, levels).Restore();
        phases.Lap("order");
        var store = new PolygonStore(4 * faces.EdgeCount);
        var places = new GrowingArray<Point3>(levels.Count);
        var span = places.Extend(levels.Count);
        for (int level = 0; level < span.Length; level++)
        {
            int node = levels.NodeOf(level);
            var p = table.Frame.ToPlan(plan.U[node], plan.V[node]);
            span[level] = new(p.X, p.Y, levels.Height(level));
        }

        phases.Lap("places");
        var creases = new LevelCreases(levels.Count);
        var seams = new SurfaceSeams(faces, columns, levels, creases);
        phases.Lap("seams");
        var panels = new WallPanels(faces, levels, creases, seams.Strips.Span);
        phases.Lap("panels");
        var regions = new RegionMesher(faces, columns, levels, creases, seams);
        phases.Lap("folded");
        regions.Trace();
        phases.Lap("trace");
        var cutter = new RegionCutter(regions, plan, levels, store);
        cutter.Cut();
        cutter.GiveBack();
        phases.Lap("cut");
        var enclosed = new PolygonVolume(store, plan, levels);
        enclosed.AddAll();
        phases.Lap("polygon volume");
        var walls = new PanelMesher(faces, levels, creases, panels, store, null);
        walls.Mesh();
        walls.GiveBack();
        phases.Lap("walls");
        int boundaries = columns.Total, levelCount = levels.Count;
        int strips = seams.Strips.Count, parted = panels.Strips.Length, polygonCorners = store.Count;
        regions.GiveBack();
        panels.GiveBack();
        seams.GiveBack();
        creases.GiveBack();
        var mesh = ClosedFlaps.Without(ManifoldStitcher.Stitch(store, places), store, levels.Meeting, places.Count);
        phases.Lap("stitch");
        mesh.Volume();
        phases.Lap("mesh volume");
        ColumnVolume.Of(table, faces, columns);
        phases.Lap("column volume");
        store.GiveBack();
        places.GiveBack();
        columns.GiveBack();
        levels.GiveBack();
        StlWriter.ToBytes(mesh, "benchmark", threads: 1);
        phases.Lap("bytes");
        phases.Note = $"{table.Count} blocks, {table.U.Length} corners, {table.Planes.Length} planes, {segments} segments, {plan.NodeCount} nodes, " +
            $"{plan.EdgeCount} edges, {diagonals.Length} diagonals, {faces.FaceCount} faces, {boundaries} boundaries, {levels.Corner.Length} corners of "
                + "levels, " +
            $"{levelCount} levels, {strips} strips, {parted} parted, {polygonCorners} polygon corners, {mesh.Vertices.Length} vertices, " +
            $"{mesh.TriangleCount} triangles";
    }

    private sealed class Phases
    {
        private readonly List<string> names = [];
        private readonly Dictionary<string, List<double>> times = [];
        private long last;

        public bool Keep { get; set; }

        public string Note { get; set; } = string.Empty;

        public void Begin() => last = Stopwatch.GetTimestamp();

        public void Lap(string name)
        {
            double ms = Stopwatch.GetElapsedTime(last).TotalMilliseconds;
            if (Keep)
            {
                if (!times.TryGetValue(name, out var list))
                {
                    times.Add(name, list = []);
                    names.Add(name);
                }

                list.Add(ms);
            }

            last = Stopwatch.GetTimestamp();
        }

        public void Report()
        {
            double sum = 0;
            foreach (string name in names)
            {
                times[name].Sort();
                double tenth = times[name][times[name].Count / 10];
                sum += tenth;
                Console.WriteLine($"{name,-16} {tenth,8:F3}  least {times[name][0],8:F3}");
            }

            Console.WriteLine($"{"sum",-16} {sum,8:F3}");
            Console.WriteLine(Note);
        }
    }
}
