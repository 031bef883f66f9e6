namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>A border of a surface. Next is the first of the surface's other loops, Last if it has none; Inner in those, which go on with Other.</summary>
internal readonly record struct RegionLoop(int From, int Count, int Surface, bool IsBottom, byte Shown, int Next, int Other = -1)
{
    public const int Last = -1, Inner = -2;
}
