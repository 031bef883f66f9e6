using PlatformForge.Exports.Drawings.Elevations.Walls;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>What shows beside and over the end wall of a row, laid flat with it: as much as the row has of it.</summary>
internal sealed class RowShapes
{
    private readonly Point2[][] rings;
    private readonly EndShape[] shown;

    /// <param name="slices">The row's part of the wall.</param>
    /// <param name="shapes">What shows.</param>
    public RowShapes(IReadOnlyList<WallSlice> slices, IReadOnlyList<EndShape> shapes)
    {
        double length = slices.Sum(s => s.Length);
        WallSlice first = slices[0], last = slices[^1];
        bool isLeft = first.Begins, isRight = last.To >= last.Whole.To;
        Point2[] Ring(EndShape shape)
        {
            Point2[] ring = [.. shape.Ring.Select(c => new Point2(WallBand.Along(first.Wall, first.Whole, c.Place) - first.From, c.Height))];
            ring = isLeft ? ring : ConvexRing.LeftOf(ring, new(0, 1), new(0, 0));
            return isRight || ring.Length == 0 ? ring : ConvexRing.LeftOf(ring, new(length, 0), new(length, 1));
        }

        var all = shapes.Select(s => (Ring: Ring(s), Shape: s)).Where(s => s.Ring.Length > 2).ToArray();
        (rings, shown) = ([.. all.Select(s => s.Ring)], [.. all.Select(s => s.Shape)]);
        Before = Math.Max(0, -rings.SelectMany(r => r).Select(p => p.X).DefaultIfEmpty(0).Min());
        After = Math.Max(0, rings.SelectMany(r => r).Select(p => p.X).DefaultIfEmpty(0).Max() - length);
        Top = rings.SelectMany(r => r).Select(p => p.Y).DefaultIfEmpty(0).Max();
    }

    /// <summary>How far it goes beyond the wall to the left and to the right, mm.</summary>
    public double Before { get; }

    /// <inheritdoc cref="Before"/>
    public double After { get; }

    /// <summary>Its greatest height over the baseboard, mm.</summary>
    public double Top { get; }

    /// <summary>Outlines from the row's left end, heights over the baseboard.</summary>
    public IEnumerable<(Point2[] Ring, EndShape Shape)> Rings => rings.Zip(shown);

    /// <summary>Its height at a place of the row, mm.</summary>
    public double TopAt(double at) => rings.Where(r => r.Min(p => p.X) <= at && r.Max(p => p.X) >= at).Select(r => Upper(r, at)).DefaultIfEmpty(Top).Max();

    private static double Upper(Point2[] ring, double at) => ring.Select((a, i) => (A: a, B: ring[(i + 1) % ring.Length]))
        .Where(e => Math.Min(e.A.X, e.B.X) <= at && Math.Max(e.A.X, e.B.X) >= at && e.A.X != e.B.X)
        .Select(e => e.A.Y + ((e.B.Y - e.A.Y) * (at - e.A.X) / (e.B.X - e.A.X))).DefaultIfEmpty(0).Max();
}
