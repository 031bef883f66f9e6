namespace PlatformForge.Exports.Pictures;

/// <summary>A picture of sRGB pixels, three bytes each, row by row from the top left; behind the last row nothing counts.</summary>
public sealed record PixelImage(int Width, int Height, byte[] Pixels)
{
    /// <summary>The picture half as wide and half as high, each pixel the mean of four; a last odd row or column falls away.</summary>
    public PixelImage Halved()
    {
        int across = Width / 2, down = Height / 2, row = 3 * Width;
        var half = new byte[3 * across * down];
        for (int y = 0, to = 0; y < down; y++)
        {
            for (int x = 0; x < 3 * across; x++, to++)
            {
                int at = (2 * y * row) + (x / 3 * 6) + (x % 3);
                half[to] = (byte)((Pixels[at] + Pixels[at + 3] + Pixels[at + row] + Pixels[at + row + 3] + 2) / 4);
            }
        }

        return new(across, down, half);
    }
}
