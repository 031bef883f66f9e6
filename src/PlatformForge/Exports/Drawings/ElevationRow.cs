using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings;

/// <summary>A row of an elevation: faced walls side by side, laid flat, on the line of the baseboard.</summary>
/// <param name="slices">What is drawn, from left to right.</param>
/// <param name="scale">Sheet mm to a mm of the model.</param>
/// <param name="slab">Thickness of what lies on the walls, mm.</param>
/// <param name="paint">What that shows.</param>
internal sealed class ElevationRow(IReadOnlyList<WallSlice> slices, double scale, double slab, Paint paint) : IElevationRow
{
    // Pieces of a row farther from one another than this many joints are not neighbours.
    private const double Neighbours = 1.6;

    private const double Numbers = 5.5; // mm under the foot for the sections' numbers

    private const double Faint = 0.72;

    private const double Parted = 6;

    /// <summary>Height over the baseboard of the line that it stands on, mm.</summary>
    public double Base { get; init; }

    /// <summary>Height of a plain plinth under the walls, mm.</summary>
    public double Plinth { get; init; }

    /// <summary>What stands on the deck over the walls.</summary>
    public IReadOnlyList<StandingBand> Over { get; init; } = [];

    public double Height => (scale * (Top - Base)) + Numbers;

    public double Covers => slices.Sum(s => s.Length);

    public (double Wall, double All) Left => (slices[0].Top[0].Y - Base, slices[0].Top[0].Y + slab - Base);

    public double Length => (scale * slices.Sum(s => s.Length)) + Enumerable.Range(1, slices.Count - 1).Sum(Before);

    public bool Begins => slices[0].Begins;

    // On the sheet, mm, between a slice and the one before it whose section is no neighbour: what lies between them has no wall.
    private double Before(int i) => i > 0 && Math.Abs(slices[i].Section - slices[i - 1].Section) > 1 ? Parted : 0;

    private double Top => slices.Max(s => s.Height) + slab + Over.Select(o => o.High).DefaultIfEmpty(0).Max();

    public void DrawOn(Sheet sheet, Point2 corner)
    {
        double foot = corner.Y + (scale * (Top - Base)), zero = foot + (scale * Base), x = corner.X;
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

            sheet.Area(slabOver.Concat(slabOver.AsEnumerable().Reverse().Select(p => p + new Point2(0, slab)))
                .Select(p => new Point2(from + (scale * p.X), zero - (scale * p.Y))), new(Palette.Of(paint), Faint), HouseStyle.Thin);
            sheet.Text(Invariant($"{slices[first].Section}"), new((from + x) / 2, foot + 4), HouseStyle.Strong, TextAnchor.Middle);
        }

        x = corner.X;
        foreach (var (slice, i) in slices.Select((s, i) => (s, i)))
        {
            x += Before(i);
            Edges(sheet, slice, new(x, zero));
            Standing(sheet, slice, Placed(new(x, zero), 0));
            if (slice.Begins && x > corner.X && Before(i) == 0)
            {
                sheet.Line(new(x, foot - (scale * (Top - Base)) - 1.5), new(x, foot + 2.5), HouseStyle.Cut);
            }

            x += scale * slice.Length;
        }

        sheet.Line(new(corner.X, foot), new(x, foot), HouseStyle.Outline);
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

        if (Plinth > 0)
        {
            Point2[] head = [.. slice.Edge(slice.Wall.Wall.Foot)];
            sheet.Area(head.Concat(head.Reverse().Select(p => p - new Point2(0, Plinth))).Select(Placed(origin, 0)),
                new(Palette.Of(FacingRelief.PaintOf(slice.Wall.Finish)), Faint), HouseStyle.Thin);
        }
    }

    // What stands on the deck over a slice, on the slab.
    private void Standing(Sheet sheet, WallSlice slice, Func<Point2, Point2> of)
    {
        var top = new EdgeLine(slice.Top, slab);
        foreach (var band in Over)
        {
            double a = WallBand.Along(slice.Wall, slice.Whole, band.From) - slice.From, b = WallBand.Along(slice.Wall, slice.Whole, band.To) - slice.From;
            double from = Math.Max(0, Math.Min(a, b)), to = Math.Min(slice.Length, Math.Max(a, b));
            if (to > from)
            {
                double[] places = [from, .. top.Within(from, to).Order(), to];
                IEnumerable<Point2> Edge(double over) => places.Select(x => of(new(x, top.At(x) + over)));
                sheet.Area(Edge(band.Low).Concat(Edge(band.High).Reverse()),
                    new(band.Colour, Faint), HouseStyle.Thin);
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
    private const double Shadow = 0.2;

    private void Wall(Sheet sheet, WallSlice slice, Func<Point2, Point2> of)
    {
        var work = slice.Wall.Finish;
        var (face, ground) = (Palette.Of(FacingRelief.PaintOf(work)), Palette.Of(FacingRelief.HasMortar(work) ? Paint.Mortar : FacingRelief.PaintOf(work)));
        Point2[] outline = Outline(slice);
        sheet.Area(outline.Select(of), new(ground, FacingRelief.HasMortar(work) ? Faint : 1));
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
