using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Walls;

namespace PlatformForge.Exports.Drawings.Elevations.Walls;

/// <summary>A part of a wall's height over a slice of its foot: courses that stand out, the wall itself, a front that steps out there.</summary>
/// <param name="Wall">It, laid flat.</param>
/// <param name="From">Where it begins along its own wall, mm.</param>
/// <param name="To">Where it ends.</param>
/// <param name="At">Where it begins along the slice's wall, mm: before it and beyond it at corners, which it may go round farther out.</param>
internal sealed record WallBand(FacedWall Wall, double From, double To, double At)
{
    // Overlaps in plan shorter than this, mm, are none.
    private const double Least = 0.02;

    // Places in plan lie off joints of chords by a share of what stands out, mm.
    private const double Same = 0.1;

    // At an end askew, by 40 degrees at most, what stands out ends farther on than what it stands before: by 1/cos of what lies before its end wall and tan of
    // what lies before its front, a millimetre of each to one that it stands out.
    private static readonly double Askew = (1 + Math.Sin(40 * Math.PI / 180)) / Math.Cos(40 * Math.PI / 180);

    /// <summary>The stretch of its wall that it is a part of, mm.</summary>
    public (double From, double To) Whole { get; init; } = (From, To);

    /// <summary>Whether it is a front that steps out.</summary>
    public bool IsFront { get; init; }

    /// <summary>What of it lies over a slice, which may be a row's part of its own, as a slice of its own wall, and where that begins from the slice's
    /// beginning; null where nothing does.</summary>
    public (WallSlice Part, double At)? Over(WallSlice slice)
    {
        double shift = At - From;
        double from = slice.From > slice.Whole.From ? Math.Max(From, slice.From - shift) : From;
        double to = slice.To < slice.Whole.To ? Math.Min(To, slice.To - shift) : To;
        return to > from ? (new(Wall, slice.Section, from, to, false) { IsFront = IsFront, Whole = Whole }, from + shift - slice.From) : null;
    }

    /// <summary>What is over a slice of a wall's foot, by places in plan, from the lowest part up.</summary>
    /// <param name="walls">All walls of the section.</param>
    /// <param name="foot">The wall that the slice is of.</param>
    /// <param name="slice">Where it begins and ends along that.</param>
    /// <param name="face">Name of the face.</param>
    /// <param name="ends">Whether the wall begins and ends with it: what stands out farther goes beyond it there.</param>
    public static IEnumerable<WallBand> Of(
        IEnumerable<FacedWall> walls, FacedWall foot, (double From, double To) slice, string face, (bool First, bool Last) ends)
    {
        foreach (var wall in walls.Where(w => w.Zone.Number > 1).OrderBy(w => w.Zone.Number))
        {
            foreach (var (name, from, to) in wall.Stretches.Where(s => s.Face == face || WallNames.IsFrontOf(s.Face, face)).OrderBy(s => s.Face != face))
            {
                double left = Along(wall, (from, to), foot.Place(slice.From)), right = Along(wall, (from, to), foot.Place(slice.To));
                double begins = Math.Max(from, left), stops = Math.Min(to, right);
                if (stops - begins > Least)
                {
                    // What is farther round a bend is longer: middles lie over one another.
                    double middle = (begins + stops) / 2, at = slice.From + ((slice.To - slice.From) * (middle - left) / (right - left));
                    double a = ends.First ? from : begins, b = ends.Last ? to : stops;
                    yield return new(wall, a, b, at - (middle - a)) { IsFront = name != face, Whole = (from, to) };
                }
            }
        }
    }

    /// <summary>The place along a stretch of a wall that is beside a place in plan, mm; on beyond its ends as its end pieces are.</summary>
    public static double Along(FacedWall wall, (double From, double To) stretch, Point2 place)
    {
        double nearest = double.PositiveInfinity, found = 0;
        foreach (var (start, left, right) in wall.Plan)
        {
            double length = (right - left).Length, on = Point2.Dot(right - left, place - left) / length, beyond = Math.Max(0, Math.Max(-on, on - length));
            if (start >= stretch.From - Same && start + length <= stretch.To + Same && beyond < nearest)
            {
                (nearest, found) = (beyond, start + on);
            }
        }

        return found;
    }

    /// <summary>Height at which the fronts of a face end, mm: that of the uppermost part that has any; infinity where they go up to the coping.</summary>
    public static double Head(IEnumerable<FacedWall> walls, string face) =>
        walls.Where(w => w.Stretches.Any(s => WallNames.IsFrontOf(s.Face, face) || WallNames.IsSideOf(s.Face, face)))
            .Select(w => w.Zone.High).DefaultIfEmpty(double.PositiveInfinity).Max();

    /// <summary>The upper edge of a slice and all that is over it, along from its beginning.</summary>
    public static IReadOnlyList<Point2> Top(WallSlice slice)
    {
        var parts = slice.Parts().ToArray();
        double margin = (Askew * parts.Max(p => p.Part.Wall.Zone.Out)) + Same;
        IReadOnlyList<Point2>[] edges =
            [.. parts.Select(p => ToEnds([.. p.Part.Edge(p.Part.Wall.Wall.Top).Select(q => q + new Point2(p.At, 0))], slice.Length, margin))];
        edges = [.. edges, .. Behind(slice)];
        if (edges.Length == 1)
        {
            return edges[0];
        }

        var lines = edges.Select(e => (Line: new EdgeLine(e, 0), From: e[0].X, To: e[^1].X)).ToArray();
        double[] places = [.. edges.SelectMany(e => e).Select(p => Math.Clamp(p.X, 0, slice.Length)).Distinct().Order()];
        return [.. places.Select(x => new Point2(x, lines.Where(l => l.From <= x && l.To >= x).Max(l => l.Line.At(x))))];
    }

    // Over a front's slope the wall behind it goes up to where its sides stand against it.
    private static IEnumerable<IReadOnlyList<Point2>> Behind(WallSlice slice)
    {
        var (wall, stretches) = (slice.Wall, slice.Wall.Stretches.Where(s => WallNames.IsOfFront(s.Face)).ToArray());
        var before = Array.Find(stretches, s => s.To == slice.Whole.From);
        var after = Array.Find(stretches, s => s.From == slice.Whole.To);
        if (slice.IsFront && double.IsFinite(slice.Head) && before.Face is not null && after.Face is not null)
        {
            var edge = new EdgeLine(wall.Wall.Top, 0);
            yield return [new(slice.Whole.From - slice.From, edge.At(before.From)), new(slice.Whole.To - slice.From, edge.At(after.To))];
        }
    }

    // At a corner what stands out is longer than what lies deeper, and the coping lies over all of it: on as the edge goes.
    private static List<Point2> ToEnds(List<Point2> edge, double length, double margin)
    {
        if (edge[0].X > 0 && edge[0].X < margin)
        {
            edge.Insert(0, On(edge[1], edge[0], 0));
        }

        if (edge[^1].X < length && edge[^1].X > length - margin)
        {
            edge.Add(On(edge[^2], edge[^1], length));
        }

        return edge;
    }

    private static Point2 On(Point2 a, Point2 b, double x) => new(x, b.X == a.X ? b.Y : b.Y + ((b.Y - a.Y) * (x - b.X) / (b.X - a.X)));
}
