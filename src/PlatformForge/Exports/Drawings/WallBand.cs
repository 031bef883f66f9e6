using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Solids.Bodies;

namespace PlatformForge.Exports.Drawings;

/// <summary>A part of a wall's height that stands out, over or under a slice of what lies deepest.</summary>
/// <param name="Wall">It, laid flat.</param>
/// <param name="From">Where it begins along its own wall, mm.</param>
/// <param name="To">Where it ends.</param>
/// <param name="At">Where it begins along the slice's wall, mm: before it and beyond it at corners, which it goes round farther out.</param>
internal sealed record WallBand(FacedWall Wall, double From, double To, double At)
{
    /// <summary>Whether it is the front of a buttress, whose head slopes over it.</summary>
    public bool IsButtress { get; init; }

    /// <summary>What of it lies over a slice, as a slice of its own wall, and where that begins from the slice's beginning; null where nothing does.</summary>
    public (WallSlice Part, double At)? Over(WallSlice slice)
    {
        double margin = Wall.Zone.Out, from = Math.Max(From, slice.From - margin - At + From), to = Math.Min(To, slice.To + margin - At + From);
        return to > from ? (new(Wall, slice.Section, from, to, false), At + from - From - slice.From) : null;
    }

    /// <summary>The bands of a stretch of a face: those of the other parts of its height whose middles lie over it in plan.</summary>
    /// <param name="walls">All walls of the section.</param>
    /// <param name="whole">The wall laid flat of the part that lies deepest.</param>
    /// <param name="stretch">The stretch of it.</param>
    public static IEnumerable<WallBand> Of(IEnumerable<FacedWall> walls, FacedWall whole, (string Face, double From, double To) stretch)
    {
        foreach (var wall in walls.Where(w => !w.Zone.IsDeepest).OrderBy(w => w.Zone.Out))
        {
            foreach (var (face, from, to) in wall.Stretches.OrderBy(s => WallNames.IsPierOf(s.Face, stretch.Face)))
            {
                // A buttress has no place of its own in what lies deepest.
                bool isButtress = WallNames.IsPierOf(face, stretch.Face) && !whole.Stretches.Any(s => s.Face == face);
                if ((face == stretch.Face || isButtress) && Along(whole, stretch, wall.Place((from + to) / 2)) is { } middle)
                {
                    yield return new(wall, from, to, middle - ((to - from) / 2)) { IsButtress = isButtress };
                }
            }
        }
    }

    // Where a place in plan lies before a stretch; null where that is elsewhere, as on a face of one name in another part of the section.
    private static double? Along(FacedWall whole, (string Face, double From, double To) stretch, Point2 place)
    {
        for (int i = 0; i < whole.Plan.Count; i++)
        {
            var (start, left, right) = whole.Plan[i];
            double length = (right - left).Length, on = Point2.Dot(right - left, place - left) / length;
            if (start >= stretch.From - Same && start + length <= stretch.To + Same && on > -Same && on < length + Same)
            {
                return start + on;
            }
        }

        return null;
    }

    // Middles in plan lie off the wall by what stands out, and off the joints of its chords by a share of that, mm.
    private const double Same = 0.1;

    // In an angle beside a pier what stands out is shorter than what is behind it, and lies over all of it.
    private static List<Point2> ToEnds(List<Point2> edge, double length, double margin)
    {
        if (edge[0].X > 0 && edge[0].X < margin)
        {
            edge.Insert(0, new(0, edge[0].Y));
        }

        if (edge[^1].X < length && edge[^1].X > length - margin)
        {
            edge.Add(new(length, edge[^1].Y));
        }

        return edge;
    }

    /// <summary>The upper edge of a slice with the bands over it, along from its beginning.</summary>
    public static IReadOnlyList<Point2> Top(WallSlice slice)
    {
        var own = slice.Edge(slice.Wall.Wall.Top);
        List<IReadOnlyList<Point2>> edges = [own];
        foreach (var band in slice.Bands.Where(b => !b.Wall.Zone.IsFoot))
        {
            if (band.Over(slice) is var (part, at))
            {
                edges.Add(ToEnds([.. part.Edge(part.Wall.Wall.Top).Select(p => p + new Point2(at, 0))], slice.Length, band.Wall.Zone.Out + Same));
            }
        }

        if (edges.Count == 1)
        {
            return own;
        }

        var lines = edges.Select(e => (Line: new EdgeLine(e, 0), From: e[0].X, To: e[^1].X)).ToArray();
        double[] places = [.. edges.SelectMany(e => e).Select(p => Math.Clamp(p.X, 0, slice.Length)).Distinct().Order()];
        return [.. places.Select(x => new Point2(x, lines.Where(l => l.From <= x && l.To >= x).Max(l => l.Line.At(x))))];
    }
}
