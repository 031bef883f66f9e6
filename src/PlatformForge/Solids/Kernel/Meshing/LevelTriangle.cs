namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>A triangle between levels, counter-clockwise from outside.</summary>
internal readonly record struct LevelTriangle(int A, int B, int C, byte Paint);
