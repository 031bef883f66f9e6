using PlatformForge.Geometry;

namespace PlatformForge.Masonry;

/// <summary>Outlines of a downpipe and of what stands out round it: X along the wall from its middle, Y the depth behind what stands out most, mm.</summary>
public static class PipeOutline
{
    /// <summary>How far what stands out round a pipe keeps before the wall, mm, as real clips do by their distance pieces: the wall goes on behind.</summary>
    public const double Clear = 0.2;

    // Sides of the figure that a round pipe is drawn by, one flat to the front and one to either side, so that it is as wide as its diameter over them.
    private const int Sides = 16;

    /// <summary>The pipe, open towards the wall, into which it reaches: from one side round its front to the other.</summary>
    /// <param name="spec">What is asked for.</param>
    public static Point2[] Pipe(DownpipeSpec spec) => Both(Round(spec.Shape, spec.Diameter / 2, spec.Clip));

    /// <summary>What stands out round it.</summary>
    /// <param name="spec">What is asked for.</param>
    /// <param name="ring">Which part.</param>
    public static Point2[] Ring(DownpipeSpec spec, in PipeRing ring)
    {
        double back = spec.Projection - Clear;
        return ring.Part == PipePart.Hopper ? Closed([new(ring.HalfWidth, ring.Back)], back) : Closed(Round(spec.Shape, ring.HalfWidth, ring.Back), back);
    }

    // From the middle of the front to one side, for a pipe whose front lies at a depth.
    private static Point2[] Round(PipeShape shape, double half, double front)
    {
        if (shape == PipeShape.Square)
        {
            return [new(half, front)];
        }

        double step = 2 * Math.PI / Sides, corner = half / Math.Cos(step / 2);
        return [.. Enumerable.Range(0, Sides / 4).Select(i => (i + 0.5) * step)
            .Select(a => new Point2(corner * Math.Sin(a), front + half - (corner * Math.Cos(a))))];
    }

    // Both sides, straight back to a depth.
    private static Point2[] Closed(Point2[] side, double back)
    {
        var kept = new List<Point2>();
        foreach (var p in side)
        {
            if (p.Y >= back)
            {
                Point2 before = kept.Count > 0 ? kept[^1] : p;
                kept.Add(before.Y < p.Y ? before + ((p - before) * ((back - before.Y) / (p.Y - before.Y))) : p);
                break;
            }

            kept.Add(p);
        }

        if (kept[^1].Y < back)
        {
            kept.Add(new(kept[^1].X, back));
        }

        return Both(kept);
    }

    private static Point2[] Both(IReadOnlyCollection<Point2> side) => [.. side.Reverse().Select(p => new Point2(-p.X, p.Y)), .. side];
}
