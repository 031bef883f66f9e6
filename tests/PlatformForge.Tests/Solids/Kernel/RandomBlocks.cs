using PlatformForge.Geometry;
using PlatformForge.Solids;

namespace PlatformForge.Tests.Solids.Kernel;

/// <summary>
/// Block lists by seed. Some come on a coarse lattice, so that outlines and surfaces touch, coincide and cross at corners; others
/// lie anyhow. Sloping surfaces cross each other and the level ones, and may dip under their own floor.
/// </summary>
public static class RandomBlocks
{
    public static ColumnBlock[] From(int seed)
    {
        var random = new Random(seed);
        bool lattice = random.Next(2) == 0, sloping = random.Next(3) > 0;
        return [.. Enumerable.Range(0, random.Next(1, 9)).Select(_ => Block(random, lattice, sloping))];
    }

    private static ColumnBlock Block(Random random, bool lattice, bool sloping)
    {
        var ring = lattice ? OnLattice(random) : Anyhow(random);
        double low = random.Next(-1, 5), high = low + random.Next(1, 6);
        return new(ring, Plane(random, low, sloping), Plane(random, high, sloping), random.Next(3) > 0 ? BlockAction.Add : BlockAction.Remove,
            (Paint)random.Next(4));
    }

    private static Point2[] OnLattice(Random random)
    {
        double x = random.Next(5), y = random.Next(5), w = random.Next(1, 4), h = random.Next(1, 4);
        return random.Next(4) switch
        {
            0 => [new(x, y), new(x + w, y), new(x, y + h)],
            1 => [new(x, y), new(x + w, y + 1), new(x + w - 1, y + 1 + h), new(x - 1, y + h)],
            2 => [new(x, y), new(x + w + 1, y), new(x + w + 1, y + 1), new(x + 1, y + 1), new(x + 1, y + h + 1), new(x, y + h + 1)],
            _ => [new(x, y), new(x + w, y), new(x + w, y + h), new(x, y + h)],
        };
    }

    private static Point2[] Anyhow(Random random)
    {
        Point2 centre = new(6 * random.NextDouble(), 6 * random.NextDouble());
        double radius = 0.2 + (3 * random.NextDouble()), turn = 6 * random.NextDouble();
        int corners = random.Next(3) == 0 ? random.Next(3, 40) : 4;
        return Shapes.Polygon(corners, centre, radius, turn);
    }

    private static HeightPlane Plane(Random random, double z, bool sloping) => !sloping || random.Next(2) == 0
        ? new(z)
        : random.Next(2) == 0
            ? new(z, random.Next(-2, 3) / 2.0, random.Next(-2, 3) / 2.0)
            : new(z, random.NextDouble() - 0.5, random.NextDouble() - 0.5);
}
