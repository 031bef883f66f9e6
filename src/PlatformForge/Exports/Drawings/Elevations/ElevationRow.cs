using PlatformForge.Exports.Drawings.Elevations.Walls;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Copings;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>A row of an elevation: walls side by side, laid flat, on the line of the baseboard.</summary>
/// <param name="slices">What is drawn, from left to right.</param>
/// <param name="scale">Sheet mm to a mm of the model.</param>
/// <param name="face">The face that it is of.</param>
internal sealed class ElevationRow(IReadOnlyList<WallSlice> slices, double scale, ElevationFace face) : IElevationRow
{
    // How faint areas are.
    internal const double Faint = 0.72;

    private const double Parted = 6;

    // Levels nearer than this, mm, are one.
    private const double Alike = 0.05;

    private readonly RowShapes shapes = new(slices, face.Shapes);

    // Asked for many times while a sheet is laid out, and found once.
    private RowFoot? foundFoot;
    private double? foundTop;
    private RowStanding? foundStanding;

    public double Height => (scale * (Top - face.Base)) + Under;

    public double Under => Foot.Depth;

    public double Covers => slices.Sum(s => s.Length);

    public (double Base, double Top) Span => (face.Base, Top);

    public IReadOnlyList<RowLevel> Left => [.. Levels(slices[0], 0).Select(l => l with { In = shapes.Before })];

    public IReadOnlyList<RowLevel> Right => [.. Levels(slices[^1], slices[^1].Length)
        .Where(r => !Left.Any(l => l.Word == r.Word && Math.Abs(l.Height - r.Height) < Alike))
        .Where(r => r.Height != face.RailTop).Select(l => l with { In = shapes.After })];

    public double Length =>
        (scale * (shapes.Before + slices.Sum(s => s.Length) + shapes.After)) + Enumerable.Range(1, slices.Count - 1).Sum(Before);

    public bool Begins => slices[0].Begins;

    // On the sheet, mm, between a slice and the one before it whose section is no neighbour: what lies between them has no wall.
    private double Before(int i) => i > 0 && Math.Abs(slices[i].Section - slices[i - 1].Section) > 1 ? Parted : 0;

    private RowFoot Foot => foundFoot ??= FindFoot();

    private double Top => foundTop ??= Math.Max(WallTop, RowOver.Top / scale);

    private double WallTop => Math.Max(shapes.Top, slices.Max(s => Math.Max(s.Height + face.Slab, Over(s))));

    private RowStanding RowOver => foundStanding ??= new(face.Standing, At, Length, scale);

    // Height of what stands on the deck along a slice, mm.
    private double Over(WallSlice slice) => face.Over.Select(o => o.HighAt ?? slice.Height + face.Slab + o.High).DefaultIfEmpty(0).Max();

    // Where a foot is beside the row, sheet mm from its left end: by the slice of its section, or else of any, that it is before.
    private (double X, bool IsIn) At(StandingFoot foot)
    {
        bool isIn = slices.Any(s => s.Section == foot.Section);
        double x = scale * shapes.Before, nearest = double.PositiveInfinity, found = 0;
        for (int i = 0; i < slices.Count; i++)
        {
            var slice = slices[i];
            x += Before(i);
            if (!isIn || slice.Section == foot.Section)
            {
                double along = WallBand.Along(slice.Wall, slice.Whole, foot.Place) - slice.From, beyond = Math.Max(0, Math.Max(-along, along - slice.Length));
                (nearest, found) = beyond < nearest ? (beyond, x + (scale * along)) : (nearest, found);
            }

            x += scale * slice.Length;
        }

        return (found, isIn);
    }

    // Heights at a place of a slice: of the line, a plinth, the rails, the wall, and what lies on it.
    private RowLevel[] Levels(WallSlice slice, double at)
    {
        double foot = new EdgeLine(slice.Edge(slice.Wall.Wall.Foot), 0).At(at), wall = new EdgeLine(slice.Top, 0).At(at);
        bool isFront = face.RailTop is not null || face.Plinth > 0;
        var levels = new List<RowLevel>
        {
            face.Plinth > 0 ? new(foot - face.Plinth, "deck") : new(foot, "baseboard"),
            new(wall, "wall"),
        };
        void Add(double? height, string word)
        {
            if (height is { } z && z > levels[0].Height + Alike && z < wall + face.Slab)
            {
                levels.Add(new(z, word));
            }
        }

        Add(face.Plinth > 0 ? foot : face.PlinthHead, "plinth");
        Add(face.RailTop, "rails");
        double top = face.Slab > 0 ? wall + face.Slab : shapes.TopAt(at);
        levels.Add(new(top, isFront ? "coping" : "deck"));
        double over = face.Over.Where(o => o.Along(slice) is var (a, b) && a <= at + Alike && b >= at - Alike).Select(o => o.Rise(top)).DefaultIfEmpty(0).Max();
        if (over > 0)
        {
            levels.Add(new(top + over, face.Over.Any(o => o.HighAt is not null || o.Low > 0) ? "its coping" : "kerb"));
        }

        return [.. levels.OrderBy(l => l.Height)];
    }

    // Middles of holes, fronts and what stands before the walls; where they are too many, the least of them are left out.
    private RowFoot FindFoot()
    {
        var places = new List<(double At, double Figure, bool IsMinor)>();
        var sections = new List<RowSection>();
        double x = scale * shapes.Before;
        foreach (var (slice, i) in slices.Select((s, i) => (s, i)))
        {
            x += Before(i);
            places.AddRange(WallHole.Of(slice).Select(h => (x + (scale * h.Middle), slice.At + h.Middle, face.RowOf(h)?.IsMinor == true)));
            double front = ((slice.Whole.From + slice.Whole.To) / 2) - slice.From;
            if (slice.IsFront && front >= 0 && front < slice.Length)
            {
                places.Add((x + (scale * front), slice.At + front, false));
            }

            places.AddRange(Fittings(slice).Select(p => (x + (scale * p.At), slice.At + p.At, false)));
            double to = x + (scale * slice.Length);
            bool goesOn = sections.Count > 0 && !slice.Begins;
            double from = goesOn ? sections[^1].From : x;
            sections = [.. goesOn ? sections.SkipLast(1) : sections, new(slice.Section, from, to, slice.At + slice.Length)];
            x = to;
        }

        if (!RowFoot.Holds(places.Count, x))
        {
            places.RemoveAll(p => p.IsMinor);
        }

        return new([.. sections.Select((s, i) => s with { Length = (i > 0 || Begins) && (i + 1 < sections.Count || face.Ends(slices[^1])) ? s.Length : null })],
            [.. RowFoot.Holds(places.Count, x) ? places.OrderBy(p => p.At).Select(p => (p.At, p.Figure)) : []]);
    }

    public void DrawOn(Sheet sheet, Point2 corner)
    {
        double foot = corner.Y + (scale * (Top - face.Base)), zero = foot + (scale * face.Base), left = corner.X + (scale * shapes.Before);
        RowOver.Draw(sheet, new(corner.X, zero));
        DrawSections(sheet, left, zero);
        DrawShapes(sheet, left, zero);
        double right = DrawBefore(sheet, left, foot, zero);
        sheet.Line(new(corner.X, foot), new(right + (scale * shapes.After), foot), HouseStyle.Outline);
        Foot.Draw(sheet, new(corner.X, foot));
    }

    // Walls section by section, and what lies on a section's panels and fronts, which is one slab.
    private void DrawSections(Sheet sheet, double left, double zero)
    {
        double x = left;
        for (int first = 0, next; first < slices.Count; first = next)
        {
            x += Before(first);
            double from = x, along = 0;
            var slabOver = new List<Point2>();
            var placed = new List<(WallSlice Slice, double X)>();
            for (next = first; next < slices.Count && (next == first || !slices[next].Begins); next++)
            {
                var slice = slices[next];
                placed.Add((slice, x));
                slabOver.AddRange(slice.Top.Select(p => p + new Point2(along, 0)));
                along += slice.Length;
                x += scale * slice.Length;
            }

            // Fronts stand before what is beside them.
            foreach (var (slice, at) in placed.OrderBy(p => p.Slice.IsFront))
            {
                Walls(sheet, slice, new(at, zero));
            }

            if (face.Slab > 0)
            {
                DrawSlab(sheet, slabOver, new(from, zero));
            }
        }
    }

    // The coping over a section, on the edge of the deck where that is seen. The line it lies on is told from the section's origin on the sheet.
    private void DrawSlab(Sheet sheet, List<Point2> under, Point2 origin)
    {
        void Band(double low, double high, Paint paint, Pen? pen) => sheet.Area(under.Select(p => p + new Point2(0, low))
            .Concat(under.AsEnumerable().Reverse().Select(p => p + new Point2(0, high)))
            .Select(p => new Point2(origin.X + (scale * p.X), origin.Y - (scale * p.Y))), new(Palette.Of(paint), Faint), pen);
        if (face.DeckEdge > 0)
        {
            Band(0, face.DeckEdge, Paint.Deck, null);
        }

        Band(face.DeckEdge, face.Slab, face.Paint, HouseStyle.Thin);
    }

    private void DrawShapes(Sheet sheet, double left, double zero)
    {
        foreach (var (ring, shape) in shapes.Rings)
        {
            sheet.Area(ring.Select(p => new Point2(left + (scale * p.X), zero - (scale * p.Y))), new(HouseStyle.Paper));
            sheet.Area(ring.Select(p => new Point2(left + (scale * p.X), zero - (scale * p.Y))), new(shape.Colour, Faint), shape.Pen);
        }
    }

    // What is drawn before the walls: edges, what stands before the walls and on the deck, seams and cuts. Where the last slice ends on the sheet, mm.
    private double DrawBefore(Sheet sheet, double left, double foot, double zero)
    {
        double x = left;
        foreach (var (slice, i) in slices.Select((s, i) => (s, i)))
        {
            x += Before(i);
            Edges(sheet, slice, new(x, zero));
            DrawFittings(sheet, slice, new(x, zero));
            Standing(sheet, slice, Placed(new(x, zero), 0));
            DrawSeams(sheet, slice, Placed(new(x, zero), 0));
            if (slice.Begins && x > left && Before(i) == 0)
            {
                sheet.Line(new(x, foot - (scale * (WallTop - face.Base)) - 1.5), new(x, foot + Under - 1), HouseStyle.Cut);
            }

            x += scale * slice.Length;
        }

        return x;
    }

    // The foot, and what is over it part by part.
    private void Walls(Sheet sheet, WallSlice slice, Point2 origin)
    {
        foreach (var (part, at) in slice.Parts())
        {
            var of = Placed(origin, at);
            if (!ReferenceEquals(part, slice))
            {
                sheet.Area(Outline(part).Select(of), new(HouseStyle.Paper));
            }

            ElevationWall.Draw(sheet, part, of, scale);
        }

        if (face.Plinth > 0)
        {
            Point2[] head = [.. slice.Edge(slice.Wall.Wall.Foot)];
            sheet.Area(head.Concat(head.Reverse().Select(p => p - new Point2(0, face.Plinth))).Select(Placed(origin, 0)),
                new(Palette.Of(slice.Wall.Shows), Faint), HouseStyle.Thin);
        }
    }

    // What stands on the deck over a slice, on the slab.
    private void Standing(Sheet sheet, WallSlice slice, Func<Point2, Point2> of)
    {
        var top = new EdgeLine(slice.Top, face.Slab);
        foreach (var band in face.Over)
        {
            var (from, to) = band.Along(slice);
            if (to > from)
            {
                double[] places = [from, .. top.Within(from, to).Order(), to];
                sheet.Area(places.Select(x => of(new(x, band.LowAt ?? top.At(x) + band.Low)))
                    .Concat(places.Reverse().Select(x => of(new(x, band.HighAt ?? top.At(x) + band.High)))), new(band.Colour, Faint), HouseStyle.Thin);
            }
        }
    }

    // Joints on the front of the slab over a slice.
    private void DrawSeams(Sheet sheet, WallSlice slice, Func<Point2, Point2> of)
    {
        var top = new EdgeLine(slice.Top, 0);
        foreach (var joint in face.Joints)
        {
            double at = WallBand.Along(slice.Wall, slice.Whole, joint) - slice.From;
            if (at > 0 && at < slice.Length)
            {
                sheet.Line(of(new(at, top.At(at) + face.DeckEdge + CopingFronts.Arris)), of(new(at, top.At(at) + face.Slab)), HouseStyle.Thin);
            }
        }
    }

    // What stands before the wall with its middle before a slice, with where that is from its beginning, mm.
    private IEnumerable<(FittingSight Sight, double At)> Fittings(WallSlice slice) => face.Fittings
        .Select(p => (Sight: p, Along: WallBand.Along(slice.Wall, slice.Whole, p.Middle)))
        .Where(p => p.Along >= slice.From && p.Along < slice.To)
        .Where(p => (slice.Wall.Place(p.Along) - p.Sight.Middle).Length < slice.Wall.Zone.Out + Beside)
        .Select(p => (p.Sight, p.Along - slice.From));

    // Chords of curves lie nearer to what stands before their wall than this, mm.
    private const double Beside = 1;

    private void DrawFittings(Sheet sheet, WallSlice slice, Point2 origin)
    {
        foreach (var (sight, at) in Fittings(slice))
        {
            foreach (var outline in sight.Outlines)
            {
                Point2[] placed = [.. outline.Select(Placed(origin, at))];
                sheet.Area(placed, new(HouseStyle.Paper));
                sheet.Area(placed, new(sight.Colour, Faint), HouseStyle.Thin);
            }
        }
    }

    private Func<Point2, Point2> Placed(Point2 origin, double at) => p => new(origin.X + (scale * (at + p.X)), origin.Y - (scale * p.Y));

    /// <summary>Outline of a wall, or of a part of one.</summary>
    internal static Point2[] Outline(WallSlice part) => [.. part.Edge(part.Wall.Wall.Foot), .. part.Edge(part.Wall.Wall.Top).Reverse()];

    // The edges that a wall throws its shadows from: heads of plinths, feet of corbelled courses, sides and slopes of fronts.
    private void Edges(Sheet sheet, WallSlice slice, Point2 origin)
    {
        var parts = slice.Parts().ToArray();
        foreach (var (part, at) in parts)
        {
            var of = Placed(origin, at);
            Point2[] foot = [.. part.Edge(part.Wall.Wall.Foot)], top = [.. part.Edge(part.Wall.Wall.Top)];
            var zone = part.Wall.Zone;
            int beside = zone.IsFoot ? zone.Number + 1 : zone.Number - 1;
            if (!zone.IsDeepest && Array.Exists(parts, p => p.Part.Wall.Zone.Number == beside && zone.Out - p.Part.Wall.Zone.Out > Shadow))
            {
                sheet.Lines((zone.IsFoot ? top : foot).Select(of), HouseStyle.Thin);
            }

            if (part.IsFront)
            {
                // Where the bricks that turn its corners end.
                Point2 stands = new(part.Wall.Regions.Select(r => r.Out).DefaultIfEmpty(0).Max(), 0);
                sheet.Line(of(foot[0] - stands), of(top[0] - stands), HouseStyle.Thin);
                sheet.Line(of(foot[^1] + stands), of(top[^1] + stands), HouseStyle.Thin);
            }
        }

        var fronts = parts.Where(p => p.Part.IsFront).OrderBy(p => p.Part.Wall.Zone.Number).ToArray();
        if (fronts.Length > 0 && double.IsFinite(slice.Head))
        {
            Weathering(sheet, slice, fronts[^1], Placed(origin, 0));
        }
    }

    // The slope of a front from its upper edge to its head, or to the deck where a ramp's lies lower.
    private static void Weathering(Sheet sheet, WallSlice slice, (WallSlice Part, double At) front, Func<Point2, Point2> of)
    {
        Point2[] low = [.. front.Part.Edge(front.Part.Wall.Wall.Top).Select(p => p + new Point2(front.At, 0))];
        var over = new EdgeLine(slice.Top, 0);
        Point2[] high = [.. low.Select(p => new Point2(p.X, Math.Min(slice.Head, over.At(Math.Clamp(p.X, 0, slice.Length)))))];
        if (low.Zip(high).Max(p => p.Second.Y - p.First.Y) > Slopes)
        {
            sheet.Area(low.Concat(high.Reverse()).Select(of), new(Palette.Of(front.Part.Wall.Shows)), HouseStyle.Thin);
        }
    }

    // A front that ends so far, mm, under its head ends in a slope.
    private const double Slopes = 0.3;

    // Steps no deeper than this, mm, as those of a wall that leans and a line less than a nozzle's, are no edge to the eye.
    internal const double Shadow = 0.2;
}
