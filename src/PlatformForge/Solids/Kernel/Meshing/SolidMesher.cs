using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>Tops, bottoms and walls as polygons that share their corners: surfaces first, then walls, in halves where two threads share the work.</summary>
internal sealed class SolidMesher
{
    private readonly PlanFaces faces;
    private readonly NodeLevels levels;
    private readonly PolygonStore store;
    private readonly LevelCreases creases;
    private readonly SurfaceSeams seams;
    private readonly WallPanels panels;
    private readonly RegionMesher regions;
    private readonly ReliefMesher? reliefs;
    private readonly SideBySide sides;
    private readonly List<(int From, int End)> enclosing = [];

    /// <param name="faces">The plan.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="levels">Its levels.</param>
    /// <param name="store">Takes the polygons.</param>
    /// <param name="sides">Shares the work out.</param>
    /// <param name="reliefs">What takes the place of named wall faces; null for nothing.</param>
    /// <param name="beside">Work that only looks at the plan, its columns and levels, to be done while strips of wall are put together.</param>
    public SolidMesher(PlanFaces faces, FaceColumns columns, NodeLevels levels, PolygonStore store, SideBySide sides, ReliefMesher? reliefs, Action beside)
    {
        (this.faces, this.levels, this.store, this.sides, this.reliefs) = (faces, levels, store, sides, reliefs);
        creases = new(levels.Count);
        seams = new(faces, columns, levels, creases, sides);
        WallPanels? parted = null;
        sides.Run([() => parted = new(faces, levels, creases, seams.Strips.Span, reliefs is null ? null : reliefs.AreOne), beside]);
        panels = parted!;
        regions = new(faces, columns, levels, creases, seams);
    }

    /// <summary>Meshes everything.</summary>
    /// <param name="places">Where the levels are; reliefs' vertices are added.</param>
    public void Mesh(GrowingArray<Point3> places)
    {
        bool isShared = reliefs is null && sides.Parts(levels.Corner.Length, 2) > 1;
        for (var failed = isShared ? MeshShared() : MeshAlone(); failed.Count > 0; failed = isShared ? MeshShared() : MeshAlone())
        {
            regions.Keep(failed);
        }

        reliefs?.Mesh(panels, store, places);
        regions.GiveBack();
        panels.GiveBack();
        seams.GiveBack();
        creases.GiveBack();
    }

    /// <summary>What the plain polygons enclose in mm³ with what reliefs add, and the area in mm² over which walls or levels may have moved.</summary>
    public (double Volume, double Moved) Enclosed()
    {
        var enclosed = new PolygonVolume(store, faces.Plan, levels);
        foreach (var (from, end) in enclosing)
        {
            enclosed.Add(from, end);
        }

        double volume = enclosed.Volume;
        if (reliefs is not null)
        {
            var plain = new PolygonStore(64);
            reliefs.MeshPlain(plain);
            var flat = new PolygonVolume(plain, faces.Plan, levels);
            flat.AddAll();
            volume += flat.Volume;
            plain.GiveBack();
            volume += reliefs.Volume;
        }

        return (volume, enclosed.Area);
    }

    /// <summary>Everything on one thread; the surfaces that could not be cut, for which all is to be done again.</summary>
    private List<int> MeshAlone()
    {
        store.Clear();
        var cutter = new RegionCutter(regions, faces.Plan, levels, store);
        regions.Trace();
        cutter.Cut(0, regions.Loops.Length);
        cutter.GiveBack();
        if (cutter.Failed.Count == 0)
        {
            regions.MeshKept(store);
            enclosing.Add((0, store.TriangleCount));
            var walls = new PanelMesher(faces, levels, creases, panels, store, reliefs);
            walls.Mesh(0, panels.Strips.Length);
            walls.GiveBack();
            enclosing.AddRange(walls.Bent);
        }

        return cutter.Failed;
    }

    /// <summary>The same on two threads: while one traces the surfaces' borders, the other meshes half of the walls; then both cut.</summary>
    private List<int> MeshShared()
    {
        store.Clear();
        int strips = panels.Strips.Length;
        PolygonStore second = new(levels.Corner.Length / 8), low = new(3 * strips), high = new(3 * strips);
        RegionCutter[] cutters = [new(regions, faces.Plan, levels, store), new(regions, faces.Plan, levels, second)];
        PanelMesher[] walls = [new(faces, levels, creases, panels, low, null), new(faces, levels, creases, panels, high, null)];
        sides.Run([regions.Trace, () => walls[0].Mesh(0, strips / 2)]);
        int half = regions.Middle();
        sides.Run([() => cutters[0].Cut(0, half), () => cutters[1].Cut(half, regions.Loops.Length), () => walls[1].Mesh(strips / 2, strips)]);
        List<int> failed = [.. cutters[0].Failed, .. cutters[1].Failed];
        if (failed.Count == 0)
        {
            regions.MeshKept(second);
            store.Append(second);
            enclosing.Add((0, store.TriangleCount));
            AppendWalls(walls[0], low);
            AppendWalls(walls[1], high);
        }

        Array.ForEach(cutters, c => c.GiveBack());
        Array.ForEach(walls, w => w.GiveBack());
        second.GiveBack();
        low.GiveBack();
        high.GiveBack();
        return failed;
    }

    private void AppendWalls(PanelMesher walls, PolygonStore own)
    {
        int first = store.TriangleCount;
        store.Append(own);
        foreach (var (from, end) in walls.Bent)
        {
            enclosing.Add((first + from, first + end));
        }
    }
}
