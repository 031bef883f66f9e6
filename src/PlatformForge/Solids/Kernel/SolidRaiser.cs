using PlatformForge.Solids.Kernel.Noding;
using PlatformForge.Solids.Reliefs;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel;

/// <summary>Front door of the kernel: raises a watertight solid from blocks.</summary>
public static class SolidRaiser
{
    /// <summary>
    /// Applies the blocks in order and meshes what stands at the end. Throws <see cref="BrokenInvariantException"/> if
    /// the mesh is not closed, oriented, free of degenerate triangles and of the columns' volume. Nothing standing gives an
    /// empty mesh.
    /// </summary>
    /// <param name="blocks">Blocks in order.</param>
    /// <param name="reliefs">What takes the place of named wall faces, by name; their volume is part of the solid's.</param>
    public static Solid Raise(IReadOnlyList<ColumnBlock> blocks, IReadOnlyDictionary<string, IWallRelief>? reliefs = null)
    {
        ArgumentNullException.ThrowIfNull(blocks);
        var table = new BlockTable(blocks);
        return table.Count == 0 ? new(new([], [], []), 0) : new ColumnKernel(table, reliefs).Raise();
    }

    /// <summary>
    /// The panels of named wall faces as they would be told to reliefs, each with its own: nothing is meshed, and nothing laid. Walls behind others are not
    /// among them.
    /// </summary>
    /// <param name="blocks">Blocks in order.</param>
    /// <param name="reliefs">Reliefs by the names of faces; faces of one are one panel round their corners.</param>
    public static IReadOnlyList<(IWallRelief Relief, WallPanel Panel)> Panels(
        IReadOnlyList<ColumnBlock> blocks, IReadOnlyDictionary<string, IWallRelief> reliefs)
    {
        ArgumentNullException.ThrowIfNull(blocks);
        var table = new BlockTable(blocks);
        return table.Count == 0 || table.FaceNames.Count == 0 ? [] : new ColumnKernel(table, reliefs).Panels();
    }

    /// <summary>
    /// The volume of what would stand, mm³, as in <see cref="Solid.ColumnVolume"/>, at half the cost: nothing is meshed.
    /// </summary>
    public static double Volume(IReadOnlyList<ColumnBlock> blocks)
    {
        ArgumentNullException.ThrowIfNull(blocks);
        var table = new BlockTable(blocks);
        return table.Count == 0 ? 0 : new ColumnKernel(table).Volume();
    }
}
