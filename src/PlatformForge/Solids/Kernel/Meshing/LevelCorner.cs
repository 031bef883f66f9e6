namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>A polygon's corner at a level.</summary>
/// <param name="Onward">The level to which the side that starts here leads.</param>
/// <param name="Back">The level from which the side that ends here comes.</param>
/// <param name="Number">Number of the corner in the store.</param>
internal readonly record struct LevelCorner(int Onward, int Back, int Number);
