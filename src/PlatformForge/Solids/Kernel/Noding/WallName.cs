namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>A named wall face: its number, nought for none, and the paint of the material that shows it.</summary>
internal readonly record struct WallName(int Face, byte Paint);
