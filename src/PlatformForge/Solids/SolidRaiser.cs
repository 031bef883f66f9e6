namespace PlatformForge.Solids;

/// <summary>Front door of the kernel: raises a watertight solid from blocks.</summary>
public static class SolidRaiser
{
    /// <summary>
    /// Applies the blocks in order and meshes what stands at the end. Throws <see cref="Units.BrokenInvariantException"/> if
    /// the mesh is not closed, oriented, free of degenerate triangles and of the columns' volume.
    /// </summary>
    public static Solid Raise(IReadOnlyList<ColumnBlock> blocks) => throw new NotSupportedException("kernel");
}
