using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>Tops, bottoms and walls as polygons that share their corners.</summary>
internal sealed class SolidMesher(PlanFaces faces, FaceColumns columns, NodeLevels levels, PolygonStore store)
{
    /// <param name="places">Where the levels are; reliefs' vertices are added.</param>
    /// <param name="reliefs">What takes the place of named wall faces; null for nothing.</param>
    /// <returns>What the plain polygons enclose in mm³ with what reliefs add, and the area in mm² over which walls or levels may have moved.</returns>
    public (double Volume, double Moved) Mesh(List<Point3> places, ReliefMesher? reliefs)
    {
        var creases = new LevelCreases(levels.Count);
        var seams = new SurfaceSeams(faces, columns, levels, creases);
        var panels = new WallPanels(faces, levels, creases, seams.Strips.Span, reliefs is null ? null : reliefs.AreOne);
        var regions = new RegionMesher(faces, columns, levels, creases, seams, store);
        while (!regions.Mesh())
        {
            store.Clear();
        }

        var enclosed = new PolygonVolume(store, faces.Plan, levels);
        enclosed.Add(0);
        new PanelMesher(faces, levels, creases, panels, store, enclosed, reliefs).Mesh();
        double volume = enclosed.Volume;
        if (reliefs is not null)
        {
            var plain = new PolygonStore(64);
            reliefs.MeshPlain(plain);
            var flat = new PolygonVolume(plain, faces.Plan, levels);
            flat.Add(0);
            volume += flat.Volume;
            plain.GiveBack();
            reliefs.Mesh(panels, store, places);
            volume += reliefs.Volume;
        }

        regions.GiveBack();
        panels.GiveBack();
        seams.GiveBack();
        creases.GiveBack();
        return (volume, enclosed.Area);
    }
}
