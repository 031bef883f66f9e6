using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Levels;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Solids.Kernel.Meshing.Reliefs;
using PlatformForge.Solids.Kernel.Noding;
using PlatformForge.Solids.Reliefs;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>Tops, bottoms and walls as polygons that share their corners: surfaces first, then walls.</summary>
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
    private readonly List<(int From, int End)> enclosing = [];

    /// <param name="faces">The plan.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="levels">Its levels.</param>
    /// <param name="store">Takes the polygons.</param>
    /// <param name="reliefs">What takes the place of named wall faces; null for nothing.</param>
    public SolidMesher(PlanFaces faces, FaceColumns columns, NodeLevels levels, PolygonStore store, ReliefMesher? reliefs)
    {
        (this.faces, this.levels, this.store, this.reliefs) = (faces, levels, store, reliefs);
        creases = new(levels.Count);
        seams = new(faces, columns, levels, creases);
        panels = new(faces, levels, creases, seams.Strips.Span, reliefs is null ? null : reliefs.AreOne);
        regions = new(faces, columns, levels, creases, seams);
    }

    /// <summary>Meshes everything.</summary>
    /// <param name="places">Where the levels are; reliefs' vertices are added.</param>
    public void Mesh(GrowingArray<Point3> places)
    {
        for (var failed = MeshPlain(); failed.Count > 0; failed = MeshPlain())
        {
            regions.Keep(failed);
        }

        reliefs?.Mesh(panels, store, places);
        GiveBack();
    }

    /// <summary>The panels that reliefs would be told, without meshing anything.</summary>
    public List<(IWallRelief Relief, WallPanel Panel)> Panels()
    {
        var walls = new PanelMesher(faces, levels, creases, panels, store, reliefs);
        walls.Find();
        walls.GiveBack();
        var found = reliefs!.Panels(panels);
        GiveBack();
        return found;
    }

    private void GiveBack()
    {
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

    /// <summary>Surfaces and walls without reliefs; the surfaces that could not be cut, for which all is to be done again.</summary>
    private List<int> MeshPlain()
    {
        store.Clear();
        var cutter = new RegionCutter(regions, faces.Plan, levels, store);
        regions.Trace();
        cutter.Cut();
        cutter.GiveBack();
        if (cutter.Failed.Count == 0)
        {
            regions.MeshKept(store);
            enclosing.Add((0, store.TriangleCount));
            var walls = new PanelMesher(faces, levels, creases, panels, store, reliefs);
            walls.Mesh();
            walls.GiveBack();
            enclosing.AddRange(walls.Bent);
        }

        return cutter.Failed;
    }
}
