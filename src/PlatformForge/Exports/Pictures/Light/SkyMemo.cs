namespace PlatformForge.Exports.Pictures.Light;

/// <summary>
/// What a row of blocks of two by two pixels sees of the sky, surface by surface. The sky is looked at on grids that are coarser than a pixel, so that
/// the pixels of a block that show one surface see the same of it: it is asked once for them all.
/// </summary>
/// <param name="width">Pixels of a row.</param>
internal sealed class SkyMemo(int width)
{
    private const int Block = 2; // pixels

    // Nothing that can be seen has this number.
    private const int None = int.MinValue;

    private readonly int[] surfaces = new int[(width / Block) + 1];
    private readonly double[] open = new double[(width / Block) + 1];

    /// <summary>A row begins; every second one forgets what was above it.</summary>
    public void Begin(int row)
    {
        if (row % Block == 0)
        {
            Array.Fill(surfaces, None);
        }
    }

    /// <summary>What is known for a pixel of a surface.</summary>
    public bool Knows(int x, int surface, out double seen)
    {
        seen = open[x / Block];
        return surfaces[x / Block] == surface;
    }

    /// <summary>Keeps what a pixel sees.</summary>
    public void Keep(int x, int surface, double seen) => (surfaces[x / Block], open[x / Block]) = (surface, seen);
}
