namespace PlatformForge.Exports.Pictures;

/// <summary>A picture of sRGB pixels, three bytes each, row by row from the top left.</summary>
public sealed record PixelImage(int Width, int Height, byte[] Pixels);
