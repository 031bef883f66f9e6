using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;

namespace PlatformForge.Exports.Drawings;

/// <summary>A row of an elevation: walls side by side, laid flat, on the line of the baseboard.</summary>
/// <param name="slices">What is drawn, from left to right.</param>
/// <param name="scale">Sheet mm to a mm of the model.</param>
/// <param name="face">The face that it is of.</param>
internal sealed class ElevationRow(IReadOnlyList<WallSlice> slices, double scale, ElevationFace face) : IElevationRow
{
    // Pieces of a row farther from one another than this many joints are not neighbours.
    private const double Neighbours = 1.6;

    private const double Faint = 0.72;

    private const double Parted = 6;

    // Levels nearer than this, mm, are one.
    private const double Alike = 0.05;

    private readonly RowShapes shapes = new(slices, face.Shapes);

    // Asked for many times while a sheet is laid out, and found once.
    private RowFoot? foundFoot;
    private double? foundTop;

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

    private double Top => foundTop ??= Math.Max(shapes.Top, slices.Max(s => s.Height + face.Slab + Over(s)));

    // How far what stands on the deck does so over the lowest of a slice, mm.
    private double Over(WallSlice slice) => face.Over.Select(o => o.Rise(slice.Top.Min(p => p.Y) + face.Slab)).DefaultIfEmpty(0).Max();

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

    // Middles of openings and piers; where they are too many, weep holes are left out.
    private RowFoot FindFoot()
    {
        var places = new List<(double At, double Figure, bool IsWeep)>();
        var sections = new List<RowSection>();
        double x = scale * shapes.Before;
        foreach (var (slice, i) in slices.Select((s, i) => (s, i)))
        {
            x += Before(i);
            places.AddRange(WallHole.Of(slice).Select(h => (x + (scale * h.Middle), slice.At + h.Middle, h.Kind == OpeningKind.Weep)));
            double pier = ((slice.Whole.From + slice.Whole.To) / 2) - slice.From;
            if (slice.IsPier && pier >= 0 && pier < slice.Length)
            {
                places.Add((x + (scale * pier), slice.At + pier, false));
            }

            double to = x + (scale * slice.Length);
            bool goesOn = sections.Count > 0 && !slice.Begins;
            double from = goesOn ? sections[^1].From : x;
            sections = [.. goesOn ? sections.SkipLast(1) : sections, new(slice.Section, from, to, slice.At + slice.Length)];
            x = to;
        }

        if (!RowFoot.Holds(places.Count, x))
        {
            places.RemoveAll(p => p.IsWeep);
        }

        return new([.. sections.Select((s, i) => s with { Length = (i > 0 || Begins) && (i + 1 < sections.Count || face.Ends(slices[^1])) ? s.Length : null })],
            [.. RowFoot.Holds(places.Count, x) ? places.OrderBy(p => p.At).Select(p => (p.At, p.Figure)) : []]);
    }

    public void DrawOn(Sheet sheet, Point2 corner)
    {
        double foot = corner.Y + (scale * (Top - face.Base)), zero = foot + (scale * face.Base), left = corner.X + (scale * shapes.Before), x = left;
        for (int first = 0, next; first < slices.Count; first = next)
        {
            x += Before(first);

            // What lies on a section's panels and piers is one slab.
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

            // Piers stand before what is beside them.
            foreach (var (slice, at) in placed.OrderBy(p => p.Slice.IsPier))
            {
                Walls(sheet, slice, new(at, zero));
            }

            if (face.Slab > 0)
            {
                void Band(double low, double high, Paint paint, Pen? pen) => sheet.Area(slabOver.Select(p => p + new Point2(0, low))
                    .Concat(slabOver.AsEnumerable().Reverse().Select(p => p + new Point2(0, high)))
                    .Select(p => new Point2(from + (scale * p.X), zero - (scale * p.Y))), new(Palette.Of(paint), Faint), pen);
                if (face.DeckEdge > 0)
                {
                    Band(0, face.DeckEdge, Paint.Deck, null);
                }

                Band(face.DeckEdge, face.Slab, face.Paint, HouseStyle.Thin);
            }
        }

        foreach (var (ring, colour) in shapes.Rings)
        {
            sheet.Area(ring.Select(p => new Point2(left + (scale * p.X), zero - (scale * p.Y))), new(HouseStyle.Paper));
            sheet.Area(ring.Select(p => new Point2(left + (scale * p.X), zero - (scale * p.Y))), new(colour, Faint), HouseStyle.Thin);
        }

        x = left;
        foreach (var (slice, i) in slices.Select((s, i) => (s, i)))
        {
            x += Before(i);
            Edges(sheet, slice, new(x, zero));
            Standing(sheet, slice, Placed(new(x, zero), 0));
            DrawSeams(sheet, slice, Placed(new(x, zero), 0));
            if (slice.Begins && x > left && Before(i) == 0)
            {
                sheet.Line(new(x, foot - (scale * (Top - face.Base)) - 1.5), new(x, foot + Under - 1), HouseStyle.Cut);
            }

            x += scale * slice.Length;
        }

        sheet.Line(new(corner.X, foot), new(x + (scale * shapes.After), foot), HouseStyle.Outline);
        Foot.Draw(sheet, new(corner.X, foot));
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

            Wall(sheet, part, of);
        }

        if (face.Plinth > 0)
        {
            Point2[] head = [.. slice.Edge(slice.Wall.Wall.Foot)];
            sheet.Area(head.Concat(head.Reverse().Select(p => p - new Point2(0, face.Plinth))).Select(Placed(origin, 0)),
                new(Palette.Of(FacingRelief.PaintOf(slice.Wall.Finish)), Faint), HouseStyle.Thin);
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

    private Func<Point2, Point2> Placed(Point2 origin, double at) => p => new(origin.X + (scale * (at + p.X)), origin.Y - (scale * p.Y));

    private static Point2[] Outline(WallSlice part) => [.. part.Edge(part.Wall.Wall.Foot), .. part.Edge(part.Wall.Wall.Top).Reverse()];

    // The edges that a wall throws its shadows from: heads of plinths, feet of corbelled courses, sides of piers and slopes of buttresses.
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

            if (part.IsPier)
            {
                // Where the bricks that turn its corners end.
                Point2 stands = new(part.Wall.Regions.Select(r => r.Out).DefaultIfEmpty(0).Max(), 0);
                sheet.Line(of(foot[0] - stands), of(top[0] - stands), HouseStyle.Thin);
                sheet.Line(of(foot[^1] + stands), of(top[^1] + stands), HouseStyle.Thin);
            }
        }

        var fronts = parts.Where(p => p.Part.IsPier).OrderBy(p => p.Part.Wall.Zone.Number).ToArray();
        if (fronts.Length > 0 && double.IsFinite(slice.Head))
        {
            Weathering(sheet, slice, fronts[^1], Placed(origin, 0));
        }
    }

    // The slope of a buttress from its front's upper edge to its head, or to the deck where a ramp's lies lower.
    private static void Weathering(Sheet sheet, WallSlice slice, (WallSlice Part, double At) front, Func<Point2, Point2> of)
    {
        Point2[] low = [.. front.Part.Edge(front.Part.Wall.Wall.Top).Select(p => p + new Point2(front.At, 0))];
        var over = new EdgeLine(slice.Top, 0);
        Point2[] high = [.. low.Select(p => new Point2(p.X, Math.Min(slice.Head, over.At(Math.Clamp(p.X, 0, slice.Length)))))];
        if (low.Zip(high).Max(p => p.Second.Y - p.First.Y) > Slopes)
        {
            sheet.Area(low.Concat(high.Reverse()).Select(of), new(Palette.Of(FacingRelief.PaintOf(front.Part.Wall.Finish))), HouseStyle.Thin);
        }
    }

    // A front that ends so far, mm, under its buttress's head ends in a slope.
    private const double Slopes = 0.3;

    // Steps no deeper than this, mm, as those of a wall that leans and a line less than a nozzle's, are no edge to the eye.
    internal const double Shadow = 0.2;

    private void Wall(Sheet sheet, WallSlice slice, Func<Point2, Point2> of)
    {
        var work = slice.Wall.Finish;
        var (face, ground) = (Palette.Of(FacingRelief.PaintOf(work)), Palette.Of(FacingRelief.HasMortar(work) ? Paint.Mortar : FacingRelief.PaintOf(work)));
        Point2[] outline = Outline(slice);
        sheet.Area(outline.Select(of), new(ground, FacingRelief.HasMortar(work) || IsPlain(slice) ? Faint : 1));
        if (IsPlain(slice))
        {
            return;
        }

        Oblongs(sheet, slice, of, (face, FacingRelief.HasMortar(work) ? OnPaper(ground) : ground));
        if (!FacingRelief.HasMortar(work))
        {
            // Joints of the pieces' own colour.
            Joints(sheet, slice, outline, of);
        }
    }

    private static void Joints(Sheet sheet, WallSlice slice, Point2[] outline, Func<Point2, Point2> of)
    {
        foreach (var (a, b) in FacingJoints.Of(slice).SelectMany(j => FacingJoints.Within(outline, j.A, j.B)))
        {
            sheet.Line(of(a), of(b), HouseStyle.Fine);
        }
    }

    // Oblongs of a row are drawn as one band with its perpends over it: a long wall has many thousands of them.
    private void Oblongs(Sheet sheet, WallSlice slice, Func<Point2, Point2> of, (Rgb Face, Rgb Ground) colours)
    {
        var all = slice.Pieces().ToArray();
        var pieces = all.Where(p => p.Out > 0).ToArray();
        double most = pieces.Select(p => p.Out).DefaultIfEmpty(0).Max();
        foreach (var row in pieces.Where(p => IsOblong(p.Outline)).GroupBy(p => (p.Outline[0].Y, p.Outline[2].Y, p.Out)).OrderBy(r => r.Key.Out))
        {
            var fill = new Fill(colours.Face, row.Key.Out < most ? Faint / 2 : Faint);
            var sorted = row.OrderBy(p => p.Outline.Min(q => q.X)).Select(p => (From: p.Outline.Min(q => q.X), To: p.Outline.Max(q => q.X))).ToArray();
            for (int i = 0; i < sorted.Length;)
            {
                int end = i;
                while (end + 1 < sorted.Length && sorted[end + 1].From - sorted[end].To < Neighbours * Joint(slice))
                {
                    end++;
                }

                Band(sheet, sorted[i..(end + 1)], row.Key.Item1, row.Key.Item2, of, (fill, colours.Ground, Joint(slice)));
                i = end + 1;
            }
        }

        // Stones without courses have outlines; what slopes and arches cut of courses shows by its joints as all of a course does.
        bool outlined = slice.Wall.Finish == WallFinish.Rubble;
        foreach (var (outline, _, _) in pieces.Where(p => !IsOblong(p.Outline)))
        {
            sheet.Area(outline.Select(of), new(colours.Face, Faint), outlined ? HouseStyle.Fine : null);
        }

        // Recesses are grey, what goes right through is black.
        foreach (var (outline, _, through) in all.Where(p => p.Out < 0))
        {
            sheet.Area(outline.Select(of), new(HouseStyle.Paper));
            sheet.Area(outline.Select(of), new(HouseStyle.Ink, through ? 1 : Faint));
        }
    }

    private static bool IsPlain(WallSlice slice) => slice.Wall.Finish == WallFinish.Plain;

    private static bool IsOblong(Point2[] o) => o.Length == 4 && o.Min(p => p.Y) is var low && o.Max(p => p.Y) is var high && o[0].Y == low && o[1].Y == low
        && o[2].Y == high && o[3].Y == high && o[0].X == o[3].X && o[1].X == o[2].X;

    private void Band(
        Sheet sheet, (double From, double To)[] pieces, double low, double high, Func<Point2, Point2> of, (Fill Fill, Rgb Ground, double Joint) look)
    {
        sheet.Area(((Point2[])[new(pieces[0].From, low), new(pieces[^1].To, low), new(pieces[^1].To, high), new(pieces[0].From, high)]).Select(of),
            look.Fill);
        if (pieces.Length > 1)
        {
            // Up one perpend and down the next: what lies between two is in the middle of a bed joint, of the ground's colour as they are.
            double under = low - (look.Joint / 2), over = high + (look.Joint / 2);
            var perpends = pieces.Zip(pieces.Skip(1), (a, b) => (a.To + b.From) / 2)
                .SelectMany((x, i) => i % 2 == 0 ? new[] { new Point2(x, under), new Point2(x, over) } : [new Point2(x, over), new Point2(x, under)]);
            sheet.Lines(perpends.Select(of), new(scale * look.Joint, look.Ground));
        }
    }

    // A colour as faint as areas are, without being seen through.
    private static Rgb OnPaper(Rgb colour)
    {
        static byte Mixed(byte on, byte paper) => (byte)Math.Round((Faint * on) + ((1 - Faint) * paper));
        return new(Mixed(colour.R, HouseStyle.Paper.R), Mixed(colour.G, HouseStyle.Paper.G), Mixed(colour.B, HouseStyle.Paper.B));
    }

    private static double Joint(WallSlice slice) => slice.Wall.Joint;
}
