using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>Tops, bottoms and walls as polygons that share their corners.</summary>
internal sealed class SolidMesher(PlanFaces faces, FaceColumns columns, NodeLevels levels, PolygonStore store)
{
    public void Mesh()
    {
        var creases = new LevelCreases(levels.Count);
        var seams = new SurfaceSeams(faces, columns, levels, creases);
        var panels = new WallPanels(faces, levels, creases, seams.Strips.Span);
        var regions = new RegionMesher(faces, columns, levels, creases, seams, store);
        while (!regions.Mesh())
        {
            store.Clear();
        }

        new PanelMesher(faces, levels, creases, panels, store).Mesh();
        regions.GiveBack();
        panels.GiveBack();
        seams.GiveBack();
        creases.GiveBack();
    }
}
